"""Hand-over papers: fuse schedule, torque list and test record, to read, to fill in and for a spreadsheet."""

from collections.abc import Iterator

from boardplan.output.hand_over.closing_tables import closing_tables
from boardplan.output.hand_over.fuse_rows import fuse_rows
from boardplan.output.hand_over.fuse_schedule import FOOTER as FUSES_FOOTER
from boardplan.output.hand_over.fuse_schedule import fuse_listing, fuse_tables
from boardplan.output.hand_over.record_listing import record_listing
from boardplan.output.hand_over.record_tables import record_tables
from boardplan.output.hand_over.torque_list import FOOTER as TORQUE_FOOTER
from boardplan.output.hand_over.torque_list import torque_listing, torque_rows, torque_tables
from boardplan.output.making import Making, PackFile, csv_file

_RECORD_FOOTER = (
    "Written by hand: no value on this sheet comes from the program. AC work only by a licensed person. PV conductors "
    "are live in daylight; capacitors hold charge: wait, measure."
)


def fuse_papers(making: Making) -> Iterator[PackFile]:
    """Yield the files of the fuse schedule."""
    plan, review = making.plan, making.review
    rows = fuse_rows(plan, review.lengths, review.ways)
    sheets = making.listed("Fuse schedule", fuse_tables(plan, rows), FUSES_FOOTER, landscape=True)
    yield PackFile("fuse-schedule.pdf", "Fuse schedule", sheets)
    yield csv_file("fuse-schedule.csv", fuse_listing(plan, rows))


def torque_papers(making: Making) -> Iterator[PackFile]:
    """Yield the files of the torque list."""
    rows = torque_rows(making.plan)
    sheets = making.listed("Torque list", torque_tables(making.plan, rows), TORQUE_FOOTER, landscape=True)
    yield PackFile("torque-list.pdf", "Torque list", sheets)
    yield csv_file("torque-list.csv", torque_listing(rows))


def record_papers(making: Making) -> Iterator[PackFile]:
    """Yield the files of the test record."""
    tables = (*record_tables(making.plan), *closing_tables(making.review))
    yield PackFile("test-record.pdf", "Test record", making.listed("Test record", tables, _RECORD_FOOTER))
    yield csv_file("test-record.csv", record_listing(making.plan))
