"""Pack contents: what `pack.json` says of a pack: the job, its findings, each file, and where each template lies."""

from collections.abc import Iterator, Sequence
from typing import Any

from boardplan.model.holes import holes_of
from boardplan.model.plan import Plan
from boardplan.output.cables import cut_list
from boardplan.output.cover.cover_records import cover_records
from boardplan.output.customer.customer_records import customer_records
from boardplan.output.findings.finding_records import finding_records
from boardplan.output.holes import hole_schedule
from boardplan.output.labels.label_list import label_records
from boardplan.output.labels.label_papers import labels_of
from boardplan.output.load_out.load_out_list import load_out_records
from boardplan.output.making import Making, PackFile
from boardplan.output.materials.materials_list import material_records
from boardplan.output.parts.parts_list import parts_list
from boardplan.output.printing.pages import Tile
from boardplan.output.printing.printer_correction import Printing, printing_record
from boardplan.output.printing.printer_tiles import page_factors
from boardplan.output.template.tile_sheet import BEFORE_DRILLING, MEASURE_BARS
from boardplan.output.verdict import open_counts, stop_words, verdict_words

FORMAT = "boardplan-pack"


def pack_contents(making: Making, files: Sequence[PackFile]) -> dict[str, Any]:
    """Return all that `pack.json` says."""
    parts = parts_list(making.review)
    return {
        "format": FORMAT,
        "version": 1,
        **_job(making),
        **_printing(making),
        **_templates(making, files),
        "files": [_file(each) for each in files],
        "cautions": [MEASURE_BARS, BEFORE_DRILLING, cut_list.FOOTER, *cut_list.BEFORE, hole_schedule.FABRIC],
        "labels": label_records(labels_of(making)),
        **load_out_records(parts),
        **material_records(parts),
        "cover": cover_records(making.review),
        **customer_records(making.plan),
    }


def _job(making: Making) -> dict[str, Any]:
    plan, counts = making.plan, open_counts(making.review)
    job = plan.job
    return {
        "job": {
            "title": job.title,
            "number": job.number,
            "revision": job.revision,
            "date": job.date,
            "units": job.units,
        },
        "rule_set": {"id": plan.rules.id, "edition": plan.rules.edition},
        "findings": {
            "words": verdict_words(making.review),
            "open": counts,
            "list": finding_records(making.review)["findings"],
        },
        "issue": stop_words(counts["stop"]) if counts["stop"] else "no finding stops these papers",
        "may_be_issued": not counts["stop"],
    }


def _printing(making: Making) -> dict[str, Any]:
    printing, plan = making.printing, making.plan
    paper = printing.paper
    return {
        "ready_to_drill": printing.ready and not making.stops,
        "printing": printing_record(printing, tuple(plan.boards.values()), plan.job.units),
        "paper": {"id": paper.id, "name": paper.name, "width_mm": paper.width, "height_mm": paper.height},
    }


def _templates(making: Making, files: Sequence[PackFile]) -> dict[str, Any]:
    return {
        "template_coordinates": (
            "mm; a point of the board at (x, y) from its lower left lies on the page, from the page's lower left, "
            "at (at[0] + (x - rect[0]) * drawn[0], at[1] + (y - rect[1]) * drawn[1]); nothing is turned; drawn is 1 "
            "but where it makes up for what a printer is out, so that the print is at scale 1"
        ),
        "template_pages": [page for each in files for page in _pages(each.name, each.tiles, making.printing)],
        "back_template_pages": [page for each in files for page in _pages(each.name, each.back, making.printing)],
        "back_template_coordinates": (
            "as template_coordinates, of the board mirrored: a point of the front at (x, y) is at "
            "(left + right - x, y), left and right being those of the board"
        ),
        "holes_on_no_sheet": _holes_on_no_sheet(making.plan, files),
    }


def _holes_on_no_sheet(plan: Plan, files: Sequence[PackFile]) -> list[str]:
    """Return the holes that lie past the paper round their board: nothing to drill, and never to be overlooked."""
    tiles = [tile for each in files for tile in each.tiles]
    return [
        hole.id
        for hole in holes_of(plan)
        if tiles and not any(tile.board == hole.board and tile.rect.holds(hole.position) for tile in tiles)
    ]


def _pages(file: str, tiles: Sequence[Tile], printing: Printing) -> Iterator[dict[str, Any]]:
    for number, tile in enumerate(tiles, start=1):
        yield {
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


def _file(each: PackFile) -> dict[str, Any]:
    heading = {"file": each.name, "heading": each.heading}
    return {**heading, "sheets": len(each.sheets)} if each.sheets else heading
