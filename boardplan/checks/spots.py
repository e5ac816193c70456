"""Spots: everything of a plan where it lies on the wall, measured once and kept as long as it doesn't change."""

from dataclasses import dataclass
from itertools import pairwise
from typing import TypeAlias

from shapely import LineString, Polygon

from boardplan.checks.corridors import Corridor
from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.board import BackPart, Board, BoardFixing, Exit, NoGoBox
from boardplan.model.cable import Cable
from boardplan.model.channel import Channel
from boardplan.model.component import Component
from boardplan.model.component_kind import ComponentKind, KeepClear
from boardplan.model.conductor import Conductor
from boardplan.model.fastener import Fastener
from boardplan.model.holes import Hole
from boardplan.model.placed import Placed
from boardplan.routing.lugs.lug_place import LaidLug
from boardplan.routing.route import Way


@dataclass(frozen=True, slots=True)
class HoleSpot:
    """A hole on the wall, and the fastener that goes into it where one is named."""

    hole: Hole
    at: Point
    fastener: Fastener | None

    @property
    def radius(self) -> float:
        """Half the bit, nought where nobody knows it."""
        return (self.hole.bit or 0.0) / 2


@dataclass(frozen=True, slots=True)
class ZoneSpot:
    """A keep-clear zone on the wall; `normal` is the direction away from its face, in degrees."""

    keep_clear: KeepClear
    ring: tuple[Point, ...]
    box: Box
    normal: float


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Spot:
    """A thing on the wall: the box round it, and the boxes within which other things concern it."""

    id: str
    board: Board
    box: Box
    reach: tuple[Box, ...]


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class BodySpot(Spot):
    """A thing that stands on the board: its front view, its height off the board, its screw holes.

    `hole_box` lies round the holes, none where there are none. `upright` says that the front view is
    the box itself.
    """

    body: Polygon
    height: float
    holes: tuple[HoleSpot, ...]
    hole_box: Box | None
    upright: bool


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class ComponentSpot(BodySpot):
    """A component on the wall."""

    component: Component
    kind: ComponentKind
    placed: Placed
    zones: tuple[ZoneSpot, ...]


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class ChannelSpot(BodySpot):
    """A channel on the wall, with its centre line."""

    channel: Channel
    line: tuple[Point, ...]


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class FixingSpot(Spot):
    """A board fixing on the wall."""

    fixing: BoardFixing
    hole: HoleSpot


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class ExitSpot(Spot):
    """An exit on the wall."""

    exit: Exit
    at: Point


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class NoGoSpot(Spot):
    """Space to stay empty, its front view on the wall."""

    no_go: NoGoBox
    body: Polygon


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class BackPartSpot(Spot):
    """A part on the back of a board, on the wall, seen from the front."""

    part: BackPart
    body: Polygon


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class CableSpot(Spot):
    """A cable on the wall with the way it takes; `line` is none where it has no way.

    `corridors` is the room its lugs and glands need straight ahead, `lugs` how its lugs lie.
    """

    cable: Cable
    conductor: Conductor
    way: Way
    line: LineString | None
    corridors: tuple[Corridor, ...] = ()
    lugs: tuple[LaidLug, ...] = ()


SORTS: tuple[type[Spot], ...] = (
    ComponentSpot,
    ChannelSpot,
    FixingSpot,
    ExitSpot,
    NoGoSpot,
    BackPartSpot,
    CableSpot,
)
"""All sorts of things on the wall."""

HoledSpot: TypeAlias = ComponentSpot | ChannelSpot | FixingSpot


def holes_of_spot(spot: HoledSpot) -> tuple[HoleSpot, ...]:
    """Return the holes that a thing wants drilled."""
    return (spot.hole,) if isinstance(spot, FixingSpot) else spot.holes


def leg_boxes(points: tuple[Point, ...], grown: float = 0.0) -> tuple[Box, ...]:
    """Return a box round each leg of a line, grown."""
    return tuple(box_around(leg).grown(grown) for leg in pairwise(points))
