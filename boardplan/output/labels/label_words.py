"""Label words: what stands on the label of each cable end, each component and each fuse place."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.fuse_place import FusePlace, fuse_in, places_in
from boardplan.model.plan import Plan
from boardplan.output.cables.cut_list import cutting_order
from boardplan.routing.lengths.end_work import work_at_ends
from boardplan.routing.lengths.length_sum import CutLength

SPARE = "spare"
"""What stands on a fuse place that no cable is on."""
_Joined = Mapping[tuple[str, str], Sequence[tuple[str, str]]]


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
    """A flat label: what it names, what that is; a fuse place has its type and rating in A, or a blank for it."""

    name: str
    words: str
    fuse: bool = False
    rating: float | None = None
    type: str = ""


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
    """Return a label for each fuse place: where it is, what it feeds, and the rating that the job gives it, if any."""
    at = _cables_by_terminal(plan)
    return [_fuse_label(plan, place, at) for place in places_in(plan) if not place.breaker]


def _fuse_label(plan: Plan, place: FusePlace, at: _Joined) -> PlateLabel:
    fuse = fuse_in(plan, place)
    return PlateLabel(place.name, _fed_words(place, at), fuse=True, rating=fuse.rating_a, type=fuse.type)


def _cables_by_terminal(plan: Plan) -> _Joined:
    found: dict[tuple[str, str], list[tuple[str, str]]] = {}
    for cable in plan.cables.values():
        first, second = (each.place for each in work_at_ends(plan, cable))
        for end, far in ((cable.start, second), (cable.end, first)):
            if isinstance(end, TerminalEnd):
                found.setdefault((end.component, end.terminal), []).append((cable.label or cable.id, far))
    return found


def _fed_words(place: FusePlace, at: _Joined) -> str:
    if not place.terminals:
        return "which fuse?"
    joined = [each for terminal in place.terminals for each in at.get((place.component, terminal.id), ())]
    if len(place.terminals) == 1:
        return ", ".join(f"{cable} > {far}" for cable, far in joined) or SPARE
    return ", ".join(cable for cable, _ in joined) or SPARE
