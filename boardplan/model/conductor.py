"""Conductor: a sort of cable on the reel, with the measures of its lug."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

Construction: TypeAlias = Literal["fine-strand", "stiff", "sheathed", "data"]


@dataclass(frozen=True, slots=True)
class LugMeasures:
    """A crimp lug for one conductor size, in mm: measure your own.

    `stop` is from the stud's centre to where the wire stops in the barrel; mouth = stop + barrel.
    """

    stop: float
    barrel: float
    strip: float
    palm_width: float
    palm_thickness: float

    @property
    def mouth(self) -> float:
        """How far the lug's mouth lies from the stud's centre."""
        return self.stop + self.barrel


@dataclass(frozen=True, slots=True)
class Conductor:
    """A sort of cable: cross-section of one core in mm², cores, outside diameter in mm, mass in kg/m.

    `stock_lengths` are those it is bought in with moulded ends; it is then never cut.
    """

    id: str
    name: str
    area: float | None
    outside_diameter: float
    construction: Construction = "fine-strand"
    cores: int = 1
    mass_per_m: float | None = None
    strip: float | None = None
    lug: LugMeasures | None = None
    stock_lengths: tuple[float, ...] = ()
