"""Thin cables over low bodies and covered channels: only there, only so, only where there is no other way."""

import random
from dataclasses import replace
from itertools import pairwise

import pytest
from checks.plans import UNIT, cable, channel, named, plan_of, unit
from hypothesis import given, settings
from hypothesis import strategies as st
from routing.profile import length_in_space, profile_points
from way_sampler import violations

from boardplan.checks.review import review_of
from boardplan.files.rule_set_file import find_rule_set
from boardplan.geometry.point import Box, Point
from boardplan.model.board import Board, NoGoBox
from boardplan.model.channel import Channel
from boardplan.model.component_kind import Cooling, KeepClear, MountingHole, Terminal
from boardplan.routing.find_route import find_routes, refreshed_routes
from boardplan.routing.lengths.cut_length import cut_lengths
from boardplan.routing.lengths.heights import height_profile
from boardplan.routing.lengths.passed import passables
from boardplan.routing.route import NoWay, Route

PLAIN = replace(UNIT, id="plain", outline=Box(0, 0, 120, 60).corners(), depth=30, terminals=(), holes=())
SCREWS = tuple(Terminal(f"{x}", Point(x, 50), 20, "clamp", "", 90.0) for x in (40, 90))
STRIP = replace(PLAIN, id="strip", terminals=SCREWS)
KINDS = {
    "plain": PLAIN,
    "strip": STRIP,
    "opened": replace(PLAIN, id="opened", keep_clear=(KeepClear("front", 80, "fuse pull"),)),
    "warm": replace(PLAIN, id="warm", heat=15.0),
    "blows": replace(PLAIN, id="blows", cooling=Cooling(exhaust=("top",))),
    "studded": replace(PLAIN, id="studded", terminals=(Terminal("S", Point(20, 30), 20, "stud", "M8", 0.0),)),
    "high": replace(PLAIN, id="high", depth=55),
    "too high": replace(PLAIN, id="too high", depth=56),
}
LANE = Board("A", "Narrow", Box(0, 0, 120, 800).corners())


def barred(*things, conductor="6", board=LANE, **fields):
    """A lane as wide as what is laid across it, a cable straight up from U1.T to U2.B; 6 mm² is 5 mm thick."""
    fields.setdefault("way", "outside")
    joined = cable("W1", ("U1", "T"), ("U2", "B"), conductor=conductor, **fields)
    return plan_of(unit("U1", 10, 50), unit("U2", 10, 650), *things, joined, kinds=(UNIT, *KINDS.values()), board=board)


def over(kind):
    return barred(unit("P1", 0, 350, kind=kind))


def covered(**fields):
    return barred(channel("RW1", (0, 380), (120, 380), **fields))


def way_of(plan):
    return find_routes(plan)["W1"]


def test_a_thin_cable_passes_over_a_plain_low_body_and_says_so():
    way = way_of(over("plain"))
    assert way.over == ("P1",)
    assert way.why == "outside, over P1, as it finds no other way"
    assert violations(over("plain"), over("plain").cables["W1"], way) == []


def test_a_thin_cable_passes_over_a_channel_with_its_cover_on():
    assert way_of(covered()).over == ("RW1",)
    assert violations(covered(), covered().cables["W1"], way_of(covered())) == []


@pytest.mark.parametrize("kind", ["opened", "warm", "blows", "studded", "too high"])
def test_over_anything_else_there_is_no_way(kind):
    assert isinstance(way_of(over(kind)), NoWay)


def test_a_channel_without_its_cover_bars_the_way():
    assert isinstance(way_of(covered(cover=False)), NoWay)


def test_low_is_what_leaves_a_cable_below_what_all_cables_may_ignore():
    """55 mm high and 5 mm of cable reach to 60 mm, where no-go boxes begin that cables needn't go round."""
    assert way_of(over("high")).over == ("P1",)


@pytest.mark.parametrize(("diameter", "passes"), [(7.9, True), (8.0, False)])
def test_only_a_thin_cable_passes_over(diameter, passes):
    plan = over("plain")
    wire = replace(plan.conductors["6"], outside_diameter=diameter)
    plan = replace(plan, conductors={**plan.conductors, "6": wire})
    assert isinstance(way_of(plan), Route) is passes


def test_an_edition_without_heights_lets_no_cable_over_anything():
    earlier = find_rule_set("trade-practice", "2026.1")
    assert isinstance(way_of(replace(over("plain"), rules=earlier)), NoWay)
    assert isinstance(way_of(replace(covered(), rules=earlier)), NoWay)


@pytest.mark.parametrize(("from_z", "passes"), [(64.9, False), (65.0, True)])
def test_no_cable_lies_on_a_channel_into_what_hangs_over_it(from_z, passes):
    """The channel is 60 mm high, the cable 5 mm thick."""
    plan = covered().with_things([NoGoBox("N1", "A", "drawer", 0, 360, 30, 40, from_z=from_z)])
    assert isinstance(way_of(plan), Route) is passes


def test_however_long_the_way_round_a_cable_takes_it():
    wide = Board("A", "Wide", Box(-900, 0, 120, 800).corners())
    things = unit("P1", 0, 350, kind="plain"), *(unit(f"P{n}", -110 * n + 100, 350, kind="plain") for n in range(2, 9))
    way = way_of(barred(*things, board=wide))
    assert way.over == ()
    assert min(x for x, _ in way.points) < -700


def beside(y=400):
    """Two cables that cross one channel on the same upright line where nothing moves one of them aside."""
    board = Board("A", "Barred", Box(0, 0, 600, 800).corners())
    units = unit("U1", 50, 50), unit("U2", 50, 200), unit("U3", 350, 650), unit("U4", 350, 500)
    pairs = (("W1", "U1", "U3"), ("W2", "U2", "U4"))
    cables = (cable(name, (a, "R"), (b, "L"), conductor="6", way="outside") for name, a, b in pairs)
    return plan_of(*units, channel("RW1", (0, y), (600, y)), *cables, board=board)


def test_cables_that_cross_a_channel_are_laid_beside_each_other():
    plan, ways = beside(), find_routes(beside())
    crossing = sorted(way.points[1].x for way in ways.values())
    assert crossing[1] - crossing[0] >= plan.conductors["6"].outside_diameter
    assert [way.over for way in ways.values()] == [("RW1",), ("RW1",)]
    assert all(violations(plan, plan.cables[name], way) == [] for name, way in ways.items())


@pytest.mark.parametrize("after", [beside(410), beside(430), replace(beside(), channels={})])
def test_after_a_change_they_lie_as_after_a_fresh_look(after):
    assert refreshed_routes(beside(), find_routes(beside()), after) == find_routes(after)


def test_the_units_it_ends_on_are_not_passed_over():
    plain_ends = replace(UNIT, terminals=tuple(replace(each, sort="clamp") for each in UNIT.terminals))
    joined = cable("W1", ("U1", "B"), ("U2", "B"), conductor="6", way="outside")
    board = Board("A", "Narrow", Box(0, 0, 110, 800).corners())
    plan = plan_of(unit("U1", 5, 200), unit("U2", 5, 600), joined, kinds=(plain_ends,), board=board)
    assert isinstance(way_of(plan), NoWay)


def test_over_a_terminal_strip_it_keeps_off_the_terminals():
    plan = barred(unit("P1", 0, 350, kind="strip"))
    way = way_of(plan)
    assert way.over == ("P1",)
    crossing = [a.x for a, b in pairwise(way.points) if min(a.y, b.y) < 350 < max(a.y, b.y)]
    # terminals from 40 to 90, half of 5 and 3 mm to each side: common practice, no source
    assert all(5.5 <= x <= 34.5 or 95.5 <= x <= 114.5 for x in crossing)
    assert violations(plan, plan.cables["W1"], way) == []


def screwed(at):
    """Return a plan with a body that one screw holds, its head 8 mm wide."""
    held = replace(PLAIN, id="plain", fastener="screw", holes=(MountingHole(Point(at, 30)),))
    plan = over("plain")
    return replace(plan, kinds={**plan.kinds, "plain": held})


def test_over_a_body_it_keeps_off_the_heads_of_its_screws():
    """Straight up at 60 a cable would lie on a head of 8 mm at 58: it goes round it by 4 and 3 mm and half of 5."""
    way = way_of(screwed(58))
    (x,) = [a.x for a, b in pairwise(way.points) if min(a.y, b.y) < 350 < max(a.y, b.y)]
    assert way.over == ("P1",)
    assert abs(x - 58) >= 4 + 3 + 2.5
    assert len(way_of(screwed(60 - 4 - 3 - 2.5)).points) == 2
    assert len(way_of(screwed(60 - 4 - 3 - 2.4)).points) > 2


def test_a_pinned_cable_lies_as_pinned():
    plan = over("plain")
    pinned = plan.with_things([replace(plan.cables["W1"], pins=(Point(60, 300), Point(60, 500)))])
    assert (way_of(pinned).source, way_of(pinned).over) == ("pinned", ())


def test_the_check_lets_it_pass_and_misses_no_way():
    names = {each.name for each in review_of(over("plain")).findings}
    assert not names & {"cable-over-component", "cable-without-way"}


def test_over_a_unit_that_the_check_complains_of_no_way_is_found():
    """The same unit under a pinned cable: the check and the search go by one rule."""
    for kind in ("opened", "warm", "blows"):
        plan = over(kind)
        pinned = plan.with_things([replace(plan.cables["W1"], pins=(Point(60, 300), Point(60, 500)))])
        assert len(named(pinned, "cable-over-component")) == 1
        assert isinstance(way_of(plan), NoWay)


def test_the_climb_counts_in_its_cut_length():
    """A body 20 mm over the lug's unit: by hand, and as a curve stepped in space with none of the formulas used.

    The stud is 20 high and leaves its unit after 10; the body is 30 high, half of 5 more, from 30 to 90 along; from
    there 125 to the first clamp; the same to the other unit. 12.5 up over 20 counts, the slopes over 125 are gentle.
    """
    plan = barred(unit("P1", 0, 170, kind="plain"))
    way = way_of(plan)
    levels = [(0, 10, 20), (30, 90, 32.5), (215, 385, 2.5), (510, 520, 20)]
    stepped = length_in_space(way.pieces, profile_points(levels, way.radius, [True, False, False]))
    length = cut_lengths(plan, {"W1": way})["W1"]
    assert length.path == pytest.approx(stepped, abs=0.05)
    assert length.path > 523
    assert [words for words, _ in length.rises] == ["up 12.5 from U1.T to the top of P1, 20 along"]


def test_over_a_channel_that_it_may_choose_it_lies_on_the_cover_not_in_the_slots():
    """Solar cables stay out of channels: 60 mm of channel, half of 5 more."""
    plan = barred(channel("RW1", (0, 380), (120, 380)), way="choose", cable_class="pv")
    way = way_of(plan)
    assert way.over == ("RW1",)
    levels = height_profile(plan, plan.cables["W1"], way, passables(plan))
    assert max(each.height for each in levels) == 62.5


SIZES = (60.0, 90.0, 120.0)


def walled(seed):
    """Return a board cut by a channel or by a row of bodies, units on both sides, cables across."""
    chance = random.Random(f"walled {seed}")
    things, x = [], 0.0
    kinds = {
        f"{name} {size:g}": replace(KINDS[name], id=f"{name} {size:g}", outline=Box(0, 0, size, 60).corners())
        for name in ("plain", "opened", "studded")
        for size in SIZES
    }
    if chance.random() < 0.4:
        end = (chance.choice((250, 500)), 380)
        line = ((0, 380), end) if end[0] == 500 else ((0, 380), end, (end[0], 800))
        things.append(channel("RW1", *line, size=chance.choice((25.0, 40.0))))
    while x < 500 and not isinstance(things[0] if things else None, Channel):
        size = chance.choice(SIZES)
        name = chance.choice(("plain", "plain", "opened", "studded", "strip"))
        things.append(unit(f"P{len(things)}", x, 350, kind=name if name == "strip" else f"{name} {size:g}"))
        x += (120 if name == "strip" else size) + chance.choice((0, 4, 8))
    units = [unit(f"U{n}", 40 + 160 * (n % 3) + chance.randint(-20, 20), y, turn=chance.choice((0, 90, 180, 270)))
             for y, some in ((180, (0, 1, 2)), (520, (3, 4, 5))) for n in some]  # fmt: skip
    ends = [(f"U{low}", f"U{3 + high}") for low, high in zip(range(3), chance.sample(range(3), 3), strict=True)]
    cables = [
        cable(f"W{n}", (low, chance.choice("TBRL")), (high, chance.choice("TBRL")),
              conductor=chance.choice(("2.5", "6", "16")), way=chance.choice(("outside", "choose")),
              cable_class=chance.choice(("dc", "dc", "pv")))
        for n, (low, high) in enumerate(ends)
    ]  # fmt: skip
    board = Board("A", "Walled", Box(0, 0, 500, 800).corners())
    return plan_of(*things, *units, *cables, kinds=(UNIT, STRIP, *kinds.values()), board=board)


WALLED = range(60)


@pytest.mark.parametrize("seed", WALLED)
def test_no_way_over_anything_breaks_a_rule(seed):
    plan = walled(seed)
    for name, way in find_routes(plan).items():
        if isinstance(way, Route):
            assert violations(plan, plan.cables[name], way) == []


def test_many_of_the_walled_boards_have_a_way_over_bodies_and_over_channels():
    found = [way.over for seed in WALLED for way in find_routes(walled(seed)).values() if isinstance(way, Route)]
    assert sum(bool(each) and each[0] != "RW1" for each in found) > 10
    assert sum(bool(each) and each[0] == "RW1" for each in found) > 10
    assert sum(not each for each in found) > 10


START, END = Point(60, 140), Point(60, 660)
BETWEEN = {
    "straight": ((), set()),
    "half on its side": ((Point(60, 250), Point(5.4, 250), Point(5.4, 500), Point(60, 500)), {"body"}),
    "askew": ((Point(60, 250), Point(70, 500)), {"body"}),
    "in a bend": ((Point(60, 380), Point(20, 380), Point(20, 500), Point(60, 500)), {"body"}),
}


@pytest.mark.parametrize(("between", "wrong"), BETWEEN.values(), ids=BETWEEN)
def test_the_sampler_sees_what_is_wrong_with_a_way_over_a_body(between, wrong):
    plan = over("plain")
    way = Route("W1", (START, *between, END), 15, over=("P1",))
    found = {each.partition(":")[0] for each in violations(plan, plan.cables["W1"], way)}
    assert found - {"end", "kink"} == wrong
    if not between:
        assert violations(plan, plan.cables["W1"], replace(way, over=()))


@pytest.mark.parametrize("kind", ["opened", "warm", "studded", "too high"])
def test_the_sampler_sees_a_way_over_what_it_may_not_pass(kind):
    way = Route("W1", (Point(60, 140), Point(60, 660)), 20, over=("P1",))
    found = {each.partition(":")[0] for each in violations(over(kind), over(kind).cables["W1"], way)}
    assert found == {"over"}


def test_the_sampler_sees_a_way_along_a_channel():
    plan = barred(channel("RW1", (60, 200), (60, 600)))
    way = Route("W1", (Point(60, 140), Point(60, 660)), 20, over=("RW1",))
    assert {each.partition(":")[0] for each in violations(plan, plan.cables["W1"], way)} == {"channel"}


def cover_changed(_, plan):
    return plan.with_things([replace(each, cover=not each.cover) for each in plan.channels.values()])


def kind_changed(draw, plan):
    name = draw(st.sampled_from(sorted(plan.kinds)))
    changed = replace(plan.kinds[name], heat=draw(st.sampled_from((None, 20.0))), depth=draw(st.sampled_from((30, 80))))
    return replace(plan, kinds={**plan.kinds, name: changed})


def wall_moved(draw, plan):
    held = plan.components[draw(st.sampled_from(sorted(plan.components)))]
    by = st.integers(-12, 12)
    return plan.with_things([replace(held, position=held.position.moved(draw(by), draw(by)))])


def drawer_hung(draw, plan):
    return plan.with_things(
        [NoGoBox("N1", "A", "drawer", draw(st.integers(0, 400)), 300, 200, 200, draw(st.sampled_from((40, 62, 100))))]
    )


def cable_gone(draw, plan):
    return plan.without([draw(st.sampled_from(sorted(plan.cables)))]) if len(plan.cables) > 1 else plan


CHANGES = (cover_changed, kind_changed, wall_moved, drawer_hung, cable_gone)


@settings(max_examples=40)
@given(st.integers(0, 200), st.data())
def test_ways_after_changes_are_those_of_a_fresh_look(seed, data):
    plan = walled(seed)
    ways = find_routes(plan)
    for change in data.draw(st.lists(st.sampled_from(CHANGES), min_size=1, max_size=3)):
        after = change(data.draw, plan)
        refreshed = refreshed_routes(plan, ways, after)
        assert refreshed == find_routes(after)
        assert all(way is ways[name] for name, way in refreshed.items() if ways.get(name) == way)
        plan, ways = after, refreshed


@settings(max_examples=15)
@given(st.integers(0, 200), st.randoms(use_true_random=False))
def test_the_order_of_things_changes_nothing(seed, chance):
    plan = walled(seed)

    def mixed(things):
        names = list(things)
        chance.shuffle(names)
        return {name: things[name] for name in names}

    fields = ("components", "channels", "cables", "kinds")
    assert find_routes(replace(plan, **{each: mixed(getattr(plan, each)) for each in fields})) == find_routes(plan)
