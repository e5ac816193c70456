"""Channel pieces: the bases and covers that the channels of a plan are made of, and how their ends are cut."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal, TypeAlias

from boardplan.geometry.point import Point
from boardplan.model.channel import Channel
from boardplan.model.plan import Plan

Part: TypeAlias = Literal["base", "cover"]
_STRAIGHT = 0.5
_RIGHT_ANGLE = 90.0
_TURNS_BACK = 170.0
"""In degrees: a corner that turns less is none, one that turns more can't be mitred."""


@dataclass(frozen=True, slots=True)
class ChannelEnd:
    """How an end is cut: `degrees` off a square cut, and the wall that is longer, looking from end 1 to end 2."""

    degrees: float = 0.0
    longer: Literal["left", "right", ""] = ""

    @property
    def words(self) -> str:
        """It in words."""
        return f"{self.degrees:g}°, longer on the {self.longer}" if self.longer else "square"


SQUARE = ChannelEnd()


@dataclass(frozen=True, slots=True)
class ChannelPiece:
    """A base or a cover to cut: `length` in mm along its longer wall."""

    name: str
    channel: str
    board: str
    part: Part
    width: float
    height: float
    length: float
    ends: tuple[ChannelEnd, ChannelEnd]


def channel_pieces(plan: Plan) -> tuple[ChannelPiece, ...]:
    """Return the pieces of all channels: a base for each straight run, named RW1-1, and its cover, RW1-C1."""
    return tuple(piece for channel in plan.channels.values() for piece in _pieces(channel, plan.stock.corners))


def _pieces(channel: Channel, corners: str) -> Iterator[ChannelPiece]:
    line = _without_straight_corners(channel.line)
    turns = [0.0, *(_turn(*each) for each in zip(line, line[1:], line[2:], strict=False)), 0.0]
    for index, (start, end) in enumerate(pairwise(line)):
        first, second = turns[index], turns[index + 1]
        length = start.distance_to(end) + _longer(channel.width, first, corners, begins=True)
        length += _longer(channel.width, second, corners, begins=False)
        ends = _end(first, corners), _end(second, corners)
        parts: tuple[Part, ...] = ("base", "cover") if channel.cover else ("base",)
        for part in parts:
            name = f"{channel.id}-{'C' if part == 'cover' else ''}{index + 1}"
            yield ChannelPiece(name, channel.id, channel.board, part, channel.width, channel.height, length, ends)


def _without_straight_corners(line: tuple[Point, ...]) -> tuple[Point, ...]:
    kept = [line[0]]
    for index in range(1, len(line) - 1):
        if abs(_turn(kept[-1], line[index], line[index + 1])) > _STRAIGHT:
            kept.append(line[index])
    return (*kept, line[-1])


def _turn(before: Point, at: Point, after: Point) -> float:
    """Return by how many degrees a line turns at a corner, to the left above nought."""
    one, other = (at.x - before.x, at.y - before.y), (after.x - at.x, after.y - at.y)
    cross, dot = one[0] * other[1] - one[1] * other[0], one[0] * other[0] + one[1] * other[1]
    return math.degrees(math.atan2(cross, dot))


def _butts(turn: float, corners: str) -> bool:
    return corners == "square" and abs(abs(turn) - _RIGHT_ANGLE) <= _STRAIGHT


def _mitred(turn: float, corners: str) -> bool:
    return _STRAIGHT < abs(turn) < _TURNS_BACK and not _butts(turn, corners)


def _longer(width: float, turn: float, corners: str, *, begins: bool) -> float:
    """Return how much longer a piece is than its leg: to the outer point of a mitre, or to the wall it meets or ends.

    At a square corner the piece before it runs through, and the one after it begins at that one's wall.
    """
    if _butts(turn, corners):
        return -width / 2 if begins else width / 2
    return math.tan(math.radians(abs(turn) / 2)) * width / 2 if _mitred(turn, corners) else 0.0


def _end(turn: float, corners: str) -> ChannelEnd:
    """Return the cut at a corner: the outer wall is longer, on the right where the line turns left."""
    if not _mitred(turn, corners):
        return SQUARE
    return ChannelEnd(round(abs(turn) / 2, 1), "right" if turn > 0 else "left")
