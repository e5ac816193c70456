"""Printer file: the bars that a person measured, for each printer and paper, kept among the person's own settings."""

import re
from collections.abc import Iterable
from pathlib import Path
from typing import Annotated, Literal

from pydantic import Field, ValidationError

from boardplan.files.faults import BadFile, Fault
from boardplan.files.json_text import json_lines, read_json
from boardplan.files.own_folders import settings_folder
from boardplan.files.record_faults import faults_of
from boardplan.files.record_types import ID_PATTERN, PATTERN_WORDS, Id, Length, Record
from boardplan.files.whole_file import write_whole
from boardplan.geometry.units import read_length
from boardplan.model.printer_bars import LEAST, MOST, PrintedBar, PrinterBars

FORMAT, VERSION = "boardplan-printers", 1
_LONGEST_NAME = 60
_LONGEST_BAR = 2000.0
Factor = Annotated[float, Field(ge=LEAST, le=MOST)]


class BarRecord(Record):
    """A bar: the length it stands for and what was measured, in mm, and the factor it was drawn at."""

    length: Length
    measured: Length
    drawn_at: Factor


class PrinterBarsRecord(Record):
    """A printer on a paper: the bars along the paper's short and long side."""

    printer: Id
    paper: Id
    short: BarRecord
    long: BarRecord
    finer: bool = False


class PrinterFileRecord(Record):
    """The whole file."""

    format: Literal["boardplan-printers"]
    version: Literal[1]
    printers: Annotated[list[PrinterBarsRecord], Field(max_length=1000)]


def printer_file() -> Path:
    """Return where the measured bars are kept."""
    return settings_folder() / "printers.json"


def printer_name(text: str) -> str:
    """Return what a person calls a printer, as it can be kept. Raises ValueError with what was expected."""
    name = text.strip()
    if len(name) > _LONGEST_NAME or not re.fullmatch(ID_PATTERN, name):
        raise ValueError(f"expected {PATTERN_WORDS[ID_PATTERN]}, at most {_LONGEST_NAME} letters")
    return name


def measured_length(text: str, unit: str) -> float:
    """Return what a bar measures in mm; a bare number counts in "mm" or "in". Raises ValueError."""
    length = read_length(text, unit)
    if not 0 < length <= _LONGEST_BAR:
        raise ValueError(f"'{text}' is not what a bar measures: expected up to {_LONGEST_BAR:g} mm")
    return length


def load_printers(path: Path) -> tuple[PrinterBars, ...]:
    """Return the measured bars of a file, none where there is no such file. Raises BadFile, OSError."""
    try:
        content = path.read_bytes()
    except FileNotFoundError:
        return ()
    try:
        text = content.decode("utf-8")
    except UnicodeDecodeError as error:
        raise BadFile(path, [Fault(f"byte {error.start}", "expected UTF-8 text")]) from None
    data, faults = read_json(text)
    if faults:
        raise BadFile(path, faults)
    try:
        record = PrinterFileRecord.model_validate(data)
    except ValidationError as error:
        raise BadFile(path, faults_of(error, data)) from None
    kept = tuple(_bars(each) for each in record.printers)
    twice = [place for place, each in enumerate(kept) if any(_same(each, other) for other in kept[:place])]
    if twice:
        raise BadFile(path, [Fault(f"printers[{place}]", "this printer and paper are given before") for place in twice])
    return kept


def save_printers(path: Path, printers: Iterable[PrinterBars]) -> None:
    """Write measured bars, whole or not at all, in the order of their names. Raises OSError."""
    ordered = sorted(printers, key=lambda each: (each.printer.casefold(), each.printer, each.paper))
    content = {"format": FORMAT, "version": VERSION, "printers": [_plain(each) for each in ordered]}
    path.parent.mkdir(parents=True, exist_ok=True)
    write_whole(path, json_lines(content).encode("utf-8"))


def bars_for(printers: Iterable[PrinterBars], printer: str, paper: str) -> PrinterBars | None:
    """Return what was measured of a printer on a paper, if anything was; capitals make no other printer."""
    return next((each for each in printers if _key(each.printer, each.paper) == _key(printer, paper)), None)


def with_bars(printers: Iterable[PrinterBars], bars: PrinterBars) -> tuple[PrinterBars, ...]:
    """Return measured bars with others, or newer ones, among them."""
    return (*without_bars(printers, bars.printer, bars.paper), bars)


def without_bars(printers: Iterable[PrinterBars], printer: str, paper: str) -> tuple[PrinterBars, ...]:
    """Return measured bars without those of a printer on a paper."""
    return tuple(each for each in printers if _key(each.printer, each.paper) != _key(printer, paper))


def _key(printer: str, paper: str) -> tuple[str, str]:
    return printer.casefold(), paper


def _same(one: PrinterBars, other: PrinterBars) -> bool:
    return _key(one.printer, one.paper) == _key(other.printer, other.paper)


def _bars(record: PrinterBarsRecord) -> PrinterBars:
    return PrinterBars(record.printer, record.paper, _bar(record.short), _bar(record.long), record.finer)


def _bar(record: BarRecord) -> PrintedBar:
    return PrintedBar(record.length, record.measured, record.drawn_at)


def _plain(bars: PrinterBars) -> dict[str, object]:
    return {
        "printer": bars.printer,
        "paper": bars.paper,
        "short": _plain_bar(bars.short),
        "long": _plain_bar(bars.long),
        "finer": bars.finer,
    }


def _plain_bar(bar: PrintedBar) -> dict[str, float]:
    return {"length": bar.length, "measured": bar.measured, "drawn_at": bar.drawn_at}
