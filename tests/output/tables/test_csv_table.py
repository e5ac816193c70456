"""CSV that a spreadsheet opens as it is meant."""

import csv
import io

import pytest

from boardplan.output.tables.csv_table import csv_bytes, csv_text


@pytest.mark.parametrize("words", ["=1+1", "+5", "-cable", "@sum", "\tx"])
def test_nothing_is_taken_for_a_formula(words):
    """What starts with = + - @ is run by spreadsheets (OWASP, CSV injection)."""
    assert csv_text(["a"], [[words]]).splitlines()[1].strip('"') == f"'{words}"


def test_numbers_stay_numbers():
    assert csv_text(["a_mm", "b", "c", "d"], [[-138.0, 56, None, 1288.2500001]]).splitlines()[1] == "-138,56,,1288.25"


def test_large_numbers_keep_their_digits():
    assert csv_text(["a_mm"], [[123456.789]]).splitlines()[1] == "123456.789"


def test_words_with_commas_and_quotes_come_back():
    text = csv_text(["a"], [['say "hi", twice']])
    assert list(csv.reader(io.StringIO(text)))[1] == ['say "hi", twice']


def test_files_tell_that_they_are_utf_8():
    assert csv_bytes("Ø").startswith(b"\xef\xbb\xbf")
