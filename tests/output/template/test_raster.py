"""The template as pixels: marks of holes rasterised at 300 dpi by PDFium, their centroids against the plan."""

from dataclasses import dataclass

import numpy as np
import pypdfium2
import pytest

from boardplan.model.holes import holes_of

DPI = 300
WITHIN = 0.05
DARK = 100.0


@dataclass(frozen=True)
class Raster:
    """A page as pixels: how much darker than dark grey each is, so that faint lines count for nothing; pixels in mm."""

    dark: np.ndarray
    wide: float
    high: float

    def centroid(self, at, radius):
        """The centroid, in mm from the page's lower left, of what is dark about a point of it."""
        rows = self.dark.shape[0]
        row, column = int(rows - at[1] / self.high), int(at[0] / self.wide)
        reach = int(np.ceil(radius / min(self.wide, self.high))) + 2
        top, left = max(0, row - reach), max(0, column - reach)
        part = self.dark[top : row + reach, left : column + reach]
        down, across = np.mgrid[0 : part.shape[0], 0 : part.shape[1]]
        x, y = (left + across + 0.5) * self.wide, (rows - top - down - 0.5) * self.high
        weight = part * ((x - at[0]) ** 2 + (y - at[1]) ** 2 <= radius**2)
        assert weight.sum() > 0
        return (x * weight).sum() / weight.sum(), (y * weight).sum() / weight.sum()


def raster(path, number):
    """A page at 300 dpi; a pixel is the page by their whole number, a little less than 1/300 in."""
    document = pypdfium2.PdfDocument(path)
    try:
        page = document[number]
        image = page.render(scale=DPI / 72, grayscale=True).to_numpy()
        width, height = (side * 25.4 / 72 for side in page.get_size())
    finally:
        document.close()
    rows, columns = image.shape[:2]
    dark = np.clip(DARK - image.reshape(rows, columns).astype(float), 0, None)
    return Raster(dark, width / columns, height / rows)


@pytest.mark.parametrize(
    ("sample", "paper"), [("library bus", "a4"), ("honey trailer", "a4"), ("lookout cabin", "letter")]
)
def test_centroids_of_marks_are_where_the_plan_says(sample, paper, packs):
    pack = packs(sample, paper)
    seen = set()
    for entry in pack.contents["template_pages"]:
        left, bottom, right, top = entry["rect"]
        here = [
            hole
            for hole in holes_of(pack.plan)
            if hole.board == entry["board"]
            and left + 5 < hole.position.x < right - 5
            and bottom + 5 < hole.position.y < top - 5
        ]
        if not here:
            continue
        page = raster(pack.folder / entry["file"], entry["page"] - 1)
        for hole in here:
            at = hole.position.x - left + entry["at"][0], hole.position.y - bottom + entry["at"][1]
            x, y = page.centroid(at, hole.bit / 2 + 0.2)
            assert abs(x - at[0]) < WITHIN, (hole.id, entry["tile"])
            assert abs(y - at[1]) < WITHIN, (hole.id, entry["tile"])
            seen.add(hole.id)
    assert seen == {hole.id for hole in holes_of(pack.plan)}
