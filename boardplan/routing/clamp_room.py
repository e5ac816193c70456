"""Clamp room: what stands where a clamp would, and which places along a straight are free for one."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise
from typing import TypeAlias

from boardplan.geometry.bends import Bend, Straight
from boardplan.geometry.point import Box, Point, bearing, box_around, direction
from boardplan.model.board import BoardFixing, Exit
from boardplan.model.cable import Cable
from boardplan.model.plan import Plan
from boardplan.routing.blockers import blockers_of
from boardplan.routing.clamp_spacing import NOISE, Span
from boardplan.routing.route import Route, Way

_SQUARE = 200.0
_LARGE = 20 * _SQUARE
_SCREW_SHARE = 0.6
"""Where in its foot a clamp's screw is, counted from the jacket; as on the shelf's clamps."""
_SLICES = 6
"""A stretch askew is cut in as many pieces, each with its own box."""


Sides: TypeAlias = tuple[float, float, float, float]
"""Left, bottom, right and top, plain: there are very many of them."""


@dataclass(frozen=True, slots=True)
class Foot:
    """The room a clamp takes: half its length along the cable, and how far its foot reaches beside the jacket."""

    half: float
    beside: float

    @property
    def screw(self) -> float:
        """How far the screw is from the jacket."""
        return self.beside * _SCREW_SHARE


def foot_of(plan: Plan) -> Foot:
    """Return the room a clamp takes under the plan's rules."""
    return Foot(plan.rules.value("clamp-length") / 2, plan.rules.value("clamp-foot"))


@dataclass(frozen=True, slots=True)
class Obstacle:
    """A box on the wall that no clamp may stand in.

    `cable` is the one it belongs to, "" for anything else; `clamped` says that clamps may stand beside it.
    """

    box: Box
    cable: str = ""
    clamped: bool = False


class Room:
    """All obstacles of a plan, found again by where they are."""

    def __init__(self, obstacles: Iterable[Obstacle]) -> None:
        """Note where the obstacles are."""
        self._squares: dict[tuple[int, int], list[Obstacle]] = defaultdict(list)
        self._large: list[Obstacle] = []
        for each in obstacles:
            self.add(each)

    def add(self, obstacle: Obstacle) -> None:
        """Note one more obstacle."""
        if max(obstacle.box.width, obstacle.box.height) > _LARGE:
            self._large.append(obstacle)
            return
        for square in _squares(obstacle.box):
            self._squares[square].append(obstacle)

    def within(self, box: Box) -> list[Obstacle]:
        """Return the obstacles that touch a box, each once, in no order that matters."""
        touching = {
            id(each): each
            for square in _squares(box)
            for each in self._squares.get(square, ())
            if each.box.touches(box)
        }
        return [*touching.values(), *(each for each in self._large if each.box.touches(box))]


def _squares(box: Box) -> Iterator[tuple[int, int]]:
    left, bottom, right, top = (int(side // _SQUARE) for side in box)
    for column in range(left, right + 1):
        for row in range(bottom, top + 1):
            yield column, row


def room_of(plan: Plan, ways: Mapping[str, Way], around: Box) -> Room:
    """Return what a clamp must keep off in a box: bodies, channels, openings, screw heads, cables, all but board."""
    found = (*_standing(plan), *_openings(plan), *_joints(plan), *_cables(plan, ways))
    return Room(each for each in found if each.box.touches(around))


def _standing(plan: Plan) -> Iterator[Obstacle]:
    beside = plan.rules.value("gap-between-components")
    foot = foot_of(plan)
    edge = max(0.0, plan.rules.value("hole-to-edge") - (foot.beside - foot.screw))
    clear = {"body": beside, "channel": beside, "edge": edge, "no-go": 0.0}
    for each in blockers_of(plan):
        yield Obstacle(each.box.grown(clear[each.sort]))


def _openings(plan: Plan) -> Iterator[Obstacle]:
    for opening in plan.exits.values():
        if opening.through == "hole":
            yield Obstacle(exit_box(plan, opening).grown(plan.rules.value("gap-between-components")))
    for fixing in plan.fixings.values():
        yield Obstacle(head_box(plan, fixing))


def exit_box(plan: Plan, opening: Exit) -> Box:
    """Return the box round an exit on the wall."""
    return box_around([plan.on_wall(opening.board, opening.position)]).grown((opening.diameter or 0.0) / 2)


def head_box(plan: Plan, fixing: BoardFixing) -> Box:
    """Return the square on the wall that the head of a board fixing needs."""
    room = max(plan.rules.value("fixing-head-room"), fixing.diameter) / 2
    return box_around([plan.on_wall(fixing.board, fixing.position)]).grown(room)


def _joints(plan: Plan) -> Iterator[Obstacle]:
    """Yield the level and upright edges of boards that hang beside others: cables cross there, clamps don't."""
    if len(plan.boards) > 1:
        for board in plan.boards.values():
            ring = [point.moved(*board.position) for point in board.outline]
            for a, b in pairwise((*ring, ring[0])):
                if a.x == b.x or a.y == b.y:
                    yield Obstacle(box_around((a, b)))


def _cables(plan: Plan, ways: Mapping[str, Way]) -> Iterator[Obstacle]:
    for cable in plan.cables.values():
        clamped = wants_clamps(plan, cable)
        for box in cable_boxes(plan, cable, ways.get(cable.id)):
            yield Obstacle(box, cable.id, clamped)


def cable_boxes(plan: Plan, cable: Cable, way: Way | None) -> list[Box]:
    """Return boxes on the wall that hold a cable, each of its pieces in its own."""
    half = plan.conductors[cable.conductor].outside_diameter * cable.count / 2
    return [box.grown(half) for box in laid(way).boxes] if isinstance(way, Route) else []


def wants_clamps(plan: Plan, cable: Cable) -> bool:
    """Say whether a cable is so thick that it is clamped on its own."""
    conductor = plan.conductors[cable.conductor]
    by_area = (conductor.area or 0.0) >= plan.rules.value("clamp-from-area")
    return by_area or conductor.outside_diameter >= plan.rules.value("clamp-from-diameter")


@dataclass(frozen=True, slots=True)
class Stretch:
    """A straight stretch of a cable: where it begins along the centre line, its start, direction and length."""

    along: float
    start: Point
    towards: float
    length: float

    @property
    def box(self) -> Box:
        """The box round its centre line."""
        return box_around((self.start, self.at(self.along + self.length)))

    def at(self, along: float) -> Point:
        """Return the point at a distance along the whole centre line."""
        return self.start.ahead(self.towards, along - self.along)

    def holds(self, along: float, half: float) -> bool:
        """Say whether a clamp of half a length lies on it whole."""
        return self.along + half - NOISE <= along <= self.along + self.length - half + NOISE

    def seen(self, point: tuple[float, float]) -> Point:
        """Return a point as seen from the start: along the stretch, and how far to the left of it."""
        cos, sin = direction(self.towards)
        x, y = point[0] - self.start.x, point[1] - self.start.y
        return Point(x * cos + y * sin, y * cos - x * sin)

    def seen_boxes(self, boxes: Iterable[Box]) -> Iterator[Sides]:
        """Yield the sides of boxes that hold others as seen from the start, along and to the left."""
        cos, sin = direction(self.towards)
        start_x, start_y = self.start
        for left, bottom, right, top in boxes:
            x, y = (left + right) / 2 - start_x, (bottom + top) / 2 - start_y
            wide, high = (right - left) / 2, (top - bottom) / 2
            on, over = wide * abs(cos) + high * abs(sin), wide * abs(sin) + high * abs(cos)
            along, aside = x * cos + y * sin, y * cos - x * sin
            yield along - on, aside - over, along + on, aside + over


@dataclass(frozen=True, slots=True)
class Laid:
    """A way as it lies: its pieces and its length, its straight stretches, boxes round all of its pieces."""

    pieces: tuple[Straight | Bend, ...]
    length: float
    stretches: tuple[Stretch, ...]
    boxes: tuple[Box, ...]


_CACHE_SIZE = 4096
_cache: dict[int, tuple[Route, Laid]] = {}


def laid(way: Route) -> Laid:
    """Return a way as it lies; remembered as long as the way is the same object."""
    held = _cache.get(id(way))
    if held is not None and held[0] is way:
        return held[1]
    if len(_cache) >= _CACHE_SIZE:
        _cache.clear()
    result = _laid(way)
    _cache[id(way)] = way, result
    return result


def _laid(way: Route) -> Laid:
    pieces, stretches, along = way.pieces, [], 0.0
    for piece in pieces:
        if isinstance(piece, Straight):
            stretches.append(Stretch(along, piece.start, bearing(piece.start, piece.end), piece.length))
        along += piece.length
    return Laid(pieces, along, tuple(stretches), tuple(box for piece in pieces for box in _piece_boxes(piece)))


def _piece_boxes(piece: Straight | Bend) -> Iterator[Box]:
    a, b = piece.start, piece.end
    askew = isinstance(piece, Straight) and abs(a.x - b.x) > 1 and abs(a.y - b.y) > 1
    parts = _SLICES if askew else 1
    cuts = [Point(a.x + (b.x - a.x) * n / parts, a.y + (b.y - a.y) * n / parts) for n in range(parts + 1)]
    for pair in pairwise(cuts):
        yield box_around(pair)


Near: TypeAlias = tuple[Sides, str, float]
"""An obstacle seen from the start of a stretch, its cable or "", and how far clamps of that may reach beside it."""


@dataclass(frozen=True, slots=True)
class Bench:
    """A stretch with the obstacles near it."""

    stretch: Stretch
    foot: Foot
    near: tuple[Near, ...]

    def free(self, body: Span, feet: Iterable[Span], own: Iterable[str]) -> list[Span]:
        """Return where the middle of a clamp of some cables may be, along the centre line.

        Its body and each of its feet reach from here to there to the left of the centre line.
        """
        blocked = list(self._blocked(body, 0.0, (0.0, 0.0), own))
        for low, high in feet:
            side = 1 if high > -low else -1
            across = (0.0, 0.0) if self.leads(side) else (1.0, 0.0) if side > 0 else (0.0, 1.0)
            blocked += self._blocked((low, high), 1.0, across, own)
        return self._between(sorted(blocked))

    def leads(self, side: int) -> bool:
        """Say whether a foot to the left (1) or right (-1) lies above its cable, or to the left of an upright one.

        The room between two cables is for such feet first: so no two feet meet, whichever cable is looked at
        first, and screws line up.
        """
        x, y = direction(self.stretch.towards + 90.0 * side)
        return y > NOISE or (abs(y) <= NOISE and x < 0)

    def _blocked(self, part: Span, along: float, across: tuple[float, float], own: Iterable[str]) -> Iterator[Span]:
        """Yield where a part of the clamp would meet an obstacle, or the foot of another cable's clamp.

        Shares of such a foot are added along the cable, and across it below and above.
        """
        low, high = part[0] + NOISE, part[1] - NOISE
        start, half = self.stretch.along, self.foot.half
        for (left, bottom, right, top), cable, feet in self.near:
            if bottom - across[0] * feet < high and low < top + across[1] * feet and cable not in own:
                reach = half + along * feet
                yield start + left - reach, start + right + reach

    def _between(self, blocked: list[Span]) -> list[Span]:
        half, stretch = self.foot.half, self.stretch
        at, end = stretch.along + half, stretch.along + stretch.length - half
        found = []
        for start, stop in blocked:
            if at <= min(start, end):
                found.append((at, min(start, end)))
            at = max(at, stop)
        if at <= end:
            found.append((at, end))
        return found


def bench_of(room: Room, stretch: Stretch, foot: Foot, reach: float) -> Bench:
    """Return a stretch with the obstacles that a clamp reaching so far to its sides could meet."""
    near = room.within(stretch.box.grown(reach))
    seen = stretch.seen_boxes(each.box for each in near)
    feet = (foot.beside if each.clamped else 0.0 for each in near)
    return Bench(stretch, foot, tuple(zip(seen, (each.cable for each in near), feet, strict=True)))


def joined(spans: Iterable[Span]) -> list[Span]:
    """Return spans without overlaps, in order."""
    found: list[Span] = []
    for low, high in sorted(spans):
        if found and low <= found[-1][1]:
            found[-1] = found[-1][0], max(found[-1][1], high)
        else:
            found.append((low, high))
    return found


def includes(spans: Iterable[Span], at: float) -> bool:
    """Say whether a place lies in one of the spans."""
    return any(low - NOISE <= at <= high + NOISE for low, high in spans)
