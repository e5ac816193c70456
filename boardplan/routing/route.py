"""Route: the way a cable takes over the boards, or why it has none."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

from boardplan.geometry.bends import Bend, Straight, rounded
from boardplan.geometry.point import Box, Point
from boardplan.routing.reach import Reach


@dataclass(frozen=True, slots=True)
class InChannel:
    """A stretch that lies in a channel: distances along the channel's centre line, the lesser first."""

    channel: str
    start: float
    end: float


@dataclass(frozen=True, slots=True)
class Heed:
    """Where other cables could change how a way lies among them, and where what blocks could, none if it can't."""

    cables: Box
    blocks: Box | None


@dataclass(frozen=True, slots=True)
class Route:
    """The way of a cable: its corners on the wall from end to end, bent with a centre-line radius.

    `source` says whether a person pinned it or the program found it, `why` in a sentence why it lies so.
    `reaches` say how far off a found way things lie that could change it, `full` are stretches of channels
    it had to leave to others, as they would be overfilled. `alone` is the way it would take with no cable
    beside it, none where no cable could matter to it; `heeds` say where what changes could make it lie otherwise.
    `over` are the bodies and covered channels that a found way passes over, as there was no other.
    """

    cable: str
    points: tuple[Point, ...]
    radius: float
    in_channels: tuple[InChannel, ...] = ()
    source: Literal["pinned", "found"] = "found"
    why: str = ""
    reaches: tuple[Reach, ...] = ()
    full: tuple[InChannel, ...] = ()
    alone: "Route | None" = None
    heeds: tuple[Heed, ...] = ()
    over: tuple[str, ...] = ()

    @property
    def pieces(self) -> tuple[Straight | Bend, ...]:
        """The straights and bends of the centre line."""
        return rounded(self.points, self.radius)


@dataclass(frozen=True, slots=True)
class NoWay:
    """A cable that can't be laid, and what stands in its way in one sentence."""

    cable: str
    reason: str
    near: Point


Way: TypeAlias = Route | NoWay
