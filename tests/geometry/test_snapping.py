import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import boxes

from boardplan.geometry.point import Box, Point
from boardplan.geometry.snapping import Snap, SnapBox, SnapLine, snap_box, snap_point

PB1 = SnapBox(Box(100, 0, 200, 50), "PB1")
NB1 = SnapBox(Box(240, 0, 300, 50), "NB1")
POST = SnapLine("x", 630, "post-A2", "centre")
MARGIN = SnapLine("y", 20, "the bottom margin", "low")


@pytest.mark.parametrize(
    ("moving", "boxes", "lines", "shift", "words"),
    [
        (Box(103, 202, 143, 232), [PB1], [], (-3, 0), "left edges in line with PB1"),
        (Box(157, 202, 197, 232), [PB1], [], (3, 0), "right edges in line with PB1"),
        (Box(128, 202, 168, 232), [PB1], [], (2, 0), "centres in line with PB1"),
        (Box(203, 202, 253, 232), [PB1], [], (-3, 0), "left edge at the right edge of PB1"),
        (Box(402, 3, 442, 23), [PB1], [], (0, -3), "bottom edges in line with PB1"),
        (Box(402, 48, 442, 98), [PB1], [], (0, 2), "bottom edge at the top edge of PB1"),
        (Box(402, 18, 442, 48), [PB1], [], (0, 2), "top edges in line with PB1"),
        (Box(342, 12, 382, 31), [PB1, NB1], [], (-2, 3.5), "gap 40 as between PB1 and NB1, centres in line with PB1"),
        (Box(18, 12, 58, 31), [PB1, NB1], [], (2, 3.5), "gap 40 as between PB1 and NB1"),
        (Box(208, 12, 228, 31), [PB1, NB1], [], (2, 3.5), "gap 10 to PB1 and to NB1"),
        (Box(612, 300, 652, 330), [], [POST], (-2, 0), "centre of post-A2"),
        (Box(402, 17, 442, 60), [], [MARGIN], (0, 3), "bottom edge at the bottom margin"),
        (Box(612, 17, 652, 60), [], [POST, MARGIN], (-2, 3), "centre of post-A2, bottom edge at the bottom margin"),
        (Box(402, 302, 442, 332), [PB1, NB1], [POST, MARGIN], (0, 0), ""),
    ],
)
def test_what_catches_and_why(moving, boxes, lines, shift, words):
    snap = snap_box(moving, boxes, lines, reach=4)
    assert snap.shift == pytest.approx(shift)
    assert words in snap.words
    assert bool(snap.guides) == bool(words)


def test_an_edge_at_hand_wins_over_a_centre_as_near():
    snap = snap_box(Box(98, 300, 198, 340), [SnapBox(Box(100, 0, 200, 50), "PB1")], reach=4)
    assert snap.words.startswith("left edges in line with PB1, right edges in line with PB1, centres in line with PB1")


def test_the_nearest_wins_over_the_better_reason():
    boxes = [SnapBox(Box(0, 0, 40, 10), "A"), SnapBox(Box(13, 0, 37, 10), "B")]
    snap = snap_box(Box(3, 300, 53, 340), boxes, reach=4)
    assert snap.shift.x == -3
    assert snap.words == "left edges in line with A, centres in line with B"


def test_out_of_reach_the_grid_counts():
    assert snap_box(Box(3.4, 8.6, 43.4, 28.6), [PB1], reach=0.1, grid=1).shift == pytest.approx((-0.4, 0.4))
    assert snap_box(Box(3.4, 8.6, 43.4, 28.6), [PB1], reach=0.1) == Snap(Point(0, 0))


def test_both_axes_are_looked_at_by_themselves():
    snap = snap_box(Box(102, 200.3, 142, 230.3), [PB1], reach=4, grid=1)
    assert snap.shift == pytest.approx((-2, -0.3))


def test_a_gap_counts_only_in_the_same_row():
    snap = snap_box(Box(342, 100, 382, 131), [PB1, NB1], reach=3)
    assert "gap" not in snap.words


def test_guides_reach_from_one_to_the_other():
    snap = snap_box(Box(102, 200, 142, 230), [PB1], reach=3)
    (guide, *_) = snap.guides
    assert (guide.start, guide.end) == ((100, 0), (100, 230))
    level = snap_box(Box(402, 2, 442, 33), [PB1], reach=3).guides[0]
    assert (level.start, level.end) == ((100, 0), (442, 0))


def test_a_gap_is_shown_in_both_places():
    snap = snap_box(Box(342, 10, 382, 40), [PB1, NB1], reach=3)
    gaps = [(guide.start.x, guide.end.x) for guide in snap.guides if "gap" in guide.words]
    assert gaps == [(200, 240), (300, 340)]


def test_a_point_catches_too():
    assert snap_point(Point(101, 27), [PB1], [MARGIN], reach=3).shift == (-1, -2)


@given(boxes(), st.lists(boxes().map(lambda box: SnapBox(box, "B")), max_size=5), st.floats(0, 30))
def test_a_snap_is_within_reach_and_a_second_one_stays(moving, others, reach):
    snap = snap_box(moving, others, reach=reach)
    assert abs(snap.shift.x) <= reach + 1e-9
    assert abs(snap.shift.y) <= reach + 1e-9
    again = snap_box(moving.moved(*snap.shift), others, reach=reach)
    assert again.shift.x == pytest.approx(0, abs=1e-6) or not snap.guides
    words, words_again = ({guide.words for guide in each.guides} for each in (snap, again))
    assert words <= words_again or len(again.guides) >= 3


@given(boxes(), st.lists(boxes(), max_size=4), st.floats(1, 30))
def test_the_same_happens_about_the_diagonal(moving, others, reach):
    def flipped(box):
        return Box(box.bottom, box.left, box.top, box.right)

    upright = snap_box(moving, [SnapBox(box, "B") for box in others], reach=reach)
    level = snap_box(flipped(moving), [SnapBox(flipped(box), "B") for box in others], reach=reach)
    assert upright.shift == (level.shift.y, level.shift.x)
