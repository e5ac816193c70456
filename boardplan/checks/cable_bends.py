"""Cable bends: whether every leg of a way has room for its bends, and for what stands straight at a terminal."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from math import isinf, radians, tan

from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, Where
from boardplan.checks.spots import CableSpot
from boardplan.geometry.bends import turns, without_repeats
from boardplan.geometry.point import Point, box_around
from boardplan.model.cable import CableEnd, TerminalEnd
from boardplan.model.plan import Plan
from boardplan.routing.route import Route

STRAIGHT = {"gland": "straight-at-gland", "clamp": "straight-at-clamp", "plug": "straight-at-plug"}
"""Which limit says how far a cable stands straight behind a sort of terminal."""
_DOUBLED_BACK = 175.0  # degrees: nothing bends round as far as that in a corner


def bends_have_room(site: Site, spot: CableSpot) -> Iterator[Finding]:
    """Yield a finding for the leg that is shortest of what it has to hold, at the least or the preferred radius."""
    if not isinstance(spot.way, Route):
        return
    corners = without_repeats(spot.way.points)
    bent = turns(corners)
    rule, diameter = site.plan.rules.bends[spot.conductor.construction], spot.conductor.outside_diameter
    ends = [straight_at(site.plan, spot, end) for end in spot.cable.ends]
    for name, limit, times in (
        ("bend-too-tight", site.limit("bend-room-least"), rule.least),
        ("bend-tighter-than-preferred", site.limit("bend-room-preferred"), rule.prefer),
    ):
        short = _shortest_of_need(corners, bent, ends, times * diameter)
        if short is None:
            continue
        start, end, length, need = short
        middle = Point((start.x + end.x) / 2, (start.y + end.y) / 2)
        where = Where((spot.id,), spot.board.id, middle, box_around((start, end)))
        words = _words(site, spot, length, need, times * diameter)
        yield site.finding(name, replace(limit, value=need), where, words, length)
        return


def bend_at_lug(site: Site, spot: CableSpot) -> Iterator[Finding]:
    """Yield a finding for each end where even the least bend begins too near behind the lug."""
    if not site.knows("straight-behind-lug") or not isinstance(spot.way, Route) or not spot.lugs:
        return
    corners = without_repeats(spot.way.points)
    bent = turns(corners)
    limit = site.limit("straight-behind-lug")
    radius = site.plan.rules.bends[spot.conductor.construction].least * spot.conductor.outside_diameter
    for end, leg, turn in zip(spot.cable.ends, (corners[:2], corners[:-3:-1]), (bent[:1], bent[-1:]), strict=True):
        stands = straight_at(site.plan, spot, end)
        if not turn or not stands or not _on_stud(site.plan, end):
            continue
        has = leg[0].distance_to(leg[1]) - stands - _tangent(radius, turn[0])
        if 0 <= has < limit.value - NOISE:
            words = (
                f"Cable {spot.id} has {{}} straight behind its lug at {_place(end)} before its bend, even with "
                f"radius {site.length(radius)}; {{}} is asked"
            ).format(*site.two_lengths(has, limit.value))
            yield site.finding(
                "bend-at-lug", limit, Where((spot.id,), spot.board.id, leg[0], box_around(leg)), words, has
            )


def _words(site: Site, spot: CableSpot, length: float, need: float, radius: float) -> str:
    if isinf(need):
        return f"Cable {spot.id} doubles back on itself, which no bend with radius {site.length(radius)} does"
    has, wants = site.two_lengths(length, need)
    return f"A leg of cable {spot.id} is {has} long; bends with radius {site.length(radius)} and its ends need {wants}"


def _shortest_of_need(
    corners: tuple[Point, ...], bent: tuple[float, ...], ends: list[float], radius: float
) -> tuple[Point, Point, float, float] | None:
    """Return the leg that lacks most, its length and its need, none where every leg has room."""
    held = [ends[0], *(_tangent(radius, turn) for turn in bent), ends[1]]
    legs = [(a, b, a.distance_to(b), held[index] + held[index + 1]) for index, (a, b) in enumerate(pairwise(corners))]
    lacking = [leg for leg in legs if leg[2] < leg[3] - NOISE]
    return max(lacking, key=lambda leg: leg[3] - leg[2], default=None)


def _tangent(radius: float, turn: float) -> float:
    """Return how far before a corner its bend begins: R tan(t/2); without end where the way doubles back."""
    return float("inf") if abs(turn) > _DOUBLED_BACK else radius * tan(radians(abs(turn)) / 2)


def _on_stud(plan: Plan, end: CableEnd) -> bool:
    terminal = (
        plan.kind_of(plan.components[end.component]).terminal(end.terminal) if isinstance(end, TerminalEnd) else None
    )
    return terminal is not None and terminal.sort == "stud"


def _place(end: CableEnd) -> str:
    return f"{end.component}.{end.terminal}" if isinstance(end, TerminalEnd) else end.exit


def straight_at(plan: Plan, spot: CableSpot, end: CableEnd) -> float:
    """Return what stands straight at an end, in mm: the lug up to its mouth, the stretch behind a gland or clamp."""
    if not isinstance(end, TerminalEnd):
        return 0.0
    terminal = plan.kind_of(plan.components[end.component]).terminal(end.terminal)
    if terminal is None:
        return 0.0
    if terminal.sort == "stud":
        return spot.conductor.lug.mouth if spot.conductor.lug else 0.0
    limit = STRAIGHT.get(terminal.sort)
    return plan.rules.value(limit) if limit else 0.0
