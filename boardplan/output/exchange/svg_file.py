"""SVG file: a board's drawing true to size, its layers as groups, written by hand so that the same is always the same.

One unit is a millimetre; y runs down from the top of the drawing, as SVG wants it.
"""

from collections.abc import Callable, Iterator, Sequence
from xml.sax.saxutils import escape

from boardplan.drawing.palette import colour
from boardplan.drawing.picture import Area, Disc, Line, Mark, Strand, Words
from boardplan.geometry.bends import Bend, Straight
from boardplan.geometry.point import Box, Point
from boardplan.output.exchange.geometry_audit import refuse_bad
from boardplan.output.exchange.layer import BoardDrawing, Layer
from boardplan.output.printing.lettering import CAPITAL

FONTS = "'Atkinson Hyperlegible Next', 'Atkinson Hyperlegible', 'Helvetica', 'Arial', sans-serif"
_HAIRLINE = 0.1
_HALF_TURN = 180.0


def svg_bytes(drawing: BoardDrawing) -> bytes:
    """Return a drawing as an SVG file. Raises BadDrawing."""
    refuse_bad(drawing)
    return ("\n".join(_lines(drawing)) + "\n").encode("utf-8")


def _lines(drawing: BoardDrawing) -> Iterator[str]:
    box = drawing.box
    width, height = _number(box.width), _number(box.height)
    yield '<?xml version="1.0" encoding="UTF-8"?>'
    yield (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" '
        f'viewBox="0 0 {width} {height}" font-family="{FONTS}" fill="none" stroke="none" '
        'stroke-linecap="round" stroke-linejoin="round">'
    )
    yield f"<title>{escape(_printable(drawing.title))}</title>"
    low = f"{_number(-box.left)}, {_number(box.top)}"
    yield f"<desc>Units are millimetres. The lower left of the bare sheet is at {low}.</desc>"
    for layer in drawing.layers:
        yield from _group(layer, box)
    yield "</svg>"


def _group(layer: Layer, box: Box) -> Iterator[str]:
    yield f'<g id="{layer.name}" class="{layer.role}">'
    for mark in layer.picture:
        yield from _DRAW[type(mark)](mark, box)
    yield "</g>"


def _number(value: float) -> str:
    """Return a length to a ten-thousandth of a millimetre, without empty decimals."""
    return f"{value:.4f}".rstrip("0").rstrip(".") if abs(value) >= 0.00005 else "0"  # noqa: PLR2004


def _at(point: Point, box: Box) -> str:
    return f"{_number(point.x - box.left)} {_number(box.top - point.y)}"


def _pen(ink: str | None, width: float, dashes: Sequence[float] = ()) -> str:
    if ink is None:
        return ""
    dashed = f' stroke-dasharray="{" ".join(map(_number, dashes))}"' if dashes else ""
    return f' stroke="{colour(ink, "paper")}" stroke-width="{_number(width or _HAIRLINE)}"{dashed}'


def _fill(ink: str | None, opacity: float = 1.0) -> str:
    if ink is None:
        return ""
    dim = f' fill-opacity="{_number(opacity)}"' if opacity < 1 else ""
    return f' fill="{colour(ink, "paper")}"{dim}'


def _ring(points: Sequence[Point], box: Box, *, closed: bool) -> str:
    return "M" + " L".join(_at(point, box) for point in points) + (" Z" if closed else "")


def _line(mark: Line, box: Box) -> Iterator[str]:
    yield f'<path d="{_ring(mark.points, box, closed=mark.closed)}"{_pen(mark.ink, mark.width, mark.dashes)}/>'


def _area(mark: Area, box: Box) -> Iterator[str]:
    rings = " ".join(_ring(ring, box, closed=True) for ring in mark.rings)
    pen = _pen(mark.edge, mark.edge_width)
    yield f'<path d="{rings}" fill-rule="evenodd"{_fill(mark.fill, mark.opacity)}{pen}/>'


def _disc(mark: Disc, box: Box) -> Iterator[str]:
    x, y = _at(mark.centre, box).split()
    look = f"{_fill(mark.fill)}{_pen(mark.edge, mark.edge_width, mark.dashes)}"
    yield f'<circle cx="{x}" cy="{y}" r="{_number(mark.radius)}"{look}/>'


def _strand(mark: Strand, box: Box) -> Iterator[str]:
    if not mark.pieces:
        return
    way = f"M{_at(mark.pieces[0].start, box)} " + " ".join(_piece(piece, box) for piece in mark.pieces)
    cap = "" if mark.round_ends else ' stroke-linecap="butt"'
    dim = f' stroke-opacity="{_number(mark.opacity)}"' if mark.opacity < 1 else ""
    yield f'<path d="{way}"{_pen(mark.ink, mark.width, mark.dashes)}{cap}{dim}/>'


def _piece(piece: Straight | Bend, box: Box) -> str:
    """Return a stretch; a left turn is a sweep of 0, since y runs down."""
    if isinstance(piece, Straight):
        return f"L{_at(piece.end, box)}"
    radius = _number(piece.radius)
    large, sweep = int(abs(piece.turn) > _HALF_TURN), int(piece.turn < 0)
    return f"A{radius} {radius} 0 {large} {sweep} {_at(piece.end, box)}"


def _words(mark: Words, box: Box) -> Iterator[str]:
    x, y = _at(mark.at, box).split()
    down = f' dy="{_number(mark.height / 2)}"' if mark.centred else ""
    anchor = "" if mark.anchor == "start" else f' text-anchor="{mark.anchor}"'
    bold = ' font-weight="bold"' if mark.bold else ""
    turn = f' transform="rotate({_number(-mark.turn)} {x} {y})"' if mark.turn else ""
    size = _number(mark.height / CAPITAL)
    look = f'{down} font-size="{size}"{anchor}{bold}{turn}{_fill(mark.ink)} xml:space="preserve"'
    yield f'<text x="{x}" y="{y}"{look}>{escape(_printable(mark.text))}</text>'


def _printable(text: str) -> str:
    """Return words without the signs that XML does not allow."""
    return "".join(each if each.isprintable() else " " for each in text)


_DRAW: dict[type[Mark], Callable[..., Iterator[str]]] = {
    Line: _line,
    Area: _area,
    Disc: _disc,
    Strand: _strand,
    Words: _words,
}
"""How each sort of mark is drawn."""
