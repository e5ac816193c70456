"""Listing: a list as plain values, for CSV and spreadsheets alike; each head names its unit."""

from collections.abc import Sequence
from dataclasses import dataclass

from boardplan.output.tables.csv_table import Value, csv_text


@dataclass(frozen=True, slots=True)
class Listing:
    """A list by its title, which is short enough for a spreadsheet's tab, with one row each."""

    title: str
    heads: Sequence[str]
    rows: Sequence[Sequence[Value]]

    @property
    def csv(self) -> str:
        """The list as CSV."""
        return csv_text(self.heads, self.rows)
