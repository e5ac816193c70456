"""Bent line: the centre line of a way with its bends, for checks of what it clears.

A way's corners lie outside of its bends: they may stand in what the cable itself keeps clear of, and what lies inside a
bend may be nearer to the cable than to them.
"""

import math
from functools import lru_cache

from shapely import LineString

from boardplan.geometry.bends import Bend, rounded
from boardplan.geometry.point import Point, bearing
from boardplan.routing.route import Route

_CHORD = 3.0  # degrees
NEARER = 0.03
"""How much nearer chords of a bend may come to what it goes round than the bend, in mm: R (1 - cos 1.5 degrees)."""


def bent_line(way: Route) -> LineString:
    """Return the centre line of a way, its bends in chords.

    >>> line = bent_line(Route("W1", (Point(0, 0), Point(100, 0), Point(100, 100)), 60.0))
    >>> round(line.length, 1), round(line.distance(LineString([(100, 0), (101, 0)])), 1)
    (174.2, 24.9)
    """
    return _bent(way.points, way.radius)


@lru_cache(maxsize=4096)
def _bent(points: tuple[Point, ...], radius: float) -> LineString:
    places = [points[0]]
    for piece in rounded(points, radius):
        if isinstance(piece, Bend):
            first, count = bearing(piece.centre, piece.start), math.ceil(abs(piece.turn) / _CHORD)
            places += [piece.centre.ahead(first + piece.turn * part / count, radius) for part in range(count)]
        places.append(piece.end)
    return LineString(places)
