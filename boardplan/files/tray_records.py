"""Tray records: battery trays in a job file, from plain fields to the model and back."""

from dataclasses import asdict
from typing import Annotated, Any, Literal

from pydantic import Field

from boardplan.files.record_types import DATE_PATTERN, Coordinate, Gap, Id, Length, Pair, Positive, Record
from boardplan.geometry.point import Point
from boardplan.model.tray import Battery, Tray, TrayBuilt, TrayExit, TrayFixing, TrayGaps

_Words = Annotated[str, Field(max_length=300)]
_Date = Annotated[str, Field(pattern=DATE_PATTERN)]
_Wall = Literal["left", "front", "right", "back"]
_Few = Annotated[int, Field(ge=1, le=50)]


class BatteryRecord(Record):
    """One battery."""

    length: Length | None = None
    width: Length | None = None
    height: Length | None = None
    mass: Positive | None = None
    terminals: _Wall | None = None
    plus: Literal["front-left", "front-right", "back-left", "back-right"] | None = None


class TrayGapsRecord(Record):
    """Free room in a tray."""

    side: Gap | None = None
    between: Gap | None = None
    lid: Gap | None = None


class TrayExitRecord(Record):
    """Where a cable leaves a tray."""

    name: Annotated[str, Field(min_length=1, max_length=60)]
    wall: _Wall | None = None
    along: Coordinate | None = None
    height: Coordinate | None = None
    diameter: Length | None = None
    edge: _Words = ""
    towards: _Words = ""


class TrayFixingRecord(Record):
    """A fixing of a tray into the structure."""

    at: Pair | None = None
    bolt: _Words = ""
    into: _Words = ""


class TrayBuiltRecord(Record):
    """What was measured inside a tray that is there."""

    length: Length | None = None
    width: Length | None = None
    height: Length | None = None
    date: _Date = ""
    by: _Words = ""


class TrayRecord(Record):
    """A battery tray for a customer to build; what is left out is asked for on his sheet."""

    id: Id
    name: _Words = ""
    place: _Words = ""
    craft: Literal["boat", "vehicle", "building"] | None = None
    units: Literal["mm", "inch"] | None = None
    battery: BatteryRecord = BatteryRecord()
    columns: _Few | None = None
    rows: _Few | None = None
    along: Literal["length", "width"] | None = None
    gaps: TrayGapsRecord = TrayGapsRecord()
    lip: Length | None = None
    drain: _Words = ""
    liner: _Words = ""
    material: _Words = ""
    coating: _Words = ""
    mass: Positive | None = None
    pull: _Words = ""
    fixings: Annotated[list[TrayFixingRecord], Field(max_length=50)] = []
    hold_down: _Words = ""
    straps: Annotated[list[Coordinate], Field(max_length=50)] = []
    exits: Annotated[list[TrayExitRecord], Field(max_length=50)] = []
    first_clamp: _Words = ""
    fuses: _Words = ""
    ventilation: _Words = ""
    sensor: _Words = ""
    lift: _Words = ""
    finished_by: _Date = ""
    photo: _Words = ""
    built: TrayBuiltRecord | None = None


_NESTED = {"battery", "gaps", "fixings", "straps", "exits", "built"}


def tray_from(record: TrayRecord) -> Tray:
    """Return the tray of a record."""
    built = record.built
    return Tray(
        **record.model_dump(exclude=_NESTED),
        battery=Battery(**record.battery.model_dump()),
        gaps=TrayGaps(**record.gaps.model_dump()),
        fixings=tuple(
            TrayFixing(Point(*each.at) if each.at else None, each.bolt, each.into) for each in record.fixings
        ),
        straps=tuple(record.straps),
        exits=tuple(TrayExit(**each.model_dump()) for each in record.exits),
        built=TrayBuilt(**built.model_dump()) if built else None,
    )


def tray_plain(tray: Tray) -> dict[str, Any]:
    """Return the plain fields of a tray, as its record takes them."""
    return {
        **asdict(tray),
        "fixings": [
            {"at": list(each.at) if each.at else None, "bolt": each.bolt, "into": each.into} for each in tray.fixings
        ],
        "straps": list(tray.straps),
        "exits": [asdict(each) for each in tray.exits],
    }
