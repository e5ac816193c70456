"""Corners: moving and removing the corners of a way so that its legs stay square."""

from boardplan.geometry.bends import turns, without_repeats
from boardplan.geometry.nearest import nearest_leg
from boardplan.geometry.point import Point, bearing, direction

Line = tuple[Point, ...]
_SQUARE = 1e-6


def shifted_leg(points: Line, start: Point, at: Point, stub: float, grid: float = 0.0) -> Line:
    """Return a line of legs with the leg nearest to `start` moved aside by as much as `at` lies aside of it.

    Both ends of the line stay: where the leg holds one, a stub of it stays too and a square step follows.
    """
    leg, _ = nearest_leg(points, start)
    first, last = points[leg], points[leg + 1]
    towards = bearing(first, last)
    aside = direction(towards + 90.0)
    by = (at.x - start.x) * aside[0] + (at.y - start.y) * aside[1]
    across = first.x * aside[0] + first.y * aside[1]
    if grid > 0:
        by = round((across + by) / grid) * grid - across
    shift = Point(aside[0] * by, aside[1] * by)
    kept = min(stub, first.distance_to(last) / 3)
    before, after = list(points[:leg]), list(points[leg + 2 :])
    if leg == 0:
        before, first = [first, first.ahead(towards, kept)], first.ahead(towards, kept)
    if leg == len(points) - 2:
        last, after = last.ahead(towards, -kept), [last.ahead(towards, -kept), last]
    return without_repeats([*before, first.moved(*shift), last.moved(*shift), *after])


def moved_corner(points: Line, corner: int, at: Point, stub: float, grid: float = 0.0) -> Line:
    """Return a line with a corner (1 is the first after the end) at another place; both its legs go with it."""
    if not 0 < corner < len(points) - 1:
        return points
    held = points[corner]
    before, after = _middle(points[corner - 1], held), _middle(held, points[corner + 1])
    by = at.minus(held)
    line = shifted_leg(points, before, before.moved(*by), stub, grid)
    # the second leg slid along with the first: it is found again where it lies now
    aside = direction(bearing(points[corner - 1], held) + 90.0)
    across = by.x * aside[0] + by.y * aside[1]
    there = after.moved(aside[0] * across / 2, aside[1] * across / 2)
    return shifted_leg(line, there, there.moved(*by), stub, grid)


def without_corner(points: Line, corner: int) -> Line | None:
    """Return a square line without a corner and the step it belonged to, none where the ends need it.

    >>> step = tuple(Point(*each) for each in ((0, 0), (50, 0), (50, 20), (90, 20), (90, 80)))
    >>> without_corner(step, 2)
    (Point(x=0, y=0), Point(x=90, y=0), Point(x=90, y=80))
    """
    kept = points[:corner] + points[corner + 1 :]
    tries = [kept]
    for at in (corner - 1, corner):
        a, b = kept[at - 1 : at + 1] if at else kept[:2]
        tries += [(*kept[:at], each, *kept[at:]) for each in (Point(b.x, a.y), Point(a.x, b.y))]
    for drop in (corner - 1, corner + 1):
        if 0 < drop < len(points) - 1:
            rest = tuple(each for index, each in enumerate(points) if index not in {corner, drop})
            at = min(corner, drop)
            a, b = rest[at - 1], rest[at]
            tries += [rest, *((*rest[:at], each, *rest[at:]) for each in (Point(b.x, a.y), Point(a.x, b.y)))]
    lines = [without_repeats(each) for each in tries]
    good = [each for each in lines if len(each) < len(points) and _square(each) and _ends_alike(each, points)]
    return min(good, key=len) if good else None


def _middle(a: Point, b: Point) -> Point:
    return Point((a.x + b.x) / 2, (a.y + b.y) / 2)


def _square(points: Line) -> bool:
    return len(points) > 1 and all(abs(abs(turn) - 90.0) < _SQUARE for turn in turns(points))


def _ends_alike(line: Line, points: Line) -> bool:
    """Say whether a line leaves both ends as another one does."""
    same = bearing(*line[:2]) == bearing(*points[:2]) and bearing(*line[-2:]) == bearing(*points[-2:])
    return same and (line[0], line[-1]) == (points[0], points[-1])
