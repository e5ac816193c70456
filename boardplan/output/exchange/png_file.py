"""PNG file: pixels as a PNG that states its resolution, after the PNG specification, third edition (W3C 2025)."""

import struct
import zlib

import numpy as np

from boardplan.geometry.units import INCH
from boardplan.output.printing.page_raster import Pixels

_SIGNATURE = b"\x89PNG\r\n\x1a\n"
_TRUE_COLOUR, _UP, _METRE = 2, 2, 1
_CHANNELS = 3


def png_bytes(pixels: Pixels, dots_per_inch: float) -> bytes:
    """Return pixels as a PNG; each row is written as what it differs by from the one above, which packs well."""
    rows = np.frombuffer(pixels.rgb, dtype=np.uint8).reshape(pixels.height, pixels.width * _CHANNELS)
    lines = np.empty((pixels.height, 1 + rows.shape[1]), dtype=np.uint8)
    lines[:, 0] = _UP
    lines[0, 1:] = rows[0]
    np.subtract(rows[1:], rows[:-1], out=lines[1:, 1:])
    per_metre = round(dots_per_inch / INCH * 1000)
    return b"".join(
        (
            _SIGNATURE,
            _chunk(b"IHDR", struct.pack(">IIBBBBB", pixels.width, pixels.height, 8, _TRUE_COLOUR, 0, 0, 0)),
            _chunk(b"pHYs", struct.pack(">IIB", per_metre, per_metre, _METRE)),
            _chunk(b"IDAT", zlib.compress(lines.tobytes(), 6)),
            _chunk(b"IEND", b""),
        )
    )


def _chunk(sort: bytes, data: bytes) -> bytes:
    """Return a chunk: how long it is, its sort, its data, its checksum."""
    return struct.pack(">I", len(data)) + sort + data + struct.pack(">I", zlib.crc32(sort + data))
