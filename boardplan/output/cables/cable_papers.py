"""Cable papers: the cable cut list of a pack, to read and for a spreadsheet."""

from collections.abc import Iterator

from boardplan.output.cables.cut_list import FOOTER, cut_listing, cut_tables
from boardplan.output.cables.stud_stacks import stack_listings, stack_tables
from boardplan.output.making import Making, PackFile, csv_file


def cable_papers(making: Making) -> Iterator[PackFile]:
    """Yield the files of the cable cut list, with the stacks on studs and the link bars."""
    plan, review = making.plan, making.review
    tables = cut_tables(plan, review.lengths, review.clamps, review.retainers)
    sheets = making.listed("Cable cut list", (*tables, *stack_tables(plan, review.lengths)), FOOTER, landscape=True)
    yield PackFile("cable-cut-list.pdf", "Cable cut list", sheets)
    yield csv_file("cable-cut-list.csv", cut_listing(plan, review.lengths, review.clamps))
    for listing in stack_listings(plan, review.lengths):
        yield csv_file(f"{listing.title.lower().replace(' ', '-')}.csv", listing)
