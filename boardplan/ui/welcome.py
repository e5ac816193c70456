"""Welcome: what is seen while nothing is open - begin a board, open one, or look at a sample."""

from functools import partial
from pathlib import Path

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QHBoxLayout, QLabel, QPushButton, QScrollArea, QVBoxLayout, QWidget

from boardplan.bundled import data_dir
from boardplan.drawing.board_picture import board_picture
from boardplan.drawing.palette import Theme, colour
from boardplan.drawing.picture import Picture
from boardplan.files.faults import BadFile
from boardplan.files.plan_file import load_plan
from boardplan.geometry.units import length_text
from boardplan.routing.find_route import find_routes
from boardplan.ui.canvas.painter import Ready, made_ready
from boardplan.ui.icons import put_icon
from boardplan.ui.preferences import Preferences
from boardplan.ui.style_sheet import interface_colours
from boardplan.ui.tables.row_delegate import paint_within
from boardplan.ui.theme import PLAIN, SMALL, Themes, font
from boardplan.ui.words import counted, tr

_CARD = QSize(264, 236)
_WIDTH = 3 * 264 + 2 * 16


def sample_files() -> list[Path]:
    """Return the sample boards that come with the program."""
    return sorted(data_dir("sample_boards").glob("*.json"))


class SampleCard(QAbstractButton):
    """A sample with a picture drawn from the true board."""

    def __init__(self, path: Path, themes: Themes) -> None:
        super().__init__()
        plan = load_plan(path)
        self._themes = themes
        self._plan = plan
        self._ready: dict[Theme, Ready] = {}
        self._title = plan.job.title
        sizes = {
            f"{length_text(board.box.width, plan.job.units, 0)} x {length_text(board.box.height, plan.job.units, 0)}"
            for board in plan.boards.values()
        }
        count = counted("%n component|%n components", len(plan.components))
        boards = tr("{} boards, ").format(len(plan.boards)) if len(plan.boards) > 1 else ""
        self._detail = f"{boards}{', '.join(sorted(sizes))}\n{count}, {counted('%n cable|%n cables', len(plan.cables))}"
        self.setFixedSize(_CARD)
        self.setAccessibleName(tr("Open the sample {}").format(self._title))
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def _picture(self) -> Picture:
        """Return the picture of the board, drawn when it is first seen."""
        return board_picture(self._plan, find_routes(self._plan))

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002, D102
        theme = self._themes.theme
        inks = interface_colours(theme)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = QRectF(self.rect()).adjusted(0.75, 0.75, -0.75, -0.75)
        lively = self.underMouse() or self.hasFocus()
        painter.setPen(QPen(QColor(inks["accent" if lively else "line"]), 1.5 if lively else 1))
        painter.setBrush(QColor(inks["panel"]))
        painter.drawRoundedRect(box, 6, 6)
        wall = QRectF(8, 8, self.width() - 16, 160)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(colour("wall", theme)))
        painter.drawRoundedRect(wall, 4, 4)
        if theme not in self._ready:
            self._ready[theme] = made_ready(self._picture(), theme)
        painter.save()
        painter.setClipRect(wall)
        paint_within(painter, self._ready[theme], wall.adjusted(8, 8, -8, -8), most=1.0)
        painter.restore()
        painter.setFont(font(PLAIN, bold=True))
        painter.setPen(QColor(inks["ink"]))
        painter.drawText(QRectF(16, 174, self.width() - 32, 20), int(Qt.AlignmentFlag.AlignVCenter), self._title)
        painter.setFont(font(SMALL))
        painter.setPen(QColor(inks["quiet"]))
        painter.drawText(QRectF(16, 194, self.width() - 32, 34), int(Qt.AlignmentFlag.AlignTop), self._detail)
        painter.end()


class Welcome(QScrollArea):
    """Two ways to begin, the files opened last, the samples."""

    new_asked = Signal()
    open_asked = Signal()
    file_chosen = Signal(Path)
    sample_chosen = Signal(Path)

    def __init__(self, themes: Themes, preferences: Preferences) -> None:
        super().__init__()
        self._themes, self._preferences = themes, preferences
        self.setWidgetResizable(True)
        self.setObjectName("ground")
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        holder = QWidget()
        holder.setObjectName("ground")
        across = QHBoxLayout(holder)
        inside = QWidget()
        inside.setFixedWidth(_WIDTH)
        self._column = QVBoxLayout(inside)
        self._column.setContentsMargins(0, 48, 0, 32)
        self._column.setSpacing(12)
        across.addStretch(1)
        across.addWidget(inside)
        across.addStretch(1)
        self._recent = QVBoxLayout()
        self._recent.setSpacing(4)
        self._fill()
        self.setWidget(holder)
        themes.changed.connect(self._repaint)

    def _repaint(self) -> None:
        for card in self.findChildren(SampleCard):
            card.update()

    def _fill(self) -> None:  # noqa: PLR0915 - a form is one list of statements
        title = QLabel(tr("What goes on the board?"))
        title.setProperty("part", "title")
        detail = QLabel(
            tr("From the survey to the drilling template and the cable cut list: survey, place, wire, pack.")
        )
        detail.setProperty("part", "quiet")
        self.new = QPushButton(tr("New board..."))
        self.new.setProperty("part", "main")
        self.new.clicked.connect(self.new_asked)
        opens = QPushButton(tr("Open a job..."))
        put_icon(opens, "open", self._themes.theme)
        opens.clicked.connect(self.open_asked)
        buttons = QHBoxLayout()
        buttons.setSpacing(8)
        buttons.addWidget(self.new)
        buttons.addWidget(opens)
        buttons.addStretch(1)
        self._column.addWidget(title)
        self._column.addWidget(detail)
        self._column.addSpacing(8)
        self._column.addLayout(buttons)
        self._column.addLayout(self._recent)
        self._column.addSpacing(16)
        samples = QLabel(tr("Samples to look at and to take apart"))
        samples.setProperty("part", "heading")
        self._column.addWidget(samples)
        row = QHBoxLayout()
        row.setSpacing(16)
        for path in sample_files():
            self._add_sample(row, path)
        row.addStretch(1)
        self._column.addLayout(row)
        drop = QLabel(tr("A job file can also be dropped onto this window."))
        drop.setProperty("part", "small")
        self._column.addWidget(drop)
        self._column.addStretch(1)
        self.show_recent()

    def _add_sample(self, row: QHBoxLayout, path: Path) -> None:
        try:
            card = SampleCard(path, self._themes)
        except BadFile:
            return
        card.clicked.connect(partial(self._emit_sample, path))
        row.addWidget(card)

    def _emit_sample(self, path: Path) -> None:
        self.sample_chosen.emit(path)

    def _emit_file(self, path: Path) -> None:
        self.file_chosen.emit(path)

    def show_recent(self) -> None:
        """Show the files opened last."""
        while self._recent.count():
            held = self._recent.takeAt(0)
            if held is not None and (widget := held.widget()) is not None:
                widget.deleteLater()
        recent = self._preferences.recent
        if not recent:
            return
        heading = QLabel(tr("Opened last"))
        heading.setProperty("part", "heading")
        heading.setContentsMargins(0, 16, 0, 4)
        self._recent.addWidget(heading)
        for path in recent[:5]:
            button = QPushButton(f"{path.stem}   {path.parent}")
            button.setFlat(True)
            button.setProperty("part", "recent")
            button.clicked.connect(partial(self._emit_file, path))
            self._recent.addWidget(button, 0, Qt.AlignmentFlag.AlignLeft)
