"""Page image: a page of a PDF as pixels, for the window; the only place that knows the library that reads PDFs."""

from dataclasses import dataclass
from threading import Lock

from boardplan.geometry.units import points_from_mm

_ALONE = Lock()
"""The library may be used by one thread at a time."""


@dataclass(frozen=True, slots=True)
class PageImage:
    """Pixels row by row from the top, red, green, blue in a byte each, `stride` bytes a row."""

    width: int
    height: int
    stride: int
    pixels: bytes


def page_image(pdf: bytes, page: int, dots_per_mm: float) -> PageImage:
    """Return a page, the first one being 0, as it comes out of a printer with so many dots to the millimetre."""
    import pypdfium2  # type: ignore[import-untyped]  # noqa: PLC0415 - late, for a quick start

    with _ALONE:
        document = pypdfium2.PdfDocument(pdf)
        try:
            bitmap = document[page].render(scale=dots_per_mm / points_from_mm(1), rev_byteorder=True)
            return PageImage(bitmap.width, bitmap.height, bitmap.stride, bytes(bitmap.buffer))
        finally:
            document.close()
