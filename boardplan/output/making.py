"""Making: what every paper of a pack is made from, and the files that come of it."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, TypeVar

from boardplan.bundled import data_dir
from boardplan.checks.review import Review
from boardplan.drawing.board_picture import pictures_in_order
from boardplan.drawing.picture import Picture
from boardplan.model.label_stock import LabelStock
from boardplan.model.plan import Plan
from boardplan.output.printing.pages import Tile
from boardplan.output.printing.paper import Paper, list_paper
from boardplan.output.printing.pdf import Fonts
from boardplan.output.printing.printer_correction import Printing
from boardplan.output.printing.sheet import Sheet
from boardplan.output.tables.csv_table import csv_bytes
from boardplan.output.tables.list_sheets import ListPaper, list_sheets
from boardplan.output.tables.listing import Listing
from boardplan.output.tables.table import Table
from boardplan.output.verdict import open_counts

_T = TypeVar("_T")


@dataclass(frozen=True, slots=True)
class PackFile:
    """One file of a pack before it is written: sheets of a PDF, a listing, or whatever `data` returns.

    `tiles` are those of its sheets on a board, `back` those on a mirrored board. `heading` is what people call it.
    """

    name: str
    heading: str
    sheets: Sequence[Sheet] = ()
    listing: Listing | None = None
    data: Callable[[], bytes] | None = None
    tiles: Sequence[Tile] = ()
    back: Sequence[Tile] = ()

    @property
    def steps(self) -> int:
        """How much work it is to write, in sheets."""
        return max(1, len(self.sheets))


@dataclass(frozen=True)
class Making:
    """A review, the printer and paper of its templates, the stock of its labels where one is chosen.

    `beside` are the files of the other papers, for a paper that lists them. What is made once is made once for a
    making and those that differ from it in `beside` alone.
    """

    review: Review
    printing: Printing
    stock: LabelStock | None = None
    beside: tuple[PackFile, ...] = ()
    _made: dict[str, Any] = field(default_factory=dict, repr=False, compare=False)

    @property
    def plan(self) -> Plan:
        """The plan under review."""
        return self.review.plan

    @cached_property
    def fonts(self) -> Fonts:
        """What words are set in."""
        return Fonts(data_dir("assets") / "fonts")

    @cached_property
    def stops(self) -> int:
        """How many findings forbid to issue the papers."""
        return open_counts(self.review)["stop"]

    @property
    def office(self) -> Paper:
        """The paper of all lists."""
        return list_paper(self.printing.paper, self.plan.job.units)

    @property
    def lying(self) -> tuple[tuple[str, Picture], ...]:
        """All that lies on the wall as it is drawn, each by its id, the lowest first."""
        return self.once("what lies on the wall", lambda: tuple(pictures_in_order(self.plan, self.review.ways)))

    def once(self, key: str, make: Callable[[], _T]) -> _T:
        """Return what `make` returns, made once for all files that ask for it by the same key."""
        if key not in self._made:
            self._made[key] = make()
        made: _T = self._made[key]
        return made

    def listed(self, title: str, tables: Sequence[Table], footer: str, *, landscape: bool = False) -> Sequence[Sheet]:
        """Return the sheets of a list; `footer` is the caution on each of them."""
        return list_sheets(tables, self.frame(title, footer, landscape=landscape))

    def frame(self, title: str, footer: str, *, landscape: bool = False) -> ListPaper:
        """Return what the sheets of a paper have in common: title block, caution at the foot, size."""
        return ListPaper(self.plan, title, self.office, landscape, footer, self.stops, self.fonts.width)


def csv_file(name: str, listing: Listing) -> PackFile:
    """Return a listing as a file for spreadsheets."""
    return PackFile(name, listing.title, listing=listing, data=lambda: csv_bytes(listing.csv))
