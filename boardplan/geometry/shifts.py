"""Shifts: by which shifts one shape comes to lie over another, or nearer than a gap; never too few of them.

The shifts that make a shape overlap another are the sum of the other and of its own mirror image (Minkowski). Of two
convex shapes the hull of the sums of their corners is that sum exactly; others are cut into triangles first. A gap
rounds the corners of the sum: the arcs are made of tangents, so that what is returned holds every shift, and at most
`EXCESS` besides.
"""

import math
from itertools import pairwise

import numpy as np
from shapely import MultiPoint, Polygon, constrained_delaunay_triangles, get_coordinates, get_parts
from shapely.geometry.base import BaseGeometry

EXCESS = 0.01
"""How far the corners of an arc lie outside of it at most, in mm."""
_COARSEST = math.pi / 4
_FLAT = 1e-9
"""The share of its hull that a shape may lack and still count as convex."""


def shifts_within(still: BaseGeometry, moved: BaseGeometry, gap: float = 0.0) -> list[BaseGeometry]:
    """Return polygons of all shifts by which a shape comes to overlap another, or nearer to it than a gap in mm.

    A shape may be a point or a straight line where there is a gap.

    >>> from shapely import box
    >>> [each.bounds for each in shifts_within(box(100, 0, 200, 50), box(0, 0, 30, 10), 5.0)]
    [(65.0, -15.0, 205.0, 55.0)]
    """
    mirrored = [-get_coordinates(part) for part in convex_parts(moved)]
    sums = [get_coordinates(part)[:, None] + own[None] for part in convex_parts(still) for own in mirrored]
    hulls: list[BaseGeometry] = [MultiPoint(each.reshape(-1, 2)).convex_hull for each in sums]
    return [rounded(each, gap) for each in hulls] if gap > 0 else hulls


def convex_parts(shape: BaseGeometry) -> list[BaseGeometry]:
    """Return convex shapes that together are the shape given."""
    found: list[BaseGeometry] = []
    for part in get_parts(shape):
        if part.is_empty:
            continue
        if part.area >= part.convex_hull.area * (1 - _FLAT):
            found.append(part)
        else:
            found += list(get_parts(constrained_delaunay_triangles(part)))
    return found


def rounded(hull: BaseGeometry, radius: float) -> Polygon:
    """Return a convex shape grown by a radius: its sides exactly, its corners by tangents to their arcs."""
    ring = _corners(hull)
    finest = min(_COARSEST, 2 * math.acos(radius / (radius + EXCESS)))
    if len(ring) == 1:
        return Polygon(_arc(ring[0], radius, 0.0, 2 * math.pi, finest))
    sides = [math.atan2(x - to_x, to_y - y) for (x, y), (to_x, to_y) in pairwise([*ring, ring[0]])]
    points: list[tuple[float, float]] = []
    for number, corner in enumerate(ring):
        before, after = sides[number - 1], sides[number]
        turn = (after - before) % (2 * math.pi)
        if turn > math.pi + _FLAT:  # a hair to the other side, by rounding: straight on
            turn = 0.0
        points += _arc(corner, radius, before, turn, finest)
    return Polygon(points)


def _corners(hull: BaseGeometry) -> list[tuple[float, float]]:
    """Return the corners of a convex shape counter-clockwise, without the repeated first."""
    if isinstance(hull, Polygon):
        ring = hull.exterior
        coordinates = np.asarray(ring.coords)[:-1]
        corners = coordinates if ring.is_ccw else coordinates[::-1]
    else:
        corners = get_coordinates(hull)
    return [(float(x), float(y)) for x, y in corners]


def _arc(
    centre: tuple[float, float], radius: float, begin: float, turn: float, finest: float
) -> list[tuple[float, float]]:
    """Return corners outside of an arc, such that lines from one to the next touch it."""
    steps = max(1, math.ceil(turn / finest - _FLAT))
    step = turn / steps
    far = radius / math.cos(step / 2)
    angles = (begin + (number + 0.5) * step for number in range(steps))
    return [(centre[0] + far * math.cos(angle), centre[1] + far * math.sin(angle)) for angle in angles]
