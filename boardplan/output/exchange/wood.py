"""Wood: what is left of a sheet once its cut-outs are out of it, as an area to reckon with."""

from collections.abc import Sequence

from shapely import Polygon, make_valid, union_all
from shapely.geometry.base import BaseGeometry

from boardplan.geometry.point import Point


def wood_of(outline: Sequence[Point], cutouts: Sequence[Sequence[Point]]) -> BaseGeometry:
    """Return the area within an outline and in none of its cut-outs, which may reach over it or over each other."""
    return make_valid(Polygon(outline)).difference(union_all([make_valid(Polygon(ring)) for ring in cutouts]))


def cut_by_itself(outline: Sequence[Point], cutouts: Sequence[Sequence[Point]], index: int) -> bool:
    """Say whether a cut-out lies within the outline and meets neither it nor another cut-out."""
    own = make_valid(Polygon(cutouts[index]))
    others = [make_valid(Polygon(ring)) for at, ring in enumerate(cutouts) if at != index]
    return bool(make_valid(Polygon(outline)).contains_properly(own)) and not any(
        own.intersects(each) for each in others
    )
