"""Free way shortening: a way made shorter by leaving out, joining and shifting its corners while it stays open."""

from collections.abc import Iterator, Sequence

from boardplan.geometry.bends import corner_saving, straight_length, turns, without_repeats
from boardplan.geometry.point import Point, bearing, direction
from boardplan.routing.slanting.room import FreeRoom

_STEPS = (48.0, 16.0, 5.0, 1.5)  # mm: how far corners are shifted, coarse first
_CORNER = 8.0
"""How much longer a way may be for one corner less, in mm. Common practice, no source."""
_WORTH = 0.01  # mm: a change that saves less is not made
_ROUNDS = 12


def shortened(room: FreeRoom, points: tuple[Point, ...], radius: float) -> tuple[Point, ...]:
    """Return the way with its corners where it is locally shortest, to about a mm."""
    best, cost = points, _cost(points, radius)
    for step in (0.0, *_STEPS):
        for _ in range(_ROUNDS):
            before = cost
            best, cost = _better(room, best, cost, (radius, step))
            if cost > before - _WORTH:
                break
    return best


def _cost(points: Sequence[Point], radius: float) -> float:
    bent = turns(points)
    return straight_length(points) - sum(corner_saving(radius, turn) for turn in bent) + _CORNER * len(bent)


def _better(
    room: FreeRoom, points: tuple[Point, ...], cost: float, how: tuple[float, float]
) -> tuple[tuple[Point, ...], float]:
    """Return the way after every change that made it better was taken, each corner once."""
    radius, step = how
    index = 1
    while index < len(points) - 1:
        for changed in _changes(points, index, step):
            tidy = without_repeats(changed)
            new = _cost(tidy, radius)
            if new < cost - _WORTH and room.clears(tidy, radius):
                points, cost = tidy, new
                break
        index += 1
    return points, cost


def _changes(points: tuple[Point, ...], index: int, step: float) -> Iterator[tuple[Point, ...]]:
    """Yield the way without a corner or two, with two joined, or, with a step, with a corner shifted."""
    at = points[index]
    if not step:
        for after in range(len(points) - 1, index, -1):
            yield (*points[:index], *points[after:])
        for after in range(len(points) - 2, index, -1):
            crossing = _crossing(points[index - 1], at, points[after], points[after + 1])
            if crossing is not None:
                yield (*points[:index], crossing, *points[after + 1 :])
        return
    before, after_ = points[index - 1], points[index + 1]
    for way in (bearing(at, before), bearing(at, after_)):
        for by in (step, -step):
            yield (*points[:index], at.ahead(way, by), *points[index + 1 :])


def _crossing(a: Point, b: Point, c: Point, d: Point) -> Point | None:
    """Return where the line from a on through b meets the one from d back through c, none where they don't."""
    (ux, uy), (vx, vy) = direction(bearing(a, b)), direction(bearing(d, c))
    across = ux * vy - uy * vx
    if abs(across) < 1e-6:  # noqa: PLR2004 - side by side
        return None
    along = ((d.x - a.x) * vy - (d.y - a.y) * vx) / across
    back = ((d.x - a.x) * uy - (d.y - a.y) * ux) / across
    return a.moved(ux * along, uy * along) if along > 0 and back > 0 else None
