"""Change plates: the new cut length of every cable that an unfinished edit changes, written beside the cable."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPen
from PySide6.QtWidgets import QStyleOptionGraphicsItem, QWidget

from boardplan.drawing.palette import Theme, colour
from boardplan.editing.known import Known
from boardplan.editing.length_changes import LengthChange, change_words
from boardplan.geometry.bends import Straight
from boardplan.geometry.point import Box, Point
from boardplan.routing.route import Route
from boardplan.ui.canvas.over_item import OverItem
from boardplan.ui.theme import SMALL, font

_HIGH, _PAD, _OFF = 18.0, 12.0, 14.0
"""px: height of a plate, room beside its words, how far its middle lies off the middle of a level cable."""
_SHARES = (0.5, 0.3, 0.7, 0.15, 0.85)


@dataclass(frozen=True, slots=True)
class ChangePlate:
    """A plate: its words, its middle on the wall, its width in px, what the change is like."""

    words: str
    at: Point
    width: float
    change: LengthChange


@cache
def _width(words: str) -> float:
    return QFontMetrics(font(SMALL, bold=True)).horizontalAdvance(words) + _PAD


def change_plates(
    known: Known, changes: Sequence[LengthChange], seen: Box, scale: float, held: Mapping[str, Point]
) -> tuple[ChangePlate, ...]:
    """Return plates beside the cables within the part of the wall that is seen, none over another.

    `held` are cables whose plate goes with the pointer, and where that is. A cable none of whose straights has a
    free place gets none; the total counts it all the same.
    """
    taken: list[Box] = []
    changes = sorted(changes, key=lambda each: each.cable not in held)
    found = []
    for change in changes:
        way, words = known.ways.get(change.cable), change_words(change, known.plan.job.units)
        width = _width(words)
        if not isinstance(way, Route):
            continue
        beside = held.get(change.cable)
        places = [beside.moved((width / 2 + 16) / scale, 24 / scale)] if beside else _places(way, seen, scale)
        for at in places:
            half = width / 2 / scale, _HIGH / 2 / scale
            box = Box(at.x - half[0], at.y - half[1], at.x + half[0], at.y + half[1])
            if not any(box.touches(each) for each in taken):
                taken.append(box)
                found.append(ChangePlate(words, at, width, change))
                break
    return tuple(found)


def _places(way: Route, seen: Box, scale: float) -> Iterator[Point]:
    """Yield places beside a cable's straights, on the longest one first, then farther off."""
    straights = sorted((each for each in way.pieces if isinstance(each, Straight)), key=lambda each: -each.length)
    for off in (_OFF, -_OFF, 2.6 * _OFF, -2.6 * _OFF):
        for piece in straights[:4]:
            level = abs(piece.end.x - piece.start.x) >= abs(piece.end.y - piece.start.y)
            for share in _SHARES:
                at = Point(
                    piece.start.x + (piece.end.x - piece.start.x) * share,
                    piece.start.y + (piece.end.y - piece.start.y) * share,
                )
                at = at.moved(0.0, off / scale) if level else at.moved(off * 3.6 / scale, 0.0)
                if seen.holds(at):
                    yield at


class ChangePlatesItem(OverItem):
    """Draws the plates over everything else, of one size at every zoom."""

    def __init__(self, depth: float) -> None:
        super().__init__(depth)
        self.plates: tuple[ChangePlate, ...] = ()
        self._theme: Theme = "light"

    def show_plates(self, plates: tuple[ChangePlate, ...], scale: float, theme: Theme) -> None:
        """Show other plates, or none."""
        if plates == self.plates and theme == self._theme:
            return
        self.plates, self._theme = plates, theme
        self.cover(self._rect(each, scale) for each in plates)

    def plate_at(self, at: Point, scale: float) -> str | None:
        """Return the cable whose plate lies at a place on the wall."""
        here = QPointF(*at)
        return next((each.change.cable for each in self.plates if self._rect(each, scale).contains(here)), None)

    def _rect(self, plate: ChangePlate, scale: float) -> QRectF:
        wide, high = (plate.width + 4) / scale, (_HIGH + 4) / scale
        return QRectF(plate.at.x - wide / 2, plate.at.y - high / 2, wide, high)

    def paint(self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None) -> None:  # noqa: ARG002, D102
        scale = option.levelOfDetailFromTransform(painter.worldTransform())
        painter.setFont(font(SMALL, bold=True))
        for plate in self.plates:
            painter.save()
            painter.translate(QPointF(*plate.at))
            painter.scale(1 / scale, -1 / scale)
            box = QRectF(-plate.width / 2, -_HIGH / 2, plate.width, _HIGH)
            ink = _ink(plate.change)
            edge = QPen(QColor(colour(ink, self._theme)), 1)
            if not plate.change.certain:
                edge.setDashPattern([3, 2])
            painter.setPen(edge)
            painter.setBrush(QColor(colour("panel", self._theme)))
            painter.drawRoundedRect(box, 4, 4)
            painter.setPen(QColor(colour(ink, self._theme)))
            painter.drawText(box, int(Qt.AlignmentFlag.AlignCenter), plate.words)
            painter.restore()


def _ink(change: LengthChange) -> str:
    """Return the ink of a plate: a cable without a way stands out, a length not worked out yet steps back."""
    if change.cut is None:
        return "stop"
    return "ink" if change.certain else "quiet"
