"""DXF file: a board's drawing as DXF R2010 in millimetres; the only place that knows the DXF library.

The library is imported within functions, since a command that writes no DXF need not wait for it; the first time it
lists the fonts of the machine in the user's cache folder.
"""

import io
import math
import re
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from typing import TYPE_CHECKING

from boardplan.drawing.picture import Area, Disc, Line, Mark, Strand, Words
from boardplan.geometry.bends import Bend
from boardplan.output.exchange.geometry_audit import BadDrawing, refuse_bad
from boardplan.output.exchange.layer import BoardDrawing, Layer, Role

if TYPE_CHECKING:
    from ezdxf.document import Drawing
    from ezdxf.layouts.layout import Modelspace

_MILLIMETRES, _METRIC = 4, 1
"""$INSUNITS and $MEASUREMENT as the DXF reference counts them."""
_COLOURS: dict[Role, int] = {"cut": 1, "drill": 5, "site": 4, "clamp": 3, "ask": 6, "reference": 8}
"""Indices of DXF colours: red, blue, cyan, green, magenta, grey."""
_STYLE = "BOARDPLAN"
_CLOSE = 1e-9


def dxf_bytes(drawing: BoardDrawing) -> bytes:
    """Return a drawing as a DXF file; the same drawing gives the same bytes. Raises BadDrawing."""
    from ezdxf.filemanagement import new  # noqa: PLC0415

    refuse_bad(drawing)
    with _without_a_clock():
        document = new("R2010", units=_MILLIMETRES)
        document.header["$MEASUREMENT"] = _METRIC
        document.styles.new(_STYLE, dxfattribs={"font": "arial.ttf"})
        space = document.modelspace()
        for layer in drawing.layers:
            document.layers.add(layer.name, color=_COLOURS[layer.role])
            _draw_layer(document, space, layer)
        _show_whole(document, space, drawing)
        found = document.audit()
        if found.errors or found.fixes:
            raise BadDrawing(tuple(str(each.message) for each in (*found.errors, *found.fixes)))
        for name in sorted(document.entitydb.dxf_types_in_use()):
            document.classes.add_class(name)  # the library would, in the order of a set
        text = io.StringIO()
        document.write(text)
        return document.encode(text.getvalue())


@contextmanager
def _without_a_clock() -> Iterator[None]:
    """Keep the library from writing times and random ids; nobody else in the program uses it."""
    from ezdxf import options  # type: ignore[attr-defined]  # noqa: PLC0415

    before = options.write_fixed_meta_data_for_testing
    options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        options.write_fixed_meta_data_for_testing = before


def _show_whole(document: "Drawing", space: "Modelspace", drawing: BoardDrawing) -> None:
    """Set the first view so that all of the drawing is in it."""
    box = drawing.box
    document.set_modelspace_vport(height=max(box.height, box.width / 2), center=box.centre)
    space.reset_extents((box.left, box.bottom, 0), (box.right, box.top, 0))


def _draw_layer(document: "Drawing", space: "Modelspace", layer: Layer) -> None:
    for mark in layer.picture:
        attributes = {"layer": layer.name}
        if isinstance(mark, Line) and mark.dashes:
            attributes["linetype"] = _dashed(document, mark.dashes)
        _DRAW[type(mark)](space, mark, attributes)


def _dashed(document: "Drawing", dashes: Sequence[float]) -> str:
    """Return the name of a line type with these dashes and gaps in mm, which is made where it is new."""
    name = "DASHES-" + "-".join(f"{each:g}" for each in dashes)
    if name not in document.linetypes:
        signed = [length if index % 2 == 0 else -length for index, length in enumerate(dashes)]
        document.linetypes.add(name, [sum(dashes), *signed])
    return name


def _line(space: "Modelspace", mark: Line, attributes: dict[str, str]) -> None:
    space.add_lwpolyline(mark.points, close=mark.closed, dxfattribs=attributes)


def _area(space: "Modelspace", mark: Area, attributes: dict[str, str]) -> None:
    """Draw the rings of an area; a ground that only hides what is below has none."""
    if mark.edge or mark.fill != "paper":
        for ring in mark.rings:
            space.add_lwpolyline(ring, close=True, dxfattribs=attributes)


def _disc(space: "Modelspace", mark: Disc, attributes: dict[str, str]) -> None:
    space.add_circle(mark.centre, mark.radius, dxfattribs=attributes)


def _strand(space: "Modelspace", mark: Strand, attributes: dict[str, str]) -> None:
    """Draw a line whose bends are true arcs: a bulge is the tangent of a quarter of the turn."""
    if not mark.pieces:
        return
    points = [
        (piece.start.x, piece.start.y, math.tan(math.radians(piece.turn) / 4) if isinstance(piece, Bend) else 0.0)
        for piece in mark.pieces
    ]
    end = mark.pieces[-1].end
    space.add_lwpolyline([*points, (end.x, end.y, 0.0)], format="xyb", dxfattribs=attributes)


def _words(space: "Modelspace", mark: Words, attributes: dict[str, str]) -> None:
    from ezdxf.enums import TextEntityAlignment as Align  # noqa: PLC0415

    if mark.centred:
        align = {"start": Align.MIDDLE_LEFT, "middle": Align.MIDDLE_CENTER, "end": Align.MIDDLE_RIGHT}[mark.anchor]
    else:
        align = {"start": Align.LEFT, "middle": Align.CENTER, "end": Align.RIGHT}[mark.anchor]
    text = space.add_text(
        plain_words(mark.text), height=mark.height, rotation=mark.turn, dxfattribs={**attributes, "style": _STYLE}
    )
    text.set_placement(mark.at, align=align)


def plain_words(text: str) -> str:
    """Return words that no reader of DXF takes for a code: those begin with %%, ^ or a backslash and U+ or M+.

    >>> plain_words("5%% of 30^C")
    '5%%%%%% of 30^ C'
    """
    one_line = "".join(each if each.isprintable() else " " for each in text)
    safe = one_line.replace("^", "^ ").replace("%%", "%%%%%%")
    return re.sub(r"\\(?=[UM]\+)", "/", safe)


_DRAW: dict[type[Mark], Callable[..., None]] = {
    Line: _line,
    Area: _area,
    Disc: _disc,
    Strand: _strand,
    Words: _words,
}
"""How each sort of mark is drawn."""
