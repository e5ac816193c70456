"""Printer commands: print a calibration sheet, enter what it measures, say what is known of the printers."""

import argparse
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from boardplan.bundled import data_dir
from boardplan.cli.shell import FINE, STOPS, WrongUse, say, say_json

if TYPE_CHECKING:
    from boardplan.model.printer_bars import PrinterBars
    from boardplan.output.printing.paper import Paper
    from boardplan.output.printing.printer_correction import Printing

_PAPER_HELP = "the paper: a4, letter, a3, roll-914 ..."


def add_printer_commands(add: Callable[..., argparse.ArgumentParser]) -> None:
    """Add the parsers of the commands below."""
    words = "write the sheet of bars by which a printer is measured"
    sheet = add("calibration-sheet", help=words, description=words)
    _name_and_paper(sheet, required=True)
    sheet.add_argument("--to", type=Path, required=True, metavar="FILE.pdf", help="the file to write")
    sheet.add_argument("--json", action="store_true", help="what was written, as JSON")
    words = "enter what the bars of a calibration sheet measure"
    bars = add("measured-bars", help=words, description=words)
    _name_and_paper(bars, required=True)
    bars.add_argument("--x", required=True, metavar="LENGTH", help="what bar X measures, along the short side: 149.8")
    bars.add_argument("--y", required=True, metavar="LENGTH", help="what bar Y measures, along the long side: 250.3")
    bars.add_argument("--inch-bars", action="store_true", help="the inch bars were measured; bare numbers are inches")
    bars.add_argument(
        "--drawn-at",
        nargs=2,
        type=float,
        metavar=("X", "Y"),
        help="percent that the measured sheet says it is drawn at (default: what a sheet is drawn at now)",
    )
    bars.add_argument(
        "--finer", action="store_true", help="correct bars too that are true within 0.3 mm; asks for another print"
    )
    bars.add_argument("--json", action="store_true", help="as JSON; see: boardplan help json")
    words = "list the printers that were measured"
    known = add("printers", help=words, description=words)
    known.add_argument("--forget", action="store_true", help="forget what was measured of --printer on --paper")
    _name_and_paper(known, required=False)
    known.add_argument("--json", action="store_true", help="as JSON; see: boardplan help json")


def _name_and_paper(command: argparse.ArgumentParser, *, required: bool) -> None:
    command.add_argument("--printer", required=required, metavar="NAME", help="what you call the printer")
    command.add_argument("--paper", required=required, help=_PAPER_HELP)


def paper_named(name: str) -> "Paper":
    """Return a paper by its id. Raises WrongUse."""
    from boardplan.output.printing.paper import PAPERS  # noqa: PLC0415 - late, for a quick start

    paper = PAPERS.get(name)
    if paper is None:
        raise WrongUse(f"--paper: there is no paper '{name}'; expected one of {', '.join(PAPERS)}")
    return paper


def printing_named(printer: str | None, paper: "Paper") -> "Printing":
    """Return a paper with what is known of a printer on it. Raises WrongUse, BadFile, OSError."""
    from boardplan.files.printer_file import bars_for, load_printers, printer_file  # noqa: PLC0415
    from boardplan.output.printing.printer_correction import Printing  # noqa: PLC0415

    if printer is None:
        return Printing(paper)
    name = _printer_name(printer)
    bars = bars_for(load_printers(printer_file()), name, paper.id)
    return Printing(paper, bars.printer if bars else name, bars)


def _printer_name(text: str) -> str:
    from boardplan.files.printer_file import printer_name  # noqa: PLC0415

    try:
        return printer_name(text)
    except ValueError as error:
        raise WrongUse(f"--printer: {error}") from None


def write_calibration_sheet(chosen: argparse.Namespace) -> int:
    """Write a calibration sheet as a PDF, drawn with the correction that is known."""
    from boardplan.files.whole_file import write_whole  # noqa: PLC0415
    from boardplan.output.printing.calibration_sheet import bar_lengths, calibration_pdf  # noqa: PLC0415
    from boardplan.output.printing.pdf import Fonts  # noqa: PLC0415
    from boardplan.output.printing.printer_correction import PRINT_TRUE, percent  # noqa: PLC0415

    if chosen.to.suffix.lower() != ".pdf":
        raise WrongUse(f"--to: expected the name of a PDF, found {chosen.to}")
    printing = printing_named(chosen.printer, paper_named(chosen.paper))
    write_whole(chosen.to, calibration_pdf(printing, Fonts(data_dir("assets") / "fonts")))
    short, long = bar_lengths(printing.paper)
    if chosen.json:
        say_json(
            {
                "file": str(chosen.to),
                "printer": printing.printer,
                "paper": printing.paper.id,
                "bars_mm": {"short": short, "long": long},
                "factors": printing.factors._asdict(),
            }
        )
        return FINE
    x, y = (percent(each) for each in printing.factors)
    say(f"{chosen.to}: bars of {short:g} mm in x and {long:g} mm in y, drawn {x} % in x, {y} % in y.\n{PRINT_TRUE}")
    return FINE


def enter_measured_bars(chosen: argparse.Namespace) -> int:
    """Keep what was measured, and say what follows from it; exit code 1 where it is refused."""
    from boardplan.files.printer_file import load_printers, printer_file, save_printers, with_bars  # noqa: PLC0415
    from boardplan.model.printer_bars import PrintedBar, PrinterBars  # noqa: PLC0415
    from boardplan.output.printing.calibration_sheet import bar_lengths, inch_bar_lengths  # noqa: PLC0415
    from boardplan.output.printing.printer_correction import bar_sentences, bars_record, percent  # noqa: PLC0415

    printing = printing_named(chosen.printer, paper_named(chosen.paper))
    lengths = (inch_bar_lengths if chosen.inch_bars else bar_lengths)(printing.paper)
    unit = "in" if chosen.inch_bars else "mm"
    measured = [_measured(option, text, unit) for option, text in (("--x", chosen.x), ("--y", chosen.y))]
    drawn = _drawn_at(chosen.drawn_at) if chosen.drawn_at else printing.factors
    short, long = (PrintedBar(*each) for each in zip(lengths, measured, drawn, strict=True))
    bars = PrinterBars(printing.printer, printing.paper.id, short, long, chosen.finer)
    path = printer_file()
    save_printers(path, with_bars(load_printers(path), bars))
    if chosen.json:
        say_json({"file": str(path), **bars_record(bars)})
    else:
        x, y = (percent(each) for each in drawn)
        taken = f"Taken as measured on a sheet drawn {x} % in x, {y} % in y."
        say("\n".join([taken, *bar_sentences(bars), f"Kept in {path}."]))
    return FINE if bars.plausible else STOPS


def _measured(option: str, text: str, unit: str) -> float:
    from boardplan.files.printer_file import measured_length  # noqa: PLC0415

    try:
        return measured_length(text, unit)
    except ValueError as error:
        raise WrongUse(f"{option}: {error}") from None


def _drawn_at(percents: list[float]) -> tuple[float, float]:
    from boardplan.model.printer_bars import LEAST, MOST  # noqa: PLC0415

    x, y = (round(each / 100, 4) for each in percents)
    if not (LEAST <= x <= MOST and LEAST <= y <= MOST):
        raise WrongUse(f"--drawn-at: expected percents from {100 * LEAST:g} to {100 * MOST:g}, as the sheet says")
    return x, y


def list_printers(chosen: argparse.Namespace) -> int:
    """List what was measured of every printer, or forget one."""
    from boardplan.files.printer_file import (  # noqa: PLC0415
        bars_for,
        load_printers,
        printer_file,
        save_printers,
        without_bars,
    )
    from boardplan.output.printing.printer_correction import bars_record  # noqa: PLC0415

    path = printer_file()
    known = load_printers(path)
    if chosen.forget:
        if chosen.printer is None or chosen.paper is None:
            raise WrongUse("--forget: expected --printer and --paper too")
        name = _printer_name(chosen.printer)
        if bars_for(known, name, chosen.paper) is None:
            raise WrongUse(f"--forget: nothing was measured of printer {name} on {chosen.paper}")
        known = without_bars(known, name, chosen.paper)
        save_printers(path, known)
    shown = [each for each in known if chosen.printer in {None, each.printer} and chosen.paper in {None, each.paper}]
    if chosen.json:
        say_json({"file": str(path), "printers": [bars_record(each) for each in shown]})
    else:
        say("\n".join(_rows(shown)) if shown else "No printer was measured yet.")
    return FINE


def _rows(printers: "list[PrinterBars]") -> list[str]:
    from boardplan.cli.text import columns  # noqa: PLC0415
    from boardplan.output.printing.printer_correction import missing_words, percent  # noqa: PLC0415

    rows = [
        (
            each.printer,
            each.paper,
            percent(each.factors.short),
            percent(each.factors.long),
            missing_words(each) or "bars true within 0.3 mm",
        )
        for each in printers
    ]
    return columns(("printer", "paper", "x %", "y %", ""), rows)
