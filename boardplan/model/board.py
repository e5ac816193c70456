"""Board: the sheet everything hangs on, its compartment, and what is behind and in front of it."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

from boardplan.geometry.point import Box, Point, box_around, signed_area
from boardplan.model.trust import Trust

Ring: TypeAlias = tuple[Point, ...]
Face: TypeAlias = Literal["left", "bottom", "right", "top", "front"]
Corner: TypeAlias = Literal["lower-left", "lower-right", "upper-left", "upper-right"]


@dataclass(frozen=True, slots=True)
class Material:
    """What the sheet is made of; mass per area in kg/m², none where nobody weighed it."""

    name: str
    mass_per_area: float | None = None


@dataclass(frozen=True, slots=True)
class Fabric:
    """The covering: its thickness, how far it is wrapped round the back, its mass in kg/m²."""

    thickness: float
    wrap: float = 60.0
    mass_per_area: float = 0.5


@dataclass(frozen=True, slots=True)
class Sides:
    """A measure for each side, seen from the front."""

    left: float
    bottom: float
    right: float
    top: float


@dataclass(frozen=True, slots=True)
class Datum:
    """The corner all dimensions run from, and whether they run from the bare or the covered edge."""

    corner: Corner = "lower-left"
    edge: Literal["bare", "covered"] = "bare"


@dataclass(frozen=True, slots=True)
class Compartment:
    """Room round the board: the gap from each edge to the wall, and the depth in front of its face.

    A depth of none means that nobody measured it; a trust of none, here and below, that nobody said how it was.
    """

    left: float
    bottom: float
    right: float
    top: float
    depth: float | None = None
    trust: Trust | None = None


@dataclass(frozen=True, slots=True)
class Board:
    """A sheet of plywood; its outline in its own coordinates, from the lower left of the sheet.

    `position` is where its own origin lies on the wall: boards of a job hang side by side, and a cable
    that crosses from one to the next is drawn in the coordinates of the wall. `lip` is how far a raised
    edge or a batten stands out along each side: no air and no hand comes past it. `stand_off` is the gap
    from its back to the framing, 0 where it lies flat, none where nobody said. `trust` is that of its size.
    """

    id: str
    name: str
    outline: Ring
    cutouts: tuple[Ring, ...] = ()
    position: Point = Point(0, 0)
    thickness: float = 18.0
    material: Material = Material("plywood")
    fabric: Fabric | None = None
    edge_margins: Sides = Sides(20, 20, 20, 20)
    lip: Sides = Sides(0, 0, 0, 0)
    stand_off: float | None = None
    datum: Datum = Datum()
    compartment: Compartment | None = None
    trust: Trust | None = None

    @property
    def box(self) -> Box:
        """The box round the outline, in the board's own coordinates."""
        return box_around(self.outline)

    @property
    def area(self) -> float:
        """The area of the sheet less its cut-outs, in mm²."""
        return abs(signed_area(self.outline)) - sum(abs(signed_area(each)) for each in self.cutouts)

    @property
    def mass(self) -> float | None:
        """The mass of the covered sheet in kg, none where its material was never weighed."""
        if self.material.mass_per_area is None:
            return None
        covering = self.fabric.mass_per_area if self.fabric else 0.0
        return self.area / 1e6 * (self.material.mass_per_area + covering)


@dataclass(frozen=True, slots=True)
class Framing:
    """A post, stud, rib or bearer of the wall behind a board, by its centre line in board coordinates.

    An upright member has its centre at an x, a level one at a y; start and end are along the member,
    none where it runs past the board.
    """

    id: str
    board: str
    direction: Literal["upright", "level"]
    centre: float
    width: float
    start: float | None = None
    end: float | None = None
    material: str = ""
    trust: Trust | None = None


@dataclass(frozen=True, slots=True)
class BackPart:
    """A cleat, batten, stand-off or insert fixed to the back; outline in board coordinates, seen from the front."""

    id: str
    board: str
    name: str
    outline: Ring


@dataclass(frozen=True, slots=True)
class NoGoBox:
    """Space that must stay empty, in board coordinates; z is counted from the board's face outwards."""

    id: str
    board: str
    name: str
    x: float
    y: float
    width: float
    height: float
    from_z: float = 0.0
    to_z: float = 1000.0
    trust: Trust | None = None

    @property
    def box(self) -> Box:
        """Its front view."""
        return Box(self.x, self.y, self.x + self.width, self.y + self.height)


@dataclass(frozen=True, slots=True)
class Exit:
    """Where cables leave the board: over an edge, or through a hole that must stay open."""

    id: str
    board: str
    name: str
    position: Point
    through: Literal["edge", "hole"] = "edge"
    diameter: float | None = None
    trust: Trust | None = None


@dataclass(frozen=True, slots=True)
class BoardFixing:
    """A screw or bolt that holds the board to the framing; `diameter` is its through hole."""

    id: str
    board: str
    position: Point
    diameter: float
    fastener: str = ""
