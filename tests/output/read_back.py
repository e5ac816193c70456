"""Reads a PDF back with PDFium, which shares no code with what wrote it; in millimetres from the lower left."""

import ctypes
from dataclasses import dataclass
from pathlib import Path

import pypdfium2
from pypdfium2 import raw

MM = 25.4 / 72  # a unit of a PDF page is 1/72 inch: ISO 32000-1, 8.3.2.3


@dataclass(frozen=True)
class Circle:
    x: float
    y: float
    diameter: float


@dataclass(frozen=True)
class Stroke:
    """A straight line with two ends."""

    x0: float
    y0: float
    x1: float
    y1: float


@dataclass(frozen=True)
class Text:
    words: str
    left: float
    bottom: float
    right: float
    top: float
    embedded: bool


@dataclass(frozen=True)
class Page:
    width: float
    height: float
    circles: tuple[Circle, ...]
    strokes: tuple[Stroke, ...]
    texts: tuple[Text, ...]

    @property
    def words(self) -> str:
        return "\n".join(each.words for each in self.texts)


def read_pages(source: Path | bytes) -> list[Page]:
    document = pypdfium2.PdfDocument(source)
    try:
        return [_page(document, number) for number in range(len(document))]
    finally:
        document.close()


def print_scaling(source: Path | bytes) -> bool:
    """Whether a viewer may scale when it prints."""
    document = pypdfium2.PdfDocument(source)
    try:
        return bool(raw.FPDF_VIEWERREF_GetPrintScaling(document.raw))
    finally:
        document.close()


def bookmarks(source: Path | bytes) -> list[str]:
    document = pypdfium2.PdfDocument(source)
    try:
        return [each.get_title() for each in document.get_toc()]
    finally:
        document.close()


def _page(document, number):
    page = document[number]
    text_page = page.get_textpage()
    circles, strokes, texts = [], [], []
    for index in range(raw.FPDFPage_CountObjects(page.raw)):
        thing = raw.FPDFPage_GetObject(page.raw, index)
        sort = raw.FPDFPageObj_GetType(thing)
        if sort == raw.FPDF_PAGEOBJ_PATH:
            _read_path(thing, circles, strokes)
        elif sort == raw.FPDF_PAGEOBJ_TEXT:
            texts.append(_text(thing, text_page))
    width, height = page.get_size()
    text_page.close()
    page.close()
    return Page(width * MM, height * MM, tuple(circles), tuple(strokes), tuple(texts))


def _read_path(thing, circles, strokes):
    points = _points(thing)
    sorts = [sort for sort, _, _ in points]
    if sorts[:1] == [raw.FPDF_SEGMENT_MOVETO] and sorts[1:13] == [raw.FPDF_SEGMENT_BEZIERTO] * 12 and len(sorts) <= 14:
        on_curve = [points[0], points[3], points[6], points[9]]
        xs, ys = [x for _, x, _ in on_curve], [y for _, _, y in on_curve]
        circles.append(Circle((max(xs) + min(xs)) / 2, (max(ys) + min(ys)) / 2, max(xs) - min(xs)))
    elif sorts == [raw.FPDF_SEGMENT_MOVETO, raw.FPDF_SEGMENT_LINETO]:
        (_, x0, y0), (_, x1, y1) = points
        strokes.append(Stroke(x0, y0, x1, y1))


def _points(thing):
    """The points of a path where they come to lie on the page: its own matrix applied."""
    matrix = raw.FS_MATRIX()
    raw.FPDFPageObj_GetMatrix(thing, ctypes.byref(matrix))
    found = []
    for index in range(raw.FPDFPath_CountSegments(thing)):
        segment = raw.FPDFPath_GetPathSegment(thing, index)
        x, y = ctypes.c_float(), ctypes.c_float()
        raw.FPDFPathSegment_GetPoint(segment, ctypes.byref(x), ctypes.byref(y))
        on_page = (
            matrix.a * x.value + matrix.c * y.value + matrix.e,
            matrix.b * x.value + matrix.d * y.value + matrix.f,
        )
        found.append((raw.FPDFPathSegment_GetType(segment), on_page[0] * MM, on_page[1] * MM))
    return found


def _text(thing, text_page):
    size = raw.FPDFTextObj_GetText(thing, text_page.raw, None, 0)
    buffer = ctypes.create_string_buffer(size)
    raw.FPDFTextObj_GetText(thing, text_page.raw, ctypes.cast(buffer, ctypes.POINTER(ctypes.c_ushort)), size)
    sides = [ctypes.c_float() for _ in range(4)]
    raw.FPDFPageObj_GetBounds(thing, *(ctypes.byref(side) for side in sides))
    left, bottom, right, top = (side.value * MM for side in sides)
    font = raw.FPDFTextObj_GetFont(thing)
    words = " ".join(buffer.raw[: size - 2].decode("utf-16-le").split())
    return Text(words, left, bottom, right, top, raw.FPDFFont_GetIsEmbedded(font) == 1)
