"""Findings papers: every finding on paper, those that somebody accepted too."""

from collections.abc import Iterator

from boardplan.output.findings.findings_list import FOOTER, findings_tables
from boardplan.output.making import Making, PackFile


def findings_papers(making: Making) -> Iterator[PackFile]:
    """Yield the sheet of findings."""
    yield PackFile("findings.pdf", "Findings", making.listed("Findings", findings_tables(making.review), FOOTER))
