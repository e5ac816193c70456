from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import plans

from boardplan.geometry.point import Point
from boardplan.model.board import BoardFixing
from boardplan.model.cable import ExitEnd, TerminalEnd
from boardplan.model.joins import broken_joins, cables_on, with_dependants


def swapped(plan, collection, key, **fields):
    held = getattr(plan, collection)
    return replace(plan, **{collection: {**held, key: replace(held[key], **fields)}})


BREAKS = {
    "board of an exit": (lambda plan: swapped(plan, "exits", "X1", board="Z"), ("exits", "X1", "board")),
    "board of framing": (lambda plan: swapped(plan, "framing", "post-A1", board="Z"), ("framing", "post-A1", "board")),
    "kind": (lambda plan: swapped(plan, "components", "INV1", kind="teapot"), ("components", "INV1", "kind")),
    "fastener of a kind": (
        lambda plan: swapped(plan, "kinds", "shunt-500a", fastener="nail"),
        ("kinds", "shunt-500a", "fastener"),
    ),
    "fastener of a channel": (
        lambda plan: swapped(plan, "channels", "RW1", screws=replace(plan.channels["RW1"].screws, fastener="nail")),
        ("channels", "RW1", "screws.fastener"),
    ),
    "conductor": (lambda plan: swapped(plan, "cables", "W02", conductor="71"), ("cables", "W02", "conductor")),
    "component": (
        lambda plan: swapped(plan, "cables", "W02", end=TerminalEnd("SW9", "IN")),
        ("cables", "W02", "to.component"),
    ),
    "terminal": (
        lambda plan: swapped(plan, "cables", "W02", start=TerminalEnd("FT1", "IN")),
        ("cables", "W02", "from.terminal"),
    ),
    "exit": (lambda plan: swapped(plan, "cables", "W02", end=ExitEnd("X99")), ("cables", "W02", "to.exit")),
    "id used twice": (
        lambda plan: replace(plan, fixings={**plan.fixings, "X1": BoardFixing("X1", "A", Point(1, 1), 9)}),
        ("fixings", "X1", "id"),
    ),
}


@pytest.mark.parametrize("name", BREAKS)
def test_a_broken_join_is_named(bus_plan, name):
    break_it, expected = BREAKS[name]
    broken = list(broken_joins(break_it(bus_plan)))
    assert expected in [(each.collection, each.thing, each.field) for each in broken]
    assert all(each.expected for each in broken)


def test_the_samples_are_whole(bus_plan, cabin_plan):
    assert not list(broken_joins(bus_plan))
    assert not list(broken_joins(cabin_plan))


def test_cables_on_a_component_or_an_exit(bus_plan):
    assert cables_on(bus_plan, ["SW1"]) == {"W02", "W03"}
    assert cables_on(bus_plan, ["X1"]) == {"W01"}
    assert cables_on(bus_plan, ["RW1"]) == set()


@pytest.mark.parametrize(
    ("gone", "with_it"),
    [
        ({"SW1"}, {"W02", "W03"}),
        ({"X1", "SW1"}, {"W01", "W02", "W03"}),
        ({"RW1"}, set()),
        ({"W01"}, set()),
        (set(), set()),
    ],
)
def test_what_goes_with_a_thing(bus_plan, gone, with_it):
    assert with_dependants(bus_plan, gone) == gone | with_it


def test_everything_goes_with_its_board(cabin_plan):
    gone = with_dependants(cabin_plan, {"B"})
    left = cabin_plan.without(gone)
    assert set(left.boards) == {"A"}
    assert not list(broken_joins(left))
    assert "INV1" in gone
    assert "PB1" not in gone


@given(plans(), st.data())
def test_taking_things_away_with_what_hangs_on_them_breaks_nothing(plan, data):
    ids = data.draw(st.sets(st.sampled_from(sorted(plan.things))))
    assert not list(broken_joins(plan.without(with_dependants(plan, ids))))
