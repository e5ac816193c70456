"""Cable suggestion: a class and a colour for a new cable from its ends, and a conductor only where a person chose one.

Sizing a conductor is the designer's work. What is suggested here was chosen before: for another cable on
the same terminal, or for the cable drawn last where that joins terminals like these. Otherwise there is none,
and a person is asked.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from boardplan.editing.cable_edits import end_words
from boardplan.model.cable import Cable, CableClass, CableEnd, TerminalEnd
from boardplan.model.component_kind import Pole, Terminal
from boardplan.model.conductor import Conductor
from boardplan.model.plan import Plan
from boardplan.model.shelf import Shelf

CLASS_OF_POLE: Mapping[Pole, CableClass] = {
    "+": "dc",
    "-": "dc",
    "L": "ac",
    "L1": "ac",
    "L2": "ac",
    "N": "ac",
    "PE": "ac",
    "signal": "signal",
}

COLOUR_OF_POLE: Mapping[Pole, str] = {
    "+": "red",
    "-": "black",
    "L": "brown",
    "L1": "brown",
    "L2": "black",
    "N": "blue",
    "PE": "green/yellow",
    "signal": "grey",
}
"""Colours where the job shows no habit yet.

L, N and PE as IEC 60445 has them; direct current and signal are common practice, no source.
"""


@dataclass(frozen=True, slots=True)
class CableSuggestion:
    """What a new cable could be, and in words where the suggestion comes from."""

    cable_class: CableClass
    colour: str
    conductor: Conductor | None
    why: str


def suggest_cable(
    plan: Plan, start: CableEnd, end: CableEnd, shelf: Shelf, last: Conductor | None = None
) -> CableSuggestion:
    """Return a suggestion for a cable between two ends; the conductor is never sized, only repeated or left open."""
    neighbours = [cable for cable in plan.cables.values() if _shares_end(cable, start, end)]
    alike = neighbours[-1] if neighbours else None
    pole: Pole = next((each.pole for each in _terminals(plan, start, end) if each.pole), "")
    if alike is not None:
        conductor = plan.conductors.get(alike.conductor) or shelf.conductors.get(alike.conductor)
        why = f"as {alike.id} on the same terminal"
        return CableSuggestion(alike.cable_class, alike.colour, conductor, why)
    cable_class = _class_of(plan, start, end, pole)
    colour = _habit(plan, cable_class, pole) or COLOUR_OF_POLE.get(pole, "black")
    if last is not None and not _for_like_ends(plan, last, start, end):
        last = None
    why = "conductor as used last" if last else "no conductor chosen yet on either end"
    return CableSuggestion(cable_class, colour, last, why)


def _for_like_ends(plan: Plan, last: Conductor, start: CableEnd, end: CableEnd) -> bool:
    """Say whether a conductor fits two ends as far as the job goes: its other cables join terminals like these.

    A charger's cable says nothing about that of the battery or of a signal.
    """
    others = [cable for cable in plan.cables.values() if cable.conductor == last.id]
    sorts = _end_sorts(plan, start, end)
    return not others or any(_end_sorts(plan, *cable.ends) == sorts for cable in others)


def _end_sorts(plan: Plan, *ends: CableEnd) -> list[tuple[str, str]]:
    return sorted((each.sort, str(each.size)) for each in _terminals(plan, *ends))


def _shares_end(cable: Cable, start: CableEnd, end: CableEnd) -> bool:
    wanted = {end_words(each) for each in (start, end) if isinstance(each, TerminalEnd)}
    return any(isinstance(each, TerminalEnd) and end_words(each) in wanted for each in cable.ends)


def _terminals(plan: Plan, *ends: CableEnd) -> list[Terminal]:
    found = [
        plan.kind_of(plan.components[end.component]).terminal(end.terminal)
        for end in ends
        if isinstance(end, TerminalEnd)
    ]
    return [each for each in found if each is not None]


def _class_of(plan: Plan, start: CableEnd, end: CableEnd, pole: Pole) -> CableClass:
    """Return a class: that of a terminal named for the array, of a plug, or of the pole."""
    terminals = _terminals(plan, start, end)
    if any(each.id.startswith("PV") for each in terminals):
        return "pv"
    return CLASS_OF_POLE.get(pole, "dc")


def _habit(plan: Plan, cable_class: CableClass, pole: Pole) -> str:
    """Return the colour of the job's newest cable of that class on that pole, empty where there is none."""
    if not pole:
        return ""
    for cable in reversed(plan.cables.values()):  # type: ignore[call-overload]
        if cable.cable_class == cable_class and any(each.pole == pole for each in _terminals(plan, *cable.ends)):
            return str(cable.colour)
    return ""
