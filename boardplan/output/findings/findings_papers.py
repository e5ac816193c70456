"""Findings papers: every finding on paper, those that somebody accepted too."""

from collections.abc import Iterator

from boardplan.output.findings.findings_list import FOOTER, findings_listing, findings_tables
from boardplan.output.making import Making, PackFile, csv_file


def findings_papers(making: Making) -> Iterator[PackFile]:
    """Yield the findings, to read and for a spreadsheet."""
    yield PackFile("findings.pdf", "Findings", making.listed("Findings", findings_tables(making.review), FOOTER))
    yield csv_file("findings.csv", findings_listing(making.review))
