"""PNG written by hand and opened by a library that shares no code with it."""

import io
import random

import pytest
from PIL import Image

from boardplan.output.exchange.png_file import png_bytes
from boardplan.output.printing.page_raster import Pixels


@pytest.mark.parametrize("size", [(1, 1), (3, 1), (1, 4), (37, 23)])
def test_every_pixel_comes_back(size):
    chance = random.Random(7)
    raw = bytes(chance.randrange(256) for _ in range(size[0] * size[1] * 3))
    image = Image.open(io.BytesIO(png_bytes(Pixels(*size, raw), 150)))
    assert image.size == size
    assert image.tobytes() == raw
    assert image.info["dpi"] == pytest.approx((150, 150), abs=0.05)
