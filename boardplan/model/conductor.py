"""Conductor: a sort of cable on the reel, with the measures of its lug."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

Construction: TypeAlias = Literal["fine-strand", "stiff", "sheathed", "data"]


@dataclass(frozen=True, slots=True)
class AngledLug:
    """A lug whose barrel stands off its palm at an angle, in mm: measure your own.

    `stop` is from the stud's centre to where the wire stops, along the palm; `rise` how high that place lies over the
    stud's plane, at the middle of the wire; `barrel` the depth of the barrel, along itself.
    """

    form: Literal["45", "90"]
    stop: float
    barrel: float
    rise: float

    @property
    def degrees(self) -> int:
        """The angle between palm and barrel."""
        return int(self.form)

    @property
    def mouth(self) -> float:
        """How far the lug's mouth lies from the stud's centre, along the palm and up the barrel."""
        return self.stop + self.barrel


@dataclass(frozen=True, slots=True)
class LugMeasures:
    """A crimp lug for one conductor size, in mm: measure your own.

    `stop` is from the stud's centre to where the wire stops in the barrel; mouth = stop + barrel. All of it is true of
    the straight lug; `angled` are the others that somebody measured.
    """

    stop: float
    barrel: float
    strip: float
    palm_width: float
    palm_thickness: float
    angled: tuple[AngledLug, ...] = ()

    @property
    def mouth(self) -> float:
        """How far the lug's mouth lies from the stud's centre."""
        return self.stop + self.barrel

    def angled_lug(self, form: str) -> AngledLug | None:
        """Return the measures of the lug of an angle, none where nobody measured it."""
        return next((each for each in self.angled if each.form == form), None)


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
