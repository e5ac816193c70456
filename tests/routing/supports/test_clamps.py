"""Clamps: rows worked out by hand; and on samples and random boards, what plane geometry says of every one."""

import math
from dataclasses import replace
from itertools import combinations, pairwise

import pytest
from boards import SAMPLES, library_bus, lookout_cabin
from checks.plans import BOARD, cable, channel, fixing, plan_of, unit
from hypothesis import given, settings
from hypothesis import strategies as st
from routing.laid import bodies, channel_bodies
from shapely.geometry import LineString, Polygon, box
from shapely.geometry import Point as Spot

from boardplan.files.plan_file import load_plan
from boardplan.geometry.bends import Straight
from boardplan.geometry.point import Box, Point
from boardplan.model.board import Exit
from boardplan.routing.find_route import find_routes, refreshed_routes
from boardplan.routing.lengths.reels import clamp_needs
from boardplan.routing.route import InChannel, NoWay, Route
from boardplan.routing.supports.clamp import own_clamps
from boardplan.routing.supports.clamp_changes import refreshed_holding
from boardplan.routing.supports.clamp_spacing import Run, Spacing, spaced
from boardplan.routing.supports.clamps import clamps_of, holding_of

FIRST, PITCH, LEAST = 125, 175, 40  # common practice: 100 to 150 mm from the lug, then 150 to 200 on the board
HALF, FOOT, CLEAR = 10, 20, 5  # half a clamp along the cable, its foot beside the jacket, room to a body
JACKET = 3  # half of the 6 mm of the test cable, 10 mm²
RULE = Spacing(FIRST, PITCH, LEAST)
WIDE = replace(BOARD, outline=Box(0, 0, 2000, 800).corners())
UNITS = unit("U1", 100, 300), unit("U2", 980, 300)  # terminals R at (190, 350) and L at (990, 350)
W1 = cable("W1", ("U1", "R"), ("U2", "L"))
STRAIGHT = ((190, 350), (990, 350))  # 800 mm; the cable stands straight for 6 mm at a clamp terminal


def way(name, *points, **fields):
    return Route(name, tuple(Point(*each) for each in points), 24.0, **fields)


def wide_plan(*things, **fields):
    return plan_of(*UNITS, *things, board=WIDE, **fields)


def places(plan, *ways):
    found = clamps_of(plan, {each.cable: each for each in ways})
    return {name: [(round(each.at.x, 1), round(each.at.y, 1)) for each in clamps] for name, clamps in found.items()}


@pytest.mark.parametrize(
    ("run", "free", "there", "expected"),
    [
        (Run(0, 800), [(0, 800)], [], [125, 262.5, 400, 537.5, 675]),  # 550 between the firsts: four gaps of 137.5
        (Run(0, 775), [(0, 775)], [], [125, 300, 475, 650]),  # three times the pitch, to the millimetre
        (Run(0, 200), [(0, 200)], [], [100]),  # too short for two
        (Run(0, 125), [(0, 125)], [], []),  # both ends hold it
        (Run(0, 500, channel_before=True), [(0, 500)], [], [125, 250, 375]),  # 375 to the first: three gaps
        (Run(0, 350, channel_before=True, channel_after=True), [(0, 350)], [], [175]),
        (Run(0, 175, channel_before=True, channel_after=True), [(0, 175)], [], []),
        (Run(0, 800), [], [], []),
        (Run(0, 500), [(0, 500)], [130, 250, 370], []),  # those that are there do
        (Run(0, 600), [(0, 200), (450, 600)], [], [125, 200, 475]),  # close by on both sides of what is in the way
    ],
)
def test_spacing_along_a_cable(run, free, there, expected):
    assert spaced(run, free, there, RULE) == pytest.approx(expected)


def test_a_straight_run_of_800():
    # 6 + 125 from either end: 321 and 859; 538 between them asks for four gaps, of 134.5
    plan = wide_plan(W1)
    held = holding_of(plan, {"W1": way("W1", *STRAIGHT)}).held["W1"]
    assert [each.at for each in held.clamps] == [pytest.approx((x, 350)) for x in (321, 455.5, 590, 724.5, 859)]
    assert held.gap.length == pytest.approx(134.5)
    for each in held.clamps:
        assert (each.cables, each.diameters, each.board, each.towards) == (("W1",), (6.0,), "A", 0.0)
        assert each.screws == (pytest.approx((each.at.x, 365)),)  # 3 of jacket and 12 of foot, above the cable


def test_an_l_has_none_on_its_bend():
    # 410 right and 260 up to a stud with a lug of 28: the bend of radius 24 begins at x = 576 and ends at y = 374;
    # the last is 125 below the lug's mouth, at 610 - 28 - 125; of two between, one comes to x = 571.5, on the bend
    plan = wide_plan(unit("U3", 550, 600), cable("W1", ("U1", "R"), ("U3", "B")))
    found = places(plan, way("W1", (190, 350), (600, 350), (600, 610)))["W1"]
    assert found == [(321, 350), (446.2, 350), (566, 350), (600, 457)]


def test_two_alike_side_by_side_share_their_clamps():
    plan = wide_plan(W1, cable("W2", ("U1", "R"), ("U2", "L")))
    ways = {"W1": way("W1", *STRAIGHT), "W2": way("W2", (190, 362), (990, 362))}
    found = clamps_of(plan, ways)
    assert found["W1"] == found["W2"]
    assert [each.at for each in found["W1"]] == [pytest.approx((x, 356)) for x in (321, 455.5, 590, 724.5, 859)]
    assert {(each.cables, each.diameters, each.width) for each in found["W1"]} == {(("W1", "W2"), (6.0, 6.0), 18.0)}
    assert {len(each.screws) for each in found["W1"]} == {2}
    assert len(list(own_clamps(found))) == 5
    assert [(each.name, each.count) for each in clamp_needs(found)] == [("for 2 x 6 mm", 5)]


@pytest.mark.parametrize(
    ("apart", "fields"),
    [(17, {}), (12, {"cable_class": "ac"}), (12, {"conductor": "16"})],
    ids=["too far", "another class", "another size"],
)
def test_others_do_not_share(apart, fields):
    plan = wide_plan(W1, cable("W2", ("U1", "R"), ("U2", "L"), **fields))
    ways = {"W1": way("W1", *STRAIGHT), "W2": way("W2", (190, 350 + apart), (990, 350 + apart))}
    assert all(len(each.cables) == 1 for clamps in clamps_of(plan, ways).values() for each in clamps)


@pytest.mark.parametrize(
    ("thing", "low", "high"),
    [
        (unit("U5", 500, 340), 500 - CLEAR, 600 + CLEAR),
        (channel("RW1", (550, 100), (550, 700)), 520 - CLEAR, 580 + CLEAR),
        (fixing("F1", 550, 352), 540, 560),  # a free square of 20 round its head
        (Exit("X1", "A", "hole", Point(550, 350), "hole", 40), 530 - CLEAR, 570 + CLEAR),
    ],
    ids=["body", "channel", "board fixing", "exit"],
)
def test_none_where_something_is_in_the_way(thing, low, high):
    found = [x for x, _ in places(wide_plan(thing, W1), way("W1", *STRAIGHT))["W1"]]
    assert found[0] == 321
    assert found[-1] == 859
    assert not [x for x in found if low - HALF + 0.01 < x < high + HALF - 0.01]
    assert max(b - a for a, b in pairwise(found)) <= max(PITCH, high - low + 2 * HALF)


def test_none_over_a_cutout_or_off_the_board():
    # the edge of the cut-out keeps 18 off the screw, which is 8 inside the end of the foot: 10 off the clamp
    holed = replace(WIDE, cutouts=(Box(500, 300, 600, 400).corners(),))
    found = [x for x, _ in places(replace(wide_plan(W1), boards={"A": holed}), way("W1", *STRAIGHT))["W1"]]
    assert not [x for x in found if 480.01 < x < 619.99]
    assert 620.0 in found
    off = way("W1", (190, -50), (990, -50))
    assert places(wide_plan(W1), off)["W1"] == []


@pytest.mark.parametrize(("length", "count"), [(299, 0), (301, 1)])  # 300 mm: common practice, no source
def test_a_short_jumper_between_lugs_needs_none(length, count):
    plan = plan_of(unit("U1", 100, 100), unit("U2", 100, 500), cable("W1", ("U1", "T"), ("U2", "B")))
    assert len(places(plan, way("W1", (150, 190), (150, 190 + length)))["W1"]) == count


@pytest.mark.parametrize(
    ("conductor", "clamped"),
    [("wire", True), ("lead", False), ("6", False), ("16", True)],  # 10 mm² and 8 mm: common practice, no source
)
def test_only_thick_cables_are_clamped(conductor, clamped):
    plan = wide_plan(cable("W1", ("U1", "R"), ("U2", "L"), conductor=conductor))
    assert bool(places(plan, way("W1", *STRAIGHT))["W1"]) is clamped


def test_a_channel_holds_what_lies_in_it():
    # out of the channel's end at x = 600 there are 384 mm to the straight before the terminal: the last clamp is
    # 125 before that at 859, two between make three gaps of 86.3; the channel's side keeps its 5 mm
    plan = wide_plan(channel("RW1", (150, 350), (600, 350)), W1)
    inside = (InChannel("RW1", 40, 450),)
    found = places(plan, way("W1", *STRAIGHT, in_channels=inside))["W1"]
    assert found == [(729.5, 350), (859, 350)]


def test_a_cable_without_a_way_has_none():
    assert clamps_of(wide_plan(W1), {"W1": NoWay("W1", "shut in", Point(0, 0))}) == {"W1": ()}
    assert clamps_of(wide_plan(W1), {}) == {"W1": ()}


def along_straight(plan, line, at):
    """Say by plain sums whether a clamp may be at an x of a level cable at y = 350."""
    for each in plan.components.values():
        left, bottom = each.position.x - CLEAR, each.position.y - CLEAR
        right, top = each.position.x + 100 + CLEAR, each.position.y + 100 + CLEAR
        if at + HALF > left and at - HALF < right and line[1] > bottom and line[0] < top:
            return False
    return 196 + 15 <= at <= 984 - 15  # 2.5 jackets stay free to bend behind the 6 mm that stand straight


ABOVE, BELOW = (350 - JACKET, 350 + JACKET + FOOT), (350 - JACKET - FOOT, 350 + JACKET)
BODIES = st.lists(st.tuples(st.integers(190, 900), st.sampled_from((210, 225, 240, 300, 355, 370, 380))), max_size=4)


@settings(max_examples=150)
@given(BODIES)
def test_no_gap_is_wider_than_the_pitch_where_a_clamp_could_stand(corners):
    plan = wide_plan(W1, *(unit(f"B{n}", *at) for n, at in enumerate(corners)))
    found = [x for x, _ in places(plan, way("W1", *STRAIGHT))["W1"]]
    free = [x for x in range(190, 991) if any(along_straight(plan, side, x) for side in (ABOVE, BELOW))]
    for x in found:
        assert any(along_straight(plan, side, near) for side in (ABOVE, BELOW) for near in (x - 0.06, x, x + 0.06))
    for a, b in pairwise(found):
        if b - a > PITCH + 0.2:
            assert not [x for x in free if a + LEAST + 1 < x < b - LEAST - 1], (a, b)
    if free:
        assert abs(found[0] - 321) <= min(abs(x - 321) for x in free) + 0.1
        assert any(abs(x - 859) <= max(min(abs(each - 859) for each in free) + 0.1, LEAST) for x in found)
    assert all(b - a > LEAST - 0.2 for a, b in pairwise(found))


def footprint(clamp):
    """Return a clamp's body and feet as one area, corner by corner."""
    cos, sin = math.cos(math.radians(clamp.towards)), math.sin(math.radians(clamp.towards))
    sides = [clamp.width / 2, -clamp.width / 2]
    for screw in clamp.screws:
        across = (screw.y - clamp.at.y) * cos - (screw.x - clamp.at.x) * sin
        sides.append(across + math.copysign(8, across))
    corners = [(u, v) for v in (min(sides), max(sides)) for u in (-HALF, HALF)]
    ring = [corners[0], corners[1], corners[3], corners[2]]
    return Polygon([(clamp.at.x + u * cos - v * sin, clamp.at.y + u * sin + v * cos) for u, v in ring])


SAMPLE_PLANS = [library_bus(), lookout_cabin(), load_plan(SAMPLES / "honey-trailer.json")]


@pytest.mark.parametrize("plan", SAMPLE_PLANS, ids=["library bus", "lookout cabin", "honey trailer"])
def test_clamps_of_the_samples_stand_where_they_can(plan):
    ways = find_routes(plan)
    clamps = list(own_clamps(clamps_of(plan, ways)))
    assert clamps
    prints = [footprint(each) for each in clamps]
    solid = [*bodies(plan).values(), *channel_bodies(plan).values()]
    solid += [
        box(*Box(*plan.on_wall(f.board, f.position), *plan.on_wall(f.board, f.position)).grown(10))
        for f in plan.fixings.values()
    ]
    holes = [each for each in plan.exits.values() if each.through == "hole"]
    solid += [Spot(plan.on_wall(each.board, each.position)).buffer((each.diameter or 0) / 2) for each in holes]
    for clamp, area in zip(clamps, prints, strict=True):
        sheet = Polygon([plan.on_wall(clamp.board, point) for point in plan.boards[clamp.board].outline])
        assert sheet.contains(area)
        assert all(area.intersection(each).area < 1e-6 for each in solid), clamp
        for name, other in ways.items():
            if isinstance(other, Route) and name not in clamp.cables:
                half = plan.conductors[plan.cables[name].conductor].outside_diameter / 2
                assert area.distance(LineString(other.points)) > half - 1e-6 or bent_away(area, other, half), (
                    clamp,
                    name,
                )
        for name in clamp.cables:
            assert any(_on(piece, clamp, plan, name) for piece in ways[name].pieces if isinstance(piece, Straight))
    assert all(a.intersection(b).area < 1e-6 for a, b in combinations(prints, 2))


def bent_away(area, route, half):
    """Say whether only a corner that a bend cuts off comes near."""
    return all(area.distance(LineString([piece.start, piece.end])) > half - 1e-6 for piece in route.pieces)


def _on(piece, clamp, plan, name):
    """Say whether a clamp lies whole on a straight of a cable, with room for that cable in it."""
    start, end, at = (complex(*each) for each in (piece.start, piece.end, clamp.at))
    seen = (at - start) * (end - start).conjugate() / abs(end - start)
    half = plan.conductors[plan.cables[name].conductor].outside_diameter / 2
    inside = abs(seen.imag) + half <= clamp.width / 2 + 1e-6
    return inside and HALF - 1e-6 <= seen.real <= piece.length - HALF + 1e-6


def test_the_order_of_a_plan_does_not_matter():
    plan = lookout_cabin()
    ways = find_routes(plan)
    turned = replace(
        plan, cables=dict(reversed(plan.cables.items())), components=dict(reversed(plan.components.items()))
    )
    assert clamps_of(turned, dict(reversed(ways.items()))) == clamps_of(plan, ways)


@pytest.mark.parametrize("plan", SAMPLE_PLANS[:2], ids=["library bus", "lookout cabin"])
def test_refreshed_is_what_comes_from_scratch(plan):
    ways = find_routes(plan)
    holding = holding_of(plan, ways)
    changes = [
        plan.with_things([replace(each, position=each.position.moved(15, -10))]) for each in plan.components.values()
    ]
    changes += [
        plan.with_things([replace(each, position=each.position.moved(40, 0))]) for each in plan.fixings.values()
    ]
    changes += [plan.without([name]) for name in list(plan.cables)[::3]]
    for new in changes[::2]:
        new_ways = refreshed_routes(plan, ways, new)
        assert refreshed_holding(plan, ways, holding, new, new_ways).held == holding_of(new, new_ways).held
