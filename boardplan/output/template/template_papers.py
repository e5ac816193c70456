"""Template papers: the drilling template of each board, in a file of its own."""

from collections.abc import Iterator

from boardplan.model.board import Board
from boardplan.model.holes import holes_of
from boardplan.model.plan import Plan
from boardplan.output.making import Making, PackFile
from boardplan.output.printing.printer_tiles import tiles_for
from boardplan.output.template.template import template_of
from boardplan.output.template.template_set import TemplateSet
from boardplan.output.template.tile_sheet import tile_sheets


def template_papers(making: Making) -> Iterator[PackFile]:
    """Yield the template of each board."""
    for board, ending in file_endings(making.plan).items():
        yield _template(making, making.plan.boards[board], f"drilling-template-{ending}.pdf")


def file_endings(plan: Plan) -> dict[str, str]:
    """Return what the files of each board end with: its id, with only letters and digits any disk can hold."""
    endings: dict[str, str] = {}
    for board in plan.boards:
        plain = "".join(each if each.isascii() and (each.isalnum() or each in "-_") else "_" for each in board)
        ending, number = plain, 2
        while ending.lower() in {each.lower() for each in endings.values()}:
            ending, number = f"{plain}-{number}", number + 1
        endings[board] = ending
    return endings


def _template(making: Making, board: Board, file: str) -> PackFile:
    plan, width = making.plan, making.fonts.width
    tiles = tiles_for(board, making.printing, [hole for hole in holes_of(plan) if hole.board == board.id])
    template = template_of(plan, making.review, board, tiles, width)
    shared = TemplateSet(plan.job, template, tiles, making.printing, making.stops, width)
    return PackFile(file, f"Drilling template, board {board.id}", tuple(tile_sheets(shared)), tiles=tiles)
