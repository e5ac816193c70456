"""Stock dialog: the reels, offcuts and lengths of channel at hand, one line each, as they are written on the reel."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from boardplan.editing.refused import EditRefused
from boardplan.editing.stock_edits import MOST, with_stock
from boardplan.model.job import Units
from boardplan.model.plan import Plan
from boardplan.model.stock import CableStock, ChannelStock, Stock
from boardplan.ui.controls.choice import Choice
from boardplan.ui.controls.length_edit import LengthEdit
from boardplan.ui.controls.small_parts import small_button
from boardplan.ui.theme import Themes
from boardplan.ui.words import tr

_WHAT, _LENGTH, _COUNT, _NAME, _AWAY = range(5)


@dataclass(frozen=True)
class _Line:
    """The controls of one line."""

    what: Choice
    length: LengthEdit
    count: QLineEdit
    name: QLineEdit
    away: QWidget

    @property
    def parts(self) -> tuple[QWidget, ...]:
        return self.what, self.length, self.count, self.name, self.away


class StockLines(QWidget):
    """Lines of stock of one sort; `sorts` is what there can be, by its words."""

    def __init__(self, title: str, add: str, sorts: dict[str, Any], units: Units, themes: Themes) -> None:
        super().__init__()
        self._sorts, self._units, self._themes = sorts, units, themes
        self.lines: list[_Line] = []
        heading = QLabel(title)
        heading.setProperty("part", "section")
        self._grid = QGridLayout()
        self._grid.setHorizontalSpacing(8)
        self._grid.setVerticalSpacing(6)
        self._grid.setColumnStretch(_WHAT, 5)
        self._grid.setColumnStretch(_NAME, 2)
        for number, words in enumerate((tr("what"), tr("length of each"), tr("how many"), tr("written on it"))):
            label = QLabel(words)
            label.setProperty("part", "small")
            self._grid.addWidget(label, 0, number)
        self.add = QPushButton(add)
        self.add.setAutoDefault(False)
        self.add.clicked.connect(self._add_empty)
        self.add.setEnabled(bool(sorts))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addWidget(heading)
        column.addLayout(self._grid)
        column.addWidget(self.add, 0, Qt.AlignmentFlag.AlignLeft)

    def _add_empty(self) -> None:
        self.add_line()

    def add_line(self, sort: Any = None, length: float | None = None, count: int | None = None, name: str = "") -> None:  # noqa: ANN401
        """Add a line, empty or with what is known."""
        what = Choice(tr("What"))
        for words, each in self._sorts.items():
            what.addItem(words, each)
        what.setCurrentIndex(max(0, list(self._sorts.values()).index(sort) if sort is not None else 0))
        edit = LengthEdit(tr("Length"), may_be_empty=True, empty=tr("length"))
        edit.show_value(length, self._units)
        number = QLineEdit("" if count is None else str(count))
        number.setAccessibleName(tr("How many"))
        number.setPlaceholderText(tr("any"))
        number.setFixedWidth(64)
        written = QLineEdit(name)
        written.setAccessibleName(tr("Written on it"))
        away = small_button(self._themes.theme, "remove", tr("Take this line away"), lambda: self._remove(line))
        line = _Line(what, edit, number, written, away)
        self.lines.append(line)
        row = self._grid.rowCount()
        for column, part in enumerate(line.parts):
            self._grid.addWidget(part, row, column)
        if length is None:
            edit.setFocus()

    def _remove(self, line: _Line) -> None:
        self.lines.remove(line)
        for part in line.parts:
            self._grid.removeWidget(part)
            part.deleteLater()
        self.add.setFocus()

    def read(self, made: Callable[..., Any]) -> tuple[Any, ...]:
        """Return what the lines say. Raises EditRefused where a number is none."""
        for line in self.lines:
            line.length.settle()
        return tuple(
            made(line.what.currentData(), line.length.value or 0.0, _count(line.count.text()), line.name.text().strip())
            for line in self.lines
        )


def _count(text: str) -> int | None:
    words = text.strip()
    if words and not words.isdecimal():
        raise EditRefused(tr("How many is '{}'? Expected 1 to {}, or nothing for any number.").format(words, MOST))
    return int(words) if words else None


class StockDialog(QDialog):
    """Asks what is at hand; `plan` is the plan with it once it is taken."""

    def __init__(self, plan: Plan, themes: Themes, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.plan = plan
        self.setWindowTitle(tr("What is at hand"))
        self.resize(780, 520)
        units = plan.job.units
        self.reels = StockLines(tr("Reels and offcuts"), tr("Add a reel"), _reel_sorts(plan), units, themes)
        sections = _section_sorts(plan)
        self.channels = StockLines(tr("Lengths of channel"), tr("Add lengths"), sections, units, themes)
        self.cable_cut, self.channel_cut = LengthEdit(tr("Cut of cable")), LengthEdit(tr("Cut of channel"))
        self.corners = Choice(tr("How channels meet"))
        for words, corners in ((tr("mitred"), "mitred"), (tr("square"), "square")):
            self.corners.addItem(words, corners)
        self._fault = QLabel()
        self._fault.setProperty("part", "fault")
        self._fault.setWordWrap(True)
        self._fill(plan)
        self._lay_out()

    def _fill(self, plan: Plan) -> None:
        stock = plan.stock
        for reel in stock.cables:
            self.reels.add_line((reel.conductor, reel.colour), reel.length, reel.count, reel.name)
        for channel in stock.channels:
            self.channels.add_line((channel.width, channel.height), channel.length, channel.count, channel.name)
        self.cable_cut.show_value(stock.cable_cut, plan.job.units)
        self.channel_cut.show_value(stock.channel_cut, plan.job.units)
        self.corners.setCurrentIndex(self.corners.findData(stock.corners))

    def _lay_out(self) -> None:
        note = QLabel(
            tr("Measure each reel before the first cut: what is written on it may not be on it. Cut lists name these.")
        )
        note.setProperty("part", "small")
        note.setWordWrap(True)
        inside = QWidget()
        lines = QVBoxLayout(inside)
        lines.setContentsMargins(0, 0, 8, 0)
        lines.setSpacing(16)
        lines.addWidget(self.reels)
        lines.addWidget(self.channels)
        lines.addStretch(1)
        area = QScrollArea()
        area.setWidgetResizable(True)
        area.setWidget(inside)
        area.setProperty("part", "plain")
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Cancel)
        take = buttons.addButton(tr("Take it"), QDialogButtonBox.ButtonRole.AcceptRole)
        take.setDefault(True)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 20, 20, 16)
        column.setSpacing(12)
        column.addWidget(area, 1)
        column.addLayout(self._cuts())
        for part in (note, self._fault, buttons):
            column.addWidget(part)

    def _cuts(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(8)
        for words, control in (
            (tr("A cut takes of cable"), self.cable_cut),
            (tr("of channel"), self.channel_cut),
            (tr("channels meet"), self.corners),
        ):
            label = QLabel(words)
            label.setProperty("part", "quiet")
            label.setBuddy(control)
            row.addWidget(label)
            row.addWidget(control, 1)
        return row

    def accept(self) -> None:
        """Take it, and stay open where it can't be."""
        try:
            self.plan = with_stock(self.plan, self._stock())
        except EditRefused as refused:
            self._fault.setText(refused.sentence)
            return
        super().accept()

    def _stock(self) -> Stock:
        self.cable_cut.settle()
        self.channel_cut.settle()
        return Stock(
            self.reels.read(lambda sort, *said: CableStock(sort[0], sort[1], *said)),
            self.channels.read(lambda sort, *said: ChannelStock(sort[0], sort[1], *said)),
            self.cable_cut.value or 0.0,
            self.channel_cut.value or 0.0,
            self.corners.currentData(),
        )


def _reel_sorts(plan: Plan) -> dict[str, tuple[str, str]]:
    """Return the conductors and colours that the job's cables are cut from, and those at hand besides."""
    found = {(each.conductor, each.colour) for each in plan.cables.values()}
    found |= {(each.conductor, each.colour) for each in plan.stock.cables}
    cut = [key for key in found if not plan.conductors[key[0]].stock_lengths]
    cut.sort(key=lambda key: (-(plan.conductors[key[0]].area or 0.0), key))
    return {f"{plan.conductors[conductor].name}, {colour}": (conductor, colour) for conductor, colour in cut}


def _section_sorts(plan: Plan) -> dict[str, tuple[float, float]]:
    """Return the sections of the job's channels, and those at hand besides."""
    found = {(each.width, each.height) for each in plan.channels.values()}
    found |= {(each.width, each.height) for each in plan.stock.channels}
    return {f"{width:g} x {height:g}": (width, height) for width, height in sorted(found, reverse=True)}
