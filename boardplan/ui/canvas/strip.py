"""Strip: the narrow part of the wall that a cable's picture covers, so that only that is drawn again.

The box round a cable that turns a corner holds half the board; what it covers is a few narrow boxes along its legs.
"""

import math
from collections.abc import Iterable, Iterator
from itertools import pairwise
from typing import cast

from PySide6.QtCore import QRect, QRectF
from PySide6.QtGui import QRegion

from boardplan.geometry.point import Point, box_around
from boardplan.ui.canvas.painter import Ready

_LONG = 120.0
"""mm; marks longer than this run along the cable, shorter ones are what is on it."""
_GRID = 8
"""mm"""
_BESIDE = 4.0
"""mm by which shadows lie beside what casts them, and by which px are rounded."""


def strip_of(points: Iterable[Point], ready: Ready) -> QRegion:
    """Return what a picture along a line of legs covers, in whole mm of the wall."""
    width, region = 0.0, QRegion()
    for stroke in ready.strokes:
        if max(stroke.box.width(), stroke.box.height()) <= _LONG:
            region = region.united(_whole(stroke.box))
        else:
            width = max(width, stroke.half)
    grown = width + _BESIDE
    for start, end in pairwise(points):
        box_of_leg = box_around((start, end)).grown(grown)
        leg = QRectF(box_of_leg.left, box_of_leg.bottom, box_of_leg.width, box_of_leg.height)
        region = region.united(_whole(leg))
    return region


def _whole(box: QRectF) -> QRect:
    """Return a box out to a coarse grid: few large boxes are clipped to faster than many that fit."""
    left, low = math.floor(box.left() / _GRID) * _GRID, math.floor(box.top() / _GRID) * _GRID
    right, high = math.ceil(box.right() / _GRID) * _GRID, math.ceil(box.bottom() / _GRID) * _GRID
    return QRect(left, low, right - left, high - low)


def boxes_of(region: QRegion | None) -> Iterator[QRect]:
    """Yield the boxes of a region, none of none."""
    if region is not None:
        yield from cast("Iterable[QRect]", region)


def exposed_region(boxes: Iterable[QRectF]) -> QRegion:
    """Return boxes of the wall that are to be drawn again, in whole mm."""
    region = QRegion()
    for box in boxes:
        region = region.united(box.toAlignedRect().adjusted(-1, -1, 1, 1))
    return region
