"""Every hole read back from the paper lies where the plan says, whatever the paper."""

import pytest
from output.expected_holes import BITS, LIBRARY_BUS, LOOKOUT_CABIN

from boardplan.model.holes import holes_of

PAPERS_TRIED = ("a4", "letter", "a3", "roll-914")
SAMPLES_TRIED = ("library bus", "lookout cabin", "honey trailer")
EXPECTED = {"library bus": LIBRARY_BUS, "lookout cabin": LOOKOUT_CABIN}
WITHIN = 0.02


def on_board(entry, x, y):
    left, bottom, _, _ = entry["rect"]
    at_x, at_y = entry["at"]
    return x - at_x + left, y - at_y + bottom


def holds(rect, x, y, by=0.0):
    left, bottom, right, top = rect
    return left + by <= x <= right - by and bottom + by <= y <= top - by


@pytest.mark.parametrize("sample", EXPECTED)
def test_holes_are_those_worked_out_by_hand(sample, packs):
    plan = packs(sample, "a4").plan
    found = {hole.id: (hole.board, *hole.position, hole.bit, hole.sort) for hole in holes_of(plan)}
    assert sorted(found) == sorted(row[0] for row in EXPECTED[sample])
    for name, board, x, y, bit, sort, *_ in EXPECTED[sample]:
        assert found[name] == (board, pytest.approx(x, abs=0.05), pytest.approx(y, abs=0.05), bit, sort), name
    bits = [hole.bit for hole in holes_of(plan)]
    assert {bit: bits.count(bit) for bit in bits} == BITS[sample]


@pytest.mark.parametrize("paper", PAPERS_TRIED)
@pytest.mark.parametrize("sample", SAMPLES_TRIED)
def test_every_hole_is_where_the_plan_says_and_nowhere_else(sample, paper, packs):
    pack = packs(sample, paper)
    bits = {hole.bit for hole in holes_of(pack.plan)}
    missing = {hole.id for hole in holes_of(pack.plan)}
    for entry, page in pack.template_pages():
        holes = [hole for hole in holes_of(pack.plan) if hole.board == entry["board"]]
        marks = [
            (*on_board(entry, circle.x, circle.y), circle.diameter)
            for circle in page.circles
            if any(abs(circle.diameter - bit) < WITHIN for bit in bits)
        ]
        marks = [mark for mark in marks if holds(entry["rect"], mark[0], mark[1])]
        for hole in holes:
            x, y = hole.position
            same = [
                mark
                for mark in marks
                if abs(mark[0] - x) < WITHIN and abs(mark[1] - y) < WITHIN and abs(mark[2] - hole.bit) < WITHIN
            ]
            if holds(entry["rect"], x, y, -0.001):
                assert len(same) == 1, (hole.id, entry["tile"])
                missing.discard(hole.id)
                marks.remove(same[0])
        assert marks == [], entry["tile"]
    assert missing == set()


@pytest.mark.parametrize("paper", PAPERS_TRIED)
@pytest.mark.parametrize("sample", SAMPLES_TRIED)
def test_a_hole_is_on_several_sheets_only_within_their_overlap(sample, paper, packs):
    for hole in holes_of(packs(sample, paper).plan):
        rects = [
            each["rect"]
            for each in packs(sample, paper).contents["template_pages"]
            if each["board"] == hole.board and holds(each["rect"], *hole.position)
        ]
        assert rects
        if len(rects) == 1:
            continue
        width = min(each[2] for each in rects) - max(each[0] for each in rects)
        height = min(each[3] for each in rects) - max(each[1] for each in rects)
        assert min(width, height) == pytest.approx(10)


@pytest.mark.parametrize("paper", PAPERS_TRIED)
@pytest.mark.parametrize("sample", SAMPLES_TRIED)
def test_every_hole_number_can_be_read_whole_beside_its_mark(sample, paper, packs):
    pack = packs(sample, paper)
    for hole in holes_of(pack.plan):
        found = []
        for entry, page in pack.template_pages():
            if entry["board"] != hole.board or not holds(entry["rect"], *hole.position):
                continue
            for text in page.texts:
                if text.words in (hole.id, f"{hole.id} SITE"):
                    corners = [on_board(entry, text.left, text.bottom), on_board(entry, text.right, text.top)]
                    found.append(all(holds(entry["rect"], *corner) for corner in corners))
        assert any(found), hole.id


@pytest.mark.parametrize("paper", ["a4", "roll-914"])
@pytest.mark.parametrize("sample", SAMPLES_TRIED)
def test_no_words_cover_a_hole(sample, paper, packs):
    pack = packs(sample, paper)
    for entry, page in pack.template_pages():
        for hole in holes_of(pack.plan):
            if hole.board != entry["board"] or not holds(entry["rect"], *hole.position, -hole.bit / 2):
                continue  # of a mark that the sheet's edge cuts, what is left must be clear too
            x = hole.position.x - entry["rect"][0] + entry["at"][0]
            y = hole.position.y - entry["rect"][1] + entry["at"][1]
            radius = hole.bit / 2
            low, high = entry["at"][1], entry["at"][1] + entry["rect"][3] - entry["rect"][1]
            for text in page.texts:
                if text.top < low or text.bottom > high:
                    continue  # in the margin, where nothing of the board is drawn
                near_x = min(max(x, text.left), text.right) - x
                near_y = min(max(y, text.bottom), text.top) - y
                assert (near_x**2 + near_y**2) ** 0.5 > radius, (entry["tile"], hole.id, text.words)


@pytest.mark.parametrize("sample", SAMPLES_TRIED)
def test_words_do_not_cover_each_other_on_one_sheet(sample, packs):
    for entry, page in packs(sample, "roll-914").template_pages():
        texts = [text for text in page.texts if text.words]
        for index, a in enumerate(texts):
            for b in texts[index + 1 :]:
                across = min(a.right, b.right) - max(a.left, b.left)
                up = min(a.top, b.top) - max(a.bottom, b.bottom)
                assert min(across, up) < 0.4, (entry["board"], a, b)
