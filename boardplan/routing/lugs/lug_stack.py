"""Lug stack: in which order the lugs of a stud lie on its contact face, and whether they can be fanned.

The largest current lies next to the contact face, then the others in falling order (ABYC E-11, 11.14.6 as
summarised). A plan holds no currents, so the cross-section stands for it: the largest conductor first.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from itertools import pairwise, permutations
from math import asin, atan, degrees, hypot
from typing import TypeAlias

from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.plan import Plan
from boardplan.routing.lengths.end_work import lug_measures

Stud: TypeAlias = tuple[str, str]
"""A component's id and its terminal's."""


@dataclass(frozen=True, slots=True)
class Barrel:
    """A barrel seen from its stud: how far from the stud's centre it begins, how far it reaches to each side, mm."""

    begins: float
    half: float


@dataclass(frozen=True, slots=True)
class StackedLug:
    """The lugs of a cable on a stud: `count` alike, each with a palm as thick as `palm`, none where not measured."""

    cable: str
    count: int
    area: float | None
    palm: float | None
    barrel: Barrel | None = None


@dataclass(frozen=True, slots=True)
class Stack:
    """The lugs on a stud, the first against its contact face; all in mm.

    `palms` is how thick they are together, none where a palm wasn't measured; `thread` the stud's usable thread and
    `asked` what palms, washers, nut and two turns take.
    """

    component: str
    terminal: str
    size: str
    lugs: tuple[StackedLug, ...]
    palms: float | None
    thread: float | None
    asked: float | None

    @property
    def place(self) -> str:
        """The stud in words."""
        return f"{self.component}.{self.terminal}"

    @property
    def count(self) -> int:
        """How many lugs lie on it."""
        return sum(each.count for each in self.lugs)

    @property
    def short(self) -> float:
        """How much thread is missing, 0 where there is enough or somebody has to measure first."""
        known = self.thread is not None and self.asked is not None
        return max(0.0, (self.asked or 0.0) - (self.thread or 0.0)) if known else 0.0


def stacks_of(plan: Plan) -> tuple[Stack, ...]:
    """Return the stack on every stud that a cable ends on, by component and terminal in the order of the plan."""
    lying = cables_on_studs(plan)
    order = {name: index for index, name in enumerate(plan.components)}
    studs = sorted(lying, key=lambda stud: (order[stud[0]], stud[1]))
    return tuple(stack for stud in studs if (stack := stack_of(plan, stud, lying[stud])) is not None)


def cables_on_studs(plan: Plan) -> dict[Stud, list[Cable]]:
    """Return the cables that end on each terminal of a component, whatever its sort."""
    lying: dict[Stud, list[Cable]] = {}
    for cable in plan.cables.values():
        for stud in studs_of(cable):
            lying.setdefault(stud, []).append(cable)
    return lying


def studs_of(cable: Cable) -> Iterator[Stud]:
    """Yield the terminals that a cable ends on."""
    return ((end.component, end.terminal) for end in cable.ends if isinstance(end, TerminalEnd))


def stack_of(plan: Plan, stud: Stud, cables: Iterable[Cable]) -> Stack | None:
    """Return the stack of cables on a stud, none where the terminal is no stud."""
    terminal = plan.kind_of(plan.components[stud[0]]).terminal(stud[1])
    lugs = tuple(_lug(plan, each, stud) for each in cables)
    if terminal is None or terminal.sort != "stud" or not lugs:
        return None
    ordered = tuple(sorted(lugs, key=lambda each: (-(each.area or 0.0), each.cable)))
    thick = [each.palm for each in ordered for _ in range(each.count)]
    known = [each for each in thick if each is not None]
    palms = sum(known) if len(known) == len(thick) else None
    asked = None if palms is None else palms + plan.rules.value("stud-hardware")
    return Stack(*stud, terminal.size, ordered, palms, terminal.usable_thread, asked)


def _lug(plan: Plan, cable: Cable, stud: Stud) -> StackedLug:
    conductor = plan.conductors[cable.conductor]
    palm = conductor.lug.palm_thickness if conductor.lug else None
    ends = [each for each in cable.ends if isinstance(each, TerminalEnd) and (each.component, each.terminal) == stud]
    wanted = ends[0].lug
    measures = lug_measures(plan.rules, conductor, wanted) if wanted else conductor.lug
    barrel = Barrel(measures.stop, conductor.outside_diameter / 2) if measures else None
    return StackedLug(cable.id, cable.count, conductor.area, palm, barrel)


def least_fan(one: Barrel, other: Barrel) -> float | None:
    """Return the least angle in degrees between two lugs on a stud whose barrels don't touch, none where there is none.

    Two strips that begin at a circle round the stud are clear as soon as the near inner corner of either lies on the
    side of the other: with the corner at (s, h) and the other's side at H, s sin t - h cos t = H, so that
    t = asin(H / sqrt(s² + h²)) + atan(h / s). The lesser of both ways round counts. Holds up to a quarter turn.

    >>> round(least_fan(Barrel(18, 8), Barrel(18, 8)), 2)  # alike: twice the angle their corner is seen under
    47.92
    """
    found = [angle for near, side in ((one, other), (other, one)) if (angle := _turn(near, side.half)) is not None]
    return min(found, default=None)


def _turn(near: Barrel, side: float) -> float | None:
    reach = hypot(near.begins, near.half)
    if reach <= side or near.begins <= 0:
        return None
    return degrees(asin(side / reach) + atan(near.half / near.begins))


@dataclass(frozen=True, slots=True)
class Fan:
    """How the lugs of a stud are fanned, in degrees.

    `least` is the widest angle that two neighbours need between them, `spread` what all of them take together in the
    best order, `room` what the stud leaves them.
    """

    least: float
    spread: float
    room: float


def fan_of(plan: Plan, stack: Stack) -> Fan | None:
    """Return how a stack is fanned; none for a lug alone, for more than may lie there, for lugs nobody measured.

    On a stud whose cables leave in one direction lugs may stand askew to both sides, as far as the rule set lets them;
    round any other stud they go all the way round.
    """
    barrels = [each.barrel for each in stack.lugs for _ in range(each.count)]
    known = [each for each in barrels if each is not None]
    if not 1 < len(known) <= plan.rules.value("lugs-on-a-stud") or len(known) < len(barrels):
        return None
    terminal = plan.kind_of(plan.components[stack.component]).terminal(stack.terminal)
    round_about = terminal is not None and terminal.exit is None
    best = _best_angles(tuple(sorted(known, key=lambda each: (each.begins, each.half))), round_about=round_about)
    room = 360.0 if round_about else 2 * plan.rules.value("leaves-terminal-within")
    return Fan(max(best), sum(best), room)


@cache
def _best_angles(barrels: tuple[Barrel, ...], *, round_about: bool) -> tuple[float, ...]:
    """Return the least angles between neighbours in the order that takes least room."""
    orders = [_angles((*order, order[0]) if round_about else order) for order in permutations(barrels)]
    return min(orders, key=lambda angles: (sum(angles), max(angles)))


def _angles(order: tuple[Barrel, ...]) -> tuple[float, ...]:
    """Return the least angles between neighbours; where no angle up to a half turn is wide enough, that half turn."""
    return tuple(180.0 if (angle := least_fan(*each)) is None else angle for each in pairwise(order))
