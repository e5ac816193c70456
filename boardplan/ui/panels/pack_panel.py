"""Pack panel: the paper, the papers, what still stops them, and the button that writes them."""

from pathlib import Path

from PySide6.QtCore import QUrl, Signal
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import (
    QComboBox,
    QFileDialog,
    QHBoxLayout,
    QLabel,
    QProgressBar,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from boardplan.editing.stock_edits import with_stock
from boardplan.geometry.units import tidy_number
from boardplan.model.board import Board
from boardplan.model.plan import Plan
from boardplan.model.weights import weights_of
from boardplan.output.making import Making
from boardplan.output.page_images import PageImages
from boardplan.output.printing.paper import PAPERS
from boardplan.ui.controls.small_parts import hairline
from boardplan.ui.desk import Desk
from boardplan.ui.dialogs.fault_dialog import show_disk_fault
from boardplan.ui.dialogs.stock_dialog import StockDialog
from boardplan.ui.icons import put_icon
from boardplan.ui.panels.findings_panel import no_finding_words
from boardplan.ui.panels.label_choice import LabelChoice
from boardplan.ui.panels.pack_work import PackWork
from boardplan.ui.panels.paper_list import PaperList
from boardplan.ui.panels.printer_choice import PrinterChoice
from boardplan.ui.panels.supply_row import SupplyRow
from boardplan.ui.tables.row_list import RowList
from boardplan.ui.tables.rows import Row
from boardplan.ui.words import counted, tr


class PackPanel(QWidget):
    """The last step: nothing to draw, only to look through and to write."""

    looked_at = Signal(object)
    """A paper is to be looked at, by its key."""

    def __init__(self, desk: Desk) -> None:  # noqa: PLR0915 - a form is one list of statements
        super().__init__()
        self._desk = desk
        self._work: PackWork | None = None
        self._paper = QComboBox()
        self._paper.setAccessibleName(tr("Paper for the drilling template"))
        for paper in PAPERS.values():
            self._paper.addItem(paper.name, paper)
        self._paper.activated.connect(self._remember_paper)
        self.printer = PrinterChoice(desk)
        self.labels = LabelChoice(desk)
        self.labels.changed.connect(self._show_another_making)
        self.papers = PaperList(desk.themes.theme)
        self.papers.picked.connect(self.looked_at)
        self.papers.acted.connect(self.looked_at)
        self.papers.changed.connect(self._name_write)
        self._images: PageImages | None = None
        self.at_hand = QPushButton(tr("What is at hand..."))
        self.at_hand.clicked.connect(self.ask_stock)
        self.supply = SupplyRow(desk)
        self._every = QPushButton(tr("all or none"))
        self._every.setProperty("part", "recent")
        self._every.clicked.connect(self.papers.tick_all)
        self.stops = RowList(tr("What stops the papers"), desk.themes.theme)
        self.stops.setWordWrap(True)
        self.stops.picked.connect(self._picked)
        self._carried = QLabel()
        self._carried.setWordWrap(True)
        self._carried.setProperty("part", "quiet")
        self._verdict = QLabel()
        self._verdict.setWordWrap(True)
        self.write = QPushButton()
        self.write.setProperty("part", "main")
        self.write.clicked.connect(self.ask_and_write)
        self._progress = QProgressBar()
        self._progress.setTextVisible(False)
        self._progress.setVisible(False)
        self._told = QLabel()
        self._told.setWordWrap(True)
        self._told.setProperty("part", "quiet")
        self._open = QPushButton(tr("Open the folder"))
        put_icon(self._open, "folder", desk.themes.theme)
        self._open.setVisible(False)
        self._open.clicked.connect(self._open_folder)
        self._folder = ""
        self._lay_out()
        default = "letter" if desk.plan.job.units == "inch" else "a4"
        self._paper.setCurrentIndex(max(0, list(PAPERS).index(desk.preferences.text("paper", default))))
        self.printer.show_paper(self._paper.currentData())
        desk.signals.plan_changed.connect(self.refresh)
        self.refresh()

    def _lay_out(self) -> None:
        choice = QHBoxLayout()
        label = QLabel(tr("Paper"))
        label.setProperty("part", "quiet")
        label.setBuddy(self._paper)
        choice.addWidget(label)
        choice.addWidget(self._paper, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 16, 16, 16)
        column.setSpacing(8)
        column.addLayout(choice)
        column.addWidget(self.printer)
        column.addWidget(self.labels)
        holds = QHBoxLayout()
        holds.addWidget(self._section(tr("What the pack holds")), 1)
        holds.addWidget(self._every)
        column.addLayout(holds)
        column.addWidget(self.papers, 2)
        row = QHBoxLayout()
        row.addWidget(self._carried, 1)
        row.addWidget(self.at_hand)
        column.addLayout(row)
        column.addWidget(self.supply)
        column.addWidget(hairline())
        column.addWidget(self._section(tr("What stands in its way")))
        column.addWidget(self._verdict)
        column.addWidget(self.stops, 1)
        column.addStretch(0)
        column.addWidget(self._told)
        for part in (self._progress, self._open, self.write):
            column.addWidget(part)

    def _section(self, words: str) -> QLabel:
        label = QLabel(words)
        label.setProperty("part", "section")
        return label

    def refresh(self) -> None:
        """Show the papers and the stops as they are now."""
        plan, review = self._desk.session.committed_plan, self._desk.review
        self.printer.refresh()
        self._carried.setText("\n".join(_carried_words(plan, board) for board in plan.boards.values()))
        stops = review.stops
        rows = [
            Row((each.name, each.things, tuple(each.place)), each.sentence, sign="stop", wraps=True) for each in stops
        ]
        self.stops.show_rows(rows)
        self.stops.setVisible(bool(stops))
        if stops:
            words = counted("%n finding|%n findings", len(stops))
            self._verdict.setText(tr("{} to clear or accept. A draft says so on every sheet.").format(words))
        elif review.findings:
            words = tr("Nothing stops the papers under {}, edition {}.").format(plan.rules.name, plan.rules.edition)
            warnings = sum(each.open and each.severity == "warn" for each in review.findings)
            still = counted(
                " %n finding still asks to be cleared or accepted.| %n findings still ask to be cleared or accepted.",
                warnings,
            )
            self._verdict.setText(words + (still if warnings else ""))
        else:
            self._verdict.setText(no_finding_words(plan.rules))
        self._name_write()

    def _name_write(self) -> None:
        """Say on the button what will be written."""
        if self._work is not None:
            return
        chosen, all_chosen = len(self.papers.chosen), self.papers.all_chosen
        if not all_chosen:
            words = counted("Write %n paper...|Write %n papers...", chosen)
        elif self._desk.review.stops:
            words = tr("Write a draft of the job pack...")
        else:
            words = tr("Write the job pack...")
        self.write.setText(words)
        self.write.setEnabled(chosen > 0)

    @property
    def making(self) -> Making:
        """What the papers are made from as things stand."""
        return Making(self._desk.session.review, self.printer.printing, self.labels.stock)

    @property
    def images(self) -> PageImages:
        """The pages of the papers as things stand; those that were laid out are kept while nothing changes."""
        making = self.making
        if self._images is None or not self._images.are_of(making):
            self._images = PageImages(making)
        return self._images

    def _show_another_making(self) -> None:
        """Show the paper that is looked at anew, as it comes out now."""
        if self.papers.key is not None:
            self.looked_at.emit(self.papers.key)

    def _picked(self, key: object) -> None:
        found = (each for each in self._desk.review.stops if (each.name, each.things, tuple(each.place)) == key)
        self._desk.point_to(next(found, None))

    def _remember_paper(self) -> None:
        self._desk.preferences.remember_text("paper", self._paper.currentData().id)
        self.printer.show_paper(self._paper.currentData())
        self._show_another_making()

    def ask_stock(self) -> None:
        """Ask what is at hand to cut from."""
        dialog = StockDialog(self._desk.session.committed_plan, self._desk.themes, self.window())
        if dialog.exec():
            stock = dialog.plan.stock
            self._desk.edit(tr("Change what is at hand"), lambda plan: with_stock(plan, stock))

    def choose_paper(self, paper: str) -> None:
        """Choose the paper of the template by its id."""
        self._paper.setCurrentIndex(list(PAPERS).index(paper))
        self._remember_paper()

    def ask_and_write(self) -> None:
        """Ask for a folder and write the pack into it; while it is written, stop."""
        if self._work is not None:
            self._work.requestInterruption()
            return
        path = self._desk.session.path
        wanted = (path.parent if path else Path.home()) / f"{path.stem if path else 'job'}-pack"
        chosen, _ = QFileDialog.getSaveFileName(
            self, tr("A folder for the job pack"), str(wanted), "", "", QFileDialog.Option.ShowDirsOnly
        )
        if chosen:
            self.write_to(Path(chosen))

    def write_to(self, folder: Path) -> None:
        """Write the pack into a folder."""
        chosen = () if self.papers.all_chosen else self.papers.chosen
        work = PackWork(self.making, folder, chosen, self)
        work.told.connect(self._show_progress)
        work.refused.connect(self._show_refused)
        work.failed.connect(self._show_failed)
        work.written.connect(self._show_written)
        work.finished.connect(self._show_rest)
        self._work = work
        self._folder = str(folder)
        self._open.setVisible(False)
        self.write.setText(tr("Stop writing"))
        self._progress.setVisible(True)
        work.start()

    @property
    def writing(self) -> bool:
        """Whether a pack is being written."""
        return self._work is not None

    def _show_progress(self, done: int, total: int, words: str) -> None:
        self._progress.setRange(0, max(1, total))
        self._progress.setValue(done)
        self._told.setText(words)

    def _show_refused(self, sentence: str) -> None:
        self._told.setText(sentence)

    def _show_failed(self, error: OSError) -> None:
        self._told.setText("")
        show_disk_fault(error, self._folder, self.window())

    def _show_written(self, folder: str) -> None:
        self._told.setText(tr("Written to {}").format(folder))
        self._open.setVisible(True)

    def _show_rest(self) -> None:
        work, self._work = self._work, None
        if work is not None:
            work.deleteLater()
        self._progress.setVisible(False)
        self.refresh()

    def wait(self) -> None:
        """Stop what is being written and wait for its end; before the window goes."""
        if self._work is not None:
            self._work.requestInterruption()
            self._work.wait()

    def _open_folder(self) -> None:
        QDesktopServices.openUrl(QUrl.fromLocalFile(self._folder))


def _carried_words(plan: Plan, board: Board) -> str:
    """Return what a board weighs when it is carried in, and whose weight nobody knows."""
    weights = weights_of(plan, board)
    carried = tr("Board {}: carried {} kg").format(board.id, tidy_number(weights.carried))
    return tr("{}, without {}").format(carried, ", ".join(weights.unknown[:3])) if weights.unknown else carried
