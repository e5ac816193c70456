"""Tray sheet: one page for each battery tray, drawn and dimensioned, in the units of whoever builds it."""

from collections.abc import Sequence

from boardplan.drawing.picture import Line, Picture, Words
from boardplan.geometry.point import Box, Point
from boardplan.model.tray import Tray
from boardplan.output.customer.tray_picture import tray_picture, view_of, view_scales, view_size
from boardplan.output.customer.tray_words import FOOTER, tray_blocks
from boardplan.output.drawn.blocks import Block, columns_of
from boardplan.output.drawn.dimensions import units_words
from boardplan.output.drawn.drawn_sheet import DrawnPage, pages_with_words
from boardplan.output.making import Making
from boardplan.output.printing.lettering import FINE, Measure, wrapped
from boardplan.output.printing.sheet import Part
from boardplan.output.tables.list_sheets import ListPaper

_ASIDE, _GUTTER = 54.0, 5.0
_LEAST_BELOW = 60.0
_SKETCH = 60.0


def tray_pages(making: Making, tray: Tray) -> list[DrawnPage]:
    """Return the page of a tray, drawn as large as leaves room for its words; more pages only where none does."""
    units = tray.units or making.plan.job.units
    name = f", {tray.name}" if tray.name else ""
    shared = making.frame(f"Battery tray {tray.id}{name}", FOOTER)
    words = f"{tray.place or 'Where does it stand? ______________________'}.  All dimensions in {units_words(units)}."
    heading, top = _heading(words, shared)
    room = shared.room._replace(top=top)
    blocks = tray_blocks(tray, making.plan.rules, units)
    view = view_of(tray, making.plan.rules, units, shared.measure)
    if view is None:
        frame = Box(room.left, top - _SKETCH, room.right - _ASIDE - _GUTTER, top)
        return _pages(shared, (*heading, *_empty(frame, shared.measure)), _SKETCH, room, blocks)
    free = (room.width - _ASIDE - _GUTTER, room.height - _LEAST_BELOW)
    tries = []
    for by in view_scales(view, free)[:3]:
        picture = (*heading, *tray_picture(view, by, Point(room.left, top)))
        tries.append(_pages(shared, picture, view_size(view, by)[1], room, blocks))
        if len(tries[-1]) == 1:
            break
    return min(tries, key=len)


def _heading(words: str, shared: ListPaper) -> tuple[Picture, float]:
    """Return the words under the title block, and where on the page the drawing begins."""
    room = shared.room
    lines = wrapped(words, room.width, FINE, shared.measure)
    marks = tuple(
        Words(Point(room.left, room.top - FINE - index * FINE * 1.8), line, FINE, "ink", "start", centred=False)
        for index, line in enumerate(lines)
    )
    return marks, room.top - len(lines) * FINE * 1.8 - 3


def _pages(shared: ListPaper, picture: Picture, high: float, room: Box, blocks: Sequence[Block]) -> list[DrawnPage]:
    low = room.top - high - _GUTTER
    columns = [
        Box(room.right - _ASIDE, low, room.right, room.top),
        *columns_of(Box(room.left, room.bottom, room.right, low), 3),
    ]
    return pages_with_words(shared, [Part(picture)], blocks, columns)


def _empty(box: Box, measure: Measure) -> Picture:
    """Return a frame to sketch in, for a tray of which too little is known to draw it."""
    words = "Not drawn: battery size, arrangement or gaps are not known yet. Sketch the tray here, from above:"
    lines: Sequence[str] = wrapped(words, box.width - 6, FINE, measure)
    return (
        Line(box.corners(), "quiet", 0.13, closed=True),
        *(
            Words(Point(box.left + 3, box.top - 5 - index * FINE * 1.8), line, FINE, "quiet", "start")
            for index, line in enumerate(lines)
        ),
    )
