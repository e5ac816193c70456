"""Open lines: where along a level or upright line a cable's centre may run, in whole thousandths of a mm.

Whole numbers, so that equal ways cost exactly the same and the choice between them never hangs on float noise.
An axis is 0 for level lines (at a y, along x) and 1 for upright ones (at an x, along y).
"""

from bisect import bisect_right
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TypeAlias

from boardplan.geometry.point import Box
from boardplan.routing.reach import Boxes, Reach
from boardplan.routing.square.blockers import Blocker

UNITS = 1000
"""Units in a mm."""
WEIGHT = 4
"""What a unit of length costs outside of channels; less inside."""
Spot: TypeAlias = tuple[int, int]
Span: TypeAlias = tuple[int, int]
Body: TypeAlias = tuple[Span, Span, int, str]
"""What bends keep off: a box along x and y, how far off it a centre line stays, and the id of what it belongs to."""
_Stretches: TypeAlias = tuple[list[int], list[int]]
"""The starts and the ends of stretches of a line, in order."""
_Blocked: TypeAlias = dict[int, _Stretches]
FAR = 10**10
_MOST_KNOWN = 20_000  # lines
_STRIPE, _STRIPES = 200 * UNITS, 100
"""How wide the stripes are that what blocks is sorted into, and how many there are each way; the last has the rest."""


def units(length: float) -> int:
    """Return a length in mm as whole units."""
    return round(length * UNITS)


@dataclass(frozen=True, slots=True)
class Barrier:
    """A box in units, (left, right) and (bottom, top), that holds off centre lines; `bare` without the clearance."""

    sides: tuple[Span, Span]
    bare: tuple[Span, Span]
    blocker: Blocker
    box: Box

    @property
    def body(self) -> Body:
        """What bends keep off, all round: at a corner by a quarter circle."""
        return *self.bare, self.bare[0][0] - self.sides[0][0], self.blocker.thing

    def holds(self, spot: Spot) -> bool:
        """Say whether a spot lies strictly inside."""
        return all(low < at < high for at, (low, high) in zip(spot, self.sides, strict=True))


@dataclass(frozen=True, slots=True)
class Lane:
    """A straight line along a channel: axis, line, stretch; `half` is half the channel's width, all in units.

    `centre` is the channel's own centre line: a lane that leads straight into an end may lie beside it.
    """

    axis: int
    line: int
    start: int
    end: int
    half: int
    centre: int


class OpenLines:
    """What is open to one thickness of cable, outside of channels or with their lanes."""

    def __init__(
        self,
        blockers: Iterable[Blocker],
        half: float,
        lanes: Sequence[Lane] = (),
        closed: Sequence[Lane] = (),
        lane_weight: int = WEIGHT,
        like: "tuple[OpenLines, Iterable[Blocker]] | None" = None,
    ) -> None:
        """Keep what blocks a cable of half a diameter (mm); closed lanes can be crossed, but not run along.

        `barriers` are all that blocks, `turned_past` what ways turn past: along slanting sides in fewer boxes. With
        others `like` these but for some blockers they share what is known of all lines that those leave alone.
        """
        self.half = units(half)
        self.turned_past = [_barrier(each, each.box, half) for each in blockers]
        self.barriers = [
            held if not held.blocker.parts else _barrier(held.blocker, part, half)
            for held in self.turned_past
            for part in held.blocker.parts or (held.blocker.box,)
        ]
        self.bodies = [each.body for each in self.barriers]
        self.lanes = lanes
        self.lane_weight = lane_weight
        self._closed = closed
        self._beside = [_beside(lane, self.half) for lane in lanes]
        self._lines: tuple[_Blocked, _Blocked] = ({}, {})
        self._known: tuple[_Blocked, _Blocked] = like[0]._known if like else ({}, {})  # noqa: SLF001 - of its own kind
        self._changed = [
            _barrier(each, part, half).sides for each in (like[1] if like else ()) for part in each.parts or (each.box,)
        ]
        self._cheap: tuple[dict[int, list[Span]], ...] = ({}, {})
        for lane in lanes:
            self._cheap[lane.axis].setdefault(lane.line, []).append((lane.start, lane.end))
        self._stripes: tuple[dict[int, list[Barrier]], ...] = ({}, {})
        self.lane_lines = tuple(tuple(sorted(each)) for each in self._cheap)

    def near(self, reach: Reach, also: Box | None = None) -> list[Barrier]:
        """Return the barriers that ways within reach can touch; with `also` those of ways that touch that box, too."""
        return [self.barriers[number] for number in reach.touched(self._boxes[0], also)]

    def past(self, reach: Reach, also: Box | None = None) -> list[Barrier]:
        """Return what ways within reach can turn past, by that box as well where there is one."""
        return [self.turned_past[number] for number in reach.touched(self._boxes[1], also)]

    @cached_property
    def _boxes(self) -> tuple[Boxes, Boxes]:
        """Return the boxes of the barriers and of what ways turn past."""
        import numpy as np  # noqa: PLC0415 - slow to load

        both = [np.array([each.box for each in some]).reshape(-1, 4) for some in (self.barriers, self.turned_past)]
        return both[0], both[1]

    def without_bodies(self) -> "OpenLines":
        """Return the lines as if there were nothing but the boards."""
        edges = [each.blocker for each in self.turned_past if each.blocker.sort == "edge"]
        return OpenLines(edges, self.half / UNITS)

    def span(self, axis: int, line: int, at: int) -> Span | None:
        """Return how far a line is open both ways from a place on it, none where the place itself is blocked."""
        held = self._lines[axis].get(line)
        if held is None:
            held = self._lines[axis][line] = self._looked_up(axis, line)
        starts, ends = held
        index = bisect_right(starts, at)
        low = ends[index - 1] if index else -FAR
        if low > at:
            return None if starts[index - 1] < at else (ends[index - 2] if index > 1 else -FAR, at)
        return low, starts[index] if index < len(starts) else FAR

    def cost(self, axis: int, line: int, start: int, end: int) -> int:
        """Return what a leg costs: its length, less inside channels."""
        low, high = (start, end) if start < end else (end, start)
        cost = (high - low) * WEIGHT
        for first, last in self._cheap[axis].get(line, ()):
            inside = min(high, last) - max(low, first)
            if inside > 0:
                cost -= inside * (WEIGHT - self.lane_weight)
        return cost

    def is_cheap(self, axis: int, line: int) -> bool:
        """Say whether a line runs in a channel somewhere."""
        return line in self._cheap[axis]

    def barriers_at(self, axis: int, line: int) -> list[Barrier]:
        """Return what a line runs through."""
        other = 1 - axis
        held = self._striped(axis).get(_stripe(line), ())
        return [each for each in held if each.sides[other][0] < line < each.sides[other][1]]

    def bodies_round(self, spot: Spot, far: int) -> list[Body]:
        """Return what bends have to clear no farther from a spot than so much along both axes."""
        (west, east), (south, north) = ((at - far, at + far) for at in spot)
        striped = self._striped(1)
        held = [each for stripe in range(_stripe(west), _stripe(east) + 1) for each in striped.get(stripe, ())]
        return [
            each.body
            for each in held
            if each.sides[0][0] < east
            and west < each.sides[0][1]
            and each.sides[1][0] < north
            and south < each.sides[1][1]
        ]

    def _striped(self, axis: int) -> dict[int, list[Barrier]]:
        """Return the barriers sorted into stripes by what they hold off across an axis."""
        other, index = 1 - axis, self._stripes[axis]
        if not index:
            for each in self.barriers:
                low, high = each.sides[other]
                for stripe in range(_stripe(low), _stripe(high) + 1):
                    index.setdefault(stripe, []).append(each)
        return index

    def _looked_up(self, axis: int, line: int) -> _Stretches:
        """Return the starts and ends of the blocked stretches of a line, known where nothing on it has changed."""
        other, known = 1 - axis, self._known[axis]
        if any(sides[other][0] < line < sides[other][1] for sides in self._changed):
            return self._blocked(axis, line)
        if line not in known:
            if len(known) >= _MOST_KNOWN:
                known.clear()
            known[line] = self._blocked(axis, line)
        return known[line]

    def _blocked(self, axis: int, line: int) -> _Stretches:
        """Return the starts and ends of the blocked stretches of a line."""
        spans = [each.sides[axis] for each in self.barriers_at(axis, line)]
        for lane in self.lanes:
            if lane.axis == axis and lane.line == line:
                spans = _without(spans, lane.start, lane.end)
        for lane, (along, sides) in zip(self.lanes, self._beside, strict=True):
            if lane.axis == axis and any(low < line < high for low, high in sides):
                spans += [] if self.is_lane(lane, line) else [along]
        spans += [(lane.start, lane.end) for lane in self._closed if lane.axis == axis and lane.line == line]
        return _joined(spans)

    def is_lane(self, beside: Lane, line: int) -> bool:
        """Say whether a line is another lane of the same stretch of channel."""
        return any(
            (each.axis, each.line, each.centre, each.start) == (beside.axis, line, beside.centre, beside.start)
            for each in self.lanes
        )


def _barrier(blocker: Blocker, bare: Box, half: float) -> Barrier:
    """Return what a box of a blocker holds off for a cable of half a diameter, in mm."""
    box = bare.grown(half + blocker.clearance)
    return Barrier(_sides(box), _sides(bare), blocker, box)


def _stripe(at: int) -> int:
    """Return the number of the stripe that a place lies in."""
    return min(max(at // _STRIPE, -_STRIPES), _STRIPES)


def _sides(box: Box) -> tuple[Span, Span]:
    return (units(box.left), units(box.right)), (units(box.bottom), units(box.top))


def _beside(lane: Lane, half: int) -> tuple[Span, tuple[Span, Span]]:
    """Return where cables along a channel may not run: within its walls or by them, but not on its centre line."""
    reach = lane.half + half
    return (lane.start, lane.end), ((lane.centre - reach, lane.line), (lane.line, lane.centre + reach))


def _without(spans: list[Span], start: int, end: int) -> list[Span]:
    left = [(low, min(high, start)) for low, high in spans if low < start]
    return left + [(max(low, end), high) for low, high in spans if high > end]


def _joined(spans: list[Span]) -> tuple[list[int], list[int]]:
    starts: list[int] = []
    ends: list[int] = []
    for low, high in sorted(spans):
        if ends and low < ends[-1]:
            ends[-1] = max(ends[-1], high)
        else:
            starts.append(low)
            ends.append(high)
    return starts, ends
