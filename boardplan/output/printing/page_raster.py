"""Page raster: a page of a PDF as pixels; the only place that knows the library that reads PDF.

The library is imported within functions, since a command that shows no page need not wait for it. It brings no types.
"""

from dataclasses import dataclass
from threading import Lock

_ONE_AT_A_TIME = Lock()
"""The library must not be used by two threads at once."""


@dataclass(frozen=True, slots=True)
class Pixels:
    """Rows of red, green and blue bytes from the top left, without gaps."""

    width: int
    height: int
    rgb: bytes


def page_pixels(pdf: bytes, page: int, longest: int) -> Pixels:
    """Return a page, counted from 0, so large that its longer side has a number of pixels, on white."""
    import pypdfium2  # type: ignore[import-untyped]  # noqa: PLC0415

    with _ONE_AT_A_TIME:
        document = pypdfium2.PdfDocument(pdf)
        try:
            sheet = document[page]
            bitmap = sheet.render(scale=longest / max(sheet.get_size()), rev_byteorder=True, prefer_bgrx=False)
            wide, stride = bitmap.width * 3, bitmap.stride
            raw = bytes(bitmap.buffer)
            rows = (raw[row * stride : row * stride + wide] for row in range(bitmap.height))
            return Pixels(bitmap.width, bitmap.height, b"".join(rows))
        finally:
            document.close()
