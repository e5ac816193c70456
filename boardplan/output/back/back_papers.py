"""Back papers: the mirrored template of each board that has holes worked from the back."""

from collections.abc import Iterator

from boardplan.output.back.back_sheet import back_set_of, back_sheets
from boardplan.output.making import Making, PackFile
from boardplan.output.template.template_papers import file_endings


def back_papers(making: Making) -> Iterator[PackFile]:
    """Yield the back template of each board that needs one."""
    for board, ending in file_endings(making.plan).items():
        shared = back_set_of(making.review, making.plan.boards[board], making.printing, making.fonts.width)
        if shared:
            heading = f"Back template, mirrored, board {board}"
            yield PackFile(f"back-template-{ending}.pdf", heading, tuple(back_sheets(shared)), back=shared.tiles)
