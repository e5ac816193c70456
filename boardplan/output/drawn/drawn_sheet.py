"""Drawn sheet: pages that hold a drawing and its words, and further pages for words that find no room beside it."""

from collections.abc import Sequence
from dataclasses import dataclass

from boardplan.geometry.point import Box
from boardplan.output.drawn.blocks import Block, columns_of, flow, split
from boardplan.output.printing.sheet import Part, Sheet
from boardplan.output.tables.list_sheets import ListPaper, sheet_footer, sheet_header

_COLUMN = 85.0


@dataclass(frozen=True, slots=True)
class DrawnPage:
    """A page before it has its number: what it has in common with the others of its paper, and its parts."""

    shared: ListPaper
    parts: tuple[Part, ...]


def pages_with_words(
    shared: ListPaper, drawing: Sequence[Part], blocks: Sequence[Block], columns: Sequence[Box]
) -> list[DrawnPage]:
    """Return the page of a drawing with its words in columns, and pages for the words that had no room there."""
    room, measure = shared.room, shared.measure
    picture, left = flow(blocks, columns, measure)
    pages = [DrawnPage(shared, (*drawing, Part(picture)))]
    full = columns_of(room, max(1, int(room.width // _COLUMN)))
    pieces = [piece for block in left for piece in split(block, full[0].width, room.height, measure)]
    while pieces:
        picture, left = flow(pieces, full, measure)
        if len(left) == len(pieces):
            raise ValueError(f"{pieces[0].title}: a single row is higher than the page")
        pages.append(DrawnPage(shared, (Part(picture),)))
        pieces = list(left)
    return pages


def numbered(pages: Sequence[DrawnPage]) -> tuple[Sheet, ...]:
    """Return pages as the sheets of one paper, each with its title block and its number."""
    return tuple(
        Sheet(
            f"{page.shared.title} {number}",
            *page.shared.size,
            (*page.parts, Part((*sheet_header(page.shared), *sheet_footer(page.shared, number, len(pages))))),
        )
        for number, page in enumerate(pages, start=1)
    )
