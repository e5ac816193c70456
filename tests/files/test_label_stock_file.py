"""Label stock from files: what comes with the program lies on its page; a slip of the pen is named."""

import pytest

from boardplan.files.faults import BadFile
from boardplan.files.label_stock_file import bundled_label_stocks, read_label_stock
from boardplan.model.label_stock import OVERLAP, LabelGrid

SHEET = """
id = "mine"
name = "My sheet"
[[cables]]
page = [210, 297]
columns = 3
rows = 8
size = [70, 37]
left = 0
top = 0.5
pitch = [70, 37]
"""


def read(tmp_path, text):
    path = tmp_path / "mine.toml"
    path.write_text(text, encoding="utf-8")
    return read_label_stock(path)


def test_what_comes_with_the_program_can_be_read_and_is_named_by_its_id():
    stocks = bundled_label_stocks()
    assert stocks
    assert [read_label_stock(path).id for path in stocks.values()] == list(stocks)


def test_a_sheet_by_its_measures(tmp_path):
    stock = read(tmp_path, SHEET)
    grid = LabelGrid(210, 297, 3, 8, 70, 37, 0, 0.5, 70, 37)
    assert (stock.cables, stock.plates, stock.overlap) == ((grid,), grid, OVERLAP)
    assert (grid.wrap, grid.along) == (37, 70)
    turned = read(tmp_path, SHEET + 'round = "width"\n').cables[0]
    assert (turned.wrap, turned.along) == (70, 37)


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ("columns = 3", "columns = 4", "4 columns reach 280 mm"),
        ("pitch = [70, 37]", "pitch = [70, 30]", "rows 30 mm apart overlap"),
        ("size = [70, 37]", "size = [70, 8]", "three lines of words"),
        ("rows = 8", "rows = 0", "rows"),
        ("rows = 8", "lines = 8", "rows"),
        ("[[cables]]", "[[cables", "expected TOML"),
    ],
)
def test_a_slip_of_the_pen_is_named(tmp_path, old, new, words):
    with pytest.raises(BadFile) as bad:
        read(tmp_path, SHEET.replace(old, new))
    assert any(words in str(fault) for fault in bad.value.faults)
