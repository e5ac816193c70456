"""Material papers: the bill of materials for the supply counters, to read and for a spreadsheet."""

from collections.abc import Iterator

from boardplan.output.making import Making, PackFile, csv_file
from boardplan.output.materials.materials_list import FOOTER, material_listing, material_tables
from boardplan.output.parts.parts_list import parts_list


def material_papers(making: Making) -> Iterator[PackFile]:
    """Yield the files of the bill of materials; none where the rule set says nothing of loading."""
    parts = parts_list(making.review)
    if parts is not None:
        sheets = making.listed("Bill of materials", material_tables(parts), FOOTER, landscape=True)
        yield PackFile("bill-of-materials.pdf", "Bill of materials", sheets)
        yield csv_file("bill-of-materials.csv", material_listing(parts))
