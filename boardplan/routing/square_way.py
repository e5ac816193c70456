"""Square way: the least costly way of level and upright legs between two ends, its least leg lengths exact.

A search (A*, by Hart, Nilsson and Raphael 1968) whose states are corners, each with the axis on which the way goes
on, and whose steps are whole legs; so a leg that is too short for its bends is never considered.
"""

import heapq
from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import TypeAlias

from boardplan.routing.open_lines import FAR, WEIGHT, Barrier, OpenLines, Span, Spot, units

CORNER = units(30) * WEIGHT
"""What a corner costs: a way with one corner less may be 30 mm longer. Common practice, no source."""
_Corner: TypeAlias = tuple[int, int, int, int]
_Leg: TypeAlias = tuple[int, int, int]


@dataclass(frozen=True, slots=True)
class Ray:
    """A first leg out of an end, in units: from a spot along an axis, `sign` 1 or -1.

    It can be `reach` long, and must stay straight for `straight` before a bend begins; `cost` is what it
    costs before it starts.
    """

    spot: Spot
    axis: int
    sign: int
    reach: int
    straight: int
    cost: int = 0

    @property
    def at(self) -> int:
        """Where it starts, along its axis."""
        return self.spot[self.axis]

    @property
    def line(self) -> int:
        """The line it runs on."""
        return self.spot[1 - self.axis]

    def ahead(self, distance: int) -> Spot:
        """Return the spot at a distance along it."""
        along = self.at + self.sign * distance
        return (along, self.line) if self.axis == 0 else (self.line, along)


@dataclass(frozen=True, slots=True)
class Found:
    """A way as its spots in units, what it costs, and which rays it begins and ends with."""

    spots: tuple[Spot, ...]
    cost: int
    start: int
    end: int


@dataclass
class Search:
    """One search: what is open, the rays of both ends, the bend radius in units, the lines to turn on.

    A corner is its x, its y, the axis on which the way goes on, and the sign it came with on the other axis.
    `near` is what bends must clear; the bends next to an end need not clear its owner.
    """

    lines: OpenLines
    starts: Sequence[Ray]
    ends: Sequence[Ray]
    radius: int
    turning: tuple[list[int], list[int]]
    near: Sequence[Barrier] = ()
    owners: tuple[str, str] = ("", "")
    weights: tuple[int, int] = (WEIGHT, WEIGHT)
    best: dict[_Corner, tuple[int, _Corner]] = field(default_factory=dict)
    heap: list[tuple[int, int, _Corner]] = field(default_factory=list)
    bound: int = 0
    reached: tuple[int, _Corner, int] | None = None

    def __post_init__(self) -> None:
        """Note for each end where its last leg must have begun at the latest, and the sides of what is near."""
        self._near = [(*each.sides, each.blocker.thing) for each in self.near]
        self._goals = [
            (
                *ray.ahead(ray.straight + self.radius),
                ray,
                (ray.straight + self.radius) * self.weights[ray.axis] + ray.cost,
            )
            for ray in self.ends
        ]

    def run(self, bound: int) -> Found | None:
        """Return the best way that costs no more than a bound, none where there is no such way."""
        self.best.clear()
        self.heap.clear()
        self.bound, self.reached = bound, None
        for index, ray in enumerate(self.starts):
            self._leave(index, ray)
        while self.heap:
            estimate, cost, corner = heapq.heappop(self.heap)
            if estimate > self.bound:
                break
            if cost == self.best[corner][0]:
                self._go_on(cost, corner)
        return self._traced() if self.reached else None

    def shut_in(self, most: int) -> bool:
        """Say whether nothing leads from the starts to an end, which is certain where few corners can be reached.

        Gives up after `most` corners and says no.
        """
        self.best.clear()
        self.heap.clear()
        self.bound, self.reached = FAR * WEIGHT, None
        for index, ray in enumerate(self.starts):
            self._leave(index, ray)
        for _ in range(most):
            if self.reached or not self.heap:
                return self.reached is None
            _, cost, corner = heapq.heappop(self.heap)
            if cost == self.best[corner][0]:
                self._go_on(cost, corner)
        return False

    def _leave(self, index: int, ray: Ray) -> None:
        """Take every first leg along a ray: straight into the other end, or to a corner."""
        mark = (-FAR + index, 0, 0, 0)
        for number, goal in enumerate(self.ends):
            if goal.axis == ray.axis and goal.line == ray.line and goal.sign == -ray.sign:
                distance = (goal.at - ray.at) * ray.sign
                if ray.straight + goal.straight <= distance <= ray.reach + goal.reach:
                    self._reach(
                        ray.cost + self.lines.cost(ray.axis, ray.line, ray.at, goal.at) + goal.cost, mark, number
                    )
        first, last = ray.at + ray.sign * (ray.straight + self.radius), ray.at + ray.sign * ray.reach
        self._corners(mark, ray.cost, (ray.axis, ray.line, ray.at), (first, last), ray.sign)

    def _go_on(self, cost: int, corner: _Corner) -> None:
        """Take every leg that starts at a corner."""
        axis = corner[2]
        at, line = corner[axis], corner[1 - axis]
        span = self.lines.span(axis, line, at)
        if span is None:
            return
        owner = self.owners[0] if self._is_mark(self.best[corner][1]) else ""
        for number, goal in enumerate(self.ends):
            if goal.axis == axis and goal.line == line:
                distance = (at - goal.at) * goal.sign
                fits = self.radius + goal.straight <= distance <= goal.reach
                if fits and self._bends(corner, -goal.sign, {owner, self.owners[1]}):
                    self._reach(cost + self.lines.cost(axis, line, at, goal.at) + goal.cost, corner, number)
        for sign, last in ((1, span[1]), (-1, span[0])):
            first = at + sign * 2 * self.radius
            if (last - first) * sign >= 0 and self._bends(corner, sign, {owner}):
                self._corners(corner, cost, (axis, line, at), (first, last), sign)

    def _is_mark(self, corner: _Corner) -> bool:
        return corner[0] < -FAR + len(self.starts)

    def _bends(self, corner: _Corner, sign: int, spared: set[str]) -> bool:
        """Say whether the bend at a corner clears what is near, going on with a sign."""
        on, before = corner[2], corner[3]
        signs = (sign, -before) if on == 0 else (-before, sign)
        return bend_clears(corner[:2], signs, self.radius, self._near, spared)

    def _corners(self, source: _Corner, cost: int, leg: _Leg, stretch: tuple[int, int], sign: int) -> None:
        """Note every corner on a leg's line (axis, line, start) from the first to the last place for one."""
        axis, line, at = leg
        coordinates = self.turning[axis]
        pays = at + sign * self._farthest(cost, leg, sign)
        low, high = (stretch[0], min(stretch[1], pays)) if sign > 0 else (max(stretch[1], pays), stretch[0])
        best, leg_cost, least = self.best, self.lines.cost, self._least_from
        for place in coordinates[bisect_left(coordinates, low) : bisect_right(coordinates, high)]:
            corner = (place, line, 1, sign) if axis == 0 else (line, place, 0, sign)
            new = cost + leg_cost(axis, line, at, place) + CORNER
            held = best.get(corner)
            if held is None or new < held[0]:
                estimate = new + least(corner)
                if estimate <= self.bound:
                    best[corner] = (new, source)
                    heapq.heappush(self.heap, (estimate, new, corner))
            elif new == held[0] and source < held[1]:
                best[corner] = (new, source)

    def _farthest(self, cost: int, leg: _Leg, sign: int) -> int:
        """Return how far along a leg a corner can pay: beyond, even the least way from there costs too much."""
        axis, line, at = leg
        weight, aside = self.weights[axis], self.weights[1 - axis]
        farthest = -1
        for goal_x, goal_y, _, last in self._goals:
            goal = (goal_x, goal_y)
            left = self.bound - cost - CORNER - last - aside * abs(line - goal[1 - axis])
            towards = (goal[axis] - at) * sign
            spare = left - weight * abs(towards)
            if spare >= 0:
                farthest = max(farthest, max(towards, 0) + spare // (2 * weight))
        return farthest

    def _reach(self, cost: int, source: _Corner, number: int) -> None:
        candidate = (cost, source, number)
        if cost <= self.bound and (self.reached is None or candidate < self.reached):
            self.reached, self.bound = candidate, cost

    def _least_from(self, corner: _Corner) -> int:
        """Return what it takes at least from a corner into any end: length by the square and corners."""
        x, y, axis, _ = corner
        across_x, up_y = self.weights
        least = FAR * WEIGHT
        for goal_x, goal_y, ray, last in self._goals:
            along, across = (x - goal_x, y - goal_y) if ray.axis == 0 else (y - goal_y, x - goal_x)
            behind = along * ray.sign >= 0
            corners = 3 - 2 * behind if axis != ray.axis else 2 * (not behind or across != 0)
            length = abs(x - goal_x) * across_x + abs(y - goal_y) * up_y + last
            least = min(least, length + corners * CORNER)
        return least

    def _traced(self) -> Found:
        """Return the way that reached the end best, from its first spot."""
        if self.reached is None:
            raise RuntimeError("no end was reached")
        cost, corner, number = self.reached
        spots = [self.ends[number].spot]
        while not self._is_mark(corner):
            spots.append(corner[:2])
            corner = self.best[corner][1]
        index = corner[0] + FAR
        spots.append(self.starts[index].spot)
        return Found(tuple(reversed(spots)), cost, index, number)


def bend_clears(
    spot: Spot, signs: tuple[int, int], radius: int, near: Sequence[tuple[Span, Span, str]], spared: set[str]
) -> bool:
    """Say whether a square bend clears boxes; `signs` are where its legs lie from its corner, along x and y.

    A box that reaches into the square of the bend's tangents blocks it if its nearest point to the corner
    lies between the corner and the arc.
    """
    (x, y), (sign_x, sign_y) = spot, signs
    left, right = (x, x + radius) if sign_x > 0 else (x - radius, x)
    bottom, top = (y, y + radius) if sign_y > 0 else (y - radius, y)
    for (west, east), (south, north), thing in near:
        if west < right and east > left and south < top and north > bottom and thing not in spared:
            aside = radius - max(0, west - x if sign_x > 0 else x - east)
            above = radius - max(0, south - y if sign_y > 0 else y - north)
            if aside * aside + above * above > radius * radius:
                return False
    return True


def least_cost(starts: Sequence[Ray], ends: Sequence[Ray], radius: int, weights: tuple[int, int]) -> tuple[int, int]:
    """Return what a way costs at least if nothing blocks it, and how many corners it has at least.

    `weights` are what a unit along x and along y costs at least.
    """
    costs, corners = [], []
    for ray in starts:
        for goal in ends:
            length, needed = _least_between(ray, goal, radius, weights)
            costs.append(ray.cost + goal.cost + length + needed * CORNER)
            corners.append(needed)
    return min(costs), min(corners)


def _least_between(ray: Ray, goal: Ray, radius: int, weights: tuple[int, int]) -> tuple[int, int]:
    """Return the least weighed length between two rays by the square, and the corners it takes."""
    distance = (goal.at - ray.at) * ray.sign
    in_line = ray.axis == goal.axis and ray.line == goal.line and ray.sign == -goal.sign
    if in_line and distance >= ray.straight + goal.straight:
        return distance * weights[ray.axis], 0
    first, last = ray.straight + radius, goal.straight + radius
    a, b = ray.ahead(first), goal.ahead(last)
    length = first * weights[ray.axis] + last * weights[goal.axis]
    length += abs(a[0] - b[0]) * weights[0] + abs(a[1] - b[1]) * weights[1]
    return length, 2 if ray.axis == goal.axis else 1
