"""Page images: the pages of a job's papers as pixels, each made when somebody looks at it, as it will be printed."""

from collections.abc import Sequence
from dataclasses import dataclass

from boardplan.output.making import Making, PackFile
from boardplan.output.papers import paper_files
from boardplan.output.printing.page_raster import Pixels, page_pixels
from boardplan.output.printing.pdf import pdf_of
from boardplan.output.printing.sheet import Sheet


@dataclass(frozen=True, slots=True)
class ShownPage:
    """A page of a paper: the file it is in, its number there from 1 and how many there are, its size in mm."""

    file: PackFile
    number: int
    count: int
    sheet: Sheet


class PageImages:
    """The pages of a making's papers; a paper is laid out once, and its pages drawn one by one."""

    def __init__(self, making: Making) -> None:
        self.making = making
        self._laid: dict[str, tuple[ShownPage, ...]] = {}
        self._files: dict[str, tuple[str, ...]] = {}

    def are_of(self, making: Making) -> bool:
        """Say whether these are the pages of a making: of the very same review, for the same printer and stock."""
        own = self.making
        return own.review is making.review and (own.printing, own.stock) == (making.printing, making.stock)

    def pages(self, paper: str) -> tuple[ShownPage, ...]:
        """Return all pages of a paper by its key, file after file; none where it comes as data alone."""
        self._lay_out(paper)
        return self._laid[paper]

    def file_names(self, paper: str) -> tuple[str, ...]:
        """Return the names of the files a paper comes as."""
        self._lay_out(paper)
        return self._files[paper]

    def _lay_out(self, paper: str) -> None:
        if paper not in self._laid:
            files = paper_files(self.making, paper)
            self._laid[paper] = tuple(page for each in files for page in _pages(each, each.sheets))
            self._files[paper] = tuple(each.name for each in files)

    def image(self, paper: str, index: int, dots_per_mm: float) -> Pixels:
        """Return a page of a paper as pixels, the first being 0, with so many dots to the millimetre."""
        page = self.pages(paper)[index]
        longest = max(1, round(max(page.sheet.width, page.sheet.height) * dots_per_mm))
        return page_pixels(pdf_of((page.sheet,), self.making.fonts, page.file.heading), 0, longest)


def _pages(file: PackFile, sheets: Sequence[Sheet]) -> list[ShownPage]:
    return [ShownPage(file, number, len(sheets), sheet) for number, sheet in enumerate(sheets, start=1)]
