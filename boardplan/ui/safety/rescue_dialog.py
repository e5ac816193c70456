"""Rescue dialog: work that was left behind, with both its times and a picture, to go on with or to throw away."""

from datetime import datetime

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QDialog, QDialogButtonBox, QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from boardplan.drawing.board_picture import board_picture
from boardplan.drawing.palette import colour
from boardplan.files.faults import BadFile
from boardplan.files.rescue import LeftBehind, rescued_plan, throw_away
from boardplan.model.plan import Plan
from boardplan.routing.find_route import find_routes
from boardplan.ui.canvas.painter import Ready, made_ready
from boardplan.ui.dialogs.fault_dialog import show_disk_fault
from boardplan.ui.tables.row_delegate import paint_within
from boardplan.ui.tables.row_list import RowList
from boardplan.ui.tables.rows import Row
from boardplan.ui.theme import Themes
from boardplan.ui.words import tr

_PICTURE = (440, 220)


class _Picture(QWidget):
    """The boards as they were left."""

    def __init__(self, themes: Themes) -> None:
        super().__init__()
        self._themes = themes
        self._ready: Ready | None = None
        self.setFixedSize(*_PICTURE)
        self.setAccessibleName(tr("Picture of the board as it was left"))

    def show_plan(self, plan: Plan | None) -> None:
        """Show a plan's boards, or nothing."""
        picture = board_picture(plan, find_routes(plan)) if plan else None
        self._ready = made_ready(picture, self._themes.theme) if picture else None
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = QRectF(self.rect())
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(colour("wall", self._themes.theme)))
        painter.drawRoundedRect(box, 6, 6)
        if self._ready is not None:
            paint_within(painter, self._ready, box.adjusted(12, 12, -12, -12), most=1.0)
        painter.end()


class RescueDialog(QDialog):
    """Offers what was left behind; `chosen` is what the person goes on with, and its plan."""

    def __init__(self, found: tuple[LeftBehind, ...], themes: Themes, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._found = list(found)
        self._plans: dict[LeftBehind, Plan | None] = {}
        self.chosen: tuple[LeftBehind, Plan] | None = None
        self.setWindowTitle(tr("Work that was not saved"))
        self.list = RowList(tr("Work left behind"), themes.theme)
        self.list.picked.connect(self._show)
        self.list.acted.connect(self._take)
        self.list.setMinimumSize(300, _PICTURE[1])
        self._picture = _Picture(themes)
        self._told = QLabel()
        self._told.setProperty("part", "quiet")
        self._told.setWordWrap(True)
        self.go_on = QPushButton(tr("Go on with it"))
        self.go_on.setDefault(True)
        self.go_on.setMinimumWidth(120)
        self.go_on.clicked.connect(lambda: self._take(self.list.key))
        self.away = QPushButton(tr("Throw it away"))
        self.away.setAutoDefault(False)
        self.away.clicked.connect(self._throw_away)
        self._lay_out()
        self._fill()

    def _lay_out(self) -> None:
        words = QLabel(
            tr("The program ended before this was saved. Nothing of it is in a file until you save it yourself.")
        )
        words.setWordWrap(True)
        row = QHBoxLayout()
        row.setSpacing(16)
        row.addWidget(self.list, 1)
        row.addWidget(self._picture)
        buttons = QDialogButtonBox()
        buttons.addButton(self.go_on, QDialogButtonBox.ButtonRole.AcceptRole)
        buttons.addButton(self.away, QDialogButtonBox.ButtonRole.DestructiveRole)
        later = buttons.addButton(tr("Later"), QDialogButtonBox.ButtonRole.RejectRole)
        later.setAutoDefault(False)
        later.clicked.connect(self.reject)
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 20, 20, 16)
        column.setSpacing(12)
        column.addWidget(words)
        column.addLayout(row)
        column.addWidget(self._told)
        column.addWidget(buttons)

    def _fill(self) -> None:
        rows = [
            Row(each, each.title, tr("kept {}").format(time_words(each.kept_at)), sign="board") for each in self._found
        ]
        self.list.show_rows(rows)
        if self._found:
            self.list.pick(self._found[0])
            self._show(self._found[0])

    def _plan(self, left: LeftBehind) -> Plan | None:
        if left not in self._plans:
            try:
                self._plans[left] = rescued_plan(left)
            except BadFile as bad:
                self._plans[left] = None
                self._told.setText(str(bad))
        return self._plans[left]

    def _show(self, left: LeftBehind) -> None:
        self._told.setText(_file_words(left))
        plan = self._plan(left)
        self._picture.show_plan(plan)
        self.go_on.setEnabled(plan is not None)

    def _take(self, left: LeftBehind | None) -> None:
        plan = self._plan(left) if left is not None else None
        if left is not None and plan is not None:
            self.chosen = left, plan
            self.accept()

    def _throw_away(self) -> None:
        left = self.list.key
        if left is None:
            return
        try:
            throw_away(left)
        except OSError as error:
            show_disk_fault(error, str(left.kept), self)
            return
        self._found.remove(left)
        self._fill()
        if not self._found:
            self.reject()


def time_words(time: datetime) -> str:
    """Return a time as people say it, in their own time zone.

    >>> time_words(datetime(2026, 11, 9, 7, 5))
    '2026-11-09 07:05'
    """
    return f"{time:%Y-%m-%d %H:%M}"


def _file_words(left: LeftBehind) -> str:
    if left.file is None:
        return tr("Kept {}. It was never saved to a file.").format(time_words(left.kept_at))
    saved = left.file_saved_at
    if saved is None:
        return tr("Kept {}. Its file {} is not there any more.").format(time_words(left.kept_at), left.file)
    kept, when = time_words(left.kept_at), time_words(saved)
    newer = tr(" The file was saved after that.") if saved > left.kept_at else ""
    return tr("Kept {}. Its file {} was saved {}.").format(kept, left.file, when) + newer
