"""Kind editor: measure a unit, see it drawn, see what is still missing, and keep it on one's own shelf."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QImage, QKeyEvent
from PySide6.QtWidgets import (
    QAbstractButton,
    QDialog,
    QDialogButtonBox,
    QFileDialog,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from boardplan.checks.kind_questions import kind_questions
from boardplan.editing.refused import EditRefused
from boardplan.files.own_shelf import unfit_words
from boardplan.geometry.point import Point
from boardplan.model.component_kind import ComponentKind
from boardplan.model.job import Units
from boardplan.model.shelf import Shelf
from boardplan.ui.dialogs.length_dialog import ask_length
from boardplan.ui.kinds.kind_form import KindForm
from boardplan.ui.kinds.kind_view import KindView, Underlay
from boardplan.ui.theme import Themes
from boardplan.ui.words import counted, tr

_PHOTOS = "*.png *.jpg *.jpeg *.bmp *.webp"
_MOST_ASKED = 6


class KindEditor(QDialog):
    """The editor; `kind` is the kind as it is described, once it is kept."""

    def __init__(
        self, kind: ComponentKind, shelf: Shelf, units: Units, themes: Themes, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.kind = kind
        self._units = units
        self._scaling: list[Point] | None = None
        self.setWindowTitle(tr("A kind of my own"))
        self.resize(1280, 760)
        self.form = KindForm(kind, shelf, units, themes)
        self.form.changed.connect(self._read)
        self.view = KindView(themes)
        self.view.pointed.connect(self._pointed)
        self._fault = QLabel()
        self._fault.setProperty("part", "fault")
        self._fault.setWordWrap(True)
        self._asked = QLabel()
        self._asked.setProperty("part", "quiet")
        self._asked.setWordWrap(True)
        self.photo = QPushButton(tr("Photo under it..."))
        self.photo.clicked.connect(self._ask_photo)
        self.scale = QPushButton(tr("Scale by two points"))
        self.scale.clicked.connect(self._begin_scaling)
        self.scale.setEnabled(False)
        self._lay_out()
        self._read()

    def _lay_out(self) -> None:
        area = QScrollArea()
        area.setWidgetResizable(True)
        area.setWidget(self.form)
        area.setMinimumWidth(800)
        under = QHBoxLayout()
        for button in (self.photo, self.scale):
            button.setAutoDefault(False)
            under.addWidget(button)
        under.addStretch(1)
        left = QVBoxLayout()
        left.setSpacing(8)
        left.addWidget(self.view, 1)
        left.addLayout(under)
        left.addWidget(self._asked)
        both = QHBoxLayout()
        both.setSpacing(20)
        both.addLayout(left, 1)
        both.addWidget(area, 2)
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Cancel)
        self.keep = buttons.addButton(tr("Keep it on my shelf"), QDialogButtonBox.ButtonRole.AcceptRole)
        self.keep.setMinimumWidth(160)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 20, 20, 16)
        column.setSpacing(12)
        column.addLayout(both, 1)
        column.addWidget(self._fault)
        column.addWidget(buttons)

    def _read(self) -> bool:
        """Draw what is described, and say what is wrong with it or missing; say whether it is a kind."""
        try:
            kind = self.form.kind()
        except EditRefused as refused:
            self._fault.setText(refused.sentence)
            return False
        unfit = unfit_words(kind)
        if unfit:
            self._fault.setText(unfit)
            return False
        self.kind = kind
        self.view.show_kind(self.kind)
        found = kind_questions(self.kind)
        self._fault.setText(" ".join(each.words for each in found if each.sort == "slip"))
        asked = [each.words for each in found if each.sort == "question"]
        more = len(asked) - _MOST_ASKED
        lines = asked[:_MOST_ASKED] + ([counted("and %n more|and %n more", more)] if more > 0 else [])
        self._asked.setText("\n".join([tr("Still to be asked:"), *lines]) if asked else tr("Nothing is missing."))
        return not any(each.sort == "slip" for each in found)

    def accept(self) -> None:
        """Keep it where it is a kind without slips; what nobody said may stay open."""
        if self._read():
            super().accept()

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: D102
        focus = self.focusWidget()
        if event.key() not in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            super().keyPressEvent(event)
        elif isinstance(focus, QAbstractButton):
            focus.click()
        else:
            self.focusNextChild()  # Enter ends a number, not the measuring

    # A photo under it

    def _ask_photo(self) -> None:
        chosen, _ = QFileDialog.getOpenFileName(self, tr("A photo or a drawing of the unit"), "", _PHOTOS)
        if chosen:
            self.show_photo(chosen)

    def show_photo(self, path: str) -> None:
        """Put a photo under the kind, as wide as the unit until it is scaled."""
        image = QImage(path)
        if image.isNull():
            self._fault.setText(tr("{} is no picture that can be shown.").format(path))
            return
        self.view.underlay = Underlay(image, self.kind.box.width / max(1, image.width()))
        self.scale.setEnabled(True)
        self.view.update()

    def _begin_scaling(self) -> None:
        self._scaling = []
        self._show_marks()

    def _show_marks(self) -> None:
        self.view.marks = tuple(self._scaling or ())
        if self._scaling is not None:
            words = (tr("Click the first point on the photo."), tr("Click the second point."))
            self._asked.setText(words[min(len(self._scaling), 1)])
        self.view.update()

    def _pointed(self, at: Point) -> None:
        if self._scaling is None:
            return
        self._scaling.append(at)
        self._show_marks()
        if len(self._scaling) == 2:  # noqa: PLR2004 - a distance has two ends
            first, second = self._scaling
            self._scaling = None
            apart = ask_length(tr("How far apart are the two points on the unit?"), self._units, self)
            if apart:
                self._scale_photo(first, second, apart)
            self._show_marks()
            self._read()

    def _scale_photo(self, first: Point, second: Point, apart: float) -> None:
        """Make the photo so large that two of its points are so far apart; its lower left stays."""
        under = self.view.underlay
        shown = first.distance_to(second)
        if under is not None and shown > 0:
            self.view.underlay = Underlay(under.image, under.scale * apart / shown, under.corner)
