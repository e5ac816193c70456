"""Load-out file: assets/load_out/*.toml, what a shop packs, named by the editions of rule sets."""

from pathlib import Path
from typing import Annotated

from pydantic import Field

from boardplan.bundled import data_dir
from boardplan.files.record_types import Gap, Id, Positive, Record, Text
from boardplan.files.toml_file import read_toml
from boardplan.model.load_out import (
    BoxRule,
    Condition,
    Counter,
    LiftRule,
    LoadOut,
    PartCategory,
    SpareRule,
    SpareSort,
    StandingLine,
)

_Source = Annotated[str, Field(min_length=3, max_length=2000)]
_Words = Annotated[str, Field(min_length=1, max_length=200)]


class SpareRecord(Record):
    """Spare parts of one sort: a share in %, and no less than so many."""

    share: Annotated[float, Field(ge=0, le=500)] = 0.0
    least: Gap = 0.0
    source: _Source


class LiftRecord(Record):
    """What people lift, in kg."""

    one: Positive
    together: Annotated[float, Field(gt=0, le=1)]
    source: _Source


class BoxRecord(Record):
    """A box and the categories in it."""

    name: _Words
    categories: Annotated[list[PartCategory], Field(min_length=1)]
    loose: bool = False
    van: bool = True


class LineRecord(Record):
    """A thing that goes along on every job, or on a condition; a quantity of 0 is for a person to say."""

    words: _Words
    quantity: Gap = 1.0
    unit: Text = "pcs"
    when: Condition = ""
    counter: Counter = ""
    hazard: Text = ""
    note: Text = ""
    question: Text = ""
    fragile: bool = False


class LoadOutRecord(Record):
    """A load-out file."""

    id: Id
    name: Text
    heaviest_box: Positive
    pad_margin: Gap
    small_terminal: Positive
    small_bit: Positive
    lift: LiftRecord
    spares: dict[SpareSort, SpareRecord]
    counters: dict[PartCategory, Counter]
    standards: dict[PartCategory, Text]
    hazards: dict[str, Text]
    before_leaving: list[_Words]
    box: Annotated[list[BoxRecord], Field(min_length=1)]
    lines: dict[PartCategory, list[LineRecord]]


def bundled_load_out(name: str) -> LoadOut:
    """Return a load-out table that comes with the program, by its name. Raises BadFile."""
    return read_load_out(data_dir("assets") / "load_out" / f"{name}.toml")


def read_load_out(path: Path) -> LoadOut:
    """Return the load-out table of a file. Raises BadFile."""
    record = read_toml(path, LoadOutRecord)
    return LoadOut(
        id=record.id,
        name=record.name,
        heaviest_box=record.heaviest_box,
        pad_margin=record.pad_margin,
        small_terminal=record.small_terminal,
        small_bit=record.small_bit,
        lift=LiftRule(record.lift.one, record.lift.together, record.lift.source),
        spares={sort: SpareRule(each.share, each.least, each.source) for sort, each in record.spares.items()},
        boxes=tuple(BoxRule(each.name, tuple(each.categories), each.loose, each.van) for each in record.box),
        lines=tuple(_line(category, each) for category, those in record.lines.items() for each in those),
        before_leaving=tuple(record.before_leaving),
        counters=record.counters,
        standards=record.standards,
        hazards=record.hazards,
    )


def _line(category: PartCategory, record: LineRecord) -> StandingLine:
    return StandingLine(category, **{**record.model_dump(), "quantity": record.quantity or None})
