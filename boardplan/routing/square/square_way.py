"""Square way: the least costly way of level and upright legs between two ends, its least leg lengths exact.

A search (A*, by Hart, Nilsson and Raphael 1968) whose states are corners, each with the axis on which the way goes
on, and whose steps are whole legs; so a leg that is too short for its bends is never considered.
"""

import heapq
import math
from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TypeAlias

from boardplan.routing.square.least_left import BENT_SOON, CORNER, Goal, Table, least_left, least_length
from boardplan.routing.square.open_lines import FAR, WEIGHT, Barrier, Body, OpenLines, Span, Spot

BEND_ROOM = 1 - math.sqrt(0.5)
"""How far off a body both lines of a square corner lie for the bend to clear it, in radii."""
Turning: TypeAlias = tuple[dict[int, list[Span]], dict[int, list[Span]]]
"""For x of upright and y of level lines to turn on, the stretches of which a leg must touch one, if there are any."""
Corner: TypeAlias = tuple[int, int, int, int, int]
LegLine: TypeAlias = tuple[int, int, int]
_Near: TypeAlias = list[Body]


@dataclass(frozen=True, slots=True)
class Ray:
    """A first leg out of an end, in units: from a spot along an axis, `sign` 1 or -1.

    It can be `reach` long, and must stay straight for `straight` before a bend begins, for `roomy` where there is room
    for that; `cost` is what it costs before it starts.
    """

    spot: Spot
    axis: int
    sign: int
    reach: int
    straight: int
    cost: int = 0
    roomy: int = 0

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

    def first_corner(self, lines: OpenLines, radius: int) -> tuple[Spot, int]:
        """Return the nearest spot for a corner, and what it costs to get there."""
        spot = self.ahead(self.straight + radius)
        return spot, self.cost + lines.cost(self.axis, self.line, self.at, spot[self.axis])


@dataclass(frozen=True, slots=True)
class Found:
    """A way as its spots in units, what it costs, and which rays it begins and ends with."""

    spots: tuple[Spot, ...]
    cost: int
    start: int
    end: int


class Search:
    """One search: what is open, the rays of both ends, the bend radius in units, the lines to turn on.

    A corner is the numbers of its x and its y among the lines to turn on, the axis on which the way goes on, the
    sign it came with on the other axis, and what else keeps it apart from others. `near` is what bends must clear; the
    bends next to an end need not clear its owner.
    """

    def __init__(
        self,
        lines: OpenLines,
        rays: tuple[Sequence[Ray], Sequence[Ray]],
        radius: int,
        turning: Turning,
        near: Sequence[Barrier],
        owners: tuple[str, str],
    ) -> None:
        """Give the lines to turn on numbers."""
        self._lines, self._radius, self._owners = lines, radius, owners
        self._starts, self._ends = rays
        self._touched = turning[1], turning[0]
        self._places = sorted(turning[0]), sorted(turning[1])
        self._numbers = tuple({place: number for number, place in enumerate(each)} for each in self._places)
        self._near = [each.body for each in near]
        self._near_x: dict[int, _Near] = {}
        self._best: dict[Corner, tuple[int, Corner]] = {}
        self._heap: list[tuple[int, int, Corner]] = []
        self._bound = FAR * WEIGHT
        self._reached: tuple[int, Corner, int] | None = None
        self._left: tuple[Table, Table] = ({}, {})

    def run(self, bound: int) -> Found | None:
        """Return the best way that costs no more than a bound, none where there is no such way."""
        self._bound = bound
        self._left = least_left(self._places, self._goals(), self._lines)
        self._leave_all()
        while self._heap:
            estimate, cost, corner = heapq.heappop(self._heap)
            if estimate > self._bound:
                break
            if cost == self._best[corner][0]:
                self._go_on(cost, corner)
        return self._traced() if self._reached else None

    def _goals(self) -> list[Goal]:
        """Return where the last legs must have begun at the latest."""
        return [
            Goal(spot, ray.axis, ray.sign, cost)
            for ray in self._ends
            for spot, cost in (ray.first_corner(self._lines, self._radius),)
        ]

    def shut_in(self, most: int) -> bool:
        """Say whether nothing leads from the starts to an end, which is certain where few corners can be reached.

        Gives up after `most` corners and says no.
        """
        nothing = [0] * max(map(len, self._places))
        self._left = (
            dict.fromkeys(range(len(self._places[1])), nothing),
            dict.fromkeys(range(len(self._places[0])), nothing),
        )
        self._leave_all()
        for _ in range(most):
            if self._reached or not self._heap:
                return self._reached is None
            _, cost, corner = heapq.heappop(self._heap)
            if cost == self._best[corner][0]:
                self._go_on(cost, corner)
        return False

    def _leave_all(self) -> None:
        for index, ray in enumerate(self._starts):
            self._leave(index, ray)

    def _leave(self, index: int, ray: Ray) -> None:
        """Take every first leg along a ray: straight into the other end, or to a corner."""
        mark = (index - len(self._starts), 0, 0, 0, 0)
        for number, goal in enumerate(self._ends):
            if goal.axis == ray.axis and goal.line == ray.line and goal.sign == -ray.sign:
                distance = (goal.at - ray.at) * ray.sign
                if ray.straight + goal.straight <= distance <= ray.reach + goal.reach:
                    cost = self._lines.cost(ray.axis, ray.line, ray.at, goal.at)
                    self._reach(ray.cost + cost + goal.cost, mark, number)
        leg, sign = (ray.axis, ray.line, ray.at), ray.sign
        first, roomy, last = (ray.at + sign * (each + self._radius) for each in (ray.straight, ray.roomy, ray.reach))
        if ray.roomy > ray.straight:
            self._corners(mark, ray.cost + BENT_SOON, leg, (first, min(roomy - sign, last, key=sign.__mul__)), sign)
        self._corners(mark, ray.cost, leg, (max(first, roomy, key=sign.__mul__), last), sign)

    def _go_on(self, cost: int, corner: Corner) -> None:
        """Take every leg that starts at a corner."""
        axis = corner[2]
        at, line = self._places[axis][corner[axis]], self._places[1 - axis][corner[1 - axis]]
        owner = self._owners[0] if self._best[corner][1][0] < 0 else "-"
        for number, goal in enumerate(self._ends):
            if goal.axis == axis and goal.line == line:
                distance = (at - goal.at) * goal.sign
                fits = goal.straight <= distance - self._radius <= goal.reach
                if fits and self._bends(corner, -goal.sign, {owner, self._owners[1]}):
                    soon = BENT_SOON if distance - self._radius < goal.roomy else 0
                    self._reach(cost + self._lines.cost(axis, line, at, goal.at) + goal.cost + soon, corner, number)
        touched = self._touched[axis][line]
        for sign in (1, -1):
            span = self._lines.span(axis, line, at + sign * self._radius)
            first = _first_place(at, sign, 2 * self._radius, touched)
            if span is None or first is None:
                continue
            last = (span[1] if sign > 0 else span[0]) + sign * self._radius
            if (last - first) * sign >= 0 and self._bends(corner, sign, {owner}):
                self._corners(corner, cost, (axis, line, at), (first, last), sign)

    def _bends(self, corner: Corner, sign: int, spared: set[str]) -> bool:
        """Say whether the bend at a corner clears what is near, going on with a sign."""
        x, y, on, before, _ = corner
        near = self._near_x.get(x)
        at = self._places[0][x]
        if near is None:
            west, east = at - self._radius, at + self._radius
            near = self._near_x[x] = [
                each for each in self._near if each[0][0] - each[2] < east and each[0][1] + each[2] > west
            ]
        signs = (sign, -before) if on == 0 else (-before, sign)
        return bend_clears((at, self._places[1][y]), signs, self._radius, near, spared)

    def _corners(self, source: Corner, cost: int, leg: LegLine, stretch: Span, sign: int, apart: int = 0) -> None:
        """Note every corner on a leg's line (axis, line, start) from the first to the last place for one."""
        axis, line, at = leg
        row = self._numbers[1 - axis][line]
        places, left = self._places[axis], self._left[axis][row]
        leg_cost = self._lines.cost if self._lines.is_cheap(axis, line) else None
        best, heap, bound = self._best, self._heap, self._bound
        for number in numbers_between(places, *stretch, sign):
            place = places[number]
            length = leg_cost(axis, line, at, place) if leg_cost else WEIGHT * abs(place - at)
            new = cost + length + CORNER
            estimate = new + left[number]
            if estimate > bound:
                if estimate > bound + 2 * CORNER:
                    break  # farther along, no more than the corners still to come can become less
                continue
            corner = (number, row, 1, sign, apart) if axis == 0 else (row, number, 0, sign, apart)
            held = best.get(corner)
            if held is None or new < held[0]:
                best[corner] = (new, source)
                heapq.heappush(heap, (estimate, new, corner))
            elif new == held[0] and source < held[1]:
                best[corner] = (new, source)

    def _reach(self, cost: int, source: Corner, number: int) -> None:
        candidate = (cost, source, number)
        if cost <= self._bound and (self._reached is None or candidate < self._reached):
            self._reached, self._bound = candidate, cost

    def _traced(self) -> Found:
        """Return the way that reached the end best, from its first spot."""
        if self._reached is None:
            raise RuntimeError("no end was reached")
        cost, corner, number = self._reached
        index, spots = self._behind(corner)
        return Found((*spots, self._ends[number].spot), cost, index, number)

    def _behind(self, corner: Corner) -> tuple[int, list[Spot]]:
        """Return which ray the best way to a corner starts with, and its spots up to there."""
        spots = []
        while corner[0] >= 0:
            spots.append((self._places[0][corner[0]], self._places[1][corner[1]]))
            corner = self._best[corner][1]
        index = corner[0] + len(self._starts)
        return index, [self._starts[index].spot, *reversed(spots)]


def _first_place(at: int, sign: int, shortest: int, touched: Sequence[Span]) -> int | None:
    """Return the nearest place where a leg can end: long enough, and touching a stretch if there are any."""
    first = at + sign * shortest
    if not touched:
        return first
    if sign > 0:
        ahead = [low for low, high in touched if high >= at]
        return max(first, min(ahead)) if ahead else None
    ahead = [high for low, high in touched if low <= at]
    return min(first, max(ahead)) if ahead else None


def numbers_between(places: list[int], first: int, last: int, sign: int) -> Iterator[int] | range:
    """Return the numbers of the places of a stretch, in its order."""
    if sign > 0:
        return range(bisect_left(places, first), bisect_right(places, last))
    return range(bisect_right(places, first) - 1, bisect_left(places, last) - 1, -1)


def bend_clears(spot: Spot, signs: tuple[int, int], radius: int, near: Sequence[Body], spared: set[str]) -> bool:
    """Say whether a square bend clears boxes; `signs` are where its legs lie from its corner, along x and y.

    A box is too near to the arc if it is to one of the arc's ends, or if of what it holds of the quarter that the bend
    spans round its centre the nearest to the centre lies within radius and margin, the farthest not within their
    difference. Places are counted from the centre towards the corner.
    """
    (x, y), (sign_x, sign_y) = spot, signs
    for (west, east), (south, north), margin, thing in near:
        far_x = radius + (x - west if sign_x > 0 else east - x)
        far_y = radius + (y - south if sign_y > 0 else north - y)
        near_x = radius + (x - east if sign_x > 0 else west - x)
        near_y = radius + (y - north if sign_y > 0 else south - y)
        outer = radius + margin
        if far_x <= -margin or far_y <= -margin or near_x >= outer or near_y >= outer or thing in spared:
            continue
        if far_x > 0 and far_y > 0:
            inner = max(0, radius - margin)
            within = max(near_x, 0) ** 2 + max(near_y, 0) ** 2 < outer * outer
            if within and far_x * far_x + far_y * far_y > inner * inner:
                return False
        for at_x, at_y in ((radius, 0), (0, radius)):
            aside, above = max(near_x - at_x, at_x - far_x, 0), max(near_y - at_y, at_y - far_y, 0)
            if aside * aside + above * above < margin * margin:
                return False
    return True


def least_cost(rays: tuple[Sequence[Ray], Sequence[Ray]], radius: int, lines: OpenLines) -> tuple[int, int]:
    """Return what a way costs at least if nothing blocks it, and how many corners it has at least."""
    costs, corners = [], []
    for ray in rays[0]:
        for goal in rays[1]:
            cost, needed = _least_between(ray, goal, radius, lines)
            costs.append(cost + needed * CORNER)
            corners.append(needed)
    return min(costs), min(corners)


def _least_between(ray: Ray, goal: Ray, radius: int, lines: OpenLines) -> tuple[int, int]:
    """Return the least cost between two rays by the square without corners, and the corners it takes."""
    distance = (goal.at - ray.at) * ray.sign
    in_line = ray.axis == goal.axis and ray.line == goal.line and ray.sign == -goal.sign
    if in_line and distance >= ray.straight + goal.straight:
        return ray.cost + goal.cost + lines.cost(ray.axis, ray.line, ray.at, goal.at), 0
    (a, before), (b, after) = ray.first_corner(lines, radius), goal.first_corner(lines, radius)
    return before + after + least_length(a, b, lines), 2 if ray.axis == goal.axis else 1
