"""Stirred: after a change, which ways must be laid beside each other again, and which still lie as they lay.

A way lies as before if what it would be alone is the same, the cables it belongs with lie as before, and no leg of
another cable and nothing that blocks has changed where it heeds that.
"""

from collections.abc import Mapping
from functools import cached_property
from typing import TypeAlias

from boardplan.geometry.point import Box
from boardplan.routing.changes import Changes
from boardplan.routing.route import Route, Way
from boardplan.routing.square.low_things import low_things
from boardplan.routing.square.open_lines import UNITS
from boardplan.routing.square.surroundings import Surroundings
from boardplan.routing.together.laid_legs import Leg, half_of, legs_of
from boardplan.routing.together.lying_order import Who, apart_of, lying_order

FARTHEST = 80.0
"""How far a leg moves aside at most, in mm."""


def alone(way: Way) -> Way:
    """Return the way a cable would take with no cable beside it."""
    return way.alone if isinstance(way, Route) and way.alone is not None else way


class Stirred:
    """The legs that lie otherwise than before a change, as far as that is known yet."""

    def __init__(
        self, around: Surroundings, old_ways: Mapping[str, Way], ways: Mapping[str, Way], changes: Changes
    ) -> None:
        """Take the legs of ways that are expected elsewhere; only for changes that leave channels and rules alone."""
        self._around, self._old_ways, self._changes = around, old_ways, changes
        self._apart = apart_of(around.plan)
        self._cells: dict[tuple[int, int], list[_Changed]] = {}
        before = {each.id: each for each in lying_order(changes.old)}
        now = {each.id: each for each in lying_order(around.plan)}
        self._before = before
        common = [name for name in now if name in before]
        self._reordered = common != [name for name in before if name in now]
        self._same = {
            name
            for name in common
            if alone(old_ways[name]) is ways[name]
            and not changes.of_cable(around.plan.cables[name])
            and _alike(before[name], now[name])
        }
        self._moved = {name for name in now.keys() | before.keys() if name not in self._same}
        for name in self._moved:
            self._expect(before.get(name), now.get(name), ways.get(name))

    def _expect(self, before: Who | None, now: Who | None, way: Way | None) -> None:
        """Take the legs of a cable that are expected otherwise than before; those of one that has no way any more."""
        old = self._legs(before, self._old_ways.get(before.id) if before else None, old=True, expected=True)
        new = self._legs(now, way, old=False, expected=True)
        self._take(before or now, old, new, alike=bool(before and now and _alike(before, now)))
        if before and not isinstance(way, Route):
            self._take(before, self._legs(before, self._old_ways.get(before.id), old=True, expected=False), set())

    def _legs(self, who: Who | None, way: Way | None, *, old: bool, expected: bool) -> set[tuple[Leg, bool]]:
        if who is None or not isinstance(way, Route):
            return set()
        half = self._changes.old_half(who.id) if old else half_of(self._around.plan, self._around.plan.cables[who.id])
        return set(legs_of(self._around, alone_route(way) if expected else way, half))

    def _take(
        self, who: Who | None, old: set[tuple[Leg, bool]], new: set[tuple[Leg, bool]], *, alike: bool = True
    ) -> None:
        """Note the legs that are not in both, each as a box as wide as the cable."""
        if who is None:
            return
        for leg, _ in (old ^ new) if alike else (old | new):
            box = leg.box.grown(leg.half / UNITS)
            for cell in _cells(box):
                self._cells.setdefault(cell, []).append((box, who))

    def still(self, who: Who, way: Route) -> Route | None:
        """Return how a way lay, where it still lies so among the others."""
        old = self._old_ways.get(who.id)
        if self._reordered or who.id not in self._same or not isinstance(old, Route):
            return None
        if not who.with_others.isdisjoint(self._moved) or (old.over and self._low_ones_changed):
            return None
        cable = self._around.plan.cables[way.cable]
        far = {"ac": self._apart.ac, "": self._apart.ac}.get(who.sort, max(self._apart.ac, self._apart.signal)) / UNITS
        for each in old.heeds:
            if each.blocks is not None and self._changes.blocks(cable, each.blocks):
                return None
            if self._is_stirred(who, each.cables, far):
                return None
        return old

    @cached_property
    def _low_ones_changed(self) -> bool:
        """Whether a way that passes over low things may find others: a cover put on, a kind that now gets warm."""
        return low_things(self._changes.old) != self._around.low

    def _is_stirred(self, who: Who, box: Box, far: float) -> bool:
        """Say whether a leg that changed lies where a cable heeds it: farther off if it is to be kept apart."""
        wide = box.grown(far) if far else box
        return any(
            lies.touches(wide) and lies.touches(box.grown(self._apart.asked(who, other) / UNITS))
            for cell in _cells(wide)
            for lies, other in self._cells.get(cell, ())
        )

    def laid(self, who: Who, way: Route) -> None:
        """Note how a way has been laid anew."""
        before = self._before.get(who.id)
        old = self._legs(before, self._old_ways.get(who.id), old=True, expected=False)
        new = self._legs(who, way, old=False, expected=False)
        self._take(who, old, new, alike=bool(before and _alike(before, who)))
        if old != new:
            self._moved.add(who.id)


_Changed: TypeAlias = tuple[Box, Who]
_CELL = 200.0  # mm


def _cells(box: Box) -> list[tuple[int, int]]:
    """Return the square cells of the wall that a box touches."""
    left, bottom, right, top = (int(side // _CELL) for side in box)
    return [(column, row) for column in range(left, right + 1) for row in range(bottom, top + 1)]


def _alike(one: Who, other: Who) -> bool:
    """Say whether others see a cable as before, its place in the order left out."""
    return (one.sort, one.units, one.with_others) == (other.sort, other.units, other.with_others)


def alone_route(way: Route) -> Route:
    """Return the route a cable would take with no cable beside it."""
    return way if way.alone is None else way.alone
