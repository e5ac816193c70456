"""Exchange papers: what other programs read, a file for each board and sort, and a workbook of all lists."""

from collections.abc import Callable, Iterable, Iterator

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
    for board, ending in _boards(making):
        data = lambda board=board: dxf_bytes(board_drawing(making, board))  # noqa: E731
        yield PackFile(f"board-{ending}.dxf", f"Board {board.id} for machines", data=data)


def svg_papers(making: Making) -> Iterator[PackFile]:
    """Yield the drawing of each board for browsers and drawing programs."""
    for board, ending in _boards(making):
        data = lambda board=board: svg_bytes(board_drawing(making, board))  # noqa: E731
        yield PackFile(f"board-{ending}.svg", f"Board {board.id} as a drawing", data=data)


def picture_papers(making: Making) -> Iterator[PackFile]:
    """Yield the picture of each board."""
    for board, ending in _boards(making):
        data = lambda board=board: snapshot_bytes(making, board)  # noqa: E731
        yield PackFile(f"board-{ending}.png", f"Picture of board {board.id}", data=data)


def workbook_file(making: Making, listings: Callable[[], Iterable[Listing]]) -> PackFile:
    """Return the workbook of some lists, which are asked for when it is written."""
    return PackFile("lists.xlsx", "All lists", data=lambda: workbook_bytes(making, tuple(listings())))


def _boards(making: Making) -> Iterator[tuple[Board, str]]:
    for board, ending in file_endings(making.plan).items():
        yield making.plan.boards[board], ending
