import pytest

from boardplan.editing.cable_edits import connect
from boardplan.editing.cable_suggestion import CLASS_OF_POLE, COLOUR_OF_POLE, suggest_cable
from boardplan.editing.component_edits import place_component
from boardplan.files.shelf_file import bundled_shelf
from boardplan.geometry.point import Point
from boardplan.model.cable import ExitEnd, TerminalEnd

SHELF = bundled_shelf()

# L1 brown, L2 black, N blue, PE green and yellow: IEC 60446:2007, taken over by IEC 60445:2010.
STANDARD = {"L1": "brown", "L2": "black", "N": "blue", "PE": "green/yellow"}


@pytest.mark.parametrize("pole", STANDARD)
def test_colours_of_alternating_current(pole):
    assert COLOUR_OF_POLE[pole] == STANDARD[pole]


def test_every_pole_has_a_class_and_a_colour_of_the_rule_set(bus_plan):
    assert set(CLASS_OF_POLE) == set(COLOUR_OF_POLE)
    assert set(COLOUR_OF_POLE.values()) <= set(bus_plan.rules.colours)


def bare(plan):
    return plan.without(plan.cables)


CASES = {
    "plus": (TerminalEnd("PB1", "F4"), ExitEnd("X1"), "dc", "red"),
    "minus": (TerminalEnd("NB1", "S2"), TerminalEnd("SH1", "SYS"), "dc", "black"),
    "array": (TerminalEnd("MP1", "PV+"), TerminalEnd("PV1", "LOAD+"), "pv", "red"),
    "transformer": (TerminalEnd("AT1", "L1"), ExitEnd("X6"), "ac", "brown"),
    "neutral": (TerminalEnd("AT1", "N"), ExitEnd("X6"), "ac", "blue"),
    "earth": (TerminalEnd("EB1", "E1"), TerminalEnd("AT1", "PE"), "ac", "green/yellow"),
    "data": (TerminalEnd("MP1", "COM"), TerminalEnd("HB1", "C2"), "signal", "grey"),
    "exit first": (ExitEnd("X1"), TerminalEnd("NB1", "S1"), "dc", "black"),
}


@pytest.mark.parametrize("name", CASES)
def test_class_and_colour_from_the_poles(bus_plan, name):
    start, end, cable_class, colour = CASES[name]
    suggestion = suggest_cable(bare(bus_plan), start, end, SHELF)
    assert (suggestion.cable_class, suggestion.colour) == (cable_class, colour)


@pytest.mark.parametrize("name", CASES)
def test_a_conductor_is_never_sized(bus_plan, name):
    start, end, *_ = CASES[name]
    assert suggest_cable(bare(bus_plan), start, end, SHELF).conductor is None


def test_the_conductor_used_last_is_offered_again(bus_plan):
    last = SHELF.conductors["16"]
    suggestion = suggest_cable(bare(bus_plan), *CASES["plus"][:2], SHELF, last)
    assert suggestion.conductor is last
    assert suggestion.why == "conductor as used last"


def test_a_cable_on_the_same_terminal_is_repeated(bus_plan):
    suggestion = suggest_cable(
        bus_plan, TerminalEnd("SH1", "BAT"), TerminalEnd("NB1", "S5"), SHELF, SHELF.conductors["16"]
    )
    assert suggestion.conductor == bus_plan.conductors["70"]
    assert suggestion.why == "as W07 on the same terminal"


def test_the_jobs_own_colours_win(bus_plan):
    plan, _ = connect(bare(bus_plan), TerminalEnd("NB1", "S1"), ExitEnd("X2"), SHELF.conductors["16"], "yellow", "dc")
    suggestion = suggest_cable(plan, TerminalEnd("NB1", "S2"), TerminalEnd("SH1", "SYS"), SHELF)
    assert suggestion.colour == "yellow"
    assert suggestion.conductor is None


def test_terminals_without_a_pole(bus_plan):
    kind = next(each for each in SHELF.kinds.values() if each.terminals and not each.terminals[0].pole)
    plan, reference = place_component(bus_plan, kind, SHELF.fasteners, "A", Point(0, 0))
    end = TerminalEnd(reference, kind.terminals[0].id)
    suggestion = suggest_cable(bare(plan), end, ExitEnd("X1"), SHELF)
    assert suggestion.conductor is None
    assert suggestion.colour


def test_the_conductor_used_last_is_not_offered_between_other_terminals(bus_plan):
    last = SHELF.conductors["16"]
    plan, _ = connect(bare(bus_plan), TerminalEnd("PB1", "F4"), TerminalEnd("NB1", "S3"), last, "red", "dc")
    alike = suggest_cable(plan, TerminalEnd("PB1", "F3"), TerminalEnd("NB1", "S2"), SHELF, last)
    assert alike.conductor is last
    assert suggest_cable(plan, TerminalEnd("PB1", "F3"), TerminalEnd("MP1", "BAT+"), SHELF, last).conductor is None
    assert suggest_cable(plan, *CASES["data"][:2], SHELF, last).conductor is None
