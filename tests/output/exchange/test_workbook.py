"""The workbook read back by another library: a sheet for each list, its rows those of the CSV, numbers as numbers.

Limits of a sheet's name and of a cell: ECMA-376, part 1, and what spreadsheets take.
"""

import csv
import io

import openpyxl
import pytest
from output.exchange.drilled_boards import NAMES

from boardplan.output.exchange.workbook import sheet_names, workbook_bytes
from boardplan.output.making import Making
from boardplan.output.papers import ALL_PAPERS, files_of, listings_of
from boardplan.output.printing.pages import PAPERS
from boardplan.output.printing.printer_correction import Printing
from boardplan.output.tables.listing import Listing


def book(making, listings=None):
    if listings is None:
        (file,) = files_of(making, ["workbook"])
        data = file.data()
    else:
        data = workbook_bytes(making, listings)
    return openpyxl.load_workbook(io.BytesIO(data))


def as_csv(value):
    """A cell as a CSV of the same list has it, words that look like formulas without their apostrophe."""
    if value is None:
        return ""
    return value if isinstance(value, str) else f"{value:.6f}".rstrip("0").rstrip(".")


def without_guard(text):
    return text[1:] if text.startswith("'") and text[1:2] in tuple("=+-@\t\r") else text


@pytest.mark.parametrize("name", NAMES)
def test_rows_are_those_of_the_csv(name, made):
    making = made(name).making
    sheets = book(making)
    listings = tuple(listings_of(making))
    assert sheets.sheetnames == ["Job", *(each.title for each in listings)]
    for listing in listings:
        rows = list(sheets[listing.title].iter_rows(values_only=True))
        expected = list(csv.reader(io.StringIO(listing.csv)))
        assert len(rows) == len(expected)
        for row, wanted in zip(rows, expected, strict=True):
            assert [as_csv(value) for value in row] == [without_guard(value) for value in wanted]


def test_every_csv_of_a_pack_has_its_sheet(made):
    making = made("lookout cabin").making
    lists = [file for file in files_of(making) if file.listing]
    assert len(lists) >= 5
    assert all(file.name.endswith(".csv") for file in lists)
    assert {file.listing.title for file in lists} < set(book(making).sheetnames)


def test_papers_that_only_draw_have_no_list(made):
    making = made("lookout cabin").making
    for paper in ALL_PAPERS:
        if paper.only_draws:
            assert not any(file.listing for file in paper.files(making)), paper.key


def test_heads_stay_in_sight_and_can_be_filtered_and_print_wide(made):
    for sheet in book(made("library bus").making):
        assert sheet.freeze_panes == "B2"
        assert sheet.auto_filter.ref.startswith("A1:")
        assert sheet.page_setup.orientation == "landscape"
        assert sheet.page_setup.paperSize == 9
        assert sheet.print_title_rows == "$1:$1"
        assert sheet.sheet_properties.pageSetUpPr.fitToPage
        assert sheet.page_setup.fitToWidth in {None, 1}  # one page wide is what a file means that says nothing
        assert sheet.page_setup.fitToHeight == 0  # as many as it takes
        assert all(7 <= each.width <= 48 for each in sheet.column_dimensions.values())


def test_it_prints_on_the_paper_of_the_other_lists(made):
    making = Making(made("lookout cabin").making.review, Printing(PAPERS["letter"]))
    assert {sheet.page_setup.paperSize for sheet in book(making)} == {1}


def test_words_never_run_and_numbers_are_numbers(made):
    words = ["=1+1", "+1", "-1", "@SUM(A1)", "https://example.org", "007", "x" * 40_000, "a\nb", ""]
    listing = Listing("Odd", ("text", "number"), [(text, value) for text, value in zip(words, range(9), strict=True)])
    sheet = book(made("library bus").making, [listing])["Odd"]
    for row, text in enumerate(words, start=2):
        cell = sheet.cell(row, 1)
        assert cell.value == (text[:32_767] or None)
        assert cell.data_type == ("s" if text else "n")
        assert cell.hyperlink is None
        assert sheet.cell(row, 2).value == row - 2
        assert sheet.cell(row, 2).data_type == "n"


def test_an_empty_list_is_a_sheet_with_heads(made):
    sheet = book(made("library bus").making, [Listing("Nothing", ("a", "b"), ())])["Nothing"]
    assert [list(row) for row in sheet.iter_rows(values_only=True)] == [["a", "b"]]


def test_names_of_sheets_are_short_plain_and_no_two_alike():
    titles = ["Holes", "HOLES", "a/b:c*d?e[f]g\\h'i", "", "x" * 40, "x" * 35]
    names = sheet_names([Listing(title, ("a",), ()) for title in titles])
    assert names == ("Holes", "HOLES 2", "a b c d e f g h i", "List", "x" * 31, "x" * 29 + " 2")


def test_the_same_lists_give_the_same_bytes_dated_as_the_job(made):
    making = made("library bus").making
    listings = tuple(listings_of(making))
    assert workbook_bytes(making, listings) == workbook_bytes(making, listings)
    created = book(making, listings).properties.created
    assert created.date().isoformat() == making.plan.job.date
