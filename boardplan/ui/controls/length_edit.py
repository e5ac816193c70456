"""Length edit: a field for a length, read and written as the job's people do."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLineEdit, QWidget

from boardplan.geometry.units import LengthError, length_text, read_length
from boardplan.model.job import Units
from boardplan.ui.words import tr


class LengthEdit(QLineEdit):
    """Takes 44.5, 1 3/4 in or 2'-6 1/2"; up and down change it by 1 mm, with Shift by 10."""

    changed = Signal(object)
    """Another length in mm, or none where it may be left empty."""

    def __init__(
        self, name: str, *, may_be_empty: bool = False, empty: str = "", parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._units: Units = "mm"
        self._value: float | None = None
        self._may_be_empty = may_be_empty
        self.setAccessibleName(name)
        self.setAlignment(Qt.AlignmentFlag.AlignRight)
        if may_be_empty:
            self.setPlaceholderText(empty or tr("unknown"))
        self.editingFinished.connect(self._read)

    @property
    def value(self) -> float | None:
        """The length in mm."""
        return self._value

    def show_value(self, value: float | None, units: Units) -> None:
        """Show a length; what is being typed is left alone."""
        self._value, self._units = value, units
        if not (self.hasFocus() and self.isModified()):
            self._write()

    def settle(self) -> None:
        """Take what is being typed, as if the field were left."""
        self._read()

    def _write(self) -> None:
        self.setText("" if self._value is None else length_text(self._value, self._units))
        self.setModified(False)
        self._mark_faulty("")

    def _read(self) -> None:
        if not self.isModified():
            return
        text = self.text().strip()
        if not text and self._may_be_empty:
            self._take(None)
            return
        try:
            self._take(read_length(text, "in" if self._units == "inch" else "mm"))
        except LengthError as error:
            self._mark_faulty(str(error))

    def _take(self, value: float | None) -> None:
        changed = value != self._value
        self._value = value
        self._write()
        if changed:
            self.changed.emit(value)

    def _mark_faulty(self, sentence: str) -> None:
        self.setToolTip(sentence)
        if bool(self.property("faulty")) != bool(sentence):
            self.setProperty("faulty", bool(sentence))
            self.style().unpolish(self)
            self.style().polish(self)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: D102
        step = {Qt.Key.Key_Up: 1.0, Qt.Key.Key_Down: -1.0}.get(Qt.Key(event.key()))
        if step is not None and self._value is not None:
            self._read()
            self._take(self._value + step * (10 if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1))
            return
        if event.key() == Qt.Key.Key_Escape and self.isModified():
            self._write()
            return
        super().keyPressEvent(event)
