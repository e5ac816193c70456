"""Art picture: the shapes of a kind's front view as marks, lit from the upper left however it is turned."""

from boardplan.drawing.picture import Area, Disc, Ink, Line, Picture
from boardplan.drawing.relief import LIGHT, solid
from boardplan.drawing.rings import disc, rectangle
from boardplan.drawing.words import body_words
from boardplan.geometry.point import Point, box_around
from boardplan.model.board import Ring
from boardplan.model.component_kind import ArtShape

_THROWS_FROM = 14.0

LABEL_PLACE = "{ref}"
"""The text that marks where a kind wants its reference."""


def art_picture(art: tuple[ArtShape, ...], turn: float) -> Picture:
    """Return the marks of a front view in the kind's own coordinates, less the place of its reference."""
    return tuple(mark for shape in art if shape.text != LABEL_PLACE for mark in _marks(shape, turn))


def _ink(shape: ArtShape) -> Ink:
    return "body-ink" if shape.tone == "ink" else shape.tone  # the ink of a body stays dark in the dark


def _marks(shape: ArtShape, turn: float) -> Picture:
    shifts = [Point(shape.step.x * index, shape.step.y * index) for index in range(shape.count)]
    if shape.shape == "text":
        return tuple(
            body_words(_moved(shape.points[0], by), shape.text, shape.width, _ink(shape), turn) for by in shifts
        )
    if shape.shape == "line":
        return tuple(
            Line(tuple(_moved(point, by) for point in shape.points), _ink(shape), shape.width) for by in shifts
        )
    if shape.shape == "disc" and not shape.relief and shape.count == 1:
        return (Disc(shape.points[0], shape.radius, _ink(shape)),)
    rings = [tuple(_moved(point, by) for point in _ring(shape)) for by in shifts]
    if not shape.relief:
        return (Area(tuple(rings), _ink(shape)),)
    light = LIGHT - turn
    body = solid(rings, "shadow" if shape.tone == "ink" else shape.tone, shape.relief, light, shape.width)
    return (*_thrown(rings, light), *body) if shape.relief == "raised" else body


def _thrown(rings: list[Ring], light: float) -> Picture:
    """Return the shadow that bodies throw on what is under them; small ones throw none worth drawing."""
    box = box_around(rings[0])
    least = min(box.width, box.height)
    if least < _THROWS_FROM:
        return ()
    reach = min(3.0, 0.6 + 0.03 * least)
    return (
        Area(tuple(tuple(point.ahead(light + 180, reach) for point in ring) for ring in rings), "shadow", opacity=0.3),
    )


def _ring(shape: ArtShape) -> Ring:
    if shape.shape == "rect":
        return rectangle(*shape.points[0], *shape.size, radius=shape.radius)
    if shape.shape == "disc":
        return disc(shape.points[0], shape.radius)
    return shape.points


def _moved(point: Point, by: Point) -> Point:
    return point.moved(by.x, by.y)
