"""Passing: whether any way between two ends that touches a box costs no more than so much.

The search is that for the way itself, but each corner comes in two: before the way has touched the box, and after. Up
to then what is left counts by way of the box, so that little of the wall is looked at where the box lies off the way.
"""

import heapq
from functools import cached_property

from boardplan.routing.square.least_left import CORNER, Sides, Table, least_left
from boardplan.routing.square.open_lines import WEIGHT, Span
from boardplan.routing.square.square_way import Corner, LegLine, Search, numbers_between

_TOUCHED = 2
"""The sign of a corner is so many times as large once the way has touched the box."""


class Passing(Search):
    """A search among the same as one for the way itself, which ends with the first way that touches a box."""

    _box: Sides = ((0, 0), (0, 0))
    _left_past: tuple[Table, Table] = ({}, {})
    _passed = False

    @cached_property
    def _left_touched(self) -> tuple[Table, Table]:
        """What is left at least once the way has touched the box; few searches come so far."""
        return least_left(self._places, self._goals(), self._lines)

    def costs_at_most(self, bound: int, box: Sides) -> bool:
        """Say whether any way that touches a box, in units, costs no more than a bound."""
        self._bound, self._box = bound, box
        self._left_past = least_left(self._places, self._goals(), self._lines, self._box)
        self._leave_all()
        while self._heap and not self._passed:
            _, cost, corner = heapq.heappop(self._heap)
            if cost == self._best[corner][0]:
                self._go_on(cost, corner)
        return self._passed

    def _corners(self, source: Corner, cost: int, leg: LegLine, stretch: Span, sign: int, apart: int = 0) -> None:
        """Note every corner on a leg's line that can lead to a way which touches the box and costs little enough."""
        axis, line, at = leg
        row, places = self._numbers[1 - axis][line], self._places[axis]
        left_past, touched = self._left_past[axis][row], abs(source[3]) == _TOUCHED
        touch = None if touched else self._touching(axis, line, at, sign)
        leg_cost = self._lines.cost if self._lines.is_cheap(axis, line) else None
        for number in numbers_between(places, *stretch, sign):
            place = places[number]
            new = cost + CORNER + (leg_cost(axis, line, at, place) if leg_cost else WEIGHT * abs(place - at))
            now = touched or (touch is not None and (place - touch) * sign >= 0)
            estimate = new + (self._left_touched[axis][row][number] if now else left_past[number])
            if estimate > self._bound:
                if estimate > self._bound + 2 * CORNER:
                    break  # as in the search for the way itself
                continue
            mark = sign * _TOUCHED if now else sign
            corner = (number, row, 1, mark, apart) if axis == 0 else (row, number, 0, mark, apart)
            held = self._best.get(corner)
            if held is None or new < held[0]:
                self._best[corner] = (new, source)
                heapq.heappush(self._heap, (estimate, new, corner))

    def _touching(self, axis: int, line: int, at: int, sign: int) -> int | None:
        """Return from which place on a leg touches the box, none where it never does."""
        (low, high), (first, last) = self._box[1 - axis], self._box[axis]
        if not low <= line <= high or (at > last if sign > 0 else at < first):
            return None
        return max(at, first) if sign > 0 else min(at, last)

    def _reach(self, cost: int, source: Corner, number: int) -> None:
        """Note whether a way that has reached the end touches the box and costs little enough."""
        goal = self._ends[number]
        at = self._starts[source[0]].at if source[0] < 0 else self._places[goal.axis][source[goal.axis]]
        touch = self._touching(goal.axis, goal.line, at, -goal.sign)
        touched = abs(source[3]) == _TOUCHED or (touch is not None and (touch - goal.at) * goal.sign >= 0)
        self._passed = self._passed or (touched and cost <= self._bound)
