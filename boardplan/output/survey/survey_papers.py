"""Survey papers: the re-measure list of a pack, to fill in on arrival and for a spreadsheet."""

from collections.abc import Iterator

from boardplan.output.making import Making, PackFile, csv_file
from boardplan.output.survey.doubtful import doubtful_things
from boardplan.output.survey.re_measure_list import FOOTER, re_measure_listing, re_measure_tables


def re_measure_papers(making: Making) -> Iterator[PackFile]:
    """Yield the files of the re-measure list."""
    found = doubtful_things(making.plan, making.review.lengths)
    sheets = making.listed("Re-measure list", re_measure_tables(making.plan, found), FOOTER, landscape=True)
    yield PackFile("re-measure-list.pdf", "Re-measure list", sheets)
    yield csv_file("re-measure-list.csv", re_measure_listing(found))
