"""Choice: a drop-down that shortens long words with an ellipsis, and that the wheel leaves alone in passing."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QPaintEvent, QWheelEvent
from PySide6.QtWidgets import QComboBox, QStyle, QStyleOptionComboBox, QStylePainter, QWidget


class Choice(QComboBox):
    """A drop-down for panels that scroll."""

    def __init__(self, name: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.setMinimumContentsLength(8)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002, D102
        painter = QStylePainter(self)
        option = QStyleOptionComboBox()
        self.initStyleOption(option)
        field = self.style().subControlRect(
            QStyle.ComplexControl.CC_ComboBox, option, QStyle.SubControl.SC_ComboBoxEditField, self
        )
        text = option.fontMetrics.elidedText(self.currentText(), Qt.TextElideMode.ElideRight, field.width() - 8)
        self.setToolTip(self.currentText() if text != self.currentText() else "")
        option.currentText = text
        painter.drawComplexControl(QStyle.ComplexControl.CC_ComboBox, option)
        painter.drawControl(QStyle.ControlElement.CE_ComboBoxLabel, option)
        painter.end()

    def wheelEvent(self, event: QWheelEvent) -> None:  # noqa: D102
        if self.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()
