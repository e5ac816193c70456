"""One way: the way of a single cable among what blocks it, pinned or found, or why there is none."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from boardplan.geometry.bends import turn_between, without_repeats
from boardplan.geometry.point import Point, bearing
from boardplan.geometry.units import tidy_number
from boardplan.model.cable import Cable
from boardplan.model.conductor import Conductor
from boardplan.model.plan import Plan
from boardplan.routing.blockers import Blocker, blockers_of, channel_rings
from boardplan.routing.ends import End, ends_of
from boardplan.routing.in_channels import stretches_in_channels
from boardplan.routing.open_lines import UNITS, WEIGHT, Lane, OpenLines, units
from boardplan.routing.rays import Leaving, clear_between, leavings, turning_lines
from boardplan.routing.route import InChannel, NoWay, Route, Way
from boardplan.routing.square_way import Found, Search

_NEARLY = 10.0
"""Degrees a straight cable may leave askew of its terminals. Common practice, no source."""
_IN_LANE = {"channel": 1, "choose": 2}
"""What a unit of length costs in a channel, against WEIGHT outside: a cable meant for channels seeks them more."""
_WORTH = 60.0  # mm: a shorter stretch of channel is not worth lifting its cover for


@dataclass
class Surroundings:
    """What all cables of a plan have in common: what blocks, the lanes of channels, open lines already cut."""

    plan: Plan
    blockers: tuple[Blocker, ...]
    lanes: tuple[tuple[str, Lane, float], ...]
    held: dict[tuple[float, str, tuple[InChannel, ...]], OpenLines] = field(default_factory=dict)

    def lines(self, diameter: float, way: str, full: tuple[InChannel, ...] = ()) -> OpenLines:
        """Return what is open to a cable of a diameter that goes "outside", or else by channels."""
        key = diameter, way, full
        if key not in self.held:
            self.held[key] = self._cut(diameter, way, full)
        return self.held[key]

    def _cut(self, diameter: float, way: str, full: tuple[InChannel, ...]) -> OpenLines:
        if way == "outside":
            return OpenLines(self.blockers, diameter / 2)
        square = {channel for channel, _, _ in self.lanes}
        kept = [each for each in self.blockers if each.sort != "channel" or each.thing not in square]
        lanes = [lane for _, lane, _ in self.lanes]
        closed = [part for each in full for part in self._stretch(each)]
        return OpenLines(kept, diameter / 2, lanes, closed, _IN_LANE[way])

    def _stretch(self, full: InChannel) -> list[Lane]:
        """Return the stretch of a channel as lanes."""
        found = []
        for channel, lane, before in self.lanes:
            start = max(full.start, before)
            end = min(full.end, before + (lane.end - lane.start) / UNITS)
            if channel == full.channel and start < end:
                found.append(self._part(full.channel, lane, start - before, end - before))
        return found

    def _part(self, channel: str, lane: Lane, start: float, end: float) -> Lane:
        line = self.plan.channels[channel].line
        points = [self.plan.on_wall(self.plan.channels[channel].board, each) for each in line]
        forward = any(units(a[lane.axis]) == lane.start for a, b in zip(points, points[1:], strict=False) if a < b)
        if forward:
            return Lane(lane.axis, lane.line, lane.start + units(start), lane.start + units(end), lane.half)
        return Lane(lane.axis, lane.line, lane.end - units(end), lane.end - units(start), lane.half)


def surroundings_of(plan: Plan) -> Surroundings:
    """Return what the cables of a plan have in common."""
    return Surroundings(plan, blockers_of(plan), _lanes(plan))


def _lanes(plan: Plan) -> tuple[tuple[str, Lane, float], ...]:
    """Return channel, lane and distance along the centre line of every leg of the channels that lie square."""
    found: list[tuple[str, Lane, float]] = []
    for channel in sorted(plan.channels.values(), key=lambda each: each.id):
        points = [plan.on_wall(channel.board, each) for each in channel.line]
        legs = [_lane(a, b, channel.width / 2) for a, b in zip(points, points[1:], strict=False) if a != b]
        before = 0.0
        if None not in legs:
            for lane in legs:
                if lane is not None:
                    found.append((channel.id, lane, before))
                    before += (lane.end - lane.start) / UNITS
    return tuple(found)


def _lane(a: Point, b: Point, half: float) -> Lane | None:
    start, stop = (units(a.x), units(a.y)), (units(b.x), units(b.y))
    for axis in (0, 1):
        if start[1 - axis] == stop[1 - axis]:
            low, high = sorted((start[axis], stop[axis]))
            return Lane(axis, start[1 - axis], low, high, units(half))
    return None


def pinned_way(plan: Plan, cable: Cable) -> Route:
    """Return the way a person pinned: straight from corner to corner."""
    start, end = ends_of(plan, cable)
    points = without_repeats((start.point, *cable.pins, end.point))
    inside = () if cable.way == "outside" else stretches_in_channels(plan, points)
    return Route(cable.id, points, prefer_radius(plan, cable), inside, source="pinned", why="pinned by hand")


def prefer_radius(plan: Plan, cable: Cable) -> float:
    """Return the bend radius preferred for a cable, of its centre line in mm."""
    conductor = plan.conductors[cable.conductor]
    return plan.rules.bends[conductor.construction].prefer * conductor.outside_diameter


def found_way(around: Surroundings, cable: Cable, full: tuple[InChannel, ...] = ()) -> Way:
    """Return the best way of a cable that nobody pinned; `full` are stretches of channels it must not use."""
    way, why = way_meant(around.plan, cable)
    if way != "outside" and around.lanes:
        by_channel = _bent_as_it_fits(around, cable, way, full, "")
        if isinstance(by_channel, Route) and _worth(cable, by_channel):
            names = sorted({each.channel for each in by_channel.in_channels})
            why = f"through channel {' and '.join(names)}{by_channel.why}"
            return _with_why(by_channel, why)
        why = "outside: no channel lies on its way"
    elif way != "outside":
        why = "outside: there is no channel"
    outside = _bent_as_it_fits(around, cable, "outside", full, why)
    return outside if isinstance(outside, NoWay) else _with_why(outside, f"{why}{outside.why}")


def _with_why(way: Route, why: str) -> Route:
    return Route(way.cable, way.points, way.radius, way.in_channels, way.source, why, way.cost, way.full)


def _worth(cable: Cable, way: Route) -> bool:
    inside = sum(each.end - each.start for each in way.in_channels)
    return inside >= (_WORTH if cable.way == "choose" else 1.0)


def way_meant(plan: Plan, cable: Cable) -> tuple[str, str]:
    """Return "channel", "outside" or "choose" as it comes out for a cable, and why it must stay outside."""
    conductor = plan.conductors[cable.conductor]
    most = plan.rules.value("channel-largest-conductor")
    if cable.way != "choose":
        return cable.way, "outside as chosen" if cable.way == "outside" else ""
    if cable.cable_class in ("ac", "pv"):
        return "outside", f"outside: {cable.cable_class.upper()} stays out of channels"
    if conductor.area is not None and conductor.area > most:
        return "outside", f"outside: {conductor.area:g} mm² is more than the {most:g} mm² that go in a channel"
    return "choose", ""


def _bent_as_it_fits(
    around: Surroundings, cable: Cable, way: str, full: tuple[InChannel, ...], why: str
) -> Route | NoWay:
    """Return the way with the preferred bends, with the least ones where only those fit."""
    conductor = around.plan.conductors[cable.conductor]
    bend = around.plan.rules.bends[conductor.construction]
    lines = around.lines(conductor.outside_diameter, way, full)
    ends = ends_of(around.plan, cable)
    for factor in dict.fromkeys((bend.prefer, bend.least)):
        radius = factor * conductor.outside_diameter
        found = _straight(ends, lines, radius) or _square(ends, lines, radius)
        if found is not None:
            points, cost = found
            inside = () if way == "outside" else stretches_in_channels(around.plan, points)
            bent = "" if factor == bend.prefer else f", bent to {factor:g} x its diameter as no more fits"
            return Route(cable.id, points, radius, inside, why=bent, cost=cost, full=full)
    return NoWay(cable.id, "no way", ends[0].point)


def _straight(ends: tuple[End, End], lines: OpenLines, radius: float) -> tuple[tuple[Point, ...], float] | None:
    """Return the straight way between two ends that face each other, in line or nearly, with nothing between."""
    start, end = ends
    length = start.point.distance_to(end.point)
    if not length or length < start.straight + end.straight - 1e-6:  # noqa: PLR2004 - noise of coordinates
        return None
    heading = bearing(start.point, end.point)
    if not (_faces(start, heading) and _faces(end, heading + 180.0)):
        return None
    if lines.lanes and length > 2 * radius:
        return None
    if not clear_between(start.point, end.point, lines, ends):
        return None
    return (start.point, end.point), length


def _faces(end: End, heading: float) -> bool:
    wanted = end.heading if end.heading is not None else round(heading / 90.0) * 90.0
    return abs(turn_between(wanted, heading)) <= _NEARLY


def _square(ends: tuple[End, End], lines: OpenLines, radius: float) -> tuple[tuple[Point, ...], float] | None:
    starts, stops = (leavings(end, lines, radius) for end in ends)
    turning = turning_lines((*starts, *stops), lines, radius)
    search = Search(lines, [each.ray for each in starts], [each.ray for each in stops], units(radius), turning)
    found = search.run()
    if found is None:
        return None
    points = _points(found, ends, starts[found.start], stops[found.end])
    return without_repeats(points), found.cost / WEIGHT / UNITS


def _points(found: Found, ends: tuple[End, End], first: Leaving, last: Leaving) -> Sequence[Point]:
    """Return the corners in mm, on exactly the lines of the ends they belong to."""
    exact: Mapping[int, Mapping[int, float]] = _exact_lines(ends, first, last)
    points = [Point(exact[0].get(x, x / UNITS), exact[1].get(y, y / UNITS)) for x, y in found.spots]
    if first.stub is not None:
        points.insert(0, ends[0].point)
    if last.stub is not None:
        points.append(ends[1].point)
    return points


def _exact_lines(ends: tuple[End, End], first: Leaving, last: Leaving) -> tuple[dict[int, float], dict[int, float]]:
    known: tuple[dict[int, float], dict[int, float]] = {}, {}
    for end, leaving in zip(ends, (first, last), strict=True):
        for point in (end.point, leaving.stub):
            if point is not None:
                known[0].setdefault(units(point.x), point.x)
                known[1].setdefault(units(point.y), point.y)
    return known


_ = (Conductor, tidy_number, channel_rings)
