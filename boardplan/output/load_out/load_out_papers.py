"""Load-out papers: the list of what goes along, to read and for a spreadsheet."""

from collections.abc import Iterator

from boardplan.output.load_out.load_out_list import FOOTER, load_out_listing, load_out_tables
from boardplan.output.making import Making, PackFile, csv_file
from boardplan.output.parts.parts_list import parts_list


def load_out_papers(making: Making) -> Iterator[PackFile]:
    """Yield the files of the load-out list; none where the rule set says nothing of loading."""
    parts = parts_list(making.review)
    if parts is not None:
        yield PackFile(
            "load-out-list.pdf", "Load-out list", making.listed("Load-out list", load_out_tables(parts), FOOTER)
        )
        yield csv_file("load-out-list.csv", load_out_listing(parts))
