"""Side by side: found ways that would lie on top of each other outside of channels are moved apart.

Only legs between two corners move; a leg out of an end stays. Thick cables are laid first, then by id. A
cable that finds no room beside the others stays where it was.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from boardplan.geometry.point import Point
from boardplan.model.cable import Cable
from boardplan.routing.ends import ends_of
from boardplan.routing.in_channels import stretches_in_channels
from boardplan.routing.laid_legs import LaidLegs, Leg, fixed_legs, free_legs, half_of, leg_between
from boardplan.routing.open_lines import UNITS, OpenLines, units
from boardplan.routing.rays import spot_of
from boardplan.routing.route import Route, Way
from boardplan.routing.square_way import bend_clears
from boardplan.routing.stirred import FARTHEST, Stirred
from boardplan.routing.surroundings import Surroundings
from boardplan.routing.turning_lines import PITCH

_SHIFTS = tuple(sign * PITCH * step for step in range(1, round(FARTHEST / PITCH) + 1) for sign in (1, -1))
"""How far a leg moves aside, in mm, the nearest first."""


def laid_side_by_side(around: Surroundings, ways: Mapping[str, Way], stirred: Stirred | None = None) -> dict[str, Way]:
    """Return the ways with found ones moved apart; with `stirred` those that lie as before are not moved again."""
    plan = around.plan
    laid, settled = LaidLegs(units(plan.rules.value("cable-to-body"))), dict(ways)
    routes = [(plan.cables[name], way) for name, way in sorted(ways.items()) if isinstance(way, Route)]
    routes.sort(key=lambda each: -plan.conductors[each[0].conductor].outside_diameter)
    for cable, way in routes:
        laid.add(*fixed_legs(around, way, half_of(plan, cable)))
    for cable, way in routes:
        if way.source == "found" and len(way.points) > 3:  # noqa: PLR2004 - shorter ways have no leg between corners
            settled[cable.id] = _laid_one(around, cable, way, laid, stirred)
    return settled


def _laid_one(around: Surroundings, cable: Cable, way: Route, laid: LaidLegs, stirred: Stirred | None) -> Route:
    """Return a way as it lies beside those laid already, and lay it."""
    still = stirred.still(cable, way, laid) if stirred else None
    lies = still or _Mover(around, cable, way, laid).moved()
    laid.add(*free_legs(around, lies, half_of(around.plan, cable)))
    if stirred and still is None:
        stirred.laid(cable, lies)
    return lies


class _Mover:
    """Moves the legs of one way, one after the other."""

    def __init__(self, around: Surroundings, cable: Cable, way: Route, laid: LaidLegs) -> None:
        self._around, self._cable, self._way, self._laid = around, cable, way, laid
        self._ends = ends_of(around.plan, cable)
        self._half = half_of(around.plan, cable)
        self._radius = units(way.radius)
        self._lines: OpenLines | None = None

    def moved(self) -> Route:
        """Return the way with the legs that lay on others moved aside."""
        points = self._way.points
        for index in range(1, len(points) - 2):
            leg = leg_between(self._around, spot_of(points[index]), spot_of(points[index + 1]), self._half)
            if leg is None:
                continue
            if self._laid.beside(leg):
                points = self._aside(points, index, leg)
        if points == self._way.points:
            return self._way
        inside = stretches_in_channels(self._around.plan, points) if self._way.in_channels else ()
        return replace(self._way, points=points, in_channels=inside, alone=self._way)

    def _aside(self, points: tuple[Point, ...], index: int, leg: Leg) -> tuple[Point, ...]:
        """Return the corners with a leg moved as little as it takes, unmoved where there is no room."""
        for by in _SHIFTS:
            if self._laid.beside(leg, units(by)):
                continue
            shift = Point(0, by) if leg.axis == 0 else Point(by, 0)
            pair = (points[index].moved(*shift), points[index + 1].moved(*shift))
            tried = (*points[:index], *pair, *points[index + 2 :])
            in_channel = leg_between(self._around, spot_of(pair[0]), spot_of(pair[1]), self._half) is None
            if not in_channel and self._has_room(points, tried, index):
                return tried
        return points

    def _has_room(self, before: Sequence[Point], points: Sequence[Point], index: int) -> bool:
        """Say whether a moved leg and its neighbours are long enough, open, and bend clear of what is near."""
        lines = self._open()
        return (
            all(self._long_enough(before, points, each) for each in (index - 1, index + 1))
            and _open_between(lines, points[index], points[index + 1])
            and all(_open_between(lines, before[each], points[each]) for each in (index, index + 1))
            and all(self._bends(points, each) for each in range(max(1, index - 1), min(index + 3, len(points) - 1)))
        )

    def _open(self) -> OpenLines:
        if self._lines is None:
            plan, cable = self._around.plan, self._cable
            diameter = plan.conductors[cable.conductor].outside_diameter
            way = "choose" if self._way.in_channels else "outside"
            self._lines = self._around.lines(diameter, way, (), self._ends)
        return self._lines

    def _long_enough(self, before: Sequence[Point], points: Sequence[Point], index: int) -> bool:
        """Say whether a leg still goes the same way and holds what it must."""
        old, new = points_between(before, index), points_between(points, index)
        if old.x * new.x + old.y * new.y <= 0:
            return False
        last = len(points) - 2
        wanted = 2 * self._radius - (self._radius if index in (0, last) else 0)
        wanted += units(self._ends[0].straight) if index == 0 else 0
        wanted += units(self._ends[1].straight) if index == last else 0
        return abs(new.x) + abs(new.y) >= wanted / UNITS - 1e-9

    def _bends(self, points: Sequence[Point], index: int) -> bool:
        """Say whether the bend at a corner clears what is near, the owner of an end next to it left out."""
        spot = spot_of(points[index])
        sides = [spot_of(points[index - 1]), spot_of(points[index + 1])]
        offsets = [side[axis] - spot[axis] for axis in (0, 1) for side in sides]
        sign_x = 1 if max(offsets[0], offsets[1]) > 0 else -1
        sign_y = 1 if max(offsets[2], offsets[3]) > 0 else -1
        spared = {self._ends[0].owner if index == 1 else "-", self._ends[1].owner if index == len(points) - 2 else "-"}
        return bend_clears(spot, (sign_x, sign_y), self._radius, self._open().sides, spared)


def points_between(points: Sequence[Point], index: int) -> Point:
    """Return a leg as a vector."""
    return points[index + 1].minus(points[index])


def _open_between(lines: OpenLines, a: Point, b: Point) -> bool:
    """Say whether a square leg is open from end to end."""
    start, end = spot_of(a), spot_of(b)
    axis = 0 if start[1] == end[1] else 1
    span = lines.span(axis, start[1 - axis], start[axis])
    return span is not None and span[0] <= min(start[axis], end[axis]) and max(start[axis], end[axis]) <= span[1]
