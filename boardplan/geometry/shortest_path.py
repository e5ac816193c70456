"""Shortest path: the exact shortest way of no width between two points of a room with obstacles, corner to corner.

A shortest way among polygons goes straight from reflex corner to reflex corner of the room (T. Lozano-Pérez and
M. A. Wesley, "An algorithm for planning collision-free paths among polyhedral obstacles", Communications of the
ACM 22 (1979) 560-570). Walls may be touched and followed.
"""

from collections.abc import Sequence
from itertools import pairwise
from typing import TYPE_CHECKING

from boardplan.geometry.point import Point, signed_area

if TYPE_CHECKING:
    import numpy as np
    from shapely import Geometry

    from boardplan.geometry.point import Box


class Room:
    """What is inside an outline and in none of its holes; what depends on the room alone is worked out once."""

    def __init__(self, outline: Sequence[Point], holes: Sequence[Sequence[Point]] = ()) -> None:
        """Take rings without repeated last points, either way round; holes may touch each other and the outline."""
        import shapely  # noqa: PLC0415 - slow to load

        self._floor: Geometry = shapely.difference(
            shapely.Polygon(outline), shapely.union_all([shapely.Polygon(each) for each in holes])
        )
        self._corners = tuple(dict.fromkeys(corner for ring in _rings(self._floor) for corner in _reflex(ring)))
        shapely.prepare(self._floor)
        self._between = self._seen(self._corners, self._corners)

    @property
    def corners(self) -> tuple[Point, ...]:
        """The corners that a shortest way can bend at."""
        return self._corners

    def shortest(self, start: Point, end: Point) -> tuple[Point, ...] | None:
        """Return the corners of the shortest way from start to end; none where the room doesn't join them."""
        import numpy as np  # noqa: PLC0415 - slow to load
        from scipy.sparse.csgraph import dijkstra  # noqa: PLC0415 - slow to load

        count, both = len(self._corners), (start, end)
        lengths = np.full((count + 2, count + 2), np.inf)
        lengths[:count, :count] = self._between
        lengths[count:, :count] = self._seen(both, self._corners)
        lengths[:count, count:] = lengths[count:, :count].T
        lengths[count, count + 1] = lengths[count + 1, count] = self._seen((start,), (end,))[0, 0]
        totals, befores = dijkstra(lengths, indices=[count], return_predecessors=True)
        before = befores[0]
        if not np.isfinite(totals[0, count + 1]):
            return None
        places = (*self._corners, *both)
        found, at = [end], count + 1
        while at != count:
            at = int(before[at])
            found.append(places[at])
        return tuple(reversed(found))

    def _seen(self, some: Sequence[Point], others: Sequence[Point]) -> "np.typing.NDArray[np.float64]":
        """Return how far others lie from some in a straight line, endless where a wall stands between."""
        import numpy as np  # noqa: PLC0415 - slow to load
        import shapely  # noqa: PLC0415 - slow to load

        if not some or not others:
            return np.full((len(some), len(others)), np.inf)
        a, b = np.array(some, dtype=float), np.array(others, dtype=float)
        lines = np.empty((len(a), len(b), 2, 2))
        lines[:, :, 0], lines[:, :, 1] = a[:, None], b[None, :]
        open_lines = shapely.covers(self._floor, shapely.linestrings(lines.reshape(-1, 2, 2))).reshape(len(a), len(b))
        return np.where(open_lines, np.hypot(*(lines[:, :, 1] - lines[:, :, 0]).transpose(2, 0, 1)), np.inf)


def around_boxes(within: "Box", boxes: Sequence["Box"]) -> Room:
    """Return the room inside a box and outside of others."""
    return Room(within.corners(), [each.corners() for each in boxes])


def _rings(floor: "Geometry") -> list[list[Point]]:
    """Return the rings of a floor, the floor always on the left."""
    import shapely  # noqa: PLC0415 - slow to load

    rings = []
    for part in shapely.get_parts(floor):
        for ring, outer in ((part.exterior, True), *((each, False) for each in part.interiors)):
            points = [Point(x, y) for x, y in ring.coords[:-1]]
            rings.append(points if (signed_area(points) > 0) == outer else points[::-1])
    return rings


def _reflex(ring: Sequence[Point]) -> list[Point]:
    """Return the corners at which the floor goes more than half round."""
    return [
        corner
        for (before, corner), (_, after) in pairwise(pairwise((ring[-1], *ring, ring[0])))
        if _cross(before, corner, after) < 0
    ]


def _cross(a: Point, b: Point, c: Point) -> float:
    return (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x)
