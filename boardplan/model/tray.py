"""Tray: what is known of a battery tray that a customer builds; what nobody knows yet is none or empty."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

from boardplan.geometry.point import Point
from boardplan.model.job import Units

Wall: TypeAlias = Literal["left", "front", "right", "back"]
"""A side of a tray, seen from above, the front nearest to whoever stands before it."""
BatteryCorner: TypeAlias = Literal["front-left", "front-right", "back-left", "back-right"]
Craft: TypeAlias = Literal["boat", "vehicle", "building"]


@dataclass(frozen=True, slots=True)
class Battery:
    """One battery: outline in mm with its long side as its length, height over its posts, mass in kg.

    `terminals` is the side of the tray the posts are nearest to, `plus` the corner of a battery its plus post is at.
    """

    length: float | None = None
    width: float | None = None
    height: float | None = None
    mass: float | None = None
    terminals: Wall | None = None
    plus: BatteryCorner | None = None


@dataclass(frozen=True, slots=True)
class TrayGaps:
    """Free room in mm: between a battery and the tray's side, between batteries, above the posts up to the lid."""

    side: float | None = None
    between: float | None = None
    lid: float | None = None


@dataclass(frozen=True, slots=True)
class TrayExit:
    """Where a cable leaves a tray: the wall, its centre from the inside left (or front) corner and above the floor."""

    name: str
    wall: Wall | None = None
    along: float | None = None
    height: float | None = None
    diameter: float | None = None
    edge: str = ""
    towards: str = ""


@dataclass(frozen=True, slots=True)
class TrayFixing:
    """A fixing of a tray: its place from the inside left front corner, the bolt, the structure it goes into."""

    at: Point | None = None
    bolt: str = ""
    into: str = ""


@dataclass(frozen=True, slots=True)
class TrayBuilt:
    """What a customer measured inside the tray he built, in mm, and when."""

    length: float | None = None
    width: float | None = None
    height: float | None = None
    date: str = ""
    by: str = ""


@dataclass(frozen=True, slots=True)
class Tray:
    """A battery tray: batteries in `columns` from left to right and `rows` from front to back.

    `along` says which side of a battery lies from left to right. `mass` is that of the loaded tray with its hold-down,
    `straps` are where hold-downs cross the tray, from its inside left. `units` are the customer's, none for the job's.
    """

    id: str
    name: str = ""
    place: str = ""
    craft: Craft | None = None
    units: Units | None = None
    battery: Battery = Battery()
    columns: int | None = None
    rows: int | None = None
    along: Literal["length", "width"] | None = None
    gaps: TrayGaps = TrayGaps()
    lip: float | None = None
    drain: str = ""
    liner: str = ""
    material: str = ""
    coating: str = ""
    mass: float | None = None
    pull: str = ""
    fixings: tuple[TrayFixing, ...] = ()
    hold_down: str = ""
    straps: tuple[float, ...] = ()
    exits: tuple[TrayExit, ...] = ()
    first_clamp: str = ""
    fuses: str = ""
    ventilation: str = ""
    sensor: str = ""
    lift: str = ""
    finished_by: str = ""
    photo: str = ""
    built: TrayBuilt | None = None

    @property
    def count(self) -> int | None:
        """How many batteries it holds."""
        return None if self.columns is None or self.rows is None else self.columns * self.rows
