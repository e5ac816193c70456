"""Plane geometry by brute force, which shares nothing with the library that the checks use.

Polygons are rows of corners. Distances go from segment to segment, overlap of convex shapes by separating
axes (a line between two convex shapes that don't meet runs along an edge of one of them: elementary
geometry, the hyperplane separation theorem).
"""

from itertools import pairwise
from math import cos, hypot, inf, radians, sin


def edges(ring):
    return list(pairwise([*ring, ring[0]]))


def point_to_segment(point, segment):
    (ax, ay), (bx, by) = segment
    dx, dy = bx - ax, by - ay
    length = dx * dx + dy * dy
    along = 0.0 if length == 0 else max(0.0, min(1.0, ((point[0] - ax) * dx + (point[1] - ay) * dy) / length))
    return hypot(point[0] - ax - along * dx, point[1] - ay - along * dy)


def side(a, b, p):
    return (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])


def segments_cross(one, other):
    a, b = one
    c, d = other
    return side(a, b, c) * side(a, b, d) < 0 and side(c, d, a) * side(c, d, b) < 0


def inside(point, ring):
    """Say whether a ray from the point to the right meets the ring an odd number of times."""
    odd = False
    for (ax, ay), (bx, by) in edges(ring):
        if (ay > point[1]) != (by > point[1]) and point[0] < ax + (point[1] - ay) / (by - ay) * (bx - ax):
            odd = not odd
    return odd


def polygon_gap(one, other):
    """Return the distance between two polygons, nought where they meet."""
    if inside(one[0], other) or inside(other[0], one):
        return 0.0
    least = inf
    for a in edges(one):
        for b in edges(other):
            if segments_cross(a, b):
                return 0.0
            least = min(
                least,
                point_to_segment(a[0], b),
                point_to_segment(a[1], b),
                point_to_segment(b[0], a),
                point_to_segment(b[1], a),
            )
    return least


def convex_overlap(one, other):
    """Return the least depth by which two convex polygons overlap along normals of edges, below nought apart."""
    least = inf
    for (ax, ay), (bx, by) in edges(one) + edges(other):
        length = hypot(bx - ax, by - ay)
        nx, ny = (by - ay) / length, (ax - bx) / length
        ours = [x * nx + y * ny for x, y in one]
        theirs = [x * nx + y * ny for x, y in other]
        least = min(least, max(ours) - min(theirs), max(theirs) - min(ours))
    return least


def turned_rectangle(width, height, x, y, degrees):
    """Return a turned rectangle, shifted so that the box round it has its lower left at x, y."""
    c, s = cos(radians(degrees)), sin(radians(degrees))
    corners = [(u * c - v * s, u * s + v * c) for u, v in ((0, 0), (width, 0), (width, height), (0, height))]
    left, bottom = min(p[0] for p in corners), min(p[1] for p in corners)
    return [(u - left + x, v - bottom + y) for u, v in corners]


def clipped(ring, start, end):
    """Return the part of a convex polygon to the left of a line: the Sutherland-Hodgman step (1974)."""
    found = []
    for p, q in edges(ring):
        a, b = side(start, end, p), side(start, end, q)
        if a >= 0:
            found.append(p)
        if a * b < 0:
            found.append((p[0] + (q[0] - p[0]) * a / (a - b), p[1] + (q[1] - p[1]) * a / (a - b)))
    return found


def convex_shared(one, other):
    """Return the polygon that two convex counter-clockwise polygons share, empty where there is none."""
    ring = list(one)
    for start, end in edges(other):
        ring = clipped(ring, start, end)
        if not ring:
            return []
    return ring
