"""Back sheet: the pages of a board's back template, made so that none can be taken for one of the front."""

from collections.abc import Iterator
from dataclasses import replace

from boardplan.checks.review import Review
from boardplan.drawing.picture import placed_picture
from boardplan.geometry.placement import Placement
from boardplan.model.board import Board
from boardplan.output.back.back_heading import BACK_WORDS, across, border
from boardplan.output.back.back_template import back_template_of
from boardplan.output.back.back_view import back_holes, board_from_behind
from boardplan.output.printing.lettering import Measure
from boardplan.output.printing.printer_correction import Printing
from boardplan.output.printing.printer_tiles import page_factors, tiles_for
from boardplan.output.printing.sheet import Part, Sheet
from boardplan.output.template.template_set import Face, TemplateSet
from boardplan.output.template.tile_sheet import tile_sheets
from boardplan.output.verdict import open_counts

BACK = Face(
    BACK_WORDS,
    f"template of the {BACK_WORDS}",
    "Faint crosses fall on through holes. Counterbore only as the sheet of the nut says.",
)


def back_set_of(review: Review, board: Board, printing: Printing, measure: Measure) -> TemplateSet | None:
    """Return what the sheets of a board's back have in common, none where no hole is worked from the back."""
    plan = review.plan
    holes = back_holes(plan, board)
    if not holes:
        return None
    tiles = tiles_for(board_from_behind(board), printing, holes)
    template = back_template_of(plan, board, tiles, measure)
    return TemplateSet(plan.job, template, tiles, printing, open_counts(review)["stop"], measure, BACK)


def back_sheets(shared: TemplateSet) -> Iterator[Sheet]:
    """Yield the page of each tile with its frame and the words across it, below all that is drawn."""
    for tile, sheet in zip(shared.tiles, tile_sheets(shared), strict=True):
        shift = Placement(0, tile.to_page((0, 0)))
        ground = placed_picture((*across(tile.rect, shared.measure), *border(tile.rect)), shift)
        part = Part(ground, tile.on_page, page_factors(shared.printing, tile), tile.at)
        yield replace(sheet, name=f"{sheet.name} back", parts=(part, *sheet.parts))
