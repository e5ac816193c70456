"""Free way parts: a way as bends and straights one after the other, and the corners that draw it. Lengths in mm."""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal, TypeAlias

from boardplan.geometry.bends import Bend, Straight, tangent_length, without_repeats
from boardplan.geometry.dubins import Pose
from boardplan.geometry.point import Point

Letter: TypeAlias = Literal["L", "R", "S"]
_WIDEST_BEND = 120.0  # degrees: wider bends are several corners


@dataclass(frozen=True, slots=True)
class Part:
    """A bend to the left or right by some degrees, or a straight of some mm."""

    letter: Letter
    much: float


def piece_of(pose: Pose, part: Part, radius: float) -> tuple[Straight | Bend, Pose]:
    """Return a part as a piece of a centre line that starts at a pose, and the pose at its end."""
    if part.letter == "S":
        end = pose.at.ahead(pose.heading, part.much)
        return Straight(pose.at, end), Pose(end, pose.heading)
    side = 1.0 if part.letter == "L" else -1.0
    centre = pose.at.ahead(pose.heading + 90 * side, radius)
    heading = (pose.heading + side * part.much) % 360.0
    end = centre.ahead(heading - 90 * side, radius)
    return Bend(pose.at, end, centre, radius, side * part.much), Pose(end, heading)


def joined(parts: Iterable[Part]) -> list[Part]:
    """Return parts with those of one letter that follow each other made one."""
    found: list[Part] = []
    for part in parts:
        if found and found[-1].letter == part.letter:
            found[-1] = Part(part.letter, found[-1].much + part.much)
        elif part.much > 1e-9:  # noqa: PLR2004 - float noise
            found.append(part)
    return found


def corners_of(start: Pose, parts: Iterable[Part], radius: float) -> tuple[Point, ...]:
    """Return the corners that draw parts from a pose on, with both their ends."""
    pose, points = start, [start.at]
    for part in joined(parts):
        count = 1 if part.letter == "S" else math.ceil(part.much / _WIDEST_BEND)
        for _ in range(count):
            share = Part(part.letter, part.much / count)
            if part.letter != "S":
                points.append(pose.at.ahead(pose.heading, tangent_length(radius, share.much)))
            pose = piece_of(pose, share, radius)[1]
    return without_repeats((*points, pose.at))
