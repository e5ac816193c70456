"""Printer correction: what a printer's measured bars mean for a template, in words for the sheets and the shell."""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from boardplan.geometry.units import INCH, inches_text, length_text, tidy_number
from boardplan.model.board import Board
from boardplan.model.job import Units
from boardplan.model.printer_bars import MUCH, Factors, PrintedBar, PrinterBars
from boardplan.output.printing.paper import Paper

PRINT_TRUE = "Print at 100 % / actual size: no 'fit to page', no 'shrink oversized', not borderless."
_FINEST_MM, _FINEST_INCH = 10, 64
_SLIP = 1e-9


@dataclass(frozen=True, slots=True)
class Printing:
    """What a template is printed on and by which printer, as far as that is said and measured."""

    paper: Paper
    printer: str = ""
    bars: PrinterBars | None = None

    @property
    def factors(self) -> Factors:
        """What lengths are drawn at; 1 where nothing is measured."""
        return self.bars.factors if self.bars else Factors()

    @property
    def ready(self) -> bool:
        """Whether the bars of this printer on this paper are measured and true within 0.3 mm."""
        return self.bars is not None and self.bars.ready

    @property
    def missing(self) -> str:
        """What stands between the template and the drill; nothing where it is ready."""
        return missing_words(self.bars) if self.printer else "no printer named, no bars measured"


NOT_READY = "NOT READY TO DRILL"


def missing_words(bars: PrinterBars | None) -> str:
    """Return what is still missing of a printer's bars; nothing where they are measured and true."""
    if bars is None:
        return "bars not measured on this printer and paper"
    if not bars.plausible:
        return "the last print was out of scale"
    return "" if bars.ready else "correction not yet checked by a print"


def not_ready_words(printing: Printing) -> str:
    """Return what every sheet of a template carries until the printer's bars are measured true; nothing after."""
    return "" if printing.ready else f"{NOT_READY}: {printing.missing}"


def readiness_words(printing: Printing, boards: Iterable[Board], units: Units) -> str:
    """Return whether what is printed is true enough to drill by, and the error left over the largest of the boards."""
    if not printing.ready:
        return f"Not ready to drill: {printing.missing}."
    largest = max((largest_size(board) for board in boards), default=0.0)
    left = f"; {error_words(printing, largest, units)}" if largest else ""
    return f"Bars true within 0.3 mm: printer {printing.printer} on {printing.paper.name}{left}."


def drawn_words(printing: Printing, factors: tuple[float, float]) -> str:
    """Return at how many percent a sheet is drawn, x then y of that sheet, and for which printer."""
    x, y = (percent(each) for each in factors)
    drawn = f"drawn {x} % in x, {y} % in y"
    if not printing.printer:
        return f"{drawn}, {printing.paper.name}"
    return f"{drawn} for printer {printing.printer} on {printing.paper.name}"


def percent(factor: float) -> str:
    """Return a factor in percent, to the hundredth that it has.

    >>> percent(1.0027), percent(1.0)
    ('100.27', '100.00')
    """
    return f"{100 * factor:.2f}"


def largest_size(board: Board) -> float:
    """Return a board's largest dimension in mm."""
    return max(board.box.width, board.box.height)


def error_words(printing: Printing, length: float, units: Units) -> str:
    """Return the error left over a length, rounded up to what a rule shows: 0.1 mm or 1/64 in, and never to nothing."""
    error = printing.bars.error_over(length) if printing.bars else None
    over = f"error left over {length_text(length, units)}"
    if error is None:
        return f"{over}: not known"
    if units == "inch":
        parts = max(1, math.ceil(error / INCH * _FINEST_INCH - _SLIP))
        return f"{over}: at most {inches_text(parts * INCH / _FINEST_INCH, _FINEST_INCH)} in"
    return f"{over}: at most {tidy_number(max(1, math.ceil(error * _FINEST_MM - _SLIP)) / _FINEST_MM)} mm"


def bar_sentences(bars: PrinterBars) -> list[str]:
    """Return what is to be said of measured bars: what is refused and why, what is corrected by much, what comes next.

    Limits: 0.97 to 1.03, 0.5 %, 0.3 mm, 1 % along both sides alike (common practice, no source).
    """
    named = (("x", bars.short), ("y", bars.long))
    refused = [_refusal(name, bar) for name, bar in named if not bar.plausible]
    if not refused and bars.scaled:
        refused = [_scaled_words(bars)]
    if refused:
        return [*refused, f"Not corrected: {PRINT_TRUE} Print the calibration sheet again and measure it."]
    much = [
        f"Caution: {name} needs {percent(factor)} %, more than half a percent; see that nothing scales the print, that "
        "the paper is the right one and runs straight."
        for name, factor in zip("xy", bars.factors, strict=True)
        if abs(factor - 1) > MUCH + _SLIP
    ]
    if bars.ready:
        return [*much, "Both bars are true within 0.3 mm."]
    x, y = (percent(each) for each in bars.factors)
    again = "Print the calibration sheet again with that and measure it"
    once = "ready to drill once both bars are true within 0.3 mm"
    return [*much, f"From now on drawn {x} % in x, {y} % in y. {again}: {once}."]


def _scaled_words(bars: PrinterBars) -> str:
    """Return by how much both bars are out alike, and what most likely made them so."""
    x, y = (percent(abs(bar.share)) for bar in (bars.short, bars.long))
    if bars.short.share > 0:
        way, cause = "long", "'fit to page' with enlarging, or borderless printing, was most likely on"
    else:
        way, cause = "short", "'fit to page' or 'shrink oversized' was most likely on"
    return (
        f"Both bars are too {way} alike, x by {x} % and y by {y} %; no printer is out so far along both sides: {cause}."
    )


def _refusal(name: str, bar: PrintedBar) -> str:
    """Return how far out a bar is and what most likely made it so."""
    found = f"{name} measures {tidy_number(bar.measured, 2)} mm, not {tidy_number(bar.length, 2)} mm"
    if bar.share > 0:
        cause = "'fit to page' with enlarging, or borderless printing, was most likely on"
    else:
        cause = "'fit to page' or 'shrink oversized' was most likely on"
    beyond = (
        f"it would need {percent(bar.drawn_at * bar.length / bar.measured)} %, and 97 to 103 % is all that is taken"
    )
    return f"{found}: {beyond}; {cause}."


def printing_record(printing: Printing, boards: Iterable[Board], units: Units) -> dict[str, Any]:
    """Return what a pack says of its printer; lengths in mm."""
    return {
        "printer": printing.printer,
        "paper": printing.paper.id,
        "bars_true": printing.ready,
        "words": readiness_words(printing, boards, units),
        "factors": {"short": printing.factors.short, "long": printing.factors.long},
        "bars": bars_record(printing.bars) if printing.bars else None,
        "boards": [
            {
                "board": board.id,
                "largest_mm": largest_size(board),
                "error_left_mm": printing.bars.error_over(largest_size(board)) if printing.bars else None,
                "words": error_words(printing, largest_size(board), units),
            }
            for board in boards
        ],
    }


def bars_record(bars: PrinterBars) -> dict[str, Any]:
    """Return measured bars and what follows from them; lengths in mm."""
    return {
        "printer": bars.printer,
        "paper": bars.paper,
        "short": _bar_record(bars.short),
        "long": _bar_record(bars.long),
        "finer": bars.finer,
        "refused": not bars.plausible,
        "factors": {"short": bars.factors.short, "long": bars.factors.long},
        "bars_true": bars.ready,
        "words": bar_sentences(bars),
    }


def _bar_record(bar: PrintedBar) -> dict[str, float]:
    return {"length_mm": bar.length, "measured_mm": bar.measured, "drawn_at": bar.drawn_at}
