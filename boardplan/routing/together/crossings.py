"""Crossings: where the centre lines of two cables cross outside of channels, as they lie with their bends.

Lines that only touch, share an end, or lie on each other for a stretch don't cross there: that is another fault.
"""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import chain, combinations, product

from boardplan.geometry.bends import Bend, Straight
from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.plan import Plan
from boardplan.routing.route import Route, Way
from boardplan.routing.square.blockers import channel_rings

_CELL = 100.0  # mm: pieces are sought in square cells of the wall
_SAME = 0.01  # mm: nearer than this is the same place
_SQUARE = 10.0  # degrees: so far off a right angle still is a square crossing. Common practice, no source
_ALONG = 1.0  # degrees: lines that meet at less lie along each other
_QUARTER, _HALF, _WHOLE = 90.0, 180.0, 360.0


@dataclass(frozen=True, slots=True)
class Crossing:
    """A place on the wall where the centre lines of two cables cross, the lesser id first; `square` at right angles."""

    cables: tuple[str, str]
    at: Point
    square: bool


@dataclass(frozen=True, slots=True)
class _Piece:
    """A straight or a bend of a cable, and the box round it."""

    cable: str
    shape: Straight | Bend
    box: Box


def crossings_of(plan: Plan, ways: Mapping[str, Way]) -> tuple[Crossing, ...]:
    """Return where cables cross outside of channels, by cables and place."""
    channels = [_Room(ring) for channel in plan.channels.values() for ring in channel_rings(plan, channel)]
    routes = {name: way for name, way in ways.items() if isinstance(way, Route)}
    found: dict[tuple[str, str], list[Crossing]] = {}
    for one, other in _near_pairs(routes):
        names = one.cable, other.cable
        ends = [routes[name].points[index] for name in names for index in (0, -1)]
        for at in _meetings(one.shape, other.shape):
            angle = abs(_direction(one.shape, at) - _direction(other.shape, at)) % _HALF
            angle = min(angle, _HALF - angle)
            held = found.setdefault(names, [])
            known = any(at.distance_to(place) < _SAME for place in (*ends, *(each.at for each in held)))
            if angle >= _ALONG and not known and not any(each.holds(at) for each in channels):
                held.append(Crossing(names, at, square=angle >= _QUARTER - _SQUARE))
    return tuple(sorted((each for held in found.values() for each in held), key=lambda each: (each.cables, each.at)))


class _Room:
    """The outside of a straight leg of channel, and the box round it."""

    def __init__(self, ring: tuple[Point, ...]) -> None:
        self._box, (self._corner, along, _, aside) = box_around(ring), ring
        self._sides = along.minus(self._corner), aside.minus(self._corner)

    def holds(self, point: Point) -> bool:
        """Say whether a place lies inside."""
        if not self._box.holds(point):
            return False
        off = point.minus(self._corner)
        return all(0 <= off.x * side.x + off.y * side.y <= side.x**2 + side.y**2 for side in self._sides)


def _near_pairs(routes: Mapping[str, Route]) -> Iterator[tuple[_Piece, _Piece]]:
    """Yield the pieces of different cables whose boxes touch, each pair once, in the order of their ids."""
    pieces = [_Piece(name, shape, _box(shape)) for name in sorted(routes) for shape in routes[name].pieces]
    cells: dict[tuple[int, int], list[int]] = {}
    for number, piece in enumerate(pieces):
        left, bottom, right, top = (math.floor(side / _CELL) for side in piece.box)
        for column in range(left, right + 1):
            for row in range(bottom, top + 1):
                cells.setdefault((column, row), []).append(number)
    runs = [_run(piece.shape) for piece in pieces]
    pairs = {
        (a, b)
        for held in cells.values()
        for a, b in _apart_from_along(held, runs)
        if pieces[a].cable != pieces[b].cable and pieces[a].box.touches(pieces[b].box)
    }
    for a, b in sorted(pairs):
        yield pieces[a], pieces[b]


def _run(shape: Straight | Bend) -> str:
    """Return how a piece runs: "level", "upright" or "" for any other way."""
    if isinstance(shape, Bend):
        return ""
    return "level" if shape.start.y == shape.end.y else "upright" if shape.start.x == shape.end.x else ""


def _apart_from_along(held: list[int], runs: list[str]) -> Iterator[tuple[int, int]]:
    """Yield the pairs of some pieces, the lesser number first, without those that run along each other."""
    level, upright, other = ([each for each in held if runs[each] == run] for run in ("level", "upright", ""))
    for a, b in chain(product(level, upright), product(level + upright, other), combinations(other, 2)):
        yield (a, b) if a < b else (b, a)


def _box(shape: Straight | Bend) -> Box:
    """Return a box that holds a piece; round a bend that is no square one, that of its whole circle."""
    if isinstance(shape, Straight) or _is_square(shape):
        return box_around((shape.start, shape.end)).grown(_SAME / 2)
    return Box(*shape.centre, *shape.centre).grown(shape.radius + _SAME / 2)


def _is_square(bend: Bend) -> bool:
    """Say whether a bend leads from a level line to an upright one or back, and so stays in the box of its ends."""
    spokes = [each.minus(bend.centre) for each in (bend.start, bend.end)]
    return abs(bend.turn) < _QUARTER + _ALONG and all(min(abs(each.x), abs(each.y)) < _SAME / 2 for each in spokes)


def _meetings(one: Straight | Bend, other: Straight | Bend) -> list[Point]:
    """Return the places that two pieces share."""
    if isinstance(one, Straight):
        return _on_straight(one, other)
    if isinstance(other, Straight):
        return _on_straight(other, one)
    return [at for at in _of_circles(one, other) if _on_bend(one, at) and _on_bend(other, at)]


def _on_straight(line: Straight, other: Straight | Bend) -> list[Point]:
    if isinstance(other, Bend):
        return [at for at in _of_line_and_circle(line, other) if _on_bend(other, at)]
    a, b = line.end.minus(line.start), other.end.minus(other.start)
    area = a.x * b.y - a.y * b.x
    if abs(area) <= math.radians(_ALONG) * math.hypot(*a) * math.hypot(*b) / 2:
        return []
    off = other.start.minus(line.start)
    at = (off.x * b.y - off.y * b.x) / area
    beside = (off.x * a.y - off.y * a.x) / area
    within = all(
        -_SAME / 2 <= share * length <= length + _SAME / 2
        for share, length in ((at, math.hypot(*a)), (beside, math.hypot(*b)))
    )
    return [line.start.moved(a.x * at, a.y * at)] if within else []


def _of_line_and_circle(line: Straight, bend: Bend) -> list[Point]:
    """Return where a straight meets the circle of a bend: as far from the foot below its centre as Pythagoras says."""
    length = line.length
    along = line.end.minus(line.start)
    along = Point(along.x / length, along.y / length)
    off = bend.centre.minus(line.start)
    foot = off.x * along.x + off.y * along.y
    aside = off.x * along.y - off.y * along.x
    if abs(aside) >= bend.radius:
        return []
    half = math.sqrt(bend.radius**2 - aside**2)
    places = [foot - half, foot + half]
    return [line.start.moved(along.x * at, along.y * at) for at in places if -_SAME / 2 <= at <= length + _SAME / 2]


def _of_circles(one: Bend, other: Bend) -> list[Point]:
    """Return where the circles of two bends meet: on their common chord."""
    apart = one.centre.distance_to(other.centre)
    if not abs(one.radius - other.radius) < apart < one.radius + other.radius:
        return []
    foot = (apart**2 + one.radius**2 - other.radius**2) / (2 * apart)
    half = math.sqrt(max(0.0, one.radius**2 - foot**2))
    along = other.centre.minus(one.centre)
    x, y = along.x / apart, along.y / apart
    return [one.centre.moved(x * foot - y * aside, y * foot + x * aside) for aside in (half, -half)]


def _on_bend(bend: Bend, at: Point) -> bool:
    """Say whether a place on the circle of a bend lies on the bend."""
    slack = math.degrees(_SAME / 2 / bend.radius) if bend.radius else 0.0
    first, place = _bearing(bend.centre, bend.start), _bearing(bend.centre, at)
    gone = (place - first) % _WHOLE if bend.turn > 0 else (first - place) % _WHOLE
    return gone <= abs(bend.turn) + slack or gone >= _WHOLE - slack


def _direction(shape: Straight | Bend, at: Point) -> float:
    """Return the direction of a piece at a place on it, in degrees."""
    if isinstance(shape, Straight):
        return _bearing(shape.start, shape.end)
    return _bearing(shape.centre, at) + _QUARTER


def _bearing(start: Point, end: Point) -> float:
    return math.degrees(math.atan2(end.y - start.y, end.x - start.x))
