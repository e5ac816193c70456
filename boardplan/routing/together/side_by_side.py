"""Side by side: found ways that would lie on each other outside of channels are moved apart, as a tidy hand lays them.

Each leg between two corners takes the cheapest of the free places beside it: not far aside, with few crossings of
other cables, off those it is to be kept from, by those it belongs with (see LanePrice). A leg out of an end stays. A
cable that finds no room beside the others stays where it was.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import pairwise

from boardplan.geometry.point import Box, Point
from boardplan.model.cable import Cable
from boardplan.routing.channels.in_channels import stretches_in_channels
from boardplan.routing.route import Heed, Route, Way
from boardplan.routing.square.ends import ends_of
from boardplan.routing.square.lines_over import passed_over
from boardplan.routing.square.low_things import LowThing
from boardplan.routing.square.open_lines import UNITS, OpenLines, Span, units
from boardplan.routing.square.rays import spot_of
from boardplan.routing.square.square_way import bend_clears
from boardplan.routing.square.surroundings import Surroundings
from boardplan.routing.square.turning_lines import PITCH
from boardplan.routing.together.laid_legs import LaidLegs, Leg, Lies, half_of, leg_between, legs_of
from boardplan.routing.together.lane_price import LONGER, SEEN, LanePrice, Neighbour
from boardplan.routing.together.lying_order import Who, apart_of, lying_order
from boardplan.routing.together.stirred import FARTHEST, Stirred

_SHIFTS = tuple(units(sign * PITCH * step) for step in range(1, round(FARTHEST / PITCH) + 1) for sign in (1, -1))
"""How far a leg moves aside, in units, the nearest first."""
_NOISE = 1e-9
_THICKEST = units(30)
"""No cable is thicker than twice this."""


def laid_side_by_side(around: Surroundings, ways: Mapping[str, Way], stirred: Stirred | None = None) -> dict[str, Way]:
    """Return the ways with found ones moved apart; with `stirred` those that lie as before are not moved again."""
    settled, board = dict(ways), _Wall(around)
    order = [(who, way) for who in lying_order(around.plan) if isinstance(way := ways[who.id], Route)]
    for who, way in order:
        board.expect(who, way)
    for who, way in order:
        still = stirred.still(who, way) if stirred else None
        lies = still or board.laid(who, way)
        settled[who.id] = lies
        if stirred and still is None:
            stirred.laid(who, lies)
        board.settle(who, way, lies)
    return settled


class _Wall:
    """The wall with the ways as they are expected to lie, and more and more as they lie."""

    def __init__(self, around: Surroundings) -> None:
        self._around, self.legs = around, LaidLegs()
        self.gap, self.apart = units(around.plan.rules.value("cable-to-body")), apart_of(around.plan)
        self._expected: dict[str, list[Lies]] = {}
        self._sorts = {each.sort: each for each in lying_order(around.plan)}

    def far_for(self, who: Who) -> int:
        """Return how far off cables may have to be kept from one, in units."""
        others = [replace(each, units=frozenset()) for each in self._sorts.values()]
        return max((self.apart.asked(who, each) for each in others), default=0)

    def expect(self, who: Who, way: Route) -> None:
        """Show the cables laid before one how it will lie if nothing moves it."""
        held = self._expected[who.id] = self._lies(who, way, before=True)
        self.legs.add(held)

    def settle(self, who: Who, way: Route, lies: Route) -> None:
        """Show the cables laid after one how it lies."""
        if lies.points == way.points:
            for each in self._expected[who.id]:
                each.after = True
        else:
            self.legs.add(self._lies(who, lies, before=False))

    def _lies(self, who: Who, way: Route, *, before: bool) -> list[Lies]:
        half = half_of(self._around.plan, self._around.plan.cables[who.id])
        return [Lies(leg, who, fixed, before, not before) for leg, fixed in legs_of(self._around, way, half)]

    def laid(self, who: Who, way: Route) -> Route:
        """Return how a way lies among the others."""
        if way.source != "found" or len(way.points) <= 3:  # noqa: PLR2004 - shorter ways have no leg between corners
            return way
        return _Mover(self._around, self._around.plan.cables[who.id], who, way, self).moved()


class _Mover:
    """Moves the legs of one way, one after the other."""

    def __init__(self, around: Surroundings, cable: Cable, who: Who, way: Route, wall: _Wall) -> None:
        self._around, self._cable, self._who, self._way, self._wall = around, cable, who, way, wall
        self._ends = ends_of(around.plan, cable)
        self._half = half_of(around.plan, cable)
        self._radius = units(way.radius)
        self._lines: OpenLines | None = None
        self._low: tuple[LowThing, ...] = ()
        self._heeds: list[Heed] = []

    def moved(self) -> Route:
        """Return the way with each leg where it costs least."""
        points = self._way.points
        for index in range(1, len(points) - 2):
            spots = spot_of(points[index]), spot_of(points[index + 1])
            leg = leg_between(self._around, *spots, self._half, (self._radius, self._radius))
            if leg is not None and _square_beside(points, index):
                points = self._best(points, index, leg)
        heeds = tuple(self._heeds)
        if points == self._way.points:
            return replace(self._way, alone=self._way, heeds=heeds) if heeds else self._way
        inside = stretches_in_channels(self._around.plan, points) if self._way.in_channels else ()
        return replace(self._way, points=points, in_channels=inside, alone=self._way, heeds=heeds)

    def _best(self, points: tuple[Point, ...], index: int, leg: Leg) -> tuple[Point, ...]:
        """Return the corners with a leg moved to its cheapest place, unmoved where there is no room."""
        price, tried, fitted = self._price(points, index, leg), 0, [0]
        best, least = points, None if price.taken(0) else price.at(0)
        for by in _SHIFTS:
            if least is not None and abs(by) >= least:
                break
            tried = abs(by)
            cost = None if price.taken(by) else price.at(by) + tried
            if cost is None or (least is not None and cost >= least):
                continue
            moved = self._aside(points, index, leg, by / UNITS)
            cost += LONGER * max(0, _longer(points, moved, index))
            if least is not None and cost >= least:
                continue
            fitted.append(by)
            if self._fits(points, moved, index):
                best, least = moved, cost
        self._heed(leg, tried, (min(fitted), max(fitted)))
        return best

    def _price(self, points: Sequence[Point], index: int, leg: Leg) -> LanePrice:
        """Return the prices of places for a leg."""
        wall, far = self._wall, units(FARTHEST)
        corners = ((index, index - 1), (index + 1, index + 2))
        neighbours = [
            Neighbour(spot_of(points[near])[leg.axis], spot_of(points[off])[1 - leg.axis]) for near, off in corners
        ]
        price = LanePrice(leg, self._who, neighbours, wall.gap, wall.apart)
        along, (left, bottom, right, top) = leg.half + wall.gap + _THICKEST, leg.sides
        aside = far + along + wall.far_for(self._who)
        dx, dy = (along, aside) if leg.axis == 0 else (aside, along)
        price.take(wall.legs.near((left - dx, bottom - dy, right + dx, top + dy), self._who.rank))
        return price

    def _heed(self, leg: Leg, tried: int, fitted: Span) -> None:
        """Note where what changes could make the leg lie otherwise; what blocks, only where it was tried to fit.

        Bends of the leg's neighbours need room for their radius beyond it, all else lies between its places.
        """
        room = leg.half + self._wall.gap
        along, aside = room, max(tried, SEEN) + room
        left, bottom, right, top = leg.sides
        dx, dy = (along, aside) if leg.axis == 0 else (aside, along)
        cables = Box((left - dx) / UNITS, (bottom - dy) / UNITS, (right + dx) / UNITS, (top + dy) / UNITS)
        blocks = None
        if fitted != (0, 0):
            low, high = fitted[0] - self._radius, fitted[1] + self._radius
            west, south, east, north = (0, low, 0, high) if leg.axis == 0 else (low, 0, high, 0)
            sides = (left + west, bottom + south, right + east, top + north)
            blocks = Box(*(side / UNITS for side in sides)).grown(1)
        self._heeds.append(Heed(cables, blocks))

    def _aside(self, points: tuple[Point, ...], index: int, leg: Leg, by: float) -> tuple[Point, ...]:
        shift = Point(0, by) if leg.axis == 0 else Point(by, 0)
        pair = (points[index].moved(*shift), points[index + 1].moved(*shift))
        return (*points[:index], *pair, *points[index + 2 :])

    def _fits(self, before: Sequence[Point], points: Sequence[Point], index: int) -> bool:
        """Say whether a moved leg lies outside of channels and has room."""
        leg = leg_between(self._around, spot_of(points[index]), spot_of(points[index + 1]), self._half)
        return leg is not None and self._has_room(before, points, index) and self._passes_over_the_same(points)

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
            over = self._around.lines_over(diameter, self._ends) if self._way.over else None
            self._lines, self._low = over or (self._around.lines(diameter, way, (), self._ends), ())
        return self._lines

    def _passes_over_the_same(self, points: Sequence[Point]) -> bool:
        """Say whether a way still passes over the low things that it says it does, and over no others."""
        return not self._way.over or passed_over(points, self._low) == self._way.over

    def _long_enough(self, before: Sequence[Point], points: Sequence[Point], index: int) -> bool:
        """Say whether a leg still goes the same way and holds what it must."""
        old, new = points_between(before, index), points_between(points, index)
        if old.x * new.x + old.y * new.y <= 0:
            return False
        last = len(points) - 2
        length, wanted = abs(new.x) + abs(new.y), (2 if 0 < index < last else 1) * self._radius / UNITS
        for number, end in zip((0, last), self._ends, strict=True):
            if index == number:
                roomy = end.roomy(self._way.radius)
                has_room = abs(old.x) + abs(old.y) >= wanted + roomy - _NOISE
                wanted += roomy if has_room else end.straight
        return length >= wanted - _NOISE

    def _bends(self, points: Sequence[Point], index: int) -> bool:
        """Say whether the bend at a corner clears what is near, the owner of an end next to it left out."""
        spot = spot_of(points[index])
        sides = [spot_of(points[index - 1]), spot_of(points[index + 1])]
        offsets = [side[axis] - spot[axis] for axis in (0, 1) for side in sides]
        sign_x = 1 if max(offsets[0], offsets[1]) > 0 else -1
        sign_y = 1 if max(offsets[2], offsets[3]) > 0 else -1
        owners = [
            end.owner or "-" for end in self._ends
        ]  # at an exit bends clear the board's edges, which have no name
        near = self._open().bodies_round(spot, self._radius)
        spared = {owners[0] if index == 1 else "-", owners[1] if index == len(points) - 2 else "-"}
        return bend_clears(spot, (sign_x, sign_y), self._radius, near, spared)


def _square_beside(points: Sequence[Point], index: int) -> bool:
    """Say whether the legs on both sides of one are level or upright: moved, it would turn slanted ones."""
    beside = (spot_of(points[each]) for each in (index - 1, index, index + 1, index + 2))
    return all(a[0] == b[0] or a[1] == b[1] for a, b in pairwise(beside))


def _longer(before: Sequence[Point], points: Sequence[Point], index: int) -> int:
    """Return how much longer the neighbours of a moved leg are, in units."""
    return sum(
        units(points[each].distance_to(points[each + 1]) - before[each].distance_to(before[each + 1]))
        for each in (index - 1, index + 1)
    )


def points_between(points: Sequence[Point], index: int) -> Point:
    """Return a leg as a vector."""
    return points[index + 1].minus(points[index])


def _open_between(lines: OpenLines, a: Point, b: Point) -> bool:
    """Say whether a square leg is open from end to end."""
    start, end = spot_of(a), spot_of(b)
    axis = 0 if start[1] == end[1] else 1
    span = lines.span(axis, start[1 - axis], start[axis])
    return span is not None and span[0] <= min(start[axis], end[axis]) and max(start[axis], end[axis]) <= span[1]
