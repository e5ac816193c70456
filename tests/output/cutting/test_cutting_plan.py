"""A cutting plan is legal, leaves out the least, uses the fewest: against trying everything, and published optima."""

import math
from collections import Counter
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boardplan.output.cutting.cutting_plan import Bar, Piece, cutting_plan


def check_legal(plan, pieces, stock, cut):
    """Every piece is cut once or missing, every bar is there, and pieces with the cuts between them fit on it."""
    dealt = [piece for bar in plan.bars for piece in bar.pieces] + list(plan.missing)
    assert Counter(dealt) == Counter(pieces)
    used = Counter((bar.name, bar.length) for bar in plan.bars)
    assert len({(bar.name, bar.length, bar.number) for bar in plan.bars}) == len(plan.bars)
    for key, count in used.items():
        at_hand = [each.count for each in stock if (each.name, each.length) == key]
        assert None in at_hand or count <= sum(at_hand)
    for bar in plan.bars:
        lengths = [each.length for each in bar.pieces]
        assert math.fsum(lengths) + cut * (len(lengths) - 1) <= bar.length + 1e-6
        assert lengths == sorted(lengths, reverse=True)
        assert all(one < other or bar.left == 0 for one, other in pairwise((0.0, *bar.totals)))
        assert bar.left == pytest.approx(max(0.0, bar.length - math.fsum(lengths) - cut * len(lengths)))
    assert plan.least <= len(plan.bars)


def least_by_trying(pieces, stock, cut):
    """The least missing length, and the fewest bars for it, by putting each piece on each bar; in tenths."""
    loss = round(cut * 10)
    bars = [round(each.length * 10) + loss for each in stock for _ in range(each.count or len(pieces))]
    lengths = [round(each.length * 10) for each in pieces]
    seen = set()
    best = (sum(lengths) + 1, 0)

    def put(index, left, missing):
        nonlocal best
        used = sum(room != whole for room, whole in zip(left, bars, strict=True))
        if (missing, used) >= best or (index, left, missing) in seen:
            return
        seen.add((index, left, missing))
        if index == len(lengths):
            best = missing, used
            return
        size = lengths[index] + loss
        for place, room in enumerate(left):
            if room >= size:
                put(index + 1, (*left[:place], room - size, *left[place + 1 :]), missing)
        put(index + 1, left, missing + lengths[index])

    put(0, tuple(bars), 0)
    return best


tenths = st.integers(1, 400).map(lambda each: each / 10)
some_pieces = st.lists(tenths, max_size=6).map(lambda those: [Piece(f"W{i}", each) for i, each in enumerate(those)])
some_stock = st.lists(
    st.builds(Bar, st.sampled_from("AB"), st.integers(50, 900).map(lambda each: each / 10), st.integers(1, 2)),
    max_size=3,
)
some_cuts = st.sampled_from((0.0, 0.1, 1.5, 3.0))


@given(some_pieces, some_stock, some_cuts)
def test_least_missing_and_fewest_bars_as_by_trying_everything(pieces, stock, cut):
    plan = cutting_plan(pieces, stock, cut)
    check_legal(plan, pieces, stock, cut)
    missing, _ = least_by_trying(pieces, stock, cut)
    assert round(plan.missing_length * 10) == missing
    cuttable = [each for bar in plan.bars for each in bar.pieces]
    assert (0, len(plan.bars)) == least_by_trying(cuttable, stock, cut)
    assert (plan.could_save, plan.could_find) == (0, 0)


@given(some_pieces, some_stock, some_cuts, st.integers(100, 500).map(lambda each: each / 10))
def test_nothing_shorter_than_a_length_on_sale_is_missing(pieces, stock, cut, length):
    stock = [*stock, Bar("on sale", length, None)]
    plan = cutting_plan(pieces, stock, cut)
    check_legal(plan, pieces, stock, cut)
    assert all(each.length > length for each in plan.missing)
    assert round(plan.missing_length * 10) == least_by_trying(pieces, stock, cut)[0]


@given(st.lists(st.integers(200, 4500).map(lambda each: each / 2), max_size=40), st.permutations(range(3)))
def test_the_same_pieces_give_the_same_plan(lengths, order):
    stock = [Bar("a", 5000, 2), Bar("b", 2500, 2), Bar("on sale", 4500, None)]
    pieces = [Piece(f"W{index}", each) for index, each in enumerate(lengths)]
    plan = cutting_plan(pieces, stock, 3)
    check_legal(plan, pieces, stock, 3)
    again = cutting_plan(pieces[::-1], [stock[each] for each in order], 3)
    assert again == plan


PUBLISHED = (
    # Falkenauer, J. Heuristics 2:5-30 (1996), u120_08: longest piece first takes 51
    (
        "u120_08",
        150,
        50,
        (
            "100x3 98x3 97x3 96 95x2 94x2 92x2 91x4 89x3 88x2 87 86 85x3 84 82x2 81x2 80 79x2 77 76 75x2 74 73 72 71 "
            "70x2 69x3 67x3 65x2 64x2 63 62 61 60x2 59 58x4 57x4 54x2 53 52x3 51x2 49x3 48 47 46 45x3 44 43 42 40x2 "
            "39x2 38 37x2 36 35 34x2 33x2 32 30 29x3 27 26x2 25 23x2 22 21 20x2"
        ),
    ),
    # the same, t60_00, ten times the published sizes: each bar is three pieces without a rest
    (
        "t60_00",
        1000,
        20,
        (
            "495 474 473 472 466 450 445 444 439 430 419 414 410 395 372 370 366x3 363 361 357 355 351 350x2 347 320 "
            "315 307 303 299 298x2 292 288 287 283 275x2 274 273x2 272x2 271 269x2 268 263 262 261 259 258 255 254 "
            "252x3 251"
        ),
    ),
    # Scholl, Klein, Juergens, C&OR 24:627-645 (1997), N1C1W1_A
    (
        "N1C1W1_A",
        100,
        25,
        (
            "99x2 96x2 92x2 91 88 87 86 85 76 74 72 69 67x2 62 61 56 52 51 49 46 44 42 40x2 33x2 30x2 29 28x2 27 25 24 "
            "23 22 21 20 17 14 13 11 10 7x2 3"
        ),
    ),
    # Schwerin, Waescher, ITOR 4:377-389 (1997), BPP1
    (
        "BPP1",
        1000,
        18,
        (
            "200x3 199 198x2 197x2 194x2 193 192 191x3 190x2 189 188x2 187x2 186 185x4 184x3 183x3 182x3 181x2 180 "
            "179x4 178 177x4 175 174 173x2 172 171x3 170x2 169x3 167x2 165x2 164 163x4 162 161 160x2 159 158x3 157 "
            "156x6 155x3 154x2 153 152x3 151x2 150x4"
        ),
    ),
)
"""Name, length of the bars, published optimum, sizes with how many; optima as in the bounds table of BPPLIB (2018)."""


@pytest.mark.parametrize(("name", "length", "optimum", "sizes"), PUBLISHED, ids=[each[0] for each in PUBLISHED])
def test_published_optima_are_met_and_proven(name, length, optimum, sizes):
    pairs = [[int(each) for each in (*size.split("x"), "1")[:2]] for size in sizes.split()]
    pieces = [Piece(f"{name} {size}", size) for size, count in pairs for _ in range(count)]
    stock = [Bar("bar", length, None)]
    plan = cutting_plan(pieces, stock)
    check_legal(plan, pieces, stock, 0)
    assert (len(plan.bars), plan.least) == (optimum, optimum)


@pytest.mark.parametrize(
    ("lengths", "bar", "cut", "bars", "left"),
    [
        ([500, 500], 1000, 0, 1, 0),  # no loss: an exact fit
        ([500, 500], 1000, 0.1, 2, 499.9),  # a tenth too little
        ([500, 499.9], 1000, 0.1, 1, 0),  # the cut between them is the rest
        ([500, 497], 1000, 3, 1, 0),  # the last piece ends where the bar does: one cut for two pieces
        ([500, 497.1], 1000, 3, 2, 497),  # a tenth too long
        ([500, 494], 1000, 3, 1, 0),  # two cuts, nothing left
        ([500, 495.5], 1000, 3, 1, 0),  # a rest thinner than the blade is lost with the cut
        ([500, 493.9], 1000, 3, 1, 0.1),
        ([1000], 1000, 3, 1, 0),  # nothing to cut
        ([0.1] * 10, 1, 0, 1, 0),  # tenths that are no whole number of binary parts
        ([0.1] * 10, 1.9, 0.1, 1, 0),
    ],
)
def test_cuts_are_counted_to_the_tenth(lengths, bar, cut, bars, left):
    plan = cutting_plan([Piece("W", each) for each in lengths], [Bar("bar", bar, 2)], cut)
    assert (len(plan.bars), plan.missing) == (bars, ())
    assert plan.bars[0].left == pytest.approx(left)


def test_two_ends_make_no_long_piece():
    plan = cutting_plan([Piece("W07", 3000)], [Bar("end", 2000, 2)], 3)
    assert (plan.bars, [each.name for each in plan.missing], plan.missing_length) == ((), ["W07"], 3000)
    assert plan.could_find == 0


def test_the_fewest_are_taken_before_the_shortest_and_offcuts_before_a_full_reel():
    stock = [Bar("reel", 100_000, None), Bar("offcut", 1500, 1), Bar("end", 700, 2)]
    plan = cutting_plan([Piece("W1", 600), Piece("W2", 650)], stock, 3)
    assert [bar.name for bar in plan.bars] == ["offcut"]


def test_nothing_to_cut_and_nothing_to_cut_from():
    assert cutting_plan([], [Bar("reel", 1000)], 3).bars == ()
    plan = cutting_plan([Piece("W1", 10)], [], 3)
    assert (plan.bars, plan.missing, plan.could_find) == ((), (Piece("W1", 10),), 0)


@pytest.mark.parametrize(
    ("pieces", "stock", "cut"),
    [([Piece("W", 0)], [], 0), ([], [Bar("b", -1)], 0), ([], [], -0.1)],
)
def test_lengths_that_are_none_are_refused(pieces, stock, cut):
    with pytest.raises(ValueError, match="expected lengths"):
        cutting_plan(pieces, stock, cut)
