"""Form: the fields of one thing as controls; what is typed is committed when a field is left."""

from collections.abc import Callable
from functools import partial
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QCheckBox, QComboBox, QGridLayout, QHBoxLayout, QLabel, QLineEdit, QWidget

from boardplan.editing.selection import Selection
from boardplan.geometry.units import tidy_number
from boardplan.model.plan import Plan
from boardplan.model.trust import Trust
from boardplan.ui.controls.choice import Choice
from boardplan.ui.controls.length_edit import LengthEdit
from boardplan.ui.desk import Desk
from boardplan.ui.panels.fields import Field, FieldRow
from boardplan.ui.trust_words import TRUST_WORDS
from boardplan.ui.words import tr

LABEL_WIDTH = 104


class Form(QWidget):
    """Shows the rows of fields of a thing that `find` looks up in the plan each time."""

    def __init__(self, desk: Desk, rows: tuple[FieldRow, ...], find: Callable[[Plan], Any]) -> None:
        super().__init__()
        self._desk = desk
        self._find = find
        self._shown: tuple[Any, ...] = ()
        self._editors: list[tuple[Field, QWidget]] = []
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(8)
        grid.setVerticalSpacing(6)
        grid.setColumnMinimumWidth(0, LABEL_WIDTH)
        grid.setColumnStretch(1, 1)
        for number, row in enumerate(rows):
            self._add_row(grid, number, row)
        self.refresh()

    def _add_row(self, grid: QGridLayout, number: int, row: FieldRow) -> None:
        label = QLabel(tr(row[0].words) if row[0].sort != "check" else "")
        label.setProperty("part", "quiet")
        label.setAlignment(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft)
        grid.addWidget(label, number, 0)
        beside = QHBoxLayout()
        beside.setSpacing(6)
        for field in row:
            editor = self._editor(field)
            editor.setAccessibleName(tr(field.name or field.words))
            self._editors.append((field, editor))
            beside.addWidget(editor, 1)
            if field.unit:
                unit = QLabel(tr(field.unit))
                unit.setProperty("part", "unit")
                beside.addWidget(unit)
        label.setBuddy(self._editors[-len(row)][1])
        grid.addLayout(beside, number, 1)

    def refresh(self) -> None:
        """Show the thing as it is now; does nothing where it is the same object."""
        plan = self._desk.plan
        thing = self._find(plan)
        if thing is None or (self._shown and all(a is b for a, b in zip(self._shown, (thing, plan.job), strict=True))):
            return
        self._shown = (thing, plan.job)
        for field, editor in self._editors:
            self._show(field, editor, field.get(plan, thing), plan)

    def focus_first(self) -> None:
        """Put the cursor into the first field."""
        if self._editors:
            self._editors[0][1].setFocus(Qt.FocusReason.ShortcutFocusReason)

    def editor(self, name: str) -> QWidget:
        """Return the control of a field by the name people hear."""
        return next(editor for field, editor in self._editors if (field.name or field.words) == name)

    # One control for each sort of field

    def _editor(self, field: Field) -> QWidget:
        makers: dict[str, Callable[[Field], QWidget]] = {
            "text": self._text,
            "number": self._text,
            "length": self._length,
            "choice": self._choice,
            "check": self._check,
            "whole": self._text,
            "fact": self._fact,
        }
        return makers[field.sort](field)

    def _text(self, field: Field) -> QWidget:
        edit = QLineEdit()
        if field.may_be_empty:
            edit.setPlaceholderText(tr("not known"))
        if field.sort in {"number", "whole"}:
            edit.setAlignment(Qt.AlignmentFlag.AlignRight)
        edit.editingFinished.connect(partial(self._text_done, field, edit))
        return edit

    def _text_done(self, field: Field, edit: QLineEdit) -> None:
        if not edit.isModified():
            return
        edit.setModified(False)
        text = edit.text().strip()
        if field.sort == "text":
            self._put(field, text)
            return
        try:
            self._put(field, _number(field, text))
        except ValueError:
            words = (
                tr("'{}' is not a whole number from 1 on.") if field.sort == "whole" else tr("'{}' is not a number.")
            )
            self._desk.said.emit(words.format(text))
            self._shown = ()
            self.refresh()

    def _length(self, field: Field) -> QWidget:
        edit = LengthEdit(tr(field.name or field.words), may_be_empty=field.may_be_empty, empty=tr(field.empty))
        edit.setMinimumWidth(72)
        edit.changed.connect(partial(self._put, field))
        return edit

    def _choice(self, field: Field) -> QWidget:
        box = Choice()
        box.activated.connect(partial(self._chosen, field, box))
        return box

    def _chosen(self, field: Field, box: QComboBox, number: int) -> None:
        self._put(field, box.itemData(number))

    def _check(self, field: Field) -> QWidget:
        check = QCheckBox(tr(field.words))
        check.clicked.connect(partial(self._put, field))
        return check

    def _fact(self, field: Field) -> QWidget:  # noqa: ARG002 - as its siblings
        label = QLabel()
        label.setWordWrap(True)
        return label

    def _show(self, field: Field, editor: QWidget, value: Any, plan: Plan) -> None:  # noqa: ANN401
        editor.blockSignals(True)  # noqa: FBT003
        if isinstance(editor, LengthEdit):
            editor.show_value(value, plan.job.units)
        elif isinstance(editor, QLineEdit):
            if not (editor.hasFocus() and editor.isModified()):
                editor.setText("" if value is None else value if isinstance(value, str) else tidy_number(value, 2))
                editor.setCursorPosition(0)
        elif isinstance(editor, QComboBox):
            self._show_choice(field, editor, value, plan)
        elif isinstance(editor, QCheckBox):
            editor.setChecked(bool(value))
        elif isinstance(editor, QLabel):
            editor.setText(str(value))
        editor.blockSignals(False)  # noqa: FBT003

    def _show_choice(self, field: Field, box: QComboBox, value: Any, plan: Plan) -> None:  # noqa: ANN401
        choices = list(field.choices(plan, self._desk.shelf)) if field.choices else []
        if value not in [each for each, _ in choices]:
            choices.insert(0, (value, str(getattr(value, "words", value))))
        if [words for _, words in choices] != [box.itemText(number) for number in range(box.count())]:
            box.clear()
            for each, words in choices:
                box.addItem(words, each)
        box.setCurrentIndex([each for each, _ in choices].index(value))

    def _put(self, field: Field, value: Any) -> None:  # noqa: ANN401
        put, plan = field.put, self._desk.session.committed_plan
        if put is None or field.get(plan, self._find(plan)) == value:
            return
        words = tr("Change {}").format(tr(field.name or field.words).lower())
        done = self._desk.edit(words, lambda plan: put(plan, self._find(plan), value))
        if done and field.renames:
            self._desk.session.select(Selection((value.strip(),)))
        if done and field.measures is not None:
            self._ask_trust(field.measures)
        if not done:
            self._shown = ()
            self.refresh()

    def _ask_trust(self, measures: Callable[[Any], Trust | None]) -> None:
        """After a measure was changed by hand, say what is still said of how it is known."""
        held = measures(self._find(self._desk.session.committed_plan))
        if held is not None and held != "measured":
            words = tr("Still marked '{}': say beside it how the new measure is known.")
            self._desk.said.emit(words.format(tr(dict(TRUST_WORDS)[held])))


def _number(field: Field, text: str) -> float | None:
    """Return the number typed into a field. Raises ValueError."""
    if not text and field.may_be_empty:
        return None
    if field.sort != "whole":
        return float(text.replace(",", "."))
    number = int(text)
    if number < 1:
        raise ValueError(text)
    return number
