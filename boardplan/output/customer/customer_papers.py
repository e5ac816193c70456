"""Customer papers: what a customer builds before the crew comes: battery trays, and blocking behind the boards."""

from collections.abc import Iterator

from boardplan.output.customer.blocking_sheet import blocking_pages
from boardplan.output.customer.tray_sheet import tray_pages
from boardplan.output.drawn.drawn_sheet import numbered
from boardplan.output.making import Making, PackFile


def customer_papers(making: Making) -> Iterator[PackFile]:
    """Yield the sheets for the customer, nothing where there is nothing for him to build."""
    pages = [page for tray in making.plan.trays for page in tray_pages(making, tray)]
    pages += [page for board in making.plan.boards.values() for page in blocking_pages(making, board)]
    if pages:
        yield PackFile("customer-sheets.pdf", "Sheets for the customer", numbered(pages))
