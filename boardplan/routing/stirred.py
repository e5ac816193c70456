"""Stirred: after a change, which ways must be laid beside each other again, and which still lie as they lay.

A way lies as before if what it would be alone is the same, and no leg of another cable and nothing that blocks
has changed as near to it as its legs may be moved.
"""

from collections.abc import Mapping
from itertools import pairwise

from boardplan.model.cable import Cable
from boardplan.routing.changes import Changes
from boardplan.routing.far_off import NOISE
from boardplan.routing.laid_legs import LaidLegs, Leg, fixed_legs, free_legs, half_of, middle_legs
from boardplan.routing.open_lines import UNITS, units
from boardplan.routing.route import Route, Way
from boardplan.routing.surroundings import Surroundings

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
        """Take all legs of ways that changed, old and new; only for changes that leave channels and rules alone."""
        self._around, self._old_ways, self._changes = around, old_ways, changes
        self._legs = LaidLegs(units(around.plan.rules.value("cable-to-body")))
        self._same = {
            name
            for name, way in ways.items()
            if name in old_ways and alone(old_ways[name]) is way and not changes.of_cable(around.plan.cables[name])
        }
        for name, old in old_ways.items():
            if name not in self._same and isinstance(old, Route):
                half = changes.old_half(name)
                self._legs.add(*fixed_legs(around, alone_route(old), half), *free_legs(around, old, half))
        for name, way in ways.items():
            if name not in self._same and isinstance(way, Route):
                self._legs.add(*fixed_legs(around, way, half_of(around.plan, around.plan.cables[name])))

    def still(self, cable: Cable, way: Route, laid: LaidLegs) -> Route | None:
        """Return how a way lay, where it still lies so beside those laid already."""
        old = self._old_ways.get(cable.id)
        if cable.id not in self._same or not isinstance(old, Route):
            return None
        shifts = _shifts(way, old)
        most = max(shifts)
        half = half_of(self._around.plan, cable)
        for leg, shift in zip(middle_legs(way, half), shifts, strict=True):
            if leg is not None and self._reaches(cable, way, leg, (self._tried(leg, shift, most, laid), most)):
                return None
        return old

    def _tried(self, leg: Leg, shift: int, most: int, laid: LaidLegs) -> int:
        """Return how far aside places for a leg have been tried: as far as it was moved, or all in vain, or none."""
        if shift:
            return shift
        return units(FARTHEST) if laid.beside(leg, beyond=most) else 0

    def _reaches(self, cable: Cable, way: Route, leg: Leg, room: tuple[int, int]) -> bool:
        """Say whether a change is as near to a leg as places for it have been tried, or as its ends may lie off."""
        tried, beyond = room
        if self._legs.beside(leg, around=tried, beyond=beyond):
            return True
        far = (tried + beyond) / UNITS + way.radius + NOISE
        return tried > 0 and self._changes.blocks(cable, leg.box.grown(far))

    def laid(self, cable: Cable, way: Route) -> None:
        """Note how a way has been laid anew."""
        old, half = self._old_ways.get(cable.id), half_of(self._around.plan, cable)
        if cable.id in self._same and isinstance(old, Route):
            if old.points == way.points:
                return
            self._legs.add(*free_legs(self._around, old, half))
        self._legs.add(*free_legs(self._around, way, half))


def _shifts(way: Route, old: Route) -> list[int]:
    """Return how far each leg between two corners had been moved aside, in units."""
    middle = list(zip(way.points, old.points, strict=True))[1:-1]
    return [units(abs(a.y - was.y) if a.y == b.y else abs(a.x - was.x)) for (a, was), (b, _) in pairwise(middle)]


def alone_route(way: Route) -> Route:
    """Return the route a cable would take with no cable beside it."""
    return way if way.alone is None else way.alone
