"""Label stock file: assets/labels/*.toml, or a file of one's own, to label stock."""

from pathlib import Path
from typing import Annotated, Literal

from pydantic import Field

from boardplan.bundled import data_dir
from boardplan.files.faults import BadFile, Fault
from boardplan.files.record_types import Gap, Id, Record, Size, Text
from boardplan.files.toml_file import read_toml
from boardplan.model.label_stock import OVERLAP, LabelGrid, LabelStock, grid_faults

_Number = Annotated[int, Field(ge=1, le=100)]


class LabelGridRecord(Record):
    """A page of labels in mm: `size` and `pitch` are [across, down], `round` the side that goes round a cable."""

    page: Size
    columns: _Number
    rows: _Number
    size: Size
    left: Gap
    top: Gap
    pitch: Size
    round: Literal["height", "width"] = "height"
    cut: bool = False


class LabelStockRecord(Record):
    """A label stock file; plates are printed on the first grid for cables where nothing is said of them."""

    id: Id
    name: Text
    cables: Annotated[list[LabelGridRecord], Field(min_length=1, max_length=10)]
    plates: LabelGridRecord | None = None
    overlap: Annotated[float, Field(ge=0, le=100)] = OVERLAP


def bundled_label_stocks() -> dict[str, Path]:
    """Return the files of the label stock that comes with the program, by the stock's id."""
    return {path.stem: path for path in sorted((data_dir("assets") / "labels").glob("*.toml"))}


def read_label_stock(path: Path) -> LabelStock:
    """Return the label stock of a file. Raises BadFile."""
    record = read_toml(path, LabelStockRecord)
    cables = tuple(_grid(each) for each in record.cables)
    plates = _grid(record.plates) if record.plates else cables[0]
    named = [*((f"cables[{index}]", grid) for index, grid in enumerate(cables)), ("plates", plates)]
    faults = [Fault(place, words) for place, grid in named for words in grid_faults(grid)]
    if faults:
        raise BadFile(path, faults)
    return LabelStock(record.id, record.name, cables, plates, record.overlap)


def _grid(record: LabelGridRecord) -> LabelGrid:
    (page_width, page_height), (width, height), (across, down) = record.page, record.size, record.pitch
    return LabelGrid(
        page_width, page_height, record.columns, record.rows, width, height, record.left, record.top, across, down,
        record.round, record.cut,
    )  # fmt: skip
