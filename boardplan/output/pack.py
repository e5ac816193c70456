"""Pack: all papers of a job in one folder, whole or not at all."""

import json
import os
import shutil
import tempfile
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from boardplan.bundled import data_dir
from boardplan.checks.review import Review
from boardplan.model.board import Board
from boardplan.model.holes import holes_of
from boardplan.model.label_stock import LabelStock
from boardplan.model.plan import Plan
from boardplan.output import cut_list, cutting_sheet, findings_list, hole_schedule, label_list
from boardplan.output.back_sheet import back_set_of, back_sheets
from boardplan.output.csv_table import csv_bytes
from boardplan.output.label_sheet import LabelSet, label_set, label_sheets, plain_stock
from boardplan.output.list_sheets import ListPaper, list_sheets
from boardplan.output.pages import Tile
from boardplan.output.paper import Paper, list_paper
from boardplan.output.pdf import Fonts, pdf_of
from boardplan.output.printer_correction import Printing, printing_record
from boardplan.output.printer_tiles import page_factors, printed_tiles
from boardplan.output.records import finding_records, open_counts, verdict_words
from boardplan.output.sheet import Sheet
from boardplan.output.stud_stacks import stack_tables
from boardplan.output.table import Table
from boardplan.output.template import template_of
from boardplan.output.template_set import TemplateSet, stop_words
from boardplan.output.tile_sheet import BEFORE_DRILLING, MEASURE_BARS, tile_sheets

CONTENTS = "pack.json"
Progress = Callable[[int, int, str], None]
"""Told how much is done, of how much, and what comes next; whatever it raises ends the work without a trace."""


class PackRefused(Exception):  # noqa: N818 - what happened, in words
    """The folder holds something that is not a pack of ours, so nothing was written."""


@dataclass(frozen=True, slots=True)
class _Paper:
    """One file of a pack before it is written: its name, its sheets or its text.

    `tiles` are those of its sheets on a board, `back` those on a mirrored board.
    """

    file: str
    sheets: Sequence[Sheet] = ()
    text: str = ""
    tiles: Sequence[Tile] = ()
    back: Sequence[Tile] = ()
    title: str = ""


def write_pack(
    plan: Plan,
    review: Review,
    folder: Path,
    paper: Paper | Printing,
    progress: Progress | None = None,
    stock: LabelStock | None = None,
) -> dict[str, Any]:
    """Write all papers to a folder and return what `pack.json` says.

    Labels are laid on the stock given, or on plain sticky paper to cut by hand where none is.
    On a paper alone, by no printer that is known, the templates are not ready to drill.
    The papers come into being beside the folder and take its place at the end: there is never half a pack.
    Raises PackRefused where the folder holds anything but an older pack, OSError where it can't be written.
    """
    target = folder.resolve()
    _check_target(target)
    target.parent.mkdir(parents=True, exist_ok=True)
    printing = paper if isinstance(paper, Printing) else Printing(paper)
    making = Path(tempfile.mkdtemp(prefix=f".{target.name}.", suffix=".part", dir=target.parent))
    try:
        labels = _labels(plan, review, printing, stock)
        contents = _write_all(review, labels, making, printing, progress or _silent)
        making.chmod(0o777 & ~_umask())
        _replace(making, target)
    except BaseException:
        shutil.rmtree(making, ignore_errors=True)
        raise
    return contents


def _silent(_done: int, _total: int, _words: str) -> None:
    """Tell nobody."""


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask


def _check_target(target: Path) -> None:
    if not target.exists():
        return
    if not target.is_dir():
        raise PackRefused(f"{target} is a file; a pack needs a folder")
    names = {each.name for each in target.iterdir()}
    if names and not _is_pack(target):
        raise PackRefused(f"{target} is not empty and holds no pack of papers; choose another folder")


def _is_pack(target: Path) -> bool:
    """Say whether a folder holds a pack of ours and nothing else, so that it may be replaced."""
    try:
        contents = json.loads((target / CONTENTS).read_text(encoding="utf-8"))
        files = {each["file"] for each in contents["files"]}
    except (OSError, ValueError, KeyError, TypeError):
        return False
    ours = contents.get("format") == _FORMAT
    return ours and {each.name for each in target.iterdir()} <= files | {CONTENTS}


def _replace(making: Path, target: Path) -> None:
    """Put the new folder in the place of the old one, which stays until the new one is there."""
    if not target.exists():
        making.replace(target)
        return
    old = Path(tempfile.mkdtemp(prefix=f".{target.name}.", suffix=".old", dir=target.parent))
    target.replace(old)
    try:
        making.replace(target)
    except BaseException:
        old.replace(target)
        raise
    shutil.rmtree(old)


_FORMAT = "boardplan-pack"


def _write_all(
    review: Review, labels: LabelSet, folder: Path, printing: Printing, progress: Progress
) -> dict[str, Any]:
    plan = review.plan
    fonts = Fonts(data_dir("assets") / "fonts")
    papers = tuple(_papers(review, labels, printing, fonts))
    total = sum(max(1, len(each.sheets)) for each in papers)
    done = 0
    for each in papers:
        progress(done, total, each.file)
        (folder / each.file).write_bytes(_content(each, fonts, (done, total), progress))
        done += max(1, len(each.sheets))
    contents = {**_contents(plan, review, printing, papers), "labels": label_list.label_records(labels)}
    text = json.dumps(contents, ensure_ascii=False, indent=1) + "\n"
    (folder / CONTENTS).write_text(text, encoding="utf-8")
    progress(total, total, "")
    return contents


def _labels(plan: Plan, review: Review, printing: Printing, stock: LabelStock | None) -> LabelSet:
    chosen = stock or plain_stock(list_paper(printing.paper, plan.job.units))
    return label_set(plan, review.lengths, chosen, Fonts(data_dir("assets") / "fonts").width)


def _content(each: _Paper, fonts: Fonts, so_far: tuple[int, int], progress: Progress) -> bytes:
    done, total = so_far

    def on_page(page: int) -> None:
        progress(done + page, total, each.file)

    return pdf_of(each.sheets, fonts, each.title, on_page) if each.sheets else csv_bytes(each.text)


def _papers(review: Review, labels: LabelSet, printing: Printing, fonts: Fonts) -> Iterator[_Paper]:
    plan = review.plan
    stops = open_counts(review)["stop"]
    names = template_files(plan)
    for board in plan.boards.values():
        yield _template(plan, review, board, printing, fonts, names[board.id])
        yield from _back_template(review, board, printing, fonts, names[board.id])
    office = list_paper(printing.paper, plan.job.units)

    def listed(title: str, tables: Sequence[Table], footer: str, *, landscape: bool) -> Sequence[Sheet]:
        return list_sheets(tables, ListPaper(plan, title, office, landscape, footer, stops, fonts.width))

    holes = listed(
        "Hole schedule", hole_schedule.hole_tables(plan, review.clamps), hole_schedule.FOOTER, landscape=False
    )
    yield _Paper("hole-schedule.pdf", holes, title=f"{plan.job.title}: hole schedule")
    yield _Paper("hole-schedule.csv", text=hole_schedule.hole_schedule_csv(plan, review.clamps))
    parts = cut_list.cut_tables(plan, review.lengths, review.clamps, review.retainers)
    cut = (*parts, *stack_tables(plan, review.lengths))
    cables = listed("Cable cut list", cut, cut_list.FOOTER, landscape=True)
    yield _Paper("cable-cut-list.pdf", cables, title=f"{plan.job.title}: cable cut list")
    yield _Paper("cable-cut-list.csv", text=cut_list.cut_list_csv(plan, review.lengths, review.clamps))
    cuts = listed(
        "Cutting plan", cutting_sheet.cutting_tables(plan, review.lengths), cutting_sheet.FOOTER, landscape=False
    )
    yield _Paper("cutting-plan.pdf", cuts, title=f"{plan.job.title}: cutting plan")
    yield _Paper("cutting-plan.csv", text=cutting_sheet.cutting_csv(plan, review.lengths))
    sticking = listed("Label sheet", label_list.label_tables(labels), label_list.FOOTER, landscape=False)
    label_pages = label_sheets(labels, plan, stops, fonts.width)
    yield _Paper("label-sheet.pdf", (*sticking, *label_pages), title=f"{plan.job.title}: label sheet")
    yield _Paper("label-sheet.csv", text=label_list.label_csv(labels))
    found = listed("Findings", findings_list.findings_tables(review), findings_list.FOOTER, landscape=False)
    yield _Paper("findings.pdf", found, title=f"{plan.job.title}: findings")


def template_files(plan: Plan) -> dict[str, str]:
    """Return the name of each board's template file: its id, with only letters and digits any disk can hold."""
    names: dict[str, str] = {}
    for board in plan.boards:
        plain = "".join(each if each.isascii() and (each.isalnum() or each in "-_") else "_" for each in board)
        name, number = f"drilling-template-{plain}.pdf", 2
        while name.lower() in {each.lower() for each in names.values()}:
            name, number = f"drilling-template-{plain}-{number}.pdf", number + 1
        names[board] = name
    return names


def _template(plan: Plan, review: Review, board: Board, printing: Printing, fonts: Fonts, file: str) -> _Paper:
    marks = [hole.position for hole in holes_of(plan) if hole.board == board.id]
    tiles = printed_tiles(board, printing, marks)
    template = template_of(plan, review, board, tiles, fonts.width)
    shared = TemplateSet(plan.job, template, tiles, printing, open_counts(review)["stop"], fonts.width)
    title = f"{plan.job.title}: drilling template, board {board.id}"
    return _Paper(file, tuple(tile_sheets(shared)), tiles=tiles, title=title)


def _back_template(review: Review, board: Board, printing: Printing, fonts: Fonts, front: str) -> Iterator[_Paper]:
    """Yield the mirrored template of a board that has holes worked from the back."""
    shared = back_set_of(review, board, printing, fonts.width)
    if shared:
        file = front.replace("drilling-template-", "back-template-", 1)
        title = f"{shared.job.title}: back template, mirrored, board {board.id}"
        yield _Paper(file, tuple(back_sheets(shared)), back=shared.tiles, title=title)


def _contents(plan: Plan, review: Review, printing: Printing, papers: Sequence[_Paper]) -> dict[str, Any]:
    counts = open_counts(review)
    job, paper = plan.job, printing.paper
    return {
        "format": _FORMAT,
        "version": 1,
        "job": {
            "title": job.title,
            "number": job.number,
            "revision": job.revision,
            "date": job.date,
            "units": job.units,
        },
        "rule_set": {"id": plan.rules.id, "edition": plan.rules.edition},
        "findings": {"words": verdict_words(review), "open": counts, "list": finding_records(review)["findings"]},
        "issue": stop_words(counts["stop"]) if counts["stop"] else "no finding stops these papers",
        "may_be_issued": not counts["stop"],
        "ready_to_drill": printing.ready and not counts["stop"],
        "printing": printing_record(printing, tuple(plan.boards.values()), job.units),
        "paper": {"id": paper.id, "name": paper.name, "width_mm": paper.width, "height_mm": paper.height},
        "template_coordinates": (
            "mm; a point of the board at (x, y) from its lower left lies on the page, from the page's lower left, "
            "at (at[0] + (x - rect[0]) * drawn[0], at[1] + (y - rect[1]) * drawn[1]); nothing is turned; drawn is 1 "
            "but where it makes up for what a printer is out, so that the print is at scale 1"
        ),
        "template_pages": [
            _page(each.file, number, tile, printing)
            for each in papers
            for number, tile in enumerate(each.tiles, start=1)
        ],
        "back_template_pages": [
            _page(each.file, number, tile, printing)
            for each in papers
            for number, tile in enumerate(each.back, start=1)
        ],
        "back_template_coordinates": (
            "as template_coordinates, of the board mirrored: a point of the front at (x, y) is at "
            "(left + right - x, y), left and right being those of the board"
        ),
        "holes_on_no_sheet": _holes_on_no_sheet(plan, papers),
        "files": [_file(each) for each in papers],
        "cautions": [MEASURE_BARS, BEFORE_DRILLING, cut_list.FOOTER, *cut_list.BEFORE, hole_schedule.FABRIC],
    }


def _holes_on_no_sheet(plan: Plan, papers: Sequence[_Paper]) -> list[str]:
    """Return the holes that lie past the paper round their board: nothing to drill, and never to be overlooked."""
    tiles = [tile for each in papers for tile in each.tiles]
    return [
        hole.id
        for hole in holes_of(plan)
        if not any(tile.board == hole.board and tile.rect.holds(hole.position) for tile in tiles)
    ]


def _page(file: str, number: int, tile: Tile, printing: Printing) -> dict[str, Any]:
    return {
        "file": file,
        "page": number,
        "page_size": [tile.page_width, tile.page_height],
        "board": tile.board,
        "tile": tile.name,
        "rect": list(tile.rect),
        "at": list(tile.at),
        "rotation": 0,
        "scale": 1.0,
        "drawn": list(page_factors(printing, tile)),
    }


def _file(each: _Paper) -> dict[str, Any]:
    return {"file": each.file, "sheets": len(each.sheets)} if each.sheets else {"file": each.file}
