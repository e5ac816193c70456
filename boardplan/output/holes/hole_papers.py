"""Hole papers: the hole schedule of a pack, to read and for a spreadsheet."""

from collections.abc import Iterator

from boardplan.output.holes.hole_schedule import FOOTER, hole_listing, hole_tables
from boardplan.output.making import Making, PackFile, csv_file


def hole_papers(making: Making) -> Iterator[PackFile]:
    """Yield the files of the hole schedule."""
    plan, clamps = making.plan, making.review.clamps
    sheets = making.listed("Hole schedule", hole_tables(plan, clamps), FOOTER)
    yield PackFile("hole-schedule.pdf", "Hole schedule", sheets)
    yield csv_file("hole-schedule.csv", hole_listing(plan, clamps))
