"""Cover papers: the first sheet of the pack, which the customer is shown."""

from collections.abc import Iterator

from boardplan.output.cover.cover_sheet import cover_sheets
from boardplan.output.making import Making, PackFile


def cover_papers(making: Making) -> Iterator[PackFile]:
    """Yield the cover; `making.beside` are the files it lists."""
    yield PackFile("cover.pdf", "Cover", cover_sheets(making))
