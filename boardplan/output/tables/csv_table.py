"""CSV table: rows for a spreadsheet, a unit in every head, nothing that a spreadsheet would run."""

import csv
import io
from collections.abc import Iterable, Sequence

_STARTS_A_FORMULA = ("=", "+", "-", "@", "\t", "\r")
Value = str | float | int | None


def csv_text(heads: Sequence[str], rows: Iterable[Sequence[Value]]) -> str:
    """Return heads and rows as CSV (RFC 4180), numbers as they are, none as an empty cell."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(heads)
    writer.writerows([_plain(value) for value in row] for row in rows)
    return out.getvalue()


def csv_bytes(text: str) -> bytes:
    """Return CSV as a file holds it: UTF-8 with the mark that tells spreadsheets so."""
    return text.encode("utf-8-sig")


def _plain(value: Value) -> str:
    """Return a cell; words that a spreadsheet would take for a formula get an apostrophe before them."""
    if value is None:
        return ""
    if isinstance(value, str):
        return f"'{value}" if value.startswith(_STARTS_A_FORMULA) else value
    return f"{value:.6f}".rstrip("0").rstrip(".") if isinstance(value, float) else str(value)
