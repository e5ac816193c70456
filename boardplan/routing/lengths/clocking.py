"""Clocking: how far the second lug of a stiff cable is turned against the first, so that both lie flat on their studs.

Seen from end 1 along the cable, clockwise, in degrees; on a clock's face the flat of the first lug is at 12 h.
"""

import math
from dataclasses import replace

from boardplan.geometry.bends import turn_between
from boardplan.geometry.point import bearing, direction
from boardplan.model.board import Face
from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.placed import placed
from boardplan.model.plan import Plan
from boardplan.routing.lengths.end_work import EndWork
from boardplan.routing.route import Route

_TOWARDS: dict[Face, float] = {"right": 0.0, "top": 90.0, "left": 180.0, "bottom": 270.0}
_ALONG = 0.1
"""A stud points along its cable where less than this share of it points aside."""


def clocked(plan: Plan, cable: Cable, way: Route, ends: tuple[EndWork, EndWork]) -> tuple[EndWork, EndWork]:
    """Return the work at both ends with the clocking of a stiff cable's lugs, given by a person or by how they lie."""
    if not _stiff(plan, cable, ends):
        return ends
    first, second = ends
    given = first.clocking or second.clocking
    turn = second.clocking - first.clocking if given else clocking_of(plan, cable, way)
    if turn is None:
        return ends
    turn = turn_between(0.0, turn)
    second = second if given else replace(second, clocking=turn)
    return replace(first, clock=clock_words(0.0)), replace(second, clock=clock_words(turn))


def _stiff(plan: Plan, cable: Cable, ends: tuple[EndWork, EndWork]) -> bool:
    if not plan.rules.knows("clocking-from-area") or not all(end.lugged for end in ends):
        return False
    return (plan.conductors[cable.conductor].area or 0.0) >= plan.rules.value("clocking-from-area")


def clocking_of(plan: Plan, cable: Cable, way: Route) -> float | None:
    """Return by how many degrees the second palm is turned against the first; none where a stud points along the cable.

    A cable that bends without twisting carries a direction across it along: in the plane of the board one off the
    board stays so, and one to its right stays to its right; and what goes up comes down again the same way. So the
    clocking is the difference of where the two palms look, each seen along the cable at its own end.
    """
    if len(way.points) < 2:  # noqa: PLR2004 - two studs above each other: no way to look along
        return None
    looks = (
        _look(plan, cable.start, bearing(way.points[0], way.points[1])),
        _look(plan, cable.end, bearing(way.points[-2], way.points[-1])),
    )
    return None if looks[0] is None or looks[1] is None else turn_between(looks[0], looks[1])


def _look(plan: Plan, end: object, along: float) -> float | None:
    """Return where a palm looks, seen along the cable: 0 off the board, 90 to the right."""
    if not isinstance(end, TerminalEnd):
        return None
    component = plan.components[end.component]
    lies = placed(plan, component)
    faces = lies.terminals[end.terminal].terminal.faces
    if faces == "front":
        return 0.0
    x, y = direction(lies.placement.direction(_TOWARDS[faces]))
    right_x, right_y = direction(along - 90)
    aside = x * right_x + y * right_y
    return math.copysign(90.0, aside) if abs(aside) > _ALONG else None


def clock_words(degrees: float) -> str:
    """Return an angle as on the face of a clock, to the next half hour.

    >>> clock_words(0), clock_words(90), clock_words(-45)
    ('12 h', '3 h', '10 h 30')
    """
    halves = round(degrees / 15) % 24
    hours, half = divmod(halves, 2)
    return f"{hours or 12} h{' 30' if half else ''}"


def twist_words(plan: Plan, cable: Cable, cut: float | None) -> str:
    """Return how far a long cable can be twisted by hand, so that its clocking may be off by as much; "" for others."""
    rules, conductor = plan.rules, plan.conductors[cable.conductor]
    if not rules.knows("clocking-by-hand") or conductor.construction != "fine-strand" or cut is None:
        return ""
    if cut <= rules.value("clocking-by-hand-from"):
        return ""
    return f"can be twisted {rules.value('clocking-by-hand'):g}° by hand"
