"""Printer dialog: writes the sheet of bars by which a printer is measured, and takes what they measure."""

from pathlib import Path

from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QFileDialog,
    QFormLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from boardplan.bundled import data_dir
from boardplan.files.faults import BadFile
from boardplan.files.printer_file import (
    bars_for,
    load_printers,
    measured_length,
    printer_file,
    printer_name,
    save_printers,
    with_bars,
)
from boardplan.files.whole_file import write_whole
from boardplan.geometry.units import length_text
from boardplan.model.job import Units
from boardplan.model.printer_bars import Factors, PrintedBar, PrinterBars
from boardplan.output.printing.calibration_sheet import bar_lengths, calibration_pdf, inch_bar_lengths
from boardplan.output.printing.paper import Paper
from boardplan.output.printing.pdf import Fonts
from boardplan.output.printing.printer_correction import PRINT_TRUE, Printing, bar_sentences, percent
from boardplan.ui.dialogs.fault_dialog import show_bad_file, show_disk_fault
from boardplan.ui.words import tr


class PrinterDialog(QDialog):
    """A printer's name, what its bars measure, and at once what follows from that."""

    def __init__(self, paper: Paper, units: Units, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._paper, self._unit = paper, "in" if units == "inch" else "mm"
        self._lengths = (inch_bar_lengths if units == "inch" else bar_lengths)(paper)
        self.kept = ""
        """The printer whose bars were kept, if any were."""
        self.setWindowTitle(tr("Measure a printer on {}").format(paper.name))
        self.setMinimumWidth(480)
        self.name = QLineEdit(name)
        self.sheet = QPushButton(tr("Write the calibration sheet..."))
        self.sheet.setAutoDefault(False)
        self.drawn = QComboBox()
        self.bar_x, self.bar_y = QLineEdit(), QLineEdit()
        self.told = QLabel()
        self.told.setWordWrap(True)
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        self.keep = buttons.addButton(tr("Keep"), QDialogButtonBox.ButtonRole.AcceptRole)
        self.keep.setDefault(True)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        self._lay_out(units, buttons)
        self.sheet.clicked.connect(self._ask_and_write)
        self.name.textChanged.connect(self._show_known)
        for edit in (self.bar_x, self.bar_y):
            edit.textChanged.connect(self._show)
        self.drawn.currentIndexChanged.connect(self._show)
        self._show_known()
        (self.bar_x if name else self.name).setFocus()

    def _lay_out(self, units: Units, buttons: QDialogButtonBox) -> None:
        caution = QLabel(PRINT_TRUE)
        caution.setWordWrap(True)
        form = QFormLayout()
        form.setSpacing(8)
        x, y = (length_text(each, units) for each in self._lengths)
        rows: tuple[tuple[str, QWidget], ...] = (
            (tr("Printer"), self.name),
            ("", self.sheet),
            (tr("The sheet says: drawn"), self.drawn),
            (tr("Bar X, {}, measures").format(x), self.bar_x),
            (tr("Bar Y, {}, measures").format(y), self.bar_y),
        )
        for words, control in rows:
            form.addRow(words, control)
            if words:
                control.setAccessibleName(words)
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 20, 20, 16)
        column.setSpacing(12)
        column.addWidget(caution)
        column.addLayout(form)
        column.addWidget(self.told)
        column.addStretch(1)
        column.addWidget(buttons)

    @property
    def _named(self) -> str:
        """The printer's name, nothing while it can't be one."""
        try:
            return printer_name(self.name.text())
        except ValueError:
            return ""

    def _known(self) -> PrinterBars | None:
        try:
            return bars_for(load_printers(printer_file()), self._named, self._paper.id)
        except (BadFile, OSError):
            return None

    def _show_known(self) -> None:
        """Offer what the sheet in hand may be drawn at: as one written now, as the last one measured, as it comes."""
        known = self._known()
        offered = [known.factors, Factors(known.short.drawn_at, known.long.drawn_at)] if known else []
        self.drawn.clear()
        for each in dict.fromkeys((*offered, Factors())):
            self.drawn.addItem(tr("{} % in x, {} % in y").format(percent(each.short), percent(each.long)), each)
        self._show()

    def _bars(self) -> PrinterBars | str:
        """Return what was typed, or what is missing of it."""
        try:
            name = printer_name(self.name.text())
        except ValueError as error:
            return tr("Printer: {}.").format(error) if self.name.text() else ""
        drawn = self.drawn.currentData() or Factors()
        bars: list[PrintedBar] = []
        for text, length, factor in zip((self.bar_x.text(), self.bar_y.text()), self._lengths, drawn, strict=True):
            if not text.strip():
                return ""
            try:
                bars.append(PrintedBar(length, measured_length(text, self._unit), factor))
            except ValueError as error:
                return str(error)
        short, long = bars
        return PrinterBars(name, self._paper.id, short, long)

    def _show(self) -> None:
        bars = self._bars()
        self.told.setText(bars if isinstance(bars, str) else "\n".join(bar_sentences(bars)))
        self.keep.setEnabled(isinstance(bars, PrinterBars))
        self.sheet.setEnabled(bool(self._named))

    def accept(self) -> None:
        """Keep what was measured, then close."""
        bars = self._bars()
        if isinstance(bars, str):
            return
        path = printer_file()
        try:
            save_printers(path, with_bars(load_printers(path), bars))
        except BadFile as bad:
            show_bad_file(bad, self)
        except OSError as error:
            show_disk_fault(error, str(path), self)
        else:
            self.kept = bars.printer
            super().accept()

    def _ask_and_write(self) -> None:
        wanted = str(Path.home() / f"calibration-sheet-{self._paper.id}.pdf")
        chosen, _ = QFileDialog.getSaveFileName(self, tr("A file for the calibration sheet"), wanted, "PDF (*.pdf)")
        if chosen:
            self.write_sheet(Path(chosen))

    def write_sheet(self, path: Path) -> None:
        """Write the calibration sheet, drawn with what is known of the printer."""
        printing = Printing(self._paper, self._named, self._known())
        try:
            write_whole(path, calibration_pdf(printing, Fonts(data_dir("assets") / "fonts")))
        except OSError as error:
            show_disk_fault(error, str(path), self)
