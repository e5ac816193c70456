import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st
from strategies import square_lines

from boardplan.checks.review import review_of
from boardplan.editing.component_edits import move_components
from boardplan.editing.known import known_of
from boardplan.editing.stretched import drawn_along, stretched_line
from boardplan.editing.thing_edits import remove_things
from boardplan.editing.tools.hits import end_place
from boardplan.geometry.bends import turns, without_repeats
from boardplan.geometry.point import Point
from boardplan.model.cable import TerminalEnd
from boardplan.routing.route import Route

SHIFTS = st.builds(Point, st.integers(-60, 60), st.integers(-60, 60))
STILL = Point(0, 0)


@pytest.fixture
def known(bus_plan):
    return known_of(review_of(bus_plan))


def on(plan, cable, component):
    return any(isinstance(end, TerminalEnd) and end.component == component for end in plan.cables[cable].ends)


def test_cables_follow_what_is_moved_and_others_lie_still(known, bus_plan):
    moved = move_components(bus_plan, ["LP1"], Point(6, -4))
    now = drawn_along(known, moved)
    for name, way in known.ways.items():
        if not isinstance(way, Route):
            continue
        if on(bus_plan, name, "LP1"):
            assert name in now.stretched
            assert now.ways[name].points[0] == pytest.approx(end_place(moved, moved.cables[name].start))
            assert now.ways[name].points[-1] == pytest.approx(end_place(moved, moved.cables[name].end))
        else:
            assert now.ways[name] is way
            assert now.lengths[name] is known.lengths[name]


def test_a_stretched_length_still_adds_up_and_is_a_whole_step_off(known, bus_plan):
    now = drawn_along(known, move_components(bus_plan, ["LP1"], Point(30, -25)))
    assert now.stretched
    for name in now.stretched:
        was, length = known.lengths[name], now.lengths[name]
        by = length.cut - was.cut
        assert sum(value for _, value in length.parts) == pytest.approx(sum(value for _, value in was.parts) + by)
        assert by % was.step == pytest.approx(0) or by % was.step == pytest.approx(was.step)


def test_what_is_gone_is_known_no_more(known, bus_plan):
    now = drawn_along(known, remove_things(bus_plan, ["LP1"]))
    assert set(now.ways) == set(now.lengths) == set(now.plan.cables)


@given(square_lines(), SHIFTS, SHIFTS)
@example((Point(0.0, 0.0), Point(1.0, 0.0), Point(1.0, 1.0)), Point(0, 1), Point(1, 1))  # a leg that shrinks to nothing
def test_legs_stay_square_and_the_ends_go_where_they_are_asked(points, first, last):
    line = without_repeats(points)
    assume(len(line) > 1)
    result = stretched_line(line, first, last)
    assume(len(result) > 1)
    assert result[0] == pytest.approx(line[0].moved(*first))
    assert result[-1] == pytest.approx(line[-1].moved(*last))
    assert all(
        abs(turn) % 90 == pytest.approx(0, abs=1e-6) or abs(turn) % 90 == pytest.approx(90) for turn in turns(result)
    )


@given(square_lines(), SHIFTS)
def test_a_way_both_ends_of_which_go_alike_goes_whole(points, by):
    assert stretched_line(points, by, by) == tuple(each.moved(*by) for each in points)
