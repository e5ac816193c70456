"""Cutting papers: from which reel, length or offcut everything is cut, to read and for a spreadsheet."""

from collections.abc import Iterator

from boardplan.output.cutting.cutting_sheet import FOOTER, cutting_listing, cutting_tables
from boardplan.output.making import Making, PackFile, csv_file


def cutting_papers(making: Making) -> Iterator[PackFile]:
    """Yield the files of the cutting plan."""
    plan, lengths = making.plan, making.review.lengths
    sheets = making.listed("Cutting plan", cutting_tables(plan, lengths), FOOTER)
    yield PackFile("cutting-plan.pdf", "Cutting plan", sheets)
    yield csv_file("cutting-plan.csv", cutting_listing(plan, lengths))
