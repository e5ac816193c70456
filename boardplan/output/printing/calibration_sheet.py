"""Calibration sheet: two long bars to measure, so that a printer's templates can be corrected and trusted."""

import math
from collections.abc import Iterator

from boardplan.drawing.picture import Line, Mark, Picture, Words, placed_picture
from boardplan.geometry.placement import Placement
from boardplan.geometry.point import Box, Point
from boardplan.geometry.units import INCH, tidy_number
from boardplan.model.printer_bars import MOST
from boardplan.output.printing.lettering import (
    FINE,
    LARGE,
    LEADING,
    PLAIN,
    TITLE,
    Measure,
    TextLine,
    fitting_height,
    stacked,
    wrapped,
)
from boardplan.output.printing.paper import MARGIN, Paper
from boardplan.output.printing.pdf import Fonts, pdf_of
from boardplan.output.printing.printer_correction import PRINT_TRUE, Printing, percent
from boardplan.output.printing.sheet import Part, Sheet

_STEP, _LONGEST = 50.0, 1000.0
_ROLL_LENGTH = 1100.0
_TRACK = 19.0
"""How far a bar lies from the edge of the paper, in mm."""
_CROSS_IN, _ARM = 12.0, 3.0
_INSET = 20.0
_STROKE = 0.13
_WIDEST = 170.0
_SQUARE = "within 0.5 mm of each other"


def sheet_size(paper: Paper) -> tuple[float, float]:
    """Return the width and height of the sheet in mm: upright, a piece of a roll as long as a metre's bar needs."""
    return paper.width, paper.height or _ROLL_LENGTH


def bar_lengths(paper: Paper) -> tuple[float, float]:
    """Return the lengths in mm of the bars along the short and the long side: whole 50 mm, a metre at most.

    They are within the margins at any correction that is taken.
    """
    width, height = sheet_size(paper)
    return _longest(width), _longest(height)


def inch_bar_lengths(paper: Paper) -> tuple[float, float]:
    """Return the lengths in mm of the bars in whole inches that lie beside those in millimetres."""
    short, long = bar_lengths(paper)
    return short // INCH * INCH, long // INCH * INCH


def _longest(side: float) -> float:
    return min(_LONGEST, (side - 2 * MARGIN) / MOST // _STEP * _STEP)


def calibration_sheet(printing: Printing, measure: Measure) -> Sheet:
    """Return the sheet of a printer and a paper, drawn at what is known of them, so that it checks the correction."""
    width, height = sheet_size(printing.paper)
    short, long = bar_lengths(printing.paper)
    frame = Box((width - short) / 2, (height - long) / 2, (width + short) / 2, (height + long) / 2)
    inches = inch_bar_lengths(printing.paper)
    level = placed_picture(_bar("X", short, inches[0]), Placement(0, Point(frame.left, _TRACK)))
    upright = placed_picture(_bar("Y", long, inches[1]), Placement(90, Point(_TRACK, frame.bottom)))
    crosses = [mark for corner in frame.grown(-_CROSS_IN).corners() for mark in _cross(corner)]
    # each about its own middle, so that none comes nearer to the edge of a large sheet
    middles = ((level, Point(width / 2, _TRACK)), (upright, Point(_TRACK, height / 2)), (crosses, frame.centre))
    bars = [Part(tuple(marks), None, printing.factors, middle) for marks, middle in middles]
    left = max(frame.left, _TRACK + 7) + _INSET - 4
    room = min(frame.right - _INSET, left + _WIDEST) - left
    words = Part(tuple(_words(printing, Point(left, frame.top - _INSET), room, measure)))
    return Sheet("calibration sheet", width, height, (*bars, words))


def calibration_pdf(printing: Printing, fonts: Fonts) -> bytes:
    """Return the sheet as a PDF that no viewer may scale."""
    title = f"Calibration sheet: {printing.printer} on {printing.paper.name}"
    return pdf_of([calibration_sheet(printing, fonts.width)], fonts, title)


def _bar(axis: str, length: float, inches: float) -> Picture:
    """Return a level bar from the origin: millimetres on the outer side, inches on the inner."""
    marks: list[Mark] = [Line((Point(0, 0), Point(max(length, inches), 0)), "ink", _STROKE)]
    for step in range(round(length / 10) + 1):
        end = step in {0, round(length / 10)}
        deep = 5.0 if end else 2.6 if step % 5 == 0 else 1.4
        marks.append(Line((Point(10.0 * step, 0), Point(10.0 * step, -deep)), "ink", _STROKE))
    whole = round(inches / INCH)
    for step in range(4 * whole + 1):
        end = step in {0, 4 * whole}
        deep = 4.0 if end else 2.4 if step % 4 == 0 else 1.2
        marks.append(Line((Point(INCH / 4 * step, 0), Point(INCH / 4 * step, deep)), "ink", _STROKE))
    marks += [
        Words(Point(25, -4.3), f"{axis}  {tidy_number(length)} mm", FINE, "ink", bold=True),
        Words(Point(25, 4.0), f"{axis}  {whole} in", FINE, "ink", bold=True),
    ]
    return tuple(marks)


def _cross(at: Point) -> Iterator[Mark]:
    yield Line((Point(at.x - _ARM, at.y), Point(at.x + _ARM, at.y)), "ink", _STROKE)
    yield Line((Point(at.x, at.y - _ARM), Point(at.x, at.y + _ARM)), "ink", _STROKE)


def _words(printing: Printing, top: Point, width: float, measure: Measure) -> Iterator[Mark]:
    """Yield what the sheet is, how it is measured, and the blanks to write in, from the top down."""
    lines: list[TextLine] = [("Calibration sheet", TITLE, True, "ink")]
    for text, height, bold in _paragraphs(printing):
        lines.append((" ", FINE, False, "ink"))
        lines += [(each, height, bold, "ink") for each in wrapped(text, width, height, measure, bold=bold)]
    placed = stacked(lines, top)
    yield from placed
    yield from _blanks(printing.paper, Point(top.x, placed[-1].at.y - 11), width, measure)


_SAME = "Same printer, tray, paper and quality as the template."
_SIDES = "X runs along the short side of the paper, Y along the long one"
_ROLL = "X runs across the roll, Y along it"
_TURNED = "on a template that lies on its side they change places, and the program minds that"
_READ = (
    "1  With a steel rule read X and Y from stroke to stroke, both strokes on the same side (left edge to left edge, "
    "lower edge to lower edge): ink spreads. Read as finely as you can, at least to 0.25 mm or 1/64 in."
)
_AGAIN = (
    "4  Not true within 0.3 mm? Print this sheet again, now with the correction, and measure again. The template is "
    "ready to drill only after a sheet whose bars are both true within 0.3 mm."
)


def _paragraphs(printing: Printing) -> Iterator[tuple[str, float, bool]]:
    """Yield the texts with their height and whether they are bold."""
    short, long = bar_lengths(printing.paper)
    diagonal = tidy_number(math.hypot(short - 2 * _CROSS_IN, long - 2 * _CROSS_IN))
    x, y = (percent(each) for each in printing.factors)
    named = f"--printer '{printing.printer}' --paper {printing.paper.id}"
    yield f"Printer {printing.printer}, paper {printing.paper.name}", LARGE, True
    yield f"Drawn {x} % in x, {y} % in y.", PLAIN, False
    yield PRINT_TRUE, PLAIN, True
    yield f"{_SAME} {_SIDES if printing.paper.height else _ROLL}; {_TURNED}.", PLAIN, False
    yield _READ, PLAIN, False
    yield f"2  From cross to cross, both ways: {diagonal} mm, {_SQUARE}. If not, the paper ran askew.", PLAIN, False
    yield f"3  Enter them: boardplan measured-bars {named} --x X --y Y", PLAIN, False
    yield _AGAIN, PLAIN, False


def _blanks(paper: Paper, at: Point, width: float, measure: Measure) -> Iterator[Mark]:
    """Yield a line to write on for each thing that is measured."""
    short, long = bar_lengths(paper)
    inches = [round(each / INCH) for each in inch_bar_lengths(paper)]
    left_column = (
        f"X, {tidy_number(short)} mm, reads",
        f"Y, {tidy_number(long)} mm, reads",
        "Diagonal up to the right",
        "Drawn x, y %",
    )
    right_column = (
        f"or {inches[0]} in reads",
        f"or {inches[1]} in reads",
        "Diagonal up to the left",
        "Date, name",
    )
    half = width / 2 - 2
    for column, names in enumerate((left_column, right_column)):
        start = at.x + column * (half + 4)
        size = min(fitting_height(each, half - 16, PLAIN, measure) for each in names)
        for row, name in enumerate(names):
            y = at.y - row * 5 * PLAIN * LEADING / 2
            yield Words(Point(start, y), name, size, "ink", "start", centred=False)
            begin = start + measure(name, size) + 1.5
            yield Line((Point(begin, y - 0.6), Point(start + half, y - 0.6)), "line", 0.15)
