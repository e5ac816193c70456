"""Link bar: what to fabricate where two studs are too near each other for the cable that joins them.

A bar's cross-section is never reckoned here: the designer says it. The cable's own is stated as a floor to ask about.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import hypot

from boardplan.model.cable import Cable, CableEnd, TerminalEnd
from boardplan.model.component_kind import Terminal
from boardplan.model.placed import placed
from boardplan.model.plan import Plan
from boardplan.model.stud_size import medium_hole
from boardplan.routing.lengths.length_sum import CutLength
from boardplan.routing.lengths.stiff_jumper import least_jumper, lug_mouths
from boardplan.routing.square.ends import ends_of

ASK_SECTION = "cross-section from the designer"


@dataclass(frozen=True, slots=True)
class BarEnd:
    """An end of a bar: the stud it goes over, and the hole for that in mm, medium fit of ISO 273; none to be asked."""

    place: str
    stud: str
    hole: float | None


@dataclass(frozen=True, slots=True)
class LinkBar:
    """A bar in place of a cable, in mm.

    `centres` is between the middles of its holes seen from the front, `step` how much higher the second stud lies than
    the first. `path` is that of the cable it is for, straight where that has no way; `least` is the shortest jumper
    that could be made. `area` in mm² is that of the cable, none where it isn't known.
    """

    cable: str
    count: int
    ends: tuple[BarEnd, BarEnd]
    centres: float
    step: float
    path: float
    least: float
    area: float | None

    @property
    def question(self) -> str:
        """What is left open: the bar's cross-section."""
        floor = f", not less than the cable's {self.area:g} mm²" if self.area is not None else ""
        return f"{ASK_SECTION}{floor}"


def link_bar_offers(plan: Plan, lengths: Mapping[str, CutLength]) -> tuple[LinkBar, ...]:
    """Return a bar for each cable that is shorter than the shortest jumper and whose studs a bar can join."""
    found = (link_bar_of(plan, each, lengths.get(each.id)) for each in plan.cables.values())
    return tuple(each for each in found if each is not None)


def link_bar_of(plan: Plan, cable: Cable, length: CutLength | None) -> LinkBar | None:
    """Return the bar offered in place of a cable, none where the cable can be made or no bar would reach."""
    conductor, rules, mouths = plan.conductors[cable.conductor], plan.rules, lug_mouths(plan, cable)
    if mouths is None or not rules.knows("link-bar-to"):
        return None
    studs = [_stud(plan, each) for each in cable.ends]
    first, second = studs
    if first is None or second is None:
        return None
    start, end = (each.point for each in ends_of(plan, cable))
    centres = start.distance_to(end)
    least = least_jumper(mouths, conductor.outside_diameter, rules.value("jumper-free-jacket"))
    step = second[1].z - first[1].z
    path = hypot(centres, step) if length is None or length.path is None else length.path
    near = rules.value("link-bar-from") - _NOISE <= centres <= rules.value("link-bar-to") + _NOISE
    if not near or path >= least - _NOISE:
        return None
    return LinkBar(cable.id, cable.count, (first[0], second[0]), centres, step, path, least, conductor.area)


_NOISE = 1e-6  # mm: sums of floats


def _stud(plan: Plan, end: CableEnd) -> tuple[BarEnd, Terminal] | None:
    if not isinstance(end, TerminalEnd):
        return None
    terminal = placed(plan, plan.components[end.component]).terminals[end.terminal].terminal
    if terminal.sort != "stud":
        return None
    return BarEnd(f"{end.component}.{end.terminal}", terminal.size, medium_hole(terminal.size)), terminal
