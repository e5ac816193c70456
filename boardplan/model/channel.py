"""Channel: a run of wire channel with its cover, by its centre line."""

from dataclasses import dataclass

from boardplan.geometry.point import Point


@dataclass(frozen=True, slots=True)
class ChannelScrews:
    """How a channel is screwed down: distance of the first screw from each end, greatest pitch."""

    first: float = 40.0
    pitch: float = 400.0
    fastener: str = ""


@dataclass(frozen=True, slots=True)
class Channel:
    """A wire channel; `width` and `height` outside, `inner_width` and `inner_height` inside.

    `line` is the centre line in board coordinates. Dividers are given by their distance from the
    channel's left wall, looking along the line.
    """

    id: str
    board: str
    line: tuple[Point, ...]
    width: float
    height: float
    inner_width: float
    inner_height: float
    cover: bool = True
    screws: ChannelScrews = ChannelScrews()
    dividers: tuple[float, ...] = ()

    @property
    def inner_area(self) -> float:
        """The inside cross-section in mm²."""
        return self.inner_width * self.inner_height
