"""Ways at any angle: held against Dubins' shortest ways, sampled among boxes, and against a slow lattice."""

import math
import random
from collections import deque
from itertools import pairwise

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from routing.laid import sampled

from boardplan.geometry.bends import tangent_length, turns
from boardplan.geometry.dubins import Pose, shortest_between
from boardplan.geometry.point import Box, Point, bearing
from boardplan.routing.route import Route
from boardplan.routing.slanting.free_way import free_way, way_length
from boardplan.routing.square.blockers import Blocker
from boardplan.routing.square.ends import End
from boardplan.routing.square.open_lines import OpenLines

HALF, CLEARANCE = 8, 5
OFF = HALF + CLEARANCE
SHEET = Box(0, 0, 1000, 700)


def end(x, y, heading, straight=0.0, owner=""):
    return End(Point(x, y), heading, straight, owner, "end")


def body(name, *box):
    return Blocker("body", name, Box(*box), CLEARANCE)


def edges():
    far = 5000
    boxes = (
        Box(-far, -far, SHEET.left, far),
        Box(SHEET.right, -far, far, far),
        Box(SHEET.left, -far, SHEET.right, SHEET.bottom),
        Box(SHEET.left, SHEET.top, SHEET.right, far),
    )
    return [Blocker("edge", "", box, 0.0) for box in boxes]


def lines_of(*bodies):
    return OpenLines([*edges(), *bodies], HALF)


BARE = OpenLines([], HALF)
places = st.floats(-400, 400).map(lambda value: round(value, 2))


ANY_END = st.builds(end, places, places, st.floats(0, 359))


@settings(max_examples=40, deadline=None)
@given(ANY_END, ANY_END, st.floats(10, 80))
def test_with_nothing_in_the_way_it_is_the_shortest_there_is(a, b, radius):
    if a.point == b.point:
        return
    points = free_way((a, b), BARE, radius)
    best = shortest_between(Pose(a.point, a.heading), Pose(b.point, b.heading + 180), radius)
    assert points is not None
    assert way_length(points, radius) == pytest.approx(best.length, abs=1e-5)


def test_an_s_bend_by_hand():
    """The cross tangent of two circles: sqrt(D^2 - 4 R^2) + 2 R phi, D = hypot(200, 40), phi as in Dubins (1957)."""
    far = math.hypot(200, 40)
    phi = math.atan2(-40, 200) + math.asin(100 / far)
    points = free_way((end(0, 0, 0), end(200, 60, 180)), BARE, 50)
    assert way_length(points, 50) == pytest.approx(math.sqrt(far**2 - 100**2) + 100 * phi, abs=1e-6)
    assert len(points) == 4


def test_straights_of_lugs_are_held():
    points = free_way((end(100, 100, 0, 40), end(500, 300, 180, 40)), lines_of(), 50)
    first, last = tangent_length(50, turns(points)[0]), tangent_length(50, turns(points)[-1])
    assert points[0].distance_to(points[1]) >= 40 + first - 1e-6
    assert points[-1].distance_to(points[-2]) >= 40 + last - 1e-6


def random_bodies(seed, count=9):
    chance = random.Random(seed)
    for number in range(count):
        x, y = chance.uniform(120, 800), chance.uniform(100, 520)
        yield body(f"U{number}", x, y, x + chance.uniform(40, 160), y + chance.uniform(40, 160))


def check(points, ends, bodies, radius):
    """Hold a way against all its rules, sampled and measured with shapely."""
    assert points[0] == ends[0].point
    assert points[-1] == ends[1].point
    for at, a, b in ((ends[0], *points[:2]), (ends[1], points[-1], points[-2])):
        assert abs((bearing(a, b) - at.heading + 180) % 360 - 180) < 1e-5
    held = [ends[0].straight, *(tangent_length(radius, turn) for turn in turns(points)), ends[1].straight]
    for index, (a, b) in enumerate(pairwise(points)):
        assert a.distance_to(b) >= held[index] + held[index + 1] - 1e-5
    line = shapely.LineString([point for run in sampled(Route("W", points, radius)) for point in run])
    for each in bodies:
        assert shapely.box(*each.box).distance(line) >= OFF - 0.02
    assert shapely.box(*SHEET).buffer(-HALF + 0.02, join_style="mitre").covers(line)


@pytest.mark.parametrize("radius", [30, 64])
@pytest.mark.parametrize("seed", range(8))
def test_found_wherever_a_lattice_finds_one_and_clear_of_all(seed, radius):
    ends = end(50, 50, 90, 25), end(950, 650, 270, 25)
    bodies = list(random_bodies(seed))
    points = free_way(ends, lines_of(*bodies), radius)
    if points is None:
        assert not lattice_finds(ends, bodies, radius)
    else:
        check(points, ends, bodies, radius)


def lattice_finds(ends, bodies, radius):
    """Say whether going on in quarter and eighth turns from cell to cell leads from end to end, slow and simple."""
    step = 25
    blocked = shapely.union_all([shapely.box(*each.box.grown(OFF)) for each in bodies])
    free = shapely.box(*SHEET).buffer(-HALF, join_style="mitre").difference(blocked)
    shapely.prepare(free)
    start = ends[0].point.ahead(ends[0].heading, ends[0].straight)
    goal = ends[1].point.ahead(ends[1].heading, ends[1].straight)
    arrival = round((ends[1].heading + 180) % 360)
    first = (round(start.x), round(start.y), round(ends[0].heading))
    seen, queue = {first}, deque([first])
    while queue:
        x, y, heading = queue.popleft()
        if heading == arrival and math.hypot(x - goal.x, y - goal.y) < 1e-6:
            return True
        for turn in (0, 90, -90):
            cells = math.ceil(radius / step) * step if turn else step
            corner = Point(x, y).ahead(heading, cells)
            after = corner.ahead(heading + turn, cells if turn else 0)
            new = (round(after.x), round(after.y), (heading + turn) % 360)
            run = [point for each in sampled(Route("W", (Point(x, y), corner, after), radius)) for point in each]
            if new not in seen and free.covers(shapely.LineString(run if turn else [(x, y), after])):
                seen.add(new)
                queue.append(new)
    return False


def test_the_lattice_says_no_where_a_wall_stands():
    ends = end(50, 50, 90, 25), end(950, 650, 270, 25)
    assert lattice_finds(ends, [], 30)
    assert not lattice_finds(ends, [body("U1", 400, 0, 500, 700)], 30)
    assert free_way(ends, lines_of(body("U1", 400, 0, 500, 700)), 30) is None


@pytest.mark.parametrize(("gap", "open_"), [(2 * OFF + 0.1, True), (2 * OFF - 0.1, False)])
def test_a_gap_is_passed_when_it_is_just_wide_enough(gap, open_):
    wall = body("U1", 450, 0, 500, 300), body("U2", 450, 300 + gap, 500, 700)
    points = free_way((end(50, 100, 0), end(950, 500, 180)), lines_of(*wall), 40)
    assert (points is not None) == open_
    if points:
        check(points, (end(50, 100, 0), end(950, 500, 180)), wall, 40)


def test_no_way_out_of_an_end_that_looks_into_a_wall():
    wall = body("U1", 60, 0, 100, 300)
    assert free_way((end(20, 100, 0, 40), end(900, 100, 180)), lines_of(wall), 30) is None


def test_its_own_body_does_not_hold_a_cable():
    own = body("U1", 100, 100, 200, 200)
    ends = end(150, 190, 90, 40, "U1"), end(700, 190, 90, 40)
    assert free_way(ends, lines_of(own), 40) is not None


@settings(max_examples=20, deadline=None)
@given(st.integers(0, 10_000), st.integers(0, 359), st.integers(0, 359))
def test_ends_at_any_angle(seed, first, second):
    ends = end(100, 350, first, 10), end(900, 350, second, 10)
    bodies = [each for each in random_bodies(seed, 3) if all(not each.box.grown(90).holds(at.point) for at in ends)]
    points = free_way(ends, lines_of(*bodies), 40)
    if points is not None:
        check(points, ends, bodies, 40)


def test_an_end_without_a_direction_goes_straight_to_the_other():
    points = free_way((end(100, 100, None), end(500, 300, None)), lines_of(), 40)
    assert points == (Point(100, 100), Point(500, 300))
