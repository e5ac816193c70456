"""Pack panel: the paper, the papers, what still stops them, and the button that writes them."""

from pathlib import Path

from PySide6.QtCore import QThread, QUrl, Signal
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

from boardplan.geometry.units import tidy_number
from boardplan.model.plan import Plan
from boardplan.model.weights import weights_of
from boardplan.output.back.back_view import back_holes
from boardplan.output.making import Making
from boardplan.output.pack import PackRefused, write_pack
from boardplan.output.printing.paper import PAPERS
from boardplan.ui.controls.small_parts import hairline
from boardplan.ui.desk import Desk
from boardplan.ui.dialogs.fault_dialog import show_disk_fault
from boardplan.ui.icons import put_icon
from boardplan.ui.panels.findings_panel import no_finding_words
from boardplan.ui.panels.printer_choice import PrinterChoice
from boardplan.ui.tables.row_list import RowList
from boardplan.ui.tables.rows import Row
from boardplan.ui.words import counted, tr


class _Stopped(Exception):  # noqa: N818 - what happened
    """The person thought better of it."""


class PackWork(QThread):
    """Writes a pack beside the window, from values that nobody changes."""

    told = Signal(int, int, str)
    refused = Signal(str)
    failed = Signal(object)
    written = Signal(str)

    def __init__(self, making: Making, folder: Path, parent: QWidget) -> None:
        super().__init__(parent)
        self._making, self._folder = making, folder

    def _tell(self, done: int, total: int, words: str) -> None:
        if self.isInterruptionRequested():
            raise _Stopped
        self.told.emit(done, total, words)

    def run(self) -> None:
        """Write, and say how it went."""
        try:
            write_pack(self._making, self._folder, self._tell)
        except _Stopped:
            self.refused.emit(tr("Nothing was written."))
        except PackRefused as refused:
            self.refused.emit(str(refused))
        except OSError as error:
            self.failed.emit(error)
        else:
            self.written.emit(str(self._folder))


class PackPanel(QWidget):
    """The last step: nothing to draw, only to look through and to write."""

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
        self.papers = RowList(tr("Papers"), desk.themes.theme)
        self.papers.grows()
        self.stops = RowList(tr("What stops the papers"), desk.themes.theme)
        self.stops.setWordWrap(True)
        self.stops.picked.connect(self._picked)
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
        column.addWidget(self._section(tr("What the pack holds")))
        column.addWidget(self.papers)
        column.addWidget(hairline())
        column.addWidget(self._section(tr("What stands in its way")))
        column.addWidget(self._verdict)
        column.addWidget(self.stops, 1)
        column.addStretch(0)
        column.addWidget(self._told)
        column.addWidget(self._progress)
        column.addWidget(self._open)
        column.addWidget(self.write)

    def _section(self, words: str) -> QLabel:
        label = QLabel(words)
        label.setProperty("part", "section")
        return label

    def refresh(self) -> None:
        """Show the papers and the stops as they are now."""
        plan, review = self._desk.session.committed_plan, self._desk.review
        self.printer.refresh()
        self.papers.show_rows(self._paper_rows(plan))
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
        self.write.setText(tr("Write a draft of the job pack...") if stops else tr("Write the job pack..."))

    def _paper_rows(self, plan: Plan) -> list[Row]:
        rows = []
        for board in plan.boards.values():
            weights = weights_of(plan, board)
            carried = tr("carried {} kg").format(tidy_number(weights.carried))
            if weights.unknown:
                carried = tr("{}, without {}").format(carried, ", ".join(weights.unknown[:3]))
            title = tr("Drilling template, board {}").format(board.id)
            rows.append(Row(("template", board.id), title, carried, sign="drilling-template"))
            behind = len(back_holes(plan, board))
            if behind:
                title = tr("Back template, board {}").format(board.id)
                nuts = counted("mirrored, %n hole worked from the back|mirrored, %n holes worked from the back", behind)
                rows.append(Row(("back", board.id), title, nuts, sign="drilling-template"))
        holes = tr("every hole from the datum")
        cables = counted("%n cable|%n cables", len(plan.cables))
        rows.append(Row("holes", tr("Hole schedule"), holes, sign="hole-schedule"))
        rows.append(Row("cables", tr("Cable cut list"), cables, sign="cut-list"))
        at_hand = counted(
            "from %n entry of stock|from %n entries of stock", len(plan.stock.cables + plan.stock.channels)
        )
        rows.append(Row("cutting", tr("Cutting plan"), at_hand, sign="cut-list"))
        rows.append(
            Row("labels", tr("Label sheet"), tr("both ends of every cable, units, fuse places"), sign="cut-list")
        )
        found = tr("open ones, and those accepted by name")
        rows.append(Row("findings", tr("Findings"), found, sign="accept"))
        exchange = tr("boards as DXF, SVG and PNG, all lists as a workbook")
        rows.append(Row("exchange", tr("Files for other programs"), exchange, sign="folder"))
        return rows

    def _picked(self, key: object) -> None:
        found = (each for each in self._desk.review.stops if (each.name, each.things, tuple(each.place)) == key)
        self._desk.point_to(next(found, None))

    def _remember_paper(self) -> None:
        self._desk.preferences.remember_text("paper", self._paper.currentData().id)
        self.printer.show_paper(self._paper.currentData())

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
        session = self._desk.session
        work = PackWork(Making(session.review, self.printer.printing), folder, self)
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
