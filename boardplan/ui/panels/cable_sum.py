"""Cable sum: how a cable's cut length adds up, line by line, as a person would reckon it."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QLabel, QWidget

from boardplan.geometry.units import length_text
from boardplan.routing.lengths.length_sum import CutLength
from boardplan.routing.route import Route, Way
from boardplan.ui.controls.small_parts import hairline
from boardplan.ui.desk import Desk
from boardplan.ui.words import tr
from boardplan.ui.words_of_length import length_lines


class CableSum(QWidget):
    """Words on the left, figures on the right, a hairline, the cut; then what is to be said of it."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._shown: tuple[CutLength | None, Way | None, bool] = (None, None, False)
        self.setAccessibleName(tr("How the length adds up"))
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(12)
        self._grid.setVerticalSpacing(2)
        self._grid.setColumnStretch(0, 1)

    def show_length(self, length: CutLength | None, way: Way | None = None, *, about: bool = False) -> None:
        """Show the sum of a cable and why it lies as it does; `about` says that it is not worked out yet."""
        if (length, way, about) == self._shown:
            return
        self._shown = (length, way, about)
        self.setAccessibleDescription(length_lines(length))
        while self._grid.count():
            held = self._grid.takeAt(0)
            if held is not None and (widget := held.widget()) is not None:
                widget.deleteLater()
        if length is not None:
            self._fill(length)
        if about:
            self._note(tr("The way is being worked out."))
        elif isinstance(way, Route) and way.why:
            self._note(tr("It lies so: {}.").format(way.why.rstrip(".")))

    def _fill(self, length: CutLength) -> None:
        units = self._desk.plan.job.units
        if length.cut is None:
            self._line("no way, so no cut length", "", bold=True)
            self._note(length.reason)
        else:
            for words, value in length.parts:
                sign = "+ " if value >= 0 else "\u2212 "
                self._line(words, sign + length_text(abs(value), units))
            self._grid.addWidget(hairline(), self._grid.rowCount(), 0, 1, 2)
            self._line("stock lead" if length.stock else "cut", length_text(length.cut, units), bold=True)
        for note in (length.left_out, *length.notes) if length.left_out else length.notes:
            self._note(note)

    def _line(self, words: str, figure: str, *, bold: bool = False) -> None:
        row = self._grid.rowCount()
        for column, text in ((0, words), (1, figure)):
            label = QLabel(text)
            label.setProperty("part", "section" if bold else "small")
            label.setWordWrap(column == 0)
            side = Qt.AlignmentFlag.AlignRight if column else Qt.AlignmentFlag.AlignLeft
            label.setAlignment(side | Qt.AlignmentFlag.AlignTop)
            self._grid.addWidget(label, row, column)

    def _note(self, text: str) -> None:
        label = QLabel(text)
        label.setWordWrap(True)
        label.setProperty("part", "small")
        self._grid.addWidget(label, self._grid.rowCount(), 0, 1, 2)
