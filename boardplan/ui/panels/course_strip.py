"""Course strip: the job's own order - survey, place, wire, pack - as a plumb line down the left side.

Each step says how far it is; the one in hand unfolds its tools below it.
"""

from functools import partial

from PySide6.QtCore import QPointF, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QVBoxLayout, QWidget

from boardplan.drawing.palette import colour
from boardplan.ui.canvas.signs import draw_sign
from boardplan.ui.desk import STEPS, Desk, Step
from boardplan.ui.icons import tinted
from boardplan.ui.step_state import StepState, step_states
from boardplan.ui.style_sheet import interface_colours
from boardplan.ui.theme import LARGE, PLAIN, SMALL, font
from boardplan.ui.tool_table import TOOLS, ToolRow
from boardplan.ui.words import tr

_LINE_AT = 28
STEP_WORDS: dict[Step, str] = {"survey": "Survey", "place": "Place", "wire": "Wire", "pack": "Pack"}


class StepButton(QAbstractButton):
    """A step on the plumb line: a bob with its icon, its name, how far it is."""

    def __init__(self, desk: Desk, step: Step) -> None:
        super().__init__()
        self._desk = desk
        self.step: Step = step
        self._state = StepState("")
        self.setCheckable(True)
        self.setAutoExclusive(True)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setFixedHeight(56)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setText(tr(STEP_WORDS[step]))
        self.setToolTip(tr("Ctrl+{}").format(STEPS.index(step) + 1))

    def show_state(self, state: StepState) -> None:
        """Show how far the step is."""
        if state != self._state:
            self._state = state
            self.setAccessibleName(self.text())
            self.setAccessibleDescription(state.words)
            self.update()

    def sizeHint(self) -> QSize:  # noqa: D102
        return QSize(240, 56)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002, D102
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme = self._desk.themes.theme
        inks = interface_colours(theme)
        self._paint_ground(painter, inks)
        self._paint_bob(painter, inks)
        painter.setFont(font(LARGE, bold=True))
        painter.setPen(QColor(inks["accent" if self.isChecked() else "ink"]))
        left = _LINE_AT + 28
        painter.drawText(QRect(left, 8, self.width() - left - 8, 22), int(_LEFT), self.text())
        painter.setFont(font(SMALL))
        painter.setPen(QColor(inks["quiet"]))
        if self._state.sign:
            painter.save()
            painter.translate(QPointF(left + 6, 40))
            draw_sign(painter, self._state.sign, theme, 11)
            painter.restore()
            left += 18
        words = painter.fontMetrics().elidedText(
            self._state.words, Qt.TextElideMode.ElideRight, self.width() - left - 8
        )
        painter.drawText(QRect(left, 32, self.width() - left - 8, 16), int(_LEFT), words)
        painter.end()

    def _paint_ground(self, painter: QPainter, inks: dict[str, str]) -> None:
        if self.underMouse() and not self.isChecked():
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(inks["hover"]))
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(8, 2, -8, -2), 6, 6)
        if self.hasFocus():
            painter.setPen(QPen(QColor(inks["accent"]), 1.5))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(8, 2, -8, -2), 6, 6)

    def _paint_bob(self, painter: QPainter, inks: dict[str, str]) -> None:
        """Draw the line and the bob on it: full where the step is in hand."""
        middle = QPointF(_LINE_AT, self.height() / 2)
        painter.setPen(QPen(QColor(inks["edge"]), 1))
        top = self.height() / 2 if self.step == STEPS[0] else 0
        bottom = self.height() / 2 if self.step == STEPS[-1] and not self.isChecked() else self.height()
        painter.drawLine(QPointF(_LINE_AT, top), QPointF(_LINE_AT, bottom))
        painter.setPen(QPen(QColor(inks["accent" if self.isChecked() else "edge"]), 1.5 if self.isChecked() else 1))
        painter.setBrush(QColor(inks["accent" if self.isChecked() else "panel"]))
        painter.drawEllipse(middle, 17, 17)
        tint = colour("panel" if self.isChecked() else "ink", self._desk.themes.theme)
        painter.drawPixmap(
            QPointF(_LINE_AT - 10, middle.y() - 10), tinted(self.step, tint, 20, self.devicePixelRatioF())
        )


class ToolButton(QAbstractButton):
    """A tool of the step in hand: its icon, its words, its key."""

    def __init__(self, desk: Desk, tool: ToolRow) -> None:
        super().__init__()
        self._desk = desk
        self.tool = tool
        self.setCheckable(True)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setFixedHeight(32)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setText(tr(tool.words))
        self.setAccessibleName(tr(tool.words))
        self.setToolTip(tr(tool.tip))
        self.setStatusTip(tr(tool.tip))

    def sizeHint(self) -> QSize:  # noqa: D102
        return QSize(240, 32)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002, D102
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        inks = interface_colours(self._desk.themes.theme)
        painter.setPen(QPen(QColor(inks["edge"]), 1))
        painter.drawLine(QPointF(_LINE_AT, 0), QPointF(_LINE_AT, self.height()))
        ground = QRectF(self.rect()).adjusted(_LINE_AT + 16, 1, -8, -1)
        if self.isChecked() or self.underMouse():
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(inks["wash" if self.isChecked() else "hover"]))
            painter.drawRoundedRect(ground, 6, 6)
        if self.hasFocus():
            painter.setPen(QPen(QColor(inks["accent"]), 1.5))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(ground, 6, 6)
        ink = inks["accent" if self.isChecked() else "ink"]
        painter.drawPixmap(QPointF(ground.left() + 8, 6), tinted(self.tool.icon, ink, 20, self.devicePixelRatioF()))
        painter.setFont(font(PLAIN))
        painter.setPen(QColor(ink))
        words = QRectF(ground.left() + 36, 0, ground.width() - 60, self.height())
        painter.drawText(words, int(_LEFT), self.text())
        painter.setFont(font(SMALL))
        painter.setPen(QColor(inks["quiet"]))
        painter.drawText(ground.adjusted(0, 0, -8, 0), int(_RIGHT), self.tool.key)
        painter.end()


_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter


class CourseStrip(QWidget):
    """The four steps, and the tools of the one in hand."""

    resized = Signal()
    taken = Signal()
    """A step was clicked, or a tool was taken: go on at the canvas."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self.setAccessibleName(tr("The job's course"))
        self._steps: dict[Step, StepButton] = {}
        self._tools: list[ToolButton] = []
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 8, 0, 8)
        column.setSpacing(0)
        for step in STEPS:
            button = StepButton(desk, step)
            button.clicked.connect(partial(self._go, button))
            self._steps[step] = button
            column.addWidget(button)
            for tool in (each for each in TOOLS if each.step == step):
                self._add_tool(column, tool)
        desk.step_changed.connect(self.show_step)
        desk.tool_changed.connect(self.show_tool)
        desk.signals.seen_changed.connect(self.show_states)
        desk.themes.changed.connect(self.update)
        self.show_step()
        self.show_states()

    def _add_tool(self, column: QVBoxLayout, tool: ToolRow) -> None:
        button = ToolButton(self._desk, tool)
        button.clicked.connect(partial(self._take, tool))
        self._tools.append(button)
        column.addWidget(button)

    def _go(self, button: StepButton) -> None:
        """Go to a step; whoever goes through the steps by keys stays among them."""
        self._desk.go_to(button.step)
        if not button.hasFocus():
            self.taken.emit()

    def _take(self, tool: ToolRow) -> None:
        self._desk.take(tool.name)
        self.show_tool()
        self.taken.emit()

    def show_step(self) -> None:
        """Unfold the step in hand."""
        for step, button in self._steps.items():
            button.setChecked(step == self._desk.step)
            button.update()
        for tool in self._tools:
            tool.setVisible(tool.tool.step == self._desk.step)
        self.show_tool()
        self.resized.emit()

    def show_tool(self) -> None:
        """Mark the tool in hand."""
        for tool in self._tools:
            tool.setChecked(tool.tool.name == self._desk.tool)

    def show_states(self) -> None:
        """Say how far each step is."""
        states = step_states(self._desk.plan, self._desk.review)
        for step, button in self._steps.items():
            button.show_state(states[step])
