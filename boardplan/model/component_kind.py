"""ComponentKind: what is known of a piece of equipment before it is placed."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.board import Face, Ring

Stage: TypeAlias = Literal["shop", "site"]
Pole: TypeAlias = Literal["", "+", "-", "L", "L1", "L2", "N", "PE", "signal"]
TerminalSort: TypeAlias = Literal["stud", "clamp", "gland", "plug", "blade"]
KeepClearReason: TypeAlias = Literal["air", "hands", "cover", "fuse pull", "handle", "lift-off", "gland"]
DataState: TypeAlias = Literal["typical", "from sheet", "checked", "used"]
Tone: TypeAlias = Literal[
    "graphite", "stone", "bone", "brass", "copper", "steel", "glass", "shadow", "red", "amber", "green", "slate", "ink"
]


@dataclass(frozen=True, slots=True)
class MountingHole:
    """A hole in a component's flange, in the kind's own coordinates.

    A slot is `length` long along `direction`; a keyhole is hung on its screw and slides down by `drop`,
    so the screw goes where the narrow end is: at `position`.
    """

    position: Point
    shape: Literal["round", "slot", "keyhole"] = "round"
    length: float = 0.0
    direction: float = 0.0
    drop: float = 0.0


@dataclass(frozen=True, slots=True)
class Terminal:
    """Where a cable lands. `exit` is the direction a cable leaves in, none where the lug may turn freely.

    Conductor sizes in mm², thread, z and tail in mm, torque in Nm; none where the sheet was not at hand. `faces` is
    where a stud points, and so the flat of a lug on it; `tail` is the cable inside a unit beyond its gland; `pad` is
    how wide the contact face under a lug is.
    """

    id: str
    position: Point
    z: float
    sort: TerminalSort
    size: str = ""
    exit: float | None = None
    pole: Pole = ""
    usable_thread: float | None = None
    least_conductor: float | None = None
    largest_conductor: float | None = None
    torque: float | None = None
    faces: Face = "front"
    tail: float | None = None
    pad: float | None = None


@dataclass(frozen=True, slots=True)
class KeepClear:
    """Room that a face needs, and what for; `demanded` when the unit's own sheet asks for it."""

    face: Face
    distance: float
    reason: KeepClearReason
    demanded: bool = False


@dataclass(frozen=True, slots=True)
class Cooling:
    """Through which faces a unit takes in and blows out its air."""

    intake: tuple[Face, ...] = ()
    exhaust: tuple[Face, ...] = ()


@dataclass(frozen=True, slots=True)
class ArtShape:
    """One shape of a kind's front view, in its own coordinates, repeated `count` times `step` apart.

    `width` is that of a line, of the lit and dark edges of a relief, or the height of a text's capitals.
    The text "{ref}" marks where the reference of a placed component goes.
    """

    shape: Literal["rect", "disc", "line", "polygon", "text"]
    tone: Tone
    points: tuple[Point, ...]
    size: Point = Point(0, 0)
    radius: float = 0.0
    width: float = 1.0
    text: str = ""
    relief: Literal["", "raised", "sunk"] = ""
    count: int = 1
    step: Point = Point(0, 0)


@dataclass(frozen=True, slots=True)
class ComponentKind:
    """A sort of equipment; its outline runs counter-clockwise, upright, from its lower left.

    Masses in kg, heat at full load in W; none where the sheet was not at hand. `allowed_turns` of none
    means any. `head_room` is what stays above a keyhole unit for lifting it off its screws.
    """

    id: str
    name: str
    family: str
    prefix: str
    outline: Ring
    depth: float
    mass: float | None = None
    flange: float | None = None
    fastener: str = ""
    holes: tuple[MountingHole, ...] = ()
    terminals: tuple[Terminal, ...] = ()
    keep_clear: tuple[KeepClear, ...] = ()
    allowed_turns: tuple[float, ...] | None = None
    cooling: Cooling = Cooling()
    heat: float | None = None
    heat_sensitive: bool = False
    stage: Stage = "shop"
    non_combustible_backing: bool | None = None
    data_state: DataState = "typical"
    note: str = ""
    art: tuple[ArtShape, ...] = ()

    @property
    def box(self) -> Box:
        """The box round the outline, upright."""
        return box_around(self.outline)

    def terminal(self, terminal_id: str) -> Terminal | None:
        """Return a terminal by its id, none where there is no such terminal."""
        return next((each for each in self.terminals if each.id == terminal_id), None)
