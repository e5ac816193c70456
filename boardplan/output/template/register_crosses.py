"""Register crosses: two slanting crosses in the middle of each joint, at the same spots on both its sheets."""

from collections.abc import Iterator, Sequence

from boardplan.drawing.picture import Line, Mark
from boardplan.geometry.point import Box, Point
from boardplan.output.printing.joints import joints_of
from boardplan.output.printing.pages import Tile
from boardplan.output.template.free_places import WORDS, FreePlaces

_NEARBY = (0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5)
_STEP = 4.0
_REACH = 3.0
_SHORTEST = 30.0
"""A joint shorter than this, where strips are out of line, has no room for two crosses, in mm."""


def register_crosses(tiles: Sequence[Tile], places: FreePlaces) -> tuple[Mark, ...]:
    """Return the crosses of all joints, clear of what is drawn; unlike a hole mark they slant and have no circle."""
    marks: list[Mark] = []
    for joint in joints_of(tiles):
        if joint.length >= _SHORTEST:
            marks += _joint(joint.shared, places, upright=joint.upright)
    return tuple(marks)


def _joint(shared: Box, places: FreePlaces, *, upright: bool) -> Iterator[Mark]:
    for share in (0.25, 0.75):
        if upright:
            first = Point(shared.centre.x, shared.bottom + share * shared.height)
            spots = [first.moved(0, _STEP * step) for step in _NEARBY]
        else:
            first = Point(shared.left + share * shared.width, shared.centre.y)
            spots = [first.moved(_STEP * step, 0) for step in _NEARBY]
        found = places.best((Box(*spot, *spot).grown(_REACH), 0.1 * rank) for rank, spot in enumerate(spots))
        if found:
            places.take(found[0], WORDS)
            yield from _cross(found[0].centre)


def _cross(at: Point) -> Iterator[Mark]:
    for turn in (45, 135):
        yield Line((at.ahead(turn, _REACH), at.ahead(turn + 180, _REACH)), "ink", 0.12)
    yield Line(tuple(at.ahead(turn, 1.6) for turn in (0, 90, 180, 270)), "ink", 0.12, closed=True)
