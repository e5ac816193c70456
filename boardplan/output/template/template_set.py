"""Template set: what all sheets of a board's template have in common, and the words that count holes and findings."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from boardplan.model.holes import Hole
from boardplan.model.job import Job
from boardplan.output.printing.lettering import Measure
from boardplan.output.printing.pages import Tile
from boardplan.output.printing.printer_correction import Printing
from boardplan.output.template.template import Template


@dataclass(frozen=True, slots=True)
class Face:
    """Which face of the board a template lies on: its words on every sheet, the paper's title, how it is used."""

    words: str
    title: str
    use: str


FRONT = Face(
    "FRONT", "drilling template", "Punch through the paper, count the dimples, lay the component on before drilling."
)


@dataclass(frozen=True, slots=True)
class TemplateSet:
    """What all sheets of a board's template have in common; `stops` counts findings that forbid issuing it."""

    job: Job
    template: Template
    tiles: Sequence[Tile]
    printing: Printing
    stops: int
    measure: Measure
    face: Face = FRONT


def count_words(on_sheet: Sequence[Hole], holes: Sequence[Hole]) -> str:
    """Return how many of a board's holes are on a sheet, and of which bits."""
    counted = Counter(hole.bit for hole in on_sheet)
    known = sorted(bit for bit in counted if bit is not None)
    parts = [f"{bit:.1f} mm x {counted[bit]}" for bit in known]
    if counted[None]:
        parts.append(f"? x {counted[None]}")
    bits = f": {', '.join(parts)}" if parts else ""
    return f"holes on this sheet {len(on_sheet)} of {len(holes)}{bits}"
