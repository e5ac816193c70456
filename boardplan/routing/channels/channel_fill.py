"""Channel fill: how full each stretch of a channel is, and where it is fullest.

Section fields: start, end (mm along the centre line), cables (ids), area (mm², of all jackets), percent, loaded (how
many conductors in it may carry current).
ChannelFill fields: channel, length (mm), inner_area (mm²), sections, fullest (Section or None where empty),
position (mm along the centre line where the fullest section begins), at (its place on the wall), percent,
cables, largest (cable id with the greatest outside diameter, ""), largest_diameter (mm), largest_percent (of the inner
height). Functions: channel_fills(plan, ways) -> {channel id: ChannelFill}; how_many_fit(room, each) -> how many equal
cables an area holds.
"""

import math
from bisect import insort
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise

from boardplan.geometry.bends import straight_length
from boardplan.geometry.point import Point, bearing
from boardplan.model.channel import Channel
from boardplan.model.plan import Plan
from boardplan.routing.route import Route, Way


@dataclass(frozen=True, slots=True)
class Section:
    """A stretch of a channel that holds the same cables all along.

    `loaded` is how many conductors may carry current: every core of every cable but signal leads. A plan doesn't say
    which core is the protective one, so that it counts too. Signal conductors don't count: NEC 376.22(B).
    """

    start: float
    end: float
    cables: tuple[str, ...]
    area: float
    percent: float
    loaded: int = 0


@dataclass(frozen=True, slots=True)
class ChannelFill:
    """How full a channel is: its sections one after the other, and the fullest of them."""

    channel: str
    length: float
    inner_area: float
    sections: tuple[Section, ...]
    fullest: Section | None
    at: Point
    largest: str = ""
    largest_diameter: float = 0.0
    largest_percent: float = 0.0

    @property
    def position(self) -> float:
        """Where the fullest section begins, in mm along the centre line."""
        return self.fullest.start if self.fullest else 0.0

    @property
    def percent(self) -> float:
        """How full the fullest section is."""
        return self.fullest.percent if self.fullest else 0.0

    @property
    def cables(self) -> tuple[str, ...]:
        """The cables of the fullest section."""
        return self.fullest.cables if self.fullest else ()

    @property
    def most_loaded(self) -> int:
        """How many conductors may carry current in the section where they are most."""
        return max((each.loaded for each in self.sections), default=0)

    def more_that_fit(self, outside_diameter: float, most: float) -> int:
        """Return how many more cables of a diameter (mm) go in all along, up to a share in percent of the inside."""
        held = self.fullest.area if self.fullest else 0.0
        return how_many_fit(self.inner_area * most / 100 - held, jacket_area(outside_diameter))


def jacket_area(outside_diameter: float, count: int = 1) -> float:
    """Return the cross-section of cables over their jackets in mm²: pi/4 d² each."""
    return math.pi / 4 * outside_diameter**2 * count


def how_many_fit(room: float, each: float, up_from: float = 1.0) -> int:
    """Return how many equal cables of an area go into a room, both in the same unit; none where it is overfull.

    A last one that only fits in part counts from a share `up_from` of itself on: 0.8 for equal conductors in a
    conduit (NEC Chapter 9, Note 7), never (1) in a channel.

    >>> how_many_fit(0.4 * 0.864, 0.0133), how_many_fit(0.4 * 0.864, 0.0133, up_from=0.8)
    (25, 26)
    """
    whole, left = divmod(room / each + _NOISE, 1.0)
    return max(0, int(whole) + (left >= up_from))


_NOISE = 1e-9
"""What a quotient of areas may be out by."""


def channel_fills(plan: Plan, ways: Mapping[str, Way]) -> dict[str, ChannelFill]:
    """Return how full every channel is, in the plan's order."""
    stretches: dict[str, list[tuple[float, float, str]]] = {each: [] for each in plan.channels}
    for way in ways.values():
        for part in way.in_channels if isinstance(way, Route) and way.cable in plan.cables else ():
            if part.channel in stretches:
                stretches[part.channel].append((part.start, part.end, way.cable))
    return {channel.id: _fill(plan, channel, stretches[channel.id]) for channel in plan.channels.values()}


def _fill(plan: Plan, channel: Channel, stretches: list[tuple[float, float, str]]) -> ChannelFill:
    length = straight_length(channel.line)
    sections = _sections(plan, channel, stretches, length)
    fullest = max(sections, key=lambda each: (round(each.area, 6), -each.start), default=None)
    fullest = fullest if fullest and fullest.cables else None
    inside = sorted({cable for _, _, cable in stretches})
    largest = max(inside, key=lambda each: (_diameter(plan, each), [-ord(sign) for sign in each]), default="")
    diameter = _diameter(plan, largest) if largest else 0.0
    along = fullest.start if fullest else 0.0
    return ChannelFill(
        channel=channel.id,
        length=length,
        inner_area=channel.inner_area,
        sections=sections,
        fullest=fullest,
        at=plan.on_wall(channel.board, point_along(channel.line, along)),
        largest=largest,
        largest_diameter=diameter,
        largest_percent=100 * diameter / channel.inner_height,
    )


def _loaded(plan: Plan, name: str) -> int:
    cable = plan.cables[name]
    return 0 if cable.cable_class == "signal" else plan.conductors[cable.conductor].cores * cable.count


def _diameter(plan: Plan, cable: str) -> float:
    return plan.conductors[plan.cables[cable].conductor].outside_diameter


def _sections(
    plan: Plan, channel: Channel, stretches: list[tuple[float, float, str]], length: float
) -> tuple[Section, ...]:
    """Return the stretches between any two places where a cable enters or leaves; those of no length left out."""
    areas = {each: jacket_area(_diameter(plan, each), plan.cables[each].count) for _, _, each in stretches}
    enter: dict[float, list[str]] = {0.0: [], length: []}
    leave: dict[float, list[str]] = {}
    for start, end, cable in stretches:
        enter.setdefault(start, []).append(cable)
        leave.setdefault(end, []).append(cable)
    inside: Counter[str] = Counter()
    names: list[str] = []
    found = []
    for start, end in pairwise(sorted(enter.keys() | leave.keys())):
        for cable in leave.get(start, ()):
            inside[cable] -= 1
            if not inside[cable]:
                names.remove(cable)
        for cable in enter.get(start, ()):
            inside[cable] += 1
            if inside[cable] == 1:
                insort(names, cable)
        if end - start > 1e-6:  # noqa: PLR2004 - no saw cuts finer
            area = math.fsum(map(areas.__getitem__, names))
            loaded = sum(_loaded(plan, each) for each in names)
            found.append(Section(start, end, tuple(names), area, 100 * area / channel.inner_area, loaded))
    return tuple(found)


def point_along(line: tuple[Point, ...], distance: float) -> Point:
    """Return the point at a distance along a line of legs, its last point beyond its end."""
    for a, b in pairwise(line):
        leg = a.distance_to(b)
        if distance <= leg and leg:
            return a.ahead(bearing(a, b), distance)
        distance -= leg
    return line[-1]
