"""Dimensions: linear and running ones on a sheet, in the manner of ISO 129-1; all in millimetres of the page.

Values stand above their line or at the end of their extension line, read from below or from the right, carry no unit
(the sheet names it once) and never overlap: where stations lie close, their extension lines are bent aside.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from boardplan.drawing.picture import Anchor, Area, Disc, Line, Mark, Picture, Words, placed_picture
from boardplan.geometry.placement import Placement
from boardplan.geometry.point import Point
from boardplan.geometry.units import INCH, inches_text, tidy_number
from boardplan.model.job import Units
from boardplan.output.printing.lettering import FINE, Measure

_PARTS = 32
_NOISE = 1e-6
_FINE, _ARROW = 0.13, 2.2
_GAP, _PAST = 0.8, 1.4
"""How far an extension line stays off what is measured, and how far it runs past the dimension line."""
PITCH = FINE * 1.6
"""How close values of a running dimension may stand, in mm."""
_BEND = 2.6
_ALIKE = 0.3
"""Stations no farther apart on the page, in mm, of which the same is said, are one."""
_ORIGIN = Point(0, 0)


@dataclass(frozen=True, slots=True)
class Station:
    """What a running dimension leads to: a point of the page, and the value written for it."""

    at: Point
    text: str


def dimension_text(length: float, units: Units) -> str:
    """Return a length as dimensions state it: mm to 0.1, or inches to the nearest 1/32, without the unit.

    >>> dimension_text(46.0, "mm"), dimension_text(46.0, "inch")
    ('46', '1-13/16')
    """
    return inches_text(length) if units == "inch" else tidy_number(length)


def at_least_text(length: float, units: Units) -> str:
    """Return a length that must not be smaller as dimensions state it: in inches the next 1/32 up.

    >>> at_least_text(772.0, "inch"), at_least_text(771.2, "inch"), at_least_text(771.2, "mm")
    ('30-13/32', '30-3/8', '771.2')
    """
    parts = math.ceil(length / INCH * _PARTS - _NOISE)
    return dimension_text(parts * INCH / _PARTS if units == "inch" else length, units)


def units_words(units: Units) -> str:
    """Return which unit all dimensions of a sheet are in."""
    return "inches, to 1/32" if units == "inch" else "mm"


def linear_level(start: Point, end: Point, y: float, text: str, measure: Measure) -> Picture:
    """Return a linear dimension from left to right between two points, its line at a height on the page."""
    return tuple(_linear(start, end, y, text, measure))


def linear_upright(start: Point, end: Point, x: float, text: str, measure: Measure) -> Picture:
    """Return a linear dimension upwards between two points, its line at a place across the page."""
    own = _linear(_laid(start), _laid(end), -x, text, measure)
    return placed_picture(own, Placement(90, _ORIGIN))


def _laid(point: Point) -> Point:
    """Return a point turned a quarter clockwise, so that what runs upwards runs to the right."""
    return Point(point.y, -point.x)


def _linear(start: Point, end: Point, y: float, text: str, measure: Measure) -> Iterator[Mark]:
    if end.x < start.x:
        start, end = end, start
    for point in (start, end):
        yield _extension(point, y)
    left, right = Point(start.x, y), Point(end.x, y)
    wide, room = measure(text, FINE), end.x - start.x
    inside = room >= 2 * _ARROW + 1
    reach = 0.0 if inside else _ARROW + 1.5
    beside = wide > room - 1
    tail = wide + 1.5 if beside else 0.0
    yield Line((left.moved(-reach, 0), right.moved(max(reach, tail + _ARROW if beside else 0), 0)), "ink", _FINE)
    yield arrow(left, 180 if inside else 0)
    yield arrow(right, 0 if inside else 180)
    at = Point(right.x + _ARROW + 0.8, y + 0.8) if beside else Point((left.x + right.x) / 2, y + 0.8)
    yield Words(at, text, FINE, "ink", "start" if beside else "middle", centred=False)


def _extension(point: Point, y: float) -> Line:
    side = 1 if y >= point.y else -1
    return Line((point.moved(0, side * _GAP), Point(point.x, y + side * _PAST)), "ink", _FINE)


def arrow(tip: Point, towards: float) -> Area:
    """Return a filled arrowhead of about 30 degrees that points in a direction."""
    back = tip.ahead(towards + 180, _ARROW)
    half = _ARROW * 0.19
    return Area(((tip, back.ahead(towards + 90, half), back.ahead(towards - 90, half)),), "ink")


def running_level(origin: Point, stations: Sequence[Station], y: float, side: Literal["below", "above"]) -> Picture:
    """Return running dimensions from an origin to both sides along a level line; values on the side given."""
    outward = 1 if side == "above" else -1
    return tuple(_running(origin, stations, y, outward, 90))


def running_upright(origin: Point, stations: Sequence[Station], x: float, side: Literal["left", "right"]) -> Picture:
    """Return running dimensions from an origin upwards and downwards along an upright line."""
    outward = 1 if side == "left" else -1
    laid = [Station(_laid(each.at), each.text) for each in stations]
    own = _running(_laid(origin), laid, -x, outward, -90)
    return placed_picture(own, Placement(90, _ORIGIN))


def running_depth(stations: Sequence[Station], measure: Measure) -> float:
    """Return how much room running dimensions need beyond their line, in mm."""
    return _PAST + _BEND + max((measure(each.text, FINE) for each in stations), default=0.0) + 1


def _running(origin: Point, stations: Sequence[Station], y: float, outward: int, turn: float) -> Iterator[Mark]:
    every = sorted([Station(origin, "0"), *merged(stations, origin)], key=lambda each: each.at.x)
    places = spread([each.at.x for each in every], PITCH)
    bent = any(abs(place - each.at.x) > 0.01 for place, each in zip(places, every, strict=True))  # noqa: PLR2004
    ends = [every[0].at.x, every[-1].at.x]
    yield Line((Point(ends[0], y), Point(ends[1], y)), "ink", _FINE)
    yield Disc(Point(origin.x, y), 0.75, "paper", "ink", 0.18)
    anchor: Anchor = "end" if (turn > 0) == (outward < 0) else "start"
    for place, each in zip(places, every, strict=True):
        foot = Point(each.at.x, y)
        side = 1 if y >= each.at.y else -1
        if abs(y - each.at.y) > _GAP:
            yield Line((each.at.moved(0, side * _GAP), foot), "ink", _FINE)
        if each.at.x != origin.x:
            yield arrow(foot, 0 if each.at.x > origin.x else 180)
        knee = Point(place, y + outward * (_PAST + (_BEND if bent else 0)))
        near = Point(each.at.x, y + outward * 0.9)
        yield Line((foot if each.at.x != origin.x else foot.moved(0, outward * 0.75), near, knee), "ink", _FINE)
        yield Words(knee.moved(0, outward * 0.7), each.text, FINE, "ink", anchor, turn % 360)


def merged(stations: Sequence[Station], origin: Point) -> list[Station]:
    """Return stations without those at the origin, and without those of which another says the same."""
    kept: dict[float, Station] = {}
    for each in stations:
        alike = any(each.text == one.text and abs(each.at.x - one.at.x) < _ALIKE for one in kept.values())
        if round(each.at.x, 2) != round(origin.x, 2) and not alike:
            kept.setdefault(round(each.at.x, 2), each)
    return list(kept.values())


def spread(places: Sequence[float], pitch: float) -> list[float]:
    """Return places in rising order moved as little as need be to stand a pitch apart.

    Neighbours that are too close form a group about the mean of where its members want to be (pooled neighbours, as
    in isotonic regression, which makes the sum of the squared moves least).

    >>> spread([0, 1, 10], 3)
    [-1.0, 2.0, 10.0]
    """
    groups: list[tuple[float, int]] = []
    for index, place in enumerate(places):
        mean, count = place - index * pitch, 1
        while groups and groups[-1][0] > mean:
            before, many = groups.pop()
            mean, count = (before * many + mean * count) / (many + count), many + count
        groups.append((mean, count))
    flat = [mean for mean, count in groups for _ in range(count)]
    return [float(mean + index * pitch) for index, mean in enumerate(flat)]
