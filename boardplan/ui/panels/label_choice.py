"""Label choice: which label stock the label sheet is for, one that comes with the program or a file of measures."""

from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from boardplan.files.faults import BadFile
from boardplan.files.label_stock_file import bundled_label_stocks, read_label_stock
from boardplan.model.label_stock import LabelStock
from boardplan.ui.controls.choice import Choice
from boardplan.ui.desk import Desk
from boardplan.ui.words import tr

_REMEMBERED, _FILE = "label-stock", "?"


class LabelChoice(QWidget):
    """A drop-down of label stock; a file that can't be read is named, and labels are cut by hand till another is."""

    changed = Signal()

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self.stock: LabelStock | None = None
        self.choice = Choice(tr("Label stock"))
        self.choice.activated.connect(self._choose)
        self.told = QLabel()
        self.told.setWordWrap(True)
        self.told.setProperty("part", "fault")
        self.told.setVisible(False)
        label = QLabel(tr("Labels"))
        label.setProperty("part", "quiet")
        label.setBuddy(self.choice)
        row = QHBoxLayout()
        row.addWidget(label)
        row.addWidget(self.choice, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        column.addLayout(row)
        column.addWidget(self.told)
        self._fill(desk.preferences.text(_REMEMBERED))

    def _fill(self, held: str) -> None:
        """Offer every stock there is, and pick the one that was held, by its id or its file."""
        self.choice.clear()
        self.choice.addItem(tr("cut by hand"), "")
        for stock, path in bundled_label_stocks().items():
            self.choice.addItem(read_label_stock(path).name, stock)
        if held and self.choice.findData(held) < 0:
            self.choice.addItem(Path(held).name, held)
        self.choice.addItem(tr("from a file of measures..."), _FILE)
        self.choice.setCurrentIndex(max(0, self.choice.findData(held)))
        self._read(held)

    def _read(self, held: str) -> None:
        fault, self.stock = "", None
        try:
            if held:
                self.stock = read_label_stock(bundled_label_stocks().get(held, Path(held)))
        except BadFile as bad:
            fault = str(bad)
        except OSError as error:
            fault = f"{held}: {error.strerror or error}"
        self.told.setText(fault)
        self.told.setVisible(bool(fault))

    def _choose(self) -> None:
        held = self.choice.currentData()
        if held == _FILE:
            held, _ = QFileDialog.getOpenFileName(self, tr("A file of label measures"), "", "*.toml")
            held = held or self._desk.preferences.text(_REMEMBERED)
        self._desk.preferences.remember_text(_REMEMBERED, held)
        self._fill(held)
        self.changed.emit()
