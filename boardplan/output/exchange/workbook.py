"""Workbook: every list of a job as a sheet of its own; the only place that knows the library for spreadsheets.

The library is imported within functions, since a command that writes no workbook need not wait for it. It brings no
types, so its things are Any here.
"""

import io
from collections.abc import Iterator, Sequence
from datetime import UTC, datetime
from typing import Any

from boardplan.model.job import Job
from boardplan.output.making import Making
from boardplan.output.tables.csv_table import Value
from boardplan.output.tables.listing import Listing
from boardplan.output.verdict import stop_words, verdict_words

_LONGEST_NAME = 31
"""Letters that the name of a sheet may have, and those that none may have: Office Open XML, as spreadsheets read it."""
_NOT_IN_A_NAME = str.maketrans(dict.fromkeys("[]:*?/\\'", " "))
_LONGEST_TEXT = 32_767
"""Letters that a cell may have."""
_NARROW, _WIDE = 7, 46
"""Widths of columns in letters."""
_EXACT = 1e-7
_PLACES = 6
_SIZES = {"letter": 1, "a4": 9}
"""Numbers of paper sizes: ECMA-376, part 1, 18.3.1.63."""
_NO_DATE = "2000-01-01"
"""A file says when it was made; without a date of the job it says this, so that the same job gives the same bytes."""


def workbook_bytes(making: Making, listings: Sequence[Listing]) -> bytes:
    """Return lists as a workbook, a sheet about the job before them; the same lists give the same bytes."""
    import xlsxwriter  # type: ignore[import-untyped]  # noqa: PLC0415

    out = io.BytesIO()
    book = xlsxwriter.Workbook(out, {"in_memory": True, "strings_to_formulas": False, "strings_to_urls": False})
    job = making.plan.job
    book.set_properties({"title": job.title, "author": "boardplan", "created": _made_on(job)})
    looks = _Looks(book)
    every = (job_listing(making), *listings)
    for listing, name in zip(every, sheet_names(every), strict=True):
        sheet = book.add_worksheet(name)
        _fill(sheet, listing, looks)
        _set_up(sheet, listing, making)
    book.close()
    return out.getvalue()


def _made_on(job: Job) -> datetime:
    return datetime.fromisoformat(job.date or _NO_DATE).replace(tzinfo=UTC)


def job_listing(making: Making) -> Listing:
    """Return what stands at the head of every paper as a list of its own."""
    job = making.plan.job
    rules = making.plan.rules
    rows = (
        ("job", job.title),
        ("number", job.number),
        ("revision", job.revision),
        ("date", job.date),
        ("rule set", f"{rules.id}, edition {rules.edition}"),
        ("findings", verdict_words(making.review)),
        ("issue", stop_words(making.stops) if making.stops else "no finding stops these papers"),
        ("lengths", "millimetres unless a head says otherwise"),
    )
    return Listing("Job", ("what", "words"), rows)


def sheet_names(listings: Sequence[Listing]) -> tuple[str, ...]:
    """Return a name for each list that a spreadsheet takes, no two alike.

    >>> sheet_names([Listing("Holes: 1/2", (), ()), Listing("holes  1 2", (), ())])
    ('Holes 1 2', 'holes 1 2 2')
    """
    names: list[str] = []
    for listing in listings:
        plain = " ".join(listing.title.translate(_NOT_IN_A_NAME).split()) or "List"
        name, number = plain[:_LONGEST_NAME].strip(), 2
        while name.lower() in {each.lower() for each in names}:
            end = f" {number}"
            name, number = f"{plain[: _LONGEST_NAME - len(end)].strip()}{end}", number + 1
        names.append(name)
    return tuple(names)


class _Looks:
    """How cells look, each look made once."""

    def __init__(self, book: Any) -> None:  # noqa: ANN401 - the library has no types
        top = {"valign": "top"}
        self.head = book.add_format({"bold": True, "text_wrap": True, "bottom": 1, "valign": "bottom"})
        self.text = book.add_format({**top, "text_wrap": True})
        self.whole = book.add_format(top)
        self.places = [book.add_format({**top, "num_format": each}) for each in ("0", "0.0", "0.00", "0.000")]


def _fill(sheet: Any, listing: Listing, looks: _Looks) -> None:  # noqa: ANN401
    """Write heads and rows: numbers as numbers, words as words whatever they begin with."""
    sheet.write_row(0, 0, listing.heads, looks.head)
    for column, values in enumerate(_columns(listing)):
        look = looks.places[_decimals(values)]
        for row, value in enumerate(values, start=1):
            if value is None or value == "":
                continue
            if isinstance(value, str):
                sheet.write_string(row, column, value[:_LONGEST_TEXT], looks.text)
            else:
                sheet.write_number(row, column, round(value, _PLACES), look)
        sheet.set_column(column, column, _width(listing.heads[column], values))


def _columns(listing: Listing) -> Iterator[tuple[Value, ...]]:
    for column in range(len(listing.heads)):
        yield tuple(row[column] for row in listing.rows)


def _decimals(values: Sequence[Value]) -> int:
    """Return how many decimals a column shows, three at most; its numbers are exact beyond them."""
    numbers = [value for value in values if isinstance(value, float)]
    return next((places for places in range(3) if all(abs(round(n, places) - n) < _EXACT for n in numbers)), 3)


def _width(head: str, values: Sequence[Value]) -> float:
    longest = max((len(line) for value in values for line in _shown(value)), default=0)
    return min(max(_NARROW, longest + 2, len(head) + 4), _WIDE)


def _shown(value: Value) -> list[str]:
    if value is None:
        return []
    return value.split("\n") if isinstance(value, str) else [f"{value:.3f}".rstrip("0")]


def _set_up(sheet: Any, listing: Listing, making: Making) -> None:  # noqa: ANN401
    """Keep heads in sight, let columns be sorted through, and print on wide pages that each have the heads."""
    job = making.plan.job
    sheet.freeze_panes(1, 1)
    sheet.autofilter(0, 0, max(1, len(listing.rows)), len(listing.heads) - 1)
    sheet.set_landscape()
    sheet.set_paper(_SIZES.get(making.office.id, _SIZES["a4"]))
    sheet.set_margins(left=0.5, right=0.5, top=0.8, bottom=0.7)
    sheet.repeat_rows(0)
    sheet.fit_to_pages(1, 0)
    about = _in_margin(f"{job.number} {job.title}"), _in_margin(f"revision {job.revision}  {job.date}")
    sheet.set_header(f"&L{about[0]}&C{_in_margin(listing.title)}&R{about[1]}")
    stops = stop_words(making.stops) if making.stops else ""
    sheet.set_footer(f"&L{stops}&RPage &P of &N")


def _in_margin(words: str) -> str:
    """Return words as they stand in the margin of a page, where & begins a code; 255 letters are the most for all."""
    return " ".join(words.split())[:70].replace("&", "&&")
