"""Tray sheet: one page for each battery tray, drawn and dimensioned, in the units of whoever builds it."""

from collections.abc import Sequence

from boardplan.drawing.picture import Line, Picture, Words
from boardplan.geometry.point import Box, Point
from boardplan.model.tray import Tray
from boardplan.output.customer.tray_picture import tray_picture, view_of, view_scale, view_size
from boardplan.output.customer.tray_words import FOOTER, tray_blocks
from boardplan.output.drawn.blocks import columns_of
from boardplan.output.drawn.dimensions import units_words
from boardplan.output.drawn.drawn_sheet import DrawnPage, pages_with_words
from boardplan.output.making import Making
from boardplan.output.printing.lettering import FINE, Measure, wrapped
from boardplan.output.printing.sheet import Part

_ASIDE, _GUTTER = 57.0, 6.0
_HIGHEST = 122.0


def tray_pages(making: Making, tray: Tray) -> list[DrawnPage]:
    """Return the page of a tray."""
    units = tray.units or making.plan.job.units
    name = f", {tray.name}" if tray.name else ""
    shared = making.frame(f"Battery tray {tray.id}{name}", FOOTER)
    room, measure = shared.room, shared.measure
    words = f"{tray.place or 'Where does it stand? ______________________'}.  All dimensions in {units_words(units)}."
    lines = wrapped(words, room.width, FINE, measure)
    top = room.top - len(lines) * FINE * 1.8 - 3
    heading = tuple(
        Words(Point(room.left, room.top - FINE - index * FINE * 1.8), line, FINE, "ink", "start", centred=False)
        for index, line in enumerate(lines)
    )
    view = view_of(tray, making.plan.rules, units, measure)
    if view is None:
        drawing, high = _empty(Box(room.left, top - 60, room.right - _ASIDE - _GUTTER, top), measure), 60.0
    else:
        free = (room.width - _ASIDE - _GUTTER, _HIGHEST)
        by = view_scale(view, free)
        drawing, high = tray_picture(view, by, Point(room.left, top)), view_size(view, by)[1]
    low = top - high - _GUTTER
    columns = [
        Box(room.right - _ASIDE, low, room.right, top),
        *columns_of(Box(room.left, room.bottom, room.right, low), 3),
    ]
    return pages_with_words(shared, [Part((*heading, *drawing))], tray_blocks(tray, making.plan.rules, units), columns)


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
