"""Clamp changes: what is kept and asked anew comes out as from scratch, whatever was changed, edit after edit."""

from dataclasses import replace
from itertools import combinations, pairwise

import pytest
from boards import lookout_cabin
from checks.plans import BOARD, UNIT, cable, channel, fixing, plan_of, rules, unit
from hypothesis import given
from hypothesis import strategies as st

from boardplan.files.shelf_file import bundled_shelf
from boardplan.geometry.point import Box, Point
from boardplan.model.board import BackPart, Exit, NoGoBox
from boardplan.model.component_kind import Terminal
from boardplan.routing.find_route import find_routes
from boardplan.routing.route import InChannel, Route
from boardplan.routing.supports.clamp import own_clamps
from boardplan.routing.supports.clamp_changes import refreshed_holding
from boardplan.routing.supports.clamps import clamps_of, holding_of

WIDE = replace(BOARD, outline=Box(0, 0, 2000, 800).corners())
SCREW = bundled_shelf().fasteners["#8x16 washer"]
STUDS = (Terminal("L", Point(10, 50), 20, "clamp", "", 180.0), Terminal("R", Point(90, 50), 20, "clamp", "", 0.0))
BATTERY = replace(UNIT, id="battery", family="Batteries and trays", terminals=STUDS)
NAMES = ("W1", "W2", "W3", "W4")


def rows_plan():
    """Return four cables side by side between two units, other things round them."""
    cables = [cable(name, ("U1", "R"), ("U2", "L")) for name in NAMES]
    things = (unit("U1", 100, 300), unit("U2", 1500, 300), unit("U3", 600, 460), channel("C", (900, 500), (900, 700)))
    more = (fixing("F1", 700, 250), Exit("X1", "A", "exit", Point(400, 250), "hole", 40))
    plan = plan_of(*things, *more, *cables, kinds=(UNIT, BATTERY), board=WIDE)
    return replace(plan, fasteners={**plan.fasteners, SCREW.id: SCREW})


def way(name, y, start=196, *, in_channel=False):
    points = (
        (Point(190, 350), Point(190 + start - 190, y), Point(1500, y))
        if y != 350
        else (Point(190, 350), Point(1500, 350))
    )
    return Route(name, points, 24.0, in_channels=(InChannel("C", 0, 100),) if in_channel else ())


WAYS = {"W1": way("W1", 350), "W2": way("W2", 362), "W3": way("W3", 395), "W4": way("W4", 430)}
PLACES = st.tuples(st.integers(2, 28), st.integers(1, 12)).map(lambda at: Point(at[0] * 50 + 3, at[1] * 50 + 7))


def _moved(plan, ways, draw):
    key = draw(st.sampled_from(sorted({*plan.components, *plan.fixings, *plan.exits} - {"U1", "U2"})))
    return plan.with_things([replace(plan.things[key], position=draw(PLACES))]), ways


def _added(plan, ways, draw):
    at, name = draw(PLACES), f"N{draw(st.integers(1, 4))}"
    new = draw(
        st.sampled_from(
            [
                unit(name, at.x, at.y),
                fixing(name, at.x, at.y),
                NoGoBox(name, "A", name, at.x, at.y, 50, 50),
                BackPart(name, "A", name, Box(at.x, at.y, at.x + 50, at.y + 50).corners()),
            ]
        )
    )
    return plan.without([name]).with_things([new]), ways


def _rerouted(plan, ways, draw):
    name = draw(st.sampled_from(NAMES))
    new = way(name, draw(st.integers(70, 150)) * 5, draw(st.sampled_from([196, 260])), in_channel=draw(st.booleans()))
    return plan, {**ways, name: new}


def _cable(plan, ways, draw):
    name = draw(st.sampled_from(NAMES))
    changes = draw(st.sampled_from([{"count": 2}, {"count": 1}, {"conductor": "70"}, {"cable_class": "ac"}]))
    return plan.with_things([replace(plan.cables[name], **changes)]), ways


def _wiring(plan, ways, draw):
    return plan.with_things([replace(plan.components["U1"], kind=draw(st.sampled_from(["unit", "battery"])))]), ways


def _gone(plan, ways, draw):
    key = draw(st.sampled_from(["W4", "W3", "U3", "C", "F1"]))
    back = rows_plan().things[key]
    return (plan.without([key]) if key in plan.things else plan.with_things([back])), ways


@given(st.data())
def test_edit_after_edit(data):
    plan, ways = rows_plan(), WAYS
    holding = holding_of(plan, ways)
    for _ in range(data.draw(st.integers(1, 6))):
        edits = (_moved, _added, _rerouted, _rerouted, _cable, _wiring, _gone)
        edit = data.draw(
            st.sampled_from([each for each in edits if each is not _cable or set(NAMES) <= set(plan.cables)])
        )
        new_plan, new_ways = edit(plan, ways, data.draw)
        new_ways = {key: each for key, each in new_ways.items() if key in new_plan.cables} | {
            key: WAYS[key] for key in new_plan.cables if key not in new_ways
        }
        holding = refreshed_holding(plan, ways, holding, new_plan, new_ways)
        assert holding.held == holding_of(new_plan, new_ways).held
        plan, ways = new_plan, new_ways


def test_far_from_a_change_the_very_same_objects_stay():
    plan = rows_plan()
    before = holding_of(plan, WAYS)
    moved = plan.with_things([replace(plan.components["U3"], position=Point(600, 600))])
    after = refreshed_holding(plan, WAYS, before, moved, WAYS)
    assert after.lying["W1"] is before.lying["W1"]
    assert after.held["W1"] is before.held["W1"]


def test_clamps_of_neighbours_stand_in_a_row():
    # W3 is 45 above W1 and 33 above W2, 60 at most is asked; each begins 6 after its own first straight
    ways = {"W1": way("W1", 350), "W3": Route("W3", (Point(210, 395), Point(1480, 395)), 24.0)}
    plan = rows_plan().without(["W2", "W4", "U3", "C", "F1", "X1"])
    found = clamps_of(plan, ways)
    assert [each.at.x for each in found["W3"]] == pytest.approx([each.at.x for each in found["W1"]])
    earlier = replace(
        plan, rules=replace(rules(), limits={k: v for k, v in rules().limits.items() if k != "clamp-row-gap"})
    )
    alone = clamps_of(earlier, ways)
    assert alone["W1"] == found["W1"]
    assert [each.at.x for each in alone["W3"]] != pytest.approx([each.at.x for each in found["W3"]])


def test_rows_keep_first_distance_pitch_and_each_other():
    plan = replace(lookout_cabin(), rules=rules())
    ways = find_routes(plan)
    clamps = list(own_clamps(clamps_of(plan, ways)))
    assert clamps
    for a, b in combinations(clamps, 2):
        if a.board == b.board:
            assert a.at.distance_to(b.at) > 20 - 1e-6, (a, b)  # neither stands in the other


def test_the_longest_stretch_between_supports_is_told_of_battery_cables_alone():
    plan = rows_plan().with_things([replace(rows_plan().components["U1"], kind="battery")])
    held = holding_of(plan, WAYS).held["W1"]
    places = [each.at.x for each in held.clamps]
    assert held.between.length == pytest.approx(max(b - a for a, b in pairwise(places)))
    assert holding_of(rows_plan(), WAYS).held["W1"].between is None
