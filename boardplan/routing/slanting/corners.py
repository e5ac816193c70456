"""Free way corners: a way whose corners stand off the corners of what blocks, by how far a bend round them needs.

A search (A*, by Hart, Nilsson and Raphael 1968) over legs between such places. A leg is known with the tangent that the
bend before it takes of it, so that one too short for both its bends is never gone; lengths in mm, angles in radians.
"""

import heapq
import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from boardplan.geometry.bends import rounded
from boardplan.geometry.point import Box, Point
from boardplan.routing.slanting.room import Boxes, FreeRoom, open_to
from boardplan.routing.slanting.sights import sights
from boardplan.routing.square.ends import End

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

_TURNS = (45.0, 90.0)  # degrees of bends round a corner of what blocks
_FIRST_TURNS = (20.0, 45.0, 67.5, 90.0, 120.0)  # degrees of bends next to an end
_FARTHER = 6  # how many places farther out on the leg of an end, half a radius apart
_MOST_PLACES = 150
_MOST_LEGS = 4000
_MOST_TURN = math.radians(140.0)
_CORNER = 8.0
"""How much longer a way may be for one corner less, in mm. Common practice, no source."""
_NOISE = 1e-9
_BESIDE = 2e-3  # mm: what places stand off the boxes


@dataclass(frozen=True, slots=True)
class Leg:
    """A leg between two places by their numbers, what of it the start or the bend before it takes, and how it began."""

    start: int
    end: int
    taken: float
    cost: float
    before: "Leg | None"


class CornerSearch:
    """One search between two ends; the first place is the first end, the last one the other."""

    def __init__(self, room: FreeRoom, radius: float, *, along: bool = False) -> None:
        """Work out which places see each other; `along` takes those in line with sides, for narrow gaps."""
        import numpy as np  # noqa: PLC0415 - slow to load

        self._room, self._radius = room, radius
        rays = [_on_leg(end, radius) for end in room.ends]
        between = _between(room, _aways(radius, along=along), _MOST_PLACES - sum(map(len, rays)))
        self._places = (room.ends[0].point, *rays[0], *between, *rays[1], room.ends[1].point)
        self._last = len(self._places) - 1
        at = np.array(self._places)
        steps = at[None, :] - at[:, None]
        self._lengths, self._bearings = np.hypot(steps[..., 0], steps[..., 1]), np.arctan2(steps[..., 1], steps[..., 0])
        self._seen = sights(at, at, room.all) & (self._lengths > _NOISE)
        self._see_ends((len(rays[0]), len(rays[1])))
        self._left = self._least_left()

    def _see_ends(self, counts: tuple[int, int]) -> None:
        """Let ends see what their first legs lead to, and nothing else see the ends."""
        import numpy as np  # noqa: PLC0415 - slow to load

        at, last = np.array(self._places), self._last
        first, final = self._room.ends
        seen = self._seen
        seen[0, :], seen[:, last], seen[:, 0], seen[last, :] = False, False, False, False
        starts = range(1, last) if first.heading is None else range(1, 1 + counts[0])
        finals = range(1, last) if final.heading is None else range(last - counts[1], last)
        seen[0, starts] = sights(at[:1], at[starts], self._room.first)[0]
        seen[finals, last] = sights(at[finals], at[last:], self._room.last)[:, 0]

    def _least_left(self) -> list[float]:
        """Return how far it is to the other end at least from every place, bends left out (E. W. Dijkstra 1959)."""
        import numpy as np  # noqa: PLC0415 - slow to load
        from scipy.sparse.csgraph import dijkstra  # noqa: PLC0415 - slow to load

        back = np.where(self._seen, self._lengths, np.inf).T
        left: list[float] = dijkstra(back, indices=[self._last])[0].tolist()
        return left

    def run(self) -> tuple[Point, ...] | None:
        """Return the corners of the shortest way over these places, none where there is none."""
        heap: list[tuple[float, int, Leg]] = []
        first = self._room.ends[0]
        for count, place in enumerate(self._seen[0].nonzero()[0].tolist()):
            leg = Leg(0, place, first.straight, float(self._lengths[0, place]), None)
            heap.append((leg.cost + self._left[place], -count, leg))
        heapq.heapify(heap)
        least_taken: dict[tuple[int, int], float] = {}
        count = looked_at = 0
        while heap and looked_at < _MOST_LEGS:
            estimate, _, leg = heapq.heappop(heap)
            if math.isinf(estimate):
                return None
            looked_at += 1
            key = leg.start, leg.end
            if leg.taken >= least_taken.get(key, math.inf) - _NOISE or not self._bend_open(leg):
                continue
            least_taken[key] = leg.taken
            if leg.end == self._last:
                points = self._traced(leg)
                if self._room.clears(points, self._radius):
                    return points
                continue
            for after in self._after(leg):
                count += 1
                heapq.heappush(heap, (after.cost + self._left[after.end], count, after))
        return None

    def _after(self, leg: Leg) -> "Iterator[Leg]":
        """Yield the legs that can follow a leg, as far as both hold the bend between them."""
        import numpy as np  # noqa: PLC0415 - slow to load

        at = leg.end
        turn = np.abs((self._bearings[at] - self._bearings[leg.start, at] + math.pi) % (2 * math.pi) - math.pi)
        tangent = self._radius * np.tan(np.minimum(turn, _MOST_TURN) / 2)
        held = tangent.copy()
        held[self._last] += self._room.ends[1].straight
        room = self._lengths[leg.start, at] - leg.taken + _NOISE
        fits = self._seen[at] & (turn <= _MOST_TURN) & (tangent <= room) & (held <= self._lengths[at] + _NOISE)
        costs = leg.cost + self._lengths[at] - 2 * tangent + self._radius * turn + _CORNER * (turn > _NOISE)
        for place in fits.nonzero()[0].tolist():
            yield Leg(at, place, float(tangent[place]), float(costs[place]), leg)

    def _bend_open(self, leg: Leg) -> bool:
        """Say whether the bend at the start of a leg clears what it must."""
        if leg.before is None:
            return True
        points = [self._places[each] for each in (leg.before.start, leg.start, leg.end)]
        first, last = leg.before.start == 0, leg.end == self._last
        boxes: Boxes = self._room.only_bend if first and last else self._room.all
        if first != last:
            boxes = self._room.first_bend if first else self._room.last_bend
        return all(open_to(each, boxes) for each in rounded(points, self._radius)[-2:-1])

    def _traced(self, leg: Leg) -> tuple[Point, ...]:
        numbers, at = [leg.end], leg
        while at.before is not None:
            numbers.append(at.start)
            at = at.before
        return tuple(self._places[each] for each in (0, *reversed(numbers)))


def _on_leg(end: End, radius: float) -> list[Point]:
    """Return places for the first corner on the leg out of an end that has its direction."""
    if end.heading is None:
        return []
    shortest = end.straight + radius * math.tan(math.radians(10.0))
    aheads = [end.straight + radius * math.tan(math.radians(each) / 2) for each in _FIRST_TURNS]
    aheads += [shortest + radius * number / 2 for number in range(3, 3 + _FARTHER)]
    return [end.point.ahead(end.heading, ahead) for ahead in aheads]


def _between(room: FreeRoom, aways: "Sequence[tuple[float, float]]", most: int) -> "Sequence[Point]":
    """Return places off the corners of what blocks, those nearest to the straight line between the ends."""
    import numpy as np  # noqa: PLC0415 - slow to load

    a, b = room.ends[0].point, room.ends[1].point
    found: dict[Point, float] = {}
    for box in room.all:
        for place in _round(box, aways):
            found[place] = place.distance_to(a) + place.distance_to(b)
    nearest = sorted(found, key=lambda place: (found[place], place))[: 3 * most]
    if not nearest:
        return []
    x, y = (np.array(each)[:, None] for each in zip(*nearest, strict=True))
    left, bottom, right, top = np.array(room.all).T
    shut = ((left <= x) & (x <= right) & (bottom <= y) & (y <= top)).any(axis=1)
    return [each for each, is_shut in zip(nearest, shut.tolist(), strict=True) if not is_shut][:most]


def _aways(radius: float, *, along: bool) -> list[tuple[float, float]]:
    """Return how far aside and above a box's corners places stand: across, and where a bend ends as sides begin."""
    offs = [radius * (1 / math.cos(math.radians(turn) / 2) - 1) * math.sqrt(0.5) + _BESIDE for turn in _TURNS]
    if along:
        return [(offs[0], offs[0]), (radius, _BESIDE), (_BESIDE, radius)]
    return [(off, off) for off in offs]


def _round(box: Box, aways: "Sequence[tuple[float, float]]") -> "Iterator[Point]":
    """Yield places for corners round a box."""
    for x, sign_x in ((box.left, -1), (box.right, 1)):
        for y, sign_y in ((box.bottom, -1), (box.top, 1)):
            for aside, above in aways:
                yield Point(x + sign_x * aside, y + sign_y * above)
