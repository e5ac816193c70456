"""Surroundings: what all cables of a plan have in common: what blocks, and the lanes along channels."""

from dataclasses import dataclass, field, replace
from functools import cached_property
from itertools import pairwise
from typing import TypeAlias

from boardplan.geometry.point import Point
from boardplan.model.plan import Plan
from boardplan.routing.reach import LaneLines
from boardplan.routing.route import InChannel
from boardplan.routing.square.blockers import Blocker, blockers_of
from boardplan.routing.square.ends import End
from boardplan.routing.square.lines_over import LinesOver
from boardplan.routing.square.low_things import LowThing, is_thin, low_things
from boardplan.routing.square.open_lines import UNITS, Lane, OpenLines, units
from boardplan.routing.square.rays import spot_of

_IN_LANE = {"channel": 1, "choose": 3}
"""What a unit of length costs in a channel, against WEIGHT outside: a cable meant for channels seeks them more."""
_Key: TypeAlias = tuple[float, str, tuple[InChannel, ...], tuple[Lane, ...]]
"""A diameter, "outside" or by which channels, what is full of them, and lanes beside their middle."""


@dataclass
class Surroundings:
    """What all cables of a plan have in common: what blocks, the lanes of channels, open lines already cut."""

    plan: Plan
    blockers: tuple[Blocker, ...]
    lanes: tuple[tuple[str, Lane, float], ...]
    held: dict[_Key, OpenLines] = field(default_factory=dict)
    like: "tuple[Surroundings, frozenset[Blocker]] | None" = None
    """Others that differ from these in few blockers, and those."""

    def lines(self, diameter: float, way: str, full: tuple[InChannel, ...], ends: tuple[End, End]) -> OpenLines:
        """Return what is open to a cable of a diameter that goes "outside", or else by channels."""
        beside = () if way == "outside" else self._beside(ends, diameter)
        key = diameter, way, full, beside
        if key not in self.held:
            others = self.like[0].held.get(key) if self.like else None
            self.held[key] = self._cut(key, (others, self.like[1]) if self.like and others else None)
        return self.held[key]

    @cached_property
    def over_fixings(self) -> "Surroundings | None":
        """The same for a cable that may lie over the heads of board fixings, none where there are no fixings."""
        kept = tuple(each for each in self.blockers if each.sort != "fixing")
        return replace(self, blockers=kept, held={}, like=None) if len(kept) < len(self.blockers) else None

    @cached_property
    def low(self) -> tuple[LowThing, ...]:
        """What thin cables may pass over where they find no other way."""
        return low_things(self.plan)

    def lines_over(self, diameter: float, ends: tuple[End, End]) -> tuple[LinesOver, tuple[LowThing, ...]] | None:
        """Return what is open to a thin cable outside and over low things, and those; none where it passes over none.

        Over the units that it ends on it doesn't pass.
        """
        if not is_thin(self.plan.rules, diameter):
            return None
        own = {end.owner for end in ends}
        low = tuple(each for each in self.low if each.thing not in own and each.takes(diameter))
        return (LinesOver(self.blockers, diameter / 2, low), low) if low else None

    def lane_lines(self, diameter: float, ends: tuple[End, End]) -> LaneLines:
        """Return the lines of all lanes that a cable may find, in mm."""
        lanes = [*(lane for _, lane, _ in self.lanes), *self._beside(ends, diameter)]
        levels, uprights = ({each.line / UNITS for each in lanes if each.axis == axis} for axis in (0, 1))
        return sorted(levels), sorted(uprights)

    def _cut(self, key: _Key, like: tuple[OpenLines, frozenset[Blocker]] | None) -> OpenLines:
        diameter, way, full, beside = key
        if way == "outside":
            return OpenLines(self.blockers, diameter / 2, like=like)
        square = {channel for channel, _, _ in self.lanes}
        kept = [each for each in self.blockers if each.sort != "channel" or each.thing not in square]
        lanes = [*(lane for _, lane, _ in self.lanes), *beside]
        closed = [part for each in full for part in self._stretch(each)]
        return OpenLines(kept, diameter / 2, lanes, closed, _IN_LANE[way], like)

    def _beside(self, ends: tuple[End, End], diameter: float) -> tuple[Lane, ...]:
        """Return lanes beside a centre line, where an end looks into a channel a little off its middle."""
        found = []
        for end in ends:
            if end.heading is None or end.heading % 90.0:
                continue
            axis = int(end.heading // 90.0) % 2
            line = spot_of(end.point)[1 - axis]
            found += [
                replace(lane, line=line)
                for _, lane, _ in self.lanes
                if lane.axis == axis and 0 < abs(line - lane.line) < lane.half - units(diameter)
            ]
        return tuple(dict.fromkeys(found))

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
        forward = any(units(a[lane.axis]) == lane.start for a, b in pairwise(points) if a < b)
        if forward:
            return Lane(
                lane.axis, lane.line, lane.start + units(start), lane.start + units(end), lane.half, lane.centre
            )
        return Lane(lane.axis, lane.line, lane.end - units(end), lane.end - units(start), lane.half, lane.centre)


def surroundings_of(plan: Plan) -> Surroundings:
    """Return what the cables of a plan have in common."""
    return Surroundings(plan, blockers_of(plan), _lanes(plan))


_MOST_CHANGED = 60  # blockers
_looked_at: list[Surroundings] = []


def remembered(around: Surroundings) -> Surroundings:
    """Return what the cables of a plan have in common, remembered for what becomes of the plan."""
    _looked_at.insert(0, around)
    del _looked_at[2:]
    return around


def changed_surroundings(plan: Plan) -> Surroundings:
    """Return what the cables of a plan have in common, sharing what is known of one that differs in little."""
    around = surroundings_of(plan)
    blockers = frozenset(around.blockers)
    for each in _looked_at:
        if each.lanes == around.lanes and each.plan.channels == plan.channels and each.plan.boards == plan.boards:
            differing = blockers.symmetric_difference(each.blockers)
            if len(differing) <= _MOST_CHANGED:
                return replace(around, like=(each, differing))
    return remembered(around)


def _lanes(plan: Plan) -> tuple[tuple[str, Lane, float], ...]:
    """Return channel, lane and distance along the centre line of every leg of the channels that lie square."""
    found: list[tuple[str, Lane, float]] = []
    for channel in sorted(plan.channels.values(), key=lambda each: each.id):
        points = [plan.on_wall(channel.board, each) for each in channel.line]
        legs = [_lane(a, b, channel.width / 2) for a, b in pairwise(points) if a != b]
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
            return Lane(axis, start[1 - axis], low, high, units(half), start[1 - axis])
    return None
