"""Paper: the sheets and rolls people print on, in millimetres."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from boardplan.geometry.units import INCH
from boardplan.model.job import Units

Family = Literal["iso", "us", "roll"]

MARGIN = 10.0
"""Left free at every edge of a page: most printers can't reach nearer than 4 to 5 mm (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Paper:
    """A sort of paper. A sheet is `width` by `height` upright; a roll has its width, and no height until it is cut."""

    id: str
    name: str
    width: float
    height: float | None
    family: Family
    source: str


def _iso(number: int, width: float, height: float) -> Paper:
    return Paper(f"a{number}", f"A{number}", width, height, "iso", "ISO 216")


def _us(paper_id: str, name: str, width: float, height: float) -> Paper:
    source = "US office size" if paper_id == "legal" else "ASME Y14.1"
    return Paper(paper_id, name, width * INCH, height * INCH, "us", source)


def _roll(width: int, inches: int) -> Paper:
    return Paper(f"roll-{width}", f"Roll {width} mm ({inches} in)", width, None, "roll", "common practice, no source")


PAPERS: Mapping[str, Paper] = {
    each.id: each
    for each in (
        _iso(4, 210, 297),
        _iso(3, 297, 420),
        _iso(2, 420, 594),
        _iso(1, 594, 841),
        _iso(0, 841, 1189),
        _us("letter", "Letter", 8.5, 11),
        _us("legal", "Legal", 8.5, 14),
        _us("tabloid", "Tabloid", 11, 17),
        _us("ansi-c", "ANSI C", 17, 22),
        _us("ansi-d", "ANSI D", 22, 34),
        _us("ansi-e", "ANSI E", 34, 44),
        _roll(610, 24),
        _roll(914, 36),
        _roll(1067, 42),
    )
}
"""Every paper by its id."""


def list_paper(paper: Paper, units: Units) -> Paper:
    """Return the office paper that lists are printed on beside a template on the paper given."""
    american = paper.family == "us" or (paper.family == "roll" and units == "inch")
    return PAPERS["letter" if american else "a4"]
