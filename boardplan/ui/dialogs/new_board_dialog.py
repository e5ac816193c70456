"""New board dialog: title, sheet and units of a new job."""

from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QVBoxLayout,
    QWidget,
)

from boardplan.editing.refused import EditRefused
from boardplan.editing.survey_edits import Sheet, new_plan
from boardplan.files.rule_set_file import rule_sets
from boardplan.model.board import Fabric, Material
from boardplan.model.job import Units
from boardplan.model.plan import Plan
from boardplan.ui.controls.length_edit import LengthEdit
from boardplan.ui.words import tr


class NewBoardDialog(QDialog):
    """Makes a plan with one empty board; everything can be changed afterwards."""

    def __init__(self, parent: QWidget | None = None, units: Units = "mm") -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("New board"))
        self.plan: Plan | None = None
        self.title = QLineEdit()
        self.title.setPlaceholderText(tr("What the job is called"))
        self.title.setAccessibleName(tr("Title"))
        self.units = QComboBox()
        self.units.setAccessibleName(tr("Units"))
        self.units.addItem(tr("millimetres"), "mm")
        self.units.addItem(tr("inches"), "inch")
        self.units.setCurrentIndex(1 if units == "inch" else 0)
        self.sheet_width, self.sheet_height = LengthEdit(tr("Width")), LengthEdit(tr("Height"))
        self.thickness = LengthEdit(tr("Thickness"))
        self.material = QLineEdit("plywood")
        self.material.setAccessibleName(tr("Material"))
        self.fabric = LengthEdit(tr("Fabric thickness"), may_be_empty=True)
        self.fabric.setPlaceholderText(tr("bare board"))
        self.rules = QComboBox()
        self.rules.setAccessibleName(tr("Rule set"))
        for each in rule_sets():
            self.rules.addItem(tr("{}, edition {}").format(each.name, each.edition), each)
        self.rules.setCurrentIndex(self.rules.count() - 1)  # the newest edition
        self._fault = QLabel()
        self._fault.setProperty("part", "fault")
        self._fault.setWordWrap(True)
        self._fault.setVisible(False)
        self._show_lengths((1200.0, 900.0, 18.0, None))
        self.units.activated.connect(self._change_units)
        self._lay_out()
        self.title.setFocus()

    def _edits(self) -> tuple[LengthEdit, ...]:
        return (self.sheet_width, self.sheet_height, self.thickness, self.fabric)

    def _show_lengths(self, values: tuple[float | None, ...]) -> None:
        for edit, value in zip(self._edits(), values, strict=True):
            edit.show_value(value, self.units.currentData())

    def _change_units(self) -> None:
        self._show_lengths(tuple(edit.value for edit in self._edits()))

    def _lay_out(self) -> None:  # noqa: PLR0915 - a form is one list of statements
        size = QHBoxLayout()
        size.setSpacing(6)
        size.addWidget(self.sheet_width, 1)
        size.addWidget(QLabel("x"))
        size.addWidget(self.sheet_height, 1)
        rows: tuple[tuple[str, QWidget | QHBoxLayout], ...] = (
            (tr("Title"), self.title),
            (tr("Units"), self.units),
            (tr("Width, height"), size),
            (tr("Thickness"), self.thickness),
            (tr("Material"), self.material),
            (tr("Fabric"), self.fabric),
            (tr("Rule set"), self.rules),
        )
        grid = QGridLayout()
        grid.setHorizontalSpacing(12)
        grid.setVerticalSpacing(8)
        grid.setColumnMinimumWidth(1, 280)
        for number, (words, control) in enumerate(rows):
            label = QLabel(words)
            label.setProperty("part", "quiet")
            grid.addWidget(label, number, 0)
            if isinstance(control, QWidget):
                grid.addWidget(control, number, 1)
            else:
                grid.addLayout(control, number, 1)
        note = QLabel(tr("Measure the sheet in your hand: few are exactly as thick as they are called."))
        note.setProperty("part", "small")
        note.setWordWrap(True)
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Cancel)
        begin = buttons.addButton(tr("Begin"), QDialogButtonBox.ButtonRole.AcceptRole)
        begin.setDefault(True)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 20, 20, 16)
        column.setSpacing(12)
        column.addLayout(grid)
        column.addWidget(note)
        column.addWidget(self._fault)
        column.addWidget(buttons)

    def accept(self) -> None:
        """Make the plan, and stay open where it can't be made."""
        fabric = self.fabric.value
        sheet = Sheet(
            self.sheet_width.value or 0.0,
            self.sheet_height.value or 0.0,
            self.thickness.value or 0.0,
            Material(self.material.text().strip() or "plywood"),
            Fabric(fabric) if fabric else None,
        )
        title = self.title.text().strip() or tr("New board")
        try:
            self.plan = new_plan(title, sheet, self.rules.currentData(), self.units.currentData())
        except EditRefused as refused:
            self._fault.setText(refused.sentence)
            self._fault.setVisible(True)
            return
        super().accept()
