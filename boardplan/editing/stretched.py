"""Stretched: the ways of cables drawn along with what is moved, until their true ways are worked out."""

from dataclasses import replace

from boardplan.editing.known import Known
from boardplan.editing.tools.hits import end_place
from boardplan.geometry.bends import without_repeats
from boardplan.geometry.point import Point, bearing, direction
from boardplan.model.cable import Cable, CableEnd, TerminalEnd
from boardplan.model.plan import Plan
from boardplan.routing.lengths.length_sum import CutLength
from boardplan.routing.route import Route

_STILL = Point(0.0, 0.0)
_ENDS = 2
_DRAWN_ALONG = "drawn along with what was moved, not worked out yet"


def drawn_along(known: Known, plan: Plan) -> Known:
    """Return what can be shown of a plan at once from what is known of an older one.

    Cables of moved things keep their corners and stretch to the new places of their ends; findings and fills
    stay as they were.
    """
    if known.plan is plan:
        return known
    ways = {name: way for name, way in known.ways.items() if name in plan.cables}
    gone = _gone_elsewhere(known.plan, plan)
    moved = {cable.id: way for cable in plan.cables.values() if (way := _stretched(known, plan, cable, gone))}
    ways.update(moved)
    lengths = {name: length for name, length in known.lengths.items() if name in plan.cables}
    lengths.update({name: _about(known, name, way) for name, way in moved.items() if name in lengths})
    clamps = {name: () if name in moved else each for name, each in known.clamps.items() if name in plan.cables}
    fills = {name: each for name, each in known.fills.items() if name in plan.channels}
    findings = known.findings
    if not all(each.board in plan.boards or not each.board for each in findings):
        findings = tuple(each for each in findings if each.board in plan.boards or not each.board)
    return Known(plan, ways, lengths, fills, findings, clamps, frozenset(moved) | known.stretched & ways.keys())


def _about(known: Known, name: str, way: Route) -> CutLength:
    """Return about how long a cable gets: as it was, and by how much its line has grown."""
    length, was = known.lengths[name], known.ways[name]
    if length.cut is None or not isinstance(was, Route):
        return length
    step = length.step or 1.0
    by = round((_along(way) - _along(was)) / step) * step
    return length if not by else replace(length, cut=length.cut + by, parts=(*length.parts, (_DRAWN_ALONG, by)))


def _along(way: Route) -> float:
    return sum(piece.length for piece in way.pieces)


def _gone_elsewhere(old: Plan, new: Plan) -> frozenset[str]:
    """Return the components and exits that may have gone elsewhere on the wall."""
    holders = ((old.components, new.components), (old.exits, new.exits))
    if old.boards is not new.boards or old.kinds is not new.kinds:
        return frozenset(name for _, now in holders for name in now)
    return frozenset(name for was, now in holders for name, each in now.items() if was.get(name) is not each)


def _stretched(known: Known, plan: Plan, cable: Cable, gone: frozenset[str]) -> Route | None:
    """Return the way of a cable stretched to where its ends are now, none where they are where they were."""
    was = known.plan.cables.get(cable.id)
    if was is None or (was is cable and gone.isdisjoint(holder for holder, *_ in _joins(cable))):
        return None
    way = known.ways.get(cable.id)
    if not isinstance(way, Route) or len(way.points) < _ENDS or _joins(was) != _joins(cable):
        return None
    shifts = tuple(_shift(known.plan, plan, end) for end in cable.ends)
    if cable.pins != was.pins and cable.pins:
        points = (way.points[0].moved(*shifts[0]), *cable.pins, way.points[-1].moved(*shifts[1]))
        return replace(way, points=points, source="pinned")
    if shifts == (_STILL, _STILL):
        return None
    return replace(way, points=stretched_line(way.points, *shifts))


def _joins(cable: Cable) -> tuple[tuple[str, ...], ...]:
    """Return what a cable joins: a component and its terminal, or an exit."""
    return tuple((end.component, end.terminal) if isinstance(end, TerminalEnd) else (end.exit,) for end in cable.ends)


def _shift(old: Plan, new: Plan, end: CableEnd) -> Point:
    """Return how far an end went on the wall; nowhere where one of the plans lacks it."""
    holder, things = (end.component, "components") if isinstance(end, TerminalEnd) else (end.exit, "exits")
    if not all(holder in getattr(plan, things) for plan in (old, new)):
        return _STILL
    return end_place(new, end).minus(end_place(old, end))


def stretched_line(points: tuple[Point, ...], first: Point, last: Point) -> tuple[Point, ...]:
    """Return a line of legs whose ends went by so much; its legs stay square, the corners next to the ends slide.

    >>> stretched_line((Point(0, 0), Point(0, 50), Point(80, 50)), Point(5, 9), Point(0, 0))
    (Point(x=5, y=9), Point(x=5.0, y=50.0), Point(x=80, y=50))
    """
    if first == last:
        return tuple(each.moved(*first) for each in points)
    if len(points) == _ENDS:
        return _jogged(points[0].moved(*first), points[1].moved(*last), bearing(*points))
    line = _slid(list(points), first, bearing(points[0], points[1]))
    line = _slid(line[::-1], last, bearing(points[-1], points[-2]))[::-1]
    return without_repeats(line)


def _slid(line: list[Point], by: Point, heading: float) -> list[Point]:
    """Return the line with its first point moved, and its first corner slid along, aside of the first heading."""
    aside = direction(heading + 90.0)
    across = by.x * aside[0] + by.y * aside[1]
    return [line[0].moved(*by), line[1].moved(aside[0] * across, aside[1] * across), *line[2:]]


def _jogged(start: Point, end: Point, towards: float) -> tuple[Point, ...]:
    """Return a line of what was one straight leg: with a square step in the middle where its ends are out of line."""
    along, aside = direction(towards), direction(towards + 90.0)
    apart = end.minus(start)
    half = (apart.x * along[0] + apart.y * along[1]) / 2
    across = apart.x * aside[0] + apart.y * aside[1]
    turn = start.moved(along[0] * half, along[1] * half)
    return without_repeats([start, turn, turn.moved(aside[0] * across, aside[1] * across), end])
