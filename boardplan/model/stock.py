"""Stock: the reels, offcuts and lengths of channel at hand for a job, and what each cut takes."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

Corners: TypeAlias = Literal["mitred", "square"]


@dataclass(frozen=True, slots=True)
class CableStock:
    """A reel or an offcut of one conductor in one colour: its length in mm, how many of them, none for any number.

    `name` is what is written on it.
    """

    conductor: str
    colour: str
    length: float
    count: int | None = 1
    name: str = ""


@dataclass(frozen=True, slots=True)
class ChannelStock:
    """Lengths of channel of one section, outside width and height, with their covers; `count` none for any number."""

    width: float
    height: float
    length: float
    count: int | None = None
    name: str = ""


@dataclass(frozen=True, slots=True)
class Stock:
    """All that is at hand, what a cut takes in mm, and how channels meet at corners.

    3 mm a cut, of cutter or saw blade: common practice, no source; measure your own.
    """

    cables: tuple[CableStock, ...] = ()
    channels: tuple[ChannelStock, ...] = ()
    cable_cut: float = 3.0
    channel_cut: float = 3.0
    corners: Corners = "mitred"
