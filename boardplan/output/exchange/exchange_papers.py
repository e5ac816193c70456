"""Exchange papers: what other programs read, a file for each board and sort, and a workbook of all lists."""

from collections.abc import Callable, Iterable, Iterator
from functools import partial

from boardplan.model.board import Board
from boardplan.output.exchange.board_drawing import board_drawing
from boardplan.output.exchange.board_snapshot import snapshot_bytes
from boardplan.output.exchange.dxf_file import dxf_bytes
from boardplan.output.exchange.svg_file import svg_bytes
from boardplan.output.exchange.workbook import workbook_bytes
from boardplan.output.making import Making, PackFile
from boardplan.output.tables.listing import Listing
from boardplan.output.template.template_papers import file_endings


def dxf_papers(making: Making) -> Iterator[PackFile]:
    """Yield the drawing of each board for machines."""
    return _each_board(making, "dxf", "for machines", lambda board: dxf_bytes(board_drawing(making, board)))


def svg_papers(making: Making) -> Iterator[PackFile]:
    """Yield the drawing of each board for browsers and drawing programs."""
    return _each_board(making, "svg", "as a drawing", lambda board: svg_bytes(board_drawing(making, board)))


def picture_papers(making: Making) -> Iterator[PackFile]:
    """Yield the picture of each board."""
    return _each_board(making, "png", "as a picture", lambda board: snapshot_bytes(making, board))


def _each_board(making: Making, ending: str, words: str, make: Callable[[Board], bytes]) -> Iterator[PackFile]:
    for board, name in file_endings(making.plan).items():
        data = partial(make, making.plan.boards[board])
        yield PackFile(f"board-{name}.{ending}", f"Board {board} {words}", data=data)


def workbook_file(making: Making, listings: Callable[[], Iterable[Listing]]) -> PackFile:
    """Return the workbook of some lists, which are asked for when it is written."""
    return PackFile("lists.xlsx", "All lists", data=lambda: workbook_bytes(making, tuple(listings())))
