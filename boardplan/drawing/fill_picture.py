"""Fill picture: how full a channel is, section by section, as a level along it, with a line where the rule set ends it.

The level stands on the side of the channel that is right of its line. A quiet band says how much of the inner area
jackets take; where it is over the design limit it is hatched and says so, where it is over the most allowed it is
hatched closely and bears the square sign of what stops.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from boardplan.drawing.picture import Anchor, Area, Line, Mark, Picture, Words
from boardplan.drawing.rings import beside_line
from boardplan.drawing.words import readable_turn, width_of
from boardplan.geometry.bends import straight_length
from boardplan.geometry.point import Point, bearing
from boardplan.model.channel import Channel
from boardplan.routing.channels.channel_fill import ChannelFill, Section, point_along

_LEAST = 0.5
"""mm of level below which nothing is drawn."""
_HATCH = {"warn": 14.0, "stop": 7.0}


@dataclass(frozen=True, slots=True)
class FillLimits:
    """How full a channel should be and may be at most, in percent of its inner area; none where no rule says."""

    design: float | None
    most: float | None

    def severity(self, percent: float) -> str:
        """Return "stop", "warn" or nothing for a share of the inner area."""
        if self.most is not None and percent > self.most:
            return "stop"
        return "warn" if self.design is not None and percent > self.design else ""


def fill_picture(channel: Channel, fill: ChannelFill, limits: FillLimits) -> Picture:
    """Return the level in a channel, in the coordinates of its board; nothing where it is empty."""
    if fill.fullest is None or fill.fullest.percent <= 0:
        return ()
    marks: list[Mark] = []
    for section in fill.sections:
        marks += _level(channel, section, limits.severity(section.percent))
    marks += _surface(channel, fill.sections)
    if limits.design is not None and limits.design < 100:  # noqa: PLR2004 - of the whole channel
        line = beside_line(channel.line, _height(channel, limits.design))
        marks.append(Line(tuple(line), "body-ink", 0.6, (5.0, 3.0)))
        marks.append(_limit_words(channel, limits.design))
    return (*marks, *_figure(channel, fill.fullest, limits))


def _limit_words(channel: Channel, design: float) -> Words:
    """Return the design limit beside the beginning of its line."""
    start, next_one = channel.line[:2]
    towards = bearing(start, next_one)
    turn = readable_turn(towards, 0)
    height = max(3.0, channel.inner_width * 0.12)
    side = _height(channel, design) + height * 0.9
    at = start.ahead(towards, 4.0).ahead(towards + 90, side)
    anchor: Anchor = "start" if abs(turn - towards) < 1 or abs(turn - towards) > 359 else "end"  # noqa: PLR2004
    return Words(at, f"{design:g} %", height, "graphite-light", anchor=anchor, turn=turn)


def _height(channel: Channel, percent: float) -> float:
    """Return how far left of the channel's line a level stands."""
    return channel.inner_width * (min(percent, 100.0) / 100.0 - 0.5)


def _level(channel: Channel, section: Section, severity: str) -> Iterator[Mark]:
    high = channel.inner_width * min(section.percent, 100.0) / 100.0
    if high < _LEAST:
        return
    line = stretch_of_line(channel.line, section.start, section.end)
    floor = beside_line(line, -channel.inner_width / 2)
    top = beside_line(line, _height(channel, section.percent))
    ink = severity or "slate"
    yield Area(((*floor, *reversed(top)),), ink, opacity=0.42 if severity else 0.40)
    if severity:
        for index in range(len(line) - 1):
            yield from _hatching(floor[index], floor[index + 1], top[index], _HATCH[severity], ink)


def _hatching(start: Point, end: Point, over: Point, pitch: float, ink: str) -> Iterator[Mark]:
    """Yield slanted lines over one leg of a level."""
    length, high = start.distance_to(end), start.distance_to(over)
    towards, up = bearing(start, end), bearing(start, over)
    for number in range(int((length - high) // pitch) + 1 if length > high else 0):
        foot = start.ahead(towards, number * pitch)
        yield Line((foot, foot.ahead(towards, high).ahead(up, high)), ink, 0.8)


def _surface(channel: Channel, sections: Sequence[Section]) -> Iterator[Mark]:
    """Yield the top of the level as one line, up and down where cables enter and leave."""
    points: list[Point] = []
    for section in sections:
        points += beside_line(
            stretch_of_line(channel.line, section.start, section.end), _height(channel, section.percent)
        )
    if len(points) > 1:
        yield Line(tuple(points), "slate-dark", 0.9)


def _figure(channel: Channel, fullest: Section, limits: FillLimits) -> Iterator[Mark]:
    """Yield how full the fullest section is, in figures, with the sign and the word where that is too much."""
    severity = limits.severity(fullest.percent)
    height = max(5.0, min(15.0, channel.inner_width * 0.19))
    word = {"stop": " too full", "warn": " over the design"}.get(severity, "")
    text = f"{math.floor(fullest.percent + 0.5)} %{word}"
    at, turn = _figure_place(channel, fullest)
    if severity:
        sign = at.ahead(turn + 180, width_of(text, height) / 2 + height)
        yield _sign(sign, turn, height * 0.62, severity)
    yield Words(at, text, height, "body-ink", turn=turn, bold=bool(severity))


def _sign(at: Point, turn: float, half: float, severity: str) -> Area:
    """Return the square of what stops or the triangle of what warns."""
    corners = (45, 135, 225, 315) if severity == "stop" else (90, 210, 330)
    reach = half * (math.sqrt(2) * 0.86 if severity == "stop" else 1.1)
    return Area((tuple(at.ahead(turn + corner, reach) for corner in corners),), severity, "bone-light", 0.8)


def _figure_place(channel: Channel, section: Section) -> tuple[Point, float]:
    """Return where the figure stands: over the middle of the section's longest leg, clear of the channel's name."""
    line = stretch_of_line(channel.line, section.start, section.end)
    start, end = max(pairwise(line), key=lambda leg: leg[0].distance_to(leg[1]))
    towards = bearing(start, end)
    middle = start.ahead(towards, start.distance_to(end) / 2)
    return middle.ahead(towards + 90, channel.inner_width * 0.29), readable_turn(towards, 0)


def stretch_of_line(line: Sequence[Point], start: float, end: float) -> tuple[Point, ...]:
    """Return the part of a line of legs between two distances along it.

    >>> stretch_of_line((Point(0, 0), Point(50, 0), Point(50, 40)), 20, 60)
    (Point(x=20.0, y=0.0), Point(x=50, y=0), Point(x=50.0, y=10.0))
    """
    whole = tuple(line)
    far = min(end, straight_length(whole))
    corners, along = [], 0.0
    for a, b in pairwise(whole):
        along += a.distance_to(b)
        if start + _LEAST < along < far - _LEAST:
            corners.append(b)
    return (point_along(whole, start), *corners, point_along(whole, far))
