"""PDF: sheets of pictures as a PDF at true size; the only place that knows the PDF library.

The library is imported within functions, since a command that prints nothing need not wait for it. It
brings no types, so the canvas is Any here.
"""

import io
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from pathlib import Path
from typing import Any

from boardplan.drawing.palette import colour
from boardplan.drawing.picture import Area, Disc, Line, Mark, Strand, Words
from boardplan.geometry.bends import Bend, Straight
from boardplan.geometry.point import Point, bearing, direction
from boardplan.geometry.units import POINTS_PER_MM, mm_from_points, points_from_mm
from boardplan.output.printing.lettering import CAPITAL
from boardplan.output.printing.pdf_number import pdf_number
from boardplan.output.printing.sheet import Part, Sheet

HAIRLINE = 0.1
"""Width of a line of width 0, in mm."""
_FACES = {False: "AtkinsonHyperlegibleNext_400Regular.ttf", True: "AtkinsonHyperlegibleNext_700Bold.ttf"}
_NAMES = {False: "boardplan-plain", True: "boardplan-bold"}
_ROUND = 1


@dataclass(frozen=True, slots=True)
class Fonts:
    """The font we print with, read from a folder; it measures words and is embedded in every file."""

    folder: Path

    def width(self, text: str, height: float, *, bold: bool = False) -> float:
        """Return how wide a text is in mm, at a height of its capitals in mm."""
        return mm_from_points(_width_in_points(self.folder, text, points_from_mm(height) / CAPITAL, bold=bold))


def _width_in_points(folder: Path, text: str, size: float, *, bold: bool) -> float:
    return 0.001 * size * _thousandths(folder, text, bold=bold)


@lru_cache(maxsize=1 << 16)
def _thousandths(folder: Path, text: str, *, bold: bool) -> float:
    """Return how wide a text is in thousandths of its size; the same words come back from sheet to sheet."""
    return float(_font(folder, bold=bold).stringWidth(text, 1000))


@cache
def _font(folder: Path, *, bold: bool) -> Any:  # noqa: ANN401 - the library has no types
    from reportlab.pdfbase.pdfmetrics import registerFont  # type: ignore[import-untyped]  # noqa: PLC0415
    from reportlab.pdfbase.ttfonts import TTFont  # type: ignore[import-untyped]  # noqa: PLC0415

    font = TTFont(_NAMES[bold], str(folder / _FACES[bold]))
    registerFont(font)
    return font


def pdf_of(sheets: Sequence[Sheet], fonts: Fonts, title: str, each_page: Callable[[int], None] | None = None) -> bytes:
    """Return sheets as a PDF, a bookmark for each; the same sheets give the same bytes.

    `each_page` is told after each page how many are done; whatever it raises ends the work.
    """
    from reportlab import rl_config  # type: ignore[import-untyped]  # noqa: PLC0415
    from reportlab.pdfgen.canvas import Canvas  # type: ignore[import-untyped]  # noqa: PLC0415

    rl_config.useA85 = 0  # else compressed pages are spelt out in letters: a quarter longer, for channels of seven bits
    for bold in _FACES:
        _font(fonts.folder, bold=bold)
    out = io.BytesIO()
    canvas = Canvas(out, invariant=1, initialFontName=_NAMES[False], initialFontSize=9, pageCompression=1, lang="en")
    canvas.setTitle(title)
    canvas.setAuthor("boardplan")
    canvas.setCreator("boardplan")
    canvas.setSubject("Print at 100 %")
    canvas.setViewerPreference("PrintScaling", "None")
    for number, sheet in enumerate(sheets, start=1):
        _draw_sheet(canvas, sheet, f"sheet-{number}", fonts)
        if each_page:
            each_page(number)
    canvas.save()
    return out.getvalue()


def _draw_sheet(canvas: Any, sheet: Sheet, key: str, fonts: Fonts) -> None:  # noqa: ANN401
    canvas.setPageSize((points_from_mm(sheet.width), points_from_mm(sheet.height)))
    canvas.bookmarkPage(key)
    canvas.addOutlineEntry(sheet.name, key, 0)
    canvas.setLineCap(_ROUND)
    canvas.setLineJoin(_ROUND)
    for part in sheet.parts:
        _draw_part(canvas, part, fonts)
    canvas.showPage()


def _draw_part(canvas: Any, part: Part, fonts: Fonts) -> None:  # noqa: ANN401
    canvas.saveState()
    if part.scale != (1, 1):
        (x, y), about = part.scale, part.about
        canvas.transform(x, 0, 0, y, points_from_mm(about.x * (1 - x)), points_from_mm(about.y * (1 - y)))
    if part.clip:
        path = canvas.beginPath()
        left, bottom, right, top = (points_from_mm(each) for each in part.clip)
        path.rect(left, bottom, right - left, top - bottom)
        canvas.clipPath(path, stroke=0, fill=0)
    for mark in part.picture:
        if isinstance(mark, Words):
            _words(canvas, mark, part.scale, fonts)
        else:
            _DRAW[type(mark)](canvas, mark)
    canvas.restoreState()


def _stroke(canvas: Any, ink: str, width: float, dashes: Sequence[float] = ()) -> None:  # noqa: ANN401
    canvas.setStrokeColor(_colour(ink))
    canvas.setLineWidth(points_from_mm(width or HAIRLINE))
    canvas.setDash([points_from_mm(each) for each in dashes])


@cache
def _colour(ink: str) -> Any:  # noqa: ANN401
    from reportlab.lib.colors import Color, HexColor  # type: ignore[import-untyped]  # noqa: PLC0415

    real = HexColor(colour(ink, "paper"))
    return Color(real.red, real.green, real.blue)


def _path(lines: Iterable[Sequence[Point]], *, closed: bool) -> Any:  # noqa: ANN401 - the library has no types
    """Return lines as a path, as the library's own moves and lines would make it, in a third of the time."""
    from reportlab.pdfgen.pathobject import PDFPathObject  # type: ignore[import-untyped]  # noqa: PLC0415

    code = ["n"]
    for points in lines:
        first, *others = (f"{pdf_number(x * POINTS_PER_MM)} {pdf_number(y * POINTS_PER_MM)}" for x, y in points)
        code += [f"{first} m", *(f"{each} l" for each in others)]
        if closed:
            code.append("h")
    return PDFPathObject(code)


def _pt(point: Point) -> tuple[float, float]:
    return point.x * POINTS_PER_MM, point.y * POINTS_PER_MM


def _line(canvas: Any, mark: Line) -> None:  # noqa: ANN401
    _stroke(canvas, mark.ink, mark.width, mark.dashes)
    canvas.drawPath(_path([mark.points], closed=mark.closed), stroke=1, fill=0)


def _area(canvas: Any, mark: Area) -> None:  # noqa: ANN401
    if mark.edge:
        _stroke(canvas, mark.edge, mark.edge_width)
    if mark.fill:
        canvas.setFillColor(_colour(mark.fill))
    if mark.opacity < 1:
        canvas.saveState()
        canvas.setFillAlpha(mark.opacity)
    path = _path(mark.rings, closed=True)
    canvas.drawPath(path, stroke=1 if mark.edge else 0, fill=1 if mark.fill else 0, fillMode=0)
    if mark.opacity < 1:
        canvas.restoreState()


def _disc(canvas: Any, mark: Disc) -> None:  # noqa: ANN401
    if mark.edge:
        _stroke(canvas, mark.edge, mark.edge_width, mark.dashes)
    if mark.fill:
        canvas.setFillColor(_colour(mark.fill))
    x, y = _pt(mark.centre)
    canvas.circle(x, y, points_from_mm(mark.radius), stroke=1 if mark.edge else 0, fill=1 if mark.fill else 0)


def _strand(canvas: Any, mark: Strand) -> None:  # noqa: ANN401
    if not mark.pieces:
        return
    canvas.saveState()
    _stroke(canvas, mark.ink, mark.width, mark.dashes)
    canvas.setLineCap(_ROUND if mark.round_ends else 0)
    canvas.setStrokeAlpha(mark.opacity)
    path = canvas.beginPath()
    path.moveTo(*_pt(mark.pieces[0].start))
    for piece in mark.pieces:
        if isinstance(piece, Straight):
            path.lineTo(*_pt(piece.end))
        else:
            _bend(path, piece)
    canvas.drawPath(path, stroke=1, fill=0)
    canvas.restoreState()


def _bend(path: Any, piece: Bend) -> None:  # noqa: ANN401
    x, y = _pt(piece.centre)
    radius = points_from_mm(piece.radius)
    start = bearing(piece.centre, piece.start)
    path.arcTo(x - radius, y - radius, x + radius, y + radius, start, piece.turn)


def _words(canvas: Any, mark: Words, scale: tuple[float, float], fonts: Fonts) -> None:  # noqa: ANN401
    """Draw words at their size on a canvas that is scaled."""
    size = points_from_mm(mark.height) / CAPITAL
    wide = _width_in_points(fonts.folder, mark.text, size, bold=mark.bold) if mark.anchor != "start" else 0.0
    along = {"start": 0.0, "middle": -wide / 2, "end": -wide}[mark.anchor]
    up = -points_from_mm(mark.height) / 2 if mark.centred else 0.0
    cos, sin = direction(mark.turn)
    x, y = _pt(mark.at)
    canvas.setFillColor(_colour(mark.ink))
    text = canvas.beginText()
    text.setFont(_NAMES[mark.bold], size)
    wide_by, high_by = scale
    x += (along * cos - up * sin) / wide_by
    y += (along * sin + up * cos) / high_by
    text.setTextTransform(cos / wide_by, sin / high_by, -sin / wide_by, cos / high_by, x, y)
    text.textOut(mark.text)
    canvas.drawText(text)


_DRAW: dict[type[Mark], Callable[[Any, Any], None]] = {
    Line: _line,
    Area: _area,
    Disc: _disc,
    Strand: _strand,
}
"""How each sort of mark is drawn; words have their own way."""
