"""Printer choice: which printer the templates are for, and whether it is measured, so that they may be drilled by."""

from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from boardplan.files.faults import BadFile
from boardplan.files.printer_file import bars_for, load_printers, printer_file
from boardplan.model.printer_bars import PrinterBars
from boardplan.output.printing.paper import PAPERS, Paper
from boardplan.output.printing.printer_correction import Printing, readiness_words
from boardplan.ui.controls.choice import Choice
from boardplan.ui.desk import Desk
from boardplan.ui.dialogs.printer_dialog import PrinterDialog
from boardplan.ui.words import tr

_REMEMBERED = "printer"


class PrinterChoice(QWidget):
    """The printers that were measured, a button to measure one, and what that means for this job."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._paper: Paper = PAPERS["a4"]
        self._printers: tuple[PrinterBars, ...] = ()
        self._fault = ""
        self.choice = Choice(tr("Printer of the drilling template"))
        self.choice.activated.connect(self._choose)
        self.measure = QPushButton(tr("Measure..."))
        self.measure.clicked.connect(self._measure)
        self.told = QLabel()
        self.told.setWordWrap(True)
        self.told.setProperty("part", "quiet")
        label = QLabel(tr("Printer"))
        label.setProperty("part", "quiet")
        label.setBuddy(self.choice)
        row = QHBoxLayout()
        row.addWidget(label)
        row.addWidget(self.choice, 1)
        row.addWidget(self.measure)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addLayout(row)
        column.addWidget(self.told)

    @property
    def printing(self) -> Printing:
        """The paper with the printer that is chosen and what is known of it."""
        name = self.choice.currentData() or ""
        return Printing(self._paper, name, bars_for(self._printers, name, self._paper.id))

    def show_paper(self, paper: Paper) -> None:
        """Offer every printer that was measured on any paper, and say what is known of the chosen one on this."""
        self._paper = paper
        try:
            self._printers, self._fault = load_printers(printer_file()), ""
        except (BadFile, OSError) as error:
            self._printers, self._fault = (), str(error)
        held = self._desk.preferences.text(_REMEMBERED)
        names = sorted({each.printer for each in self._printers} | ({held} if held else set()), key=str.casefold)
        self.choice.clear()
        self.choice.addItem(tr("none named"), "")
        for name in names:
            self.choice.addItem(name, name)
        self.choice.setCurrentIndex(max(0, self.choice.findData(held)))
        self.refresh()

    def refresh(self) -> None:
        """Say again whether the templates are ready to drill."""
        plan = self._desk.session.committed_plan
        words = readiness_words(self.printing, plan.boards.values(), plan.job.units)
        self.told.setText(self._fault or words)

    def _choose(self) -> None:
        self._desk.preferences.remember_text(_REMEMBERED, self.choice.currentData())
        self.refresh()

    def _measure(self) -> None:
        units = self._desk.plan.job.units
        dialog = PrinterDialog(self._paper, units, self.choice.currentData() or "", self.window())
        if dialog.exec() and dialog.kept:
            self._desk.preferences.remember_text(_REMEMBERED, dialog.kept)
        self.show_paper(self._paper)
