"""Geometry audit: what no file for a machine may hold, looked for before one is written.

It knows the drawing alone, not the libraries that write it: what they find too is their own second look.
"""

import math
from collections.abc import Iterator
from itertools import pairwise

from shapely import Point as Place
from shapely import Polygon, prepare

from boardplan.drawing.picture import Area, Disc, Line, Mark, Strand
from boardplan.geometry.point import Point
from boardplan.output.exchange.layer import CUT_OUTS, OUTLINE, BoardDrawing, Layer
from boardplan.output.exchange.wood import wood_of

_LEAST = 1e-4
"""A line shorter than this is none, in mm; nor are two places further apart than this the same."""
_REACH = 0.01
_CORNERS = 3


class BadDrawing(Exception):  # noqa: N818 - what it is
    """A drawing that no machine may get; each fault is a sentence."""

    def __init__(self, faults: tuple[str, ...]) -> None:
        super().__init__("; ".join(faults))
        self.faults = faults


def refuse_bad(drawing: BoardDrawing) -> None:
    """Raise BadDrawing where anything is wrong with a drawing."""
    faults = tuple(drawing_faults(drawing))
    if faults:
        raise BadDrawing(faults)


def drawing_faults(drawing: BoardDrawing) -> Iterator[str]:
    """Yield what is wrong: nothing drawn nowhere, outlines closed and simple, each hole once and round."""
    for layer in drawing.layers:
        yield from (f"{layer.name}: {fault}" for mark in layer.picture for fault in _mark_faults(mark))
    yield from _doubled(drawing)
    cut = [
        f"{layer.name}: {fault}"
        for layer in drawing.layers
        if layer.role == "cut"
        for mark in layer.picture
        for fault in _outline_faults(mark)
    ]
    yield from cut or _off_the_wood(drawing)


def _mark_faults(mark: Mark) -> Iterator[str]:
    """Yield the faults of one mark by itself."""
    points = tuple(_points(mark))
    if not all(math.isfinite(value) for point in points for value in point):
        yield "a place that is no number"
        return
    if isinstance(mark, Disc) and not (math.isfinite(mark.radius) and mark.radius > 0):
        yield f"a circle at {_at(mark.centre)} of radius {mark.radius:g}"
    if isinstance(mark, Line) and len(points) < 1 + 1:
        yield "a line of less than two points"
    for a, b in pairwise(points if not (isinstance(mark, Line) and mark.closed) else (*points, points[0])):
        if isinstance(mark, Line) and a.distance_to(b) < _LEAST:
            yield f"a line of no length at {_at(a)}"


def _points(mark: Mark) -> Iterator[Point]:
    if isinstance(mark, Line):
        yield from mark.points
    elif isinstance(mark, Area):
        yield from (point for ring in mark.rings for point in ring)
    elif isinstance(mark, Disc):
        yield mark.centre
    elif isinstance(mark, Strand):
        yield from (end for piece in mark.pieces for end in (piece.start, piece.end))
    else:
        yield mark.at


def _outline_faults(mark: Mark) -> Iterator[str]:
    if not isinstance(mark, Line) or not mark.closed or len(mark.points) < _CORNERS:
        yield "an outline that is not closed"
    elif not all(math.isfinite(value) for point in mark.points for value in point):
        yield "an outline with a place that is no number"
    elif not Polygon(mark.points).is_valid or Polygon(mark.points).area < _LEAST:
        yield f"an outline at {_at(mark.points[0])} that crosses itself or holds no area"


def _doubled(drawing: BoardDrawing) -> Iterator[str]:
    """Yield circles that are there twice, and those on layers that are not for holes."""
    seen: set[tuple[float, float]] = set()
    for layer in drawing.layers:
        for disc in _discs(layer):
            if layer.role in {"cut", "reference"}:
                yield f"{layer.name}: a circle at {_at(disc.centre)} that is no hole"
            place = round(disc.centre.x / _LEAST), round(disc.centre.y / _LEAST)
            if place in seen and layer.role != "ask":
                yield f"{layer.name}: a second hole at {_at(disc.centre)}"
            seen.add(place)


def _off_the_wood(drawing: BoardDrawing) -> Iterator[str]:
    """Yield holes to drill that reach over an edge, reckoned from the outlines that the file holds."""
    outline, openings = _rings(drawing, OUTLINE), _rings(drawing, CUT_OUTS)
    if len(outline) != 1:
        yield f"{len(outline)} outlines of the board, expected one"
        return
    wood = wood_of(outline[0], openings)
    prepare(wood)
    for layer in drawing.layers:
        if layer.role in {"drill", "site", "clamp"}:
            for disc in _discs(layer):
                place = Place(disc.centre)
                if not wood.contains(place) or wood.boundary.distance(place) < disc.radius - _REACH:
                    yield f"{layer.name}: a hole at {_at(disc.centre)} over the edge of the board"


def _rings(drawing: BoardDrawing, name: str) -> list[tuple[Point, ...]]:
    lines = (mark for layer in drawing.layers if layer.name == name for mark in layer.picture)
    return [mark.points for mark in lines if isinstance(mark, Line)]


def _discs(layer: Layer) -> Iterator[Disc]:
    return (mark for mark in layer.picture if isinstance(mark, Disc) and math.isfinite(mark.centre.x + mark.centre.y))


def _at(point: Point) -> str:
    return f"{point.x:g}, {point.y:g}"
