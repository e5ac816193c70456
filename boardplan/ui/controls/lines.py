"""Lines: as many lines of the same few controls as a person needs, each to be taken away again."""

from collections.abc import Callable, Container, Sequence
from dataclasses import dataclass
from typing import Any, Literal, TypeAlias

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QComboBox, QGridLayout, QLabel, QLineEdit, QPushButton, QVBoxLayout, QWidget

from boardplan.editing.refused import EditRefused
from boardplan.model.job import Units
from boardplan.ui.controls.choice import Choice
from boardplan.ui.controls.length_edit import LengthEdit
from boardplan.ui.controls.short_label import ShortLabel
from boardplan.ui.controls.small_parts import small_button
from boardplan.ui.theme import Themes
from boardplan.ui.words import tr

Sort: TypeAlias = Literal["length", "text", "choice", "whole", "number", "fact"]


@dataclass(frozen=True, slots=True)
class LineColumn:
    """A column: its head, which is its controls' name too, what is typed there, what stands there while nothing is.

    `choices` are the words and values of a choice; `stretch` how much of the room left over it takes. A fact is only
    read; where it is the first column, it names the controls of its line.
    """

    head: str
    sort: Sort
    empty: str = ""
    choices: tuple[tuple[str, Any], ...] = ()
    stretch: int = 1


class Lines(QWidget):
    """Lines under their heads, and a button that adds one; without its words no line is added or taken away."""

    changed = Signal()

    def __init__(self, columns: Sequence[LineColumn], add: str, units: Units, themes: Themes) -> None:
        super().__init__()
        self._columns, self._units, self._themes = tuple(columns), units, themes
        self.lines: list[tuple[QWidget, ...]] = []
        self._grid = QGridLayout()
        self._grid.setHorizontalSpacing(6)
        self._grid.setVerticalSpacing(6)
        for number, column in enumerate(self._columns):
            label = QLabel(column.head)
            label.setProperty("part", "small")
            self._grid.addWidget(label, 0, number)
            self._grid.setColumnStretch(number, column.stretch)
        self.add = QPushButton(add)
        self.add.setAutoDefault(False)
        self.add.clicked.connect(self._add_empty)
        self._fixed = not add
        self.add.setVisible(not self._fixed)
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.setSpacing(6)
        box.addLayout(self._grid)
        box.addWidget(self.add, 0, Qt.AlignmentFlag.AlignLeft)

    def _add_empty(self) -> None:
        parts = self.add_line([None] * len(self._columns))
        next((each for each in parts if not isinstance(each, QComboBox)), parts[0]).setFocus()
        self.changed.emit()

    def add_line(self, values: Sequence[Any]) -> tuple[QWidget, ...]:
        """Add a line with what is known; none where nothing is."""
        parts = tuple(self._control(column, value) for column, value in zip(self._columns, values, strict=True))
        if self._columns[0].sort == "fact":
            for column, part in zip(self._columns[1:], parts[1:], strict=True):
                part.setAccessibleName(f"{column.head}, {values[0]}")
        line = parts
        if not self._fixed:
            away = small_button(self._themes.theme, "remove", tr("Take this line away"), lambda: self._remove(line))
            line = (*parts, away)
        self.lines.append(line)
        row = self._grid.rowCount()
        for number, part in enumerate(line):
            self._grid.addWidget(part, row, number)
            part.show()  # now, so that it can take the cursor
        return parts

    def _control(self, column: LineColumn, value: Any) -> QWidget:  # noqa: ANN401
        return made_control(column, value, self._units, self._tell)

    def show_only(self, numbers: Container[int]) -> None:
        """Show lines by their numbers and hide the others; hidden ones keep what they say."""
        for number, line in enumerate(self.lines):
            for part in line:
                part.setVisible(number in numbers)

    def _tell(self) -> None:
        self.changed.emit()

    def _remove(self, line: tuple[QWidget, ...]) -> None:
        self.lines.remove(line)
        for part in line:
            self._grid.removeWidget(part)
            part.deleteLater()
        self.add.setFocus()
        self.changed.emit()

    def values(self) -> tuple[tuple[Any, ...], ...]:
        """Return what the lines say, none where nothing was typed. Raises EditRefused where a number is none."""
        return tuple(
            tuple(value_of(column, part) for column, part in zip(self._columns, line, strict=False))
            for line in self.lines
        )


def made_control(column: LineColumn, value: Any, units: Units, tell: Callable[[], None]) -> QWidget:  # noqa: ANN401
    """Return the control of a column showing a value; it tells of every change."""
    if column.sort == "fact":
        fact = ShortLabel()
        fact.setText(value)
        return fact
    if column.sort == "choice":
        return _made_choice(column, value, tell)
    if column.sort == "length":
        edit = LengthEdit(column.head, may_be_empty=True, empty=column.empty)
        edit.setMinimumWidth(74)
        edit.show_value(value, units)
        edit.changed.connect(lambda _value: tell())
        return edit
    text = "" if value is None else value if isinstance(value, str) else f"{value:.12g}"
    plain = QLineEdit(text)  # a number is shown whole: what is shown is what is taken again
    if column.sort in {"whole", "number"}:
        plain.setAlignment(Qt.AlignmentFlag.AlignRight)
    plain.setAccessibleName(column.head)
    plain.setPlaceholderText(column.empty)
    plain.setMinimumWidth(56)
    plain.setCursorPosition(0)
    plain.editingFinished.connect(tell)
    return plain


def _made_choice(column: LineColumn, value: Any, tell: Callable[[], None]) -> Choice:  # noqa: ANN401
    choice = Choice(column.head)
    choice.setMinimumContentsLength(3)
    for words, each in column.choices:
        choice.addItem(words, each)
    values = [each for _, each in column.choices]
    if value not in values and value is not None:
        choice.addItem(str(value), value)
        values.append(value)
    choice.setCurrentIndex(values.index(value) if value in values else 0)
    choice.activated.connect(lambda _number: tell())
    return choice


def value_of(column: LineColumn, part: QWidget) -> Any:  # noqa: ANN401
    """Return what a control says, none where nothing was typed. Raises EditRefused where a number is none."""
    if isinstance(part, QComboBox):
        return part.currentData()
    if isinstance(part, LengthEdit):
        part.settle()
        if part.property("faulty"):
            raise EditRefused(f"{_begun(column.head)}: {part.toolTip()}")
        return part.value
    words = part.text().strip() if isinstance(part, (QLineEdit, QLabel)) else ""
    if column.sort in {"text", "fact"}:
        return words
    if not words:
        return None
    try:
        return int(words) if column.sort == "whole" else float(words.replace(",", "."))
    except ValueError:
        sort = tr("a whole number") if column.sort == "whole" else tr("a number")
        raise EditRefused(tr("{}: '{}' is not {}.").format(_begun(column.head), words, sort)) from None


def _begun(head: str) -> str:
    """Return a head as the beginning of a sentence."""
    return f"{head[:1].upper()}{head[1:]}"
