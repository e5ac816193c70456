"""Stock dialog: the reels, offcuts and lengths of channel at hand, one line each, as they are written on the reel."""

from typing import Any

from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QHBoxLayout,
    QLabel,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from boardplan.editing.refused import EditRefused
from boardplan.editing.stock_edits import with_stock
from boardplan.model.job import Units
from boardplan.model.plan import Plan
from boardplan.model.stock import CableStock, ChannelStock, Stock
from boardplan.ui.controls.choice import Choice
from boardplan.ui.controls.length_edit import LengthEdit
from boardplan.ui.controls.lines import LineColumn, Lines
from boardplan.ui.theme import Themes
from boardplan.ui.words import tr


class StockLines(QWidget):
    """Lines of stock of one sort under its title; `sorts` is what there can be, by its words."""

    def __init__(self, title: str, add: str, sorts: dict[str, Any], units: Units, themes: Themes) -> None:
        super().__init__()
        columns = (
            LineColumn(tr("what"), "choice", choices=tuple(sorts.items()), stretch=5),
            LineColumn(tr("length of each"), "length", tr("length"), stretch=2),
            LineColumn(tr("how many"), "whole", tr("any")),
            LineColumn(tr("written on it"), "text", stretch=3),
        )
        heading = QLabel(title)
        heading.setProperty("part", "section")
        self.table = Lines(columns, add, units, themes)
        self.table.add.setEnabled(bool(sorts))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addWidget(heading)
        column.addWidget(self.table)


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
            self.reels.table.add_line([(reel.conductor, reel.colour), reel.length, reel.count, reel.name])
        for channel in stock.channels:
            size = (channel.width, channel.height)
            self.channels.table.add_line([size, channel.length, channel.count, channel.name])
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
        reels, lengths = self.reels.table.values(), self.channels.table.values()
        return Stock(
            tuple(CableStock(sort[0], sort[1], length or 0.0, count, name) for sort, length, count, name in reels),
            tuple(ChannelStock(sort[0], sort[1], length or 0.0, count, name) for sort, length, count, name in lengths),
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
