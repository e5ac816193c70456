"""Label words: what stands on the label of each cable end, each component and each fuse place."""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.component import Component
from boardplan.model.component_kind import ComponentKind, Terminal
from boardplan.model.plan import Plan
from boardplan.output.cables.cut_list import cutting_order
from boardplan.routing.lengths.end_work import work_at_ends
from boardplan.routing.lengths.length_sum import CutLength

SPARE = "spare"
"""What stands on a fuse place that no cable is on."""
_IN_LINE = 2
_Joined = Mapping[tuple[str, str], Sequence[tuple[str, str]]]
_NUMBERED = re.compile(r"(?!MAIN)[A-Z]+?(\d+)", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class CableLabel:
    """The label of one end of a cable, `end` 1 or 2; `copy` counts cables alike under one id; diameter in mm."""

    cable: str
    end: int
    copy: int
    copies: int
    name: str
    here: str
    there: str
    conductor: str
    diameter: float

    @property
    def end_words(self) -> str:
        """Which end it is, and which of several cables alike."""
        return f"end {self.end}" + (f", {self.copy}/{self.copies}" if self.copies > 1 else "")


@dataclass(frozen=True, slots=True)
class PlateLabel:
    """A flat label: what it names, what that is; a fuse place also has a blank for the rating that nobody gave."""

    name: str
    words: str
    fuse: bool = False


def cable_labels(plan: Plan, lengths: Mapping[str, CutLength]) -> list[CableLabel]:
    """Return the labels of both ends of all cables, in the order of cutting, both ends of a cable together."""
    return [
        label
        for cable in cutting_order(plan, lengths)
        for copy in range(1, cable.count + 1)
        for label in _both_ends(plan, cable, lengths[cable.id], copy)
    ]


def _both_ends(plan: Plan, cable: Cable, length: CutLength, copy: int) -> Iterator[CableLabel]:
    conductor = plan.conductors[cable.conductor]
    first, second = (each.place for each in length.ends)
    for end, here, there in ((1, first, second), (2, second, first)):
        yield CableLabel(
            cable.id, end, copy, cable.count, cable.label or cable.id, here, there,
            conductor.name, conductor.outside_diameter,
        )  # fmt: skip


def component_labels(plan: Plan) -> list[PlateLabel]:
    """Return a label for each component: its reference and its name."""
    return [PlateLabel(each.id, each.label or plan.kind_of(each).name) for each in plan.components.values()]


def fuse_labels(plan: Plan) -> list[PlateLabel]:
    """Return a label for each fuse place: where it is and what it feeds. No job knows a rating yet, so none is said."""
    at = _cables_by_terminal(plan)
    return [
        PlateLabel(name, _fed_words(component, terminals, at), fuse=True)
        for component in plan.components.values()
        for name, terminals in _places(component, plan.kind_of(component))
    ]


def _places(component: Component, kind: ComponentKind) -> Iterator[tuple[str, tuple[Terminal, ...]]]:
    for terminals in fuse_places(kind):
        whole = len(terminals) == _IN_LINE and _NUMBERED.fullmatch(terminals[0].id) is None
        ids = "-".join(each.id for each in terminals)
        yield (component.id if whole or not terminals else f"{component.id}.{ids}"), terminals


def fuse_places(kind: ComponentKind) -> list[tuple[Terminal, ...]]:
    """Return the terminals of each fuse of a kind: those with one number, or both of a fuse in line.

    A kind with fuses whose terminals don't say where they sit has one place without terminals; breakers have none.
    """
    if "fuse" not in f"{kind.id} {kind.name} {kind.family}".casefold():
        return []
    plus = [each for each in kind.terminals if each.pole == "+"]
    numbered: dict[str, list[Terminal]] = {}
    for each in plus:
        if found := _NUMBERED.fullmatch(each.id):
            numbered.setdefault(found[1], []).append(each)
    if numbered:
        return [tuple(each) for each in numbered.values()]
    return [tuple(plus)] if len(plus) == _IN_LINE else [()]


def _cables_by_terminal(plan: Plan) -> _Joined:
    found: dict[tuple[str, str], list[tuple[str, str]]] = {}
    for cable in plan.cables.values():
        first, second = (each.place for each in work_at_ends(plan, cable))
        for end, far in ((cable.start, second), (cable.end, first)):
            if isinstance(end, TerminalEnd):
                found.setdefault((end.component, end.terminal), []).append((cable.label or cable.id, far))
    return found


def _fed_words(component: Component, terminals: tuple[Terminal, ...], at: _Joined) -> str:
    if not terminals:
        return "which fuse?"
    joined = [each for terminal in terminals for each in at.get((component.id, terminal.id), ())]
    if len(terminals) == 1:
        return ", ".join(f"{cable} > {far}" for cable, far in joined) or SPARE
    return ", ".join(cable for cable, _ in joined) or SPARE
