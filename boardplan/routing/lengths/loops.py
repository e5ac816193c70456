"""Loops: cable left beside its way on purpose: loops at units and entries, and tails inside of units.

All in mm, each with words for a line of the sum.
"""

import math
from collections.abc import Iterator

from boardplan.geometry.units import tidy_number
from boardplan.model.cable import Cable, CableEnd, Loop, OffBoardEnd, TerminalEnd
from boardplan.model.component_kind import Terminal
from boardplan.model.plan import Plan
from boardplan.routing.lengths.end_work import EndWork


def bow_adds(radius: float, turn: float) -> float:
    """Return how much longer a bow is than what it spans: aside by a turn, twice that back, and straight again.

    Four arcs of t over four times R sin t: 4 R (t - sin t). Elementary geometry.

    >>> round(bow_adds(64, 60), 1)
    46.4
    """
    angle = math.radians(turn)
    return 4 * radius * (angle - math.sin(angle))


def loop_length(plan: Plan, cable: Cable, loop: Loop) -> float | None:
    """Return how much cable a loop takes, in mm: as given, or what the rule set takes; none where it doesn't say."""
    if loop.length is not None:
        return loop.length
    rules, conductor = plan.rules, plan.conductors[cable.conductor]
    if not rules.knows("service-loop"):
        return None
    if loop.sort == "drip":
        return rules.value("drip-loop")
    if (conductor.area or 0.0) < rules.value("large-cable-from"):
        return rules.value("service-loop")
    radius = rules.bends[conductor.construction].prefer * conductor.outside_diameter
    return bow_adds(radius, rules.value("service-bow-turn"))


def loops_of(plan: Plan, cable: Cable, ends: tuple[EndWork, EndWork]) -> Iterator[tuple[str, float]]:
    """Yield the loops and tails of a cable, words and mm."""
    for end, work in zip(cable.ends, ends, strict=True):
        length = loop_length(plan, cable, end.loop) if end.loop else None
        if end.loop and length:
            yield f"{end.loop.sort} loop at {work.place}", length
        tail = tail_of(plan, end)
        if tail:
            yield f"tail inside the gland of {work.place}", tail


def tail_of(plan: Plan, end: CableEnd) -> float | None:
    """Return the cable inside a unit beyond its gland, none where nobody said it or there is no gland."""
    terminal = _terminal(plan, end)
    return terminal.tail if terminal and terminal.sort == "gland" and plan.rules.knows("gland-tail") else None


def doubts_of(plan: Plan, cable: Cable, ends: tuple[EndWork, EndWork]) -> Iterator[str]:
    """Yield a note for each loop without a length and each tail that nobody gave."""
    for end, work in zip(cable.ends, ends, strict=True):
        if end.loop and loop_length(plan, cable, end.loop) is None:
            yield f"the {end.loop.sort} loop at {work.place} has no length: nothing is added"
        terminal = _terminal(plan, end)
        if terminal and terminal.sort == "gland" and terminal.tail is None and plan.rules.knows("gland-tail"):
            yield f"how long is the tail inside the gland of {work.place}? Nothing is added"


def _terminal(plan: Plan, end: CableEnd) -> Terminal | None:
    if not isinstance(end, TerminalEnd):
        return None
    return plan.kind_of(plan.components[end.component]).terminal(end.terminal)


def rope_doubts(plan: Plan, cable: Cable, ends: tuple[EndWork, EndWork]) -> Iterator[str]:
    """Yield why a cable must be measured again: a rope laid along its legs doesn't come to as much as they do."""
    if not plan.rules.knows("rope-against-legs"):
        return
    for end, work in zip(cable.ends, ends, strict=True):
        if isinstance(end, OffBoardEnd) and end.rope is not None:
            apart = 100 * abs(end.rope - end.length) / max(end.rope, end.length)
            if apart > plan.rules.value("rope-against-legs") + _NOISE:
                rope, legs = tidy_number(end.rope), tidy_number(end.length)
                yield f"a rope to {work.place} measured {rope} mm, its legs come to {legs}: measure again"


_NOISE = 1e-9
