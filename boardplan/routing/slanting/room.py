"""Free way room: whether straights and bends at any angle clear what blocks, under the rules of the square search.

Lengths in mm. The first and last leg run over what their ends lie on, and where an end stands within a clearance they
keep off the bare body only; the bends next to an end need not clear its owner. All else keeps off everything.
"""

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import TypeAlias

from boardplan.geometry.bends import Bend, Straight, rounded, tangent_length, turn_between, turns
from boardplan.geometry.point import Box, Point, bearing, box_around
from boardplan.routing.square.ends import End
from boardplan.routing.square.open_lines import UNITS, OpenLines, Span
from boardplan.routing.square.rays import clear_between, sides_for, spot_of

Boxes: TypeAlias = Sequence[Box]
_NOISE = 1e-6  # mm and degrees: sums of floats
_TOUCH = 1e-3  # mm: one unit of the square search, within which a way may touch what blocks
_WIDEST = 170.0
"""Degrees a single corner may turn: a wider one has its corner far off the way."""


class FreeRoom:
    """What is open to one cable between its two ends."""

    def __init__(self, ends: tuple[End, End], lines: OpenLines) -> None:
        """Sort what blocks by which part of the way it matters to."""
        barriers = lines.barriers
        self.ends = ends
        self._lines = lines
        self.all: Boxes = [_box(each.sides) for each in barriers]
        self.first, self.last = (_legs(end, lines) for end in ends)
        self.first_bend, self.last_bend = (
            [_box(each.sides) for each in barriers if not _own(each.blocker.sort, each.blocker.thing, end)]
            for end in ends
        )
        owners = {end.owner for end in ends}
        self.only_bend: Boxes = [
            _box(each.sides) for each in barriers if each.blocker.sort != "body" or each.blocker.thing not in owners
        ]

    def clears(self, points: Sequence[Point], radius: float) -> bool:
        """Say whether a way leaves its ends in their directions, holds its bends and straights, and clears all."""
        if len(points) < 2 or not self._leaves(points) or not self._holds(points, radius):  # noqa: PLR2004
            return False
        pieces = rounded(points, radius)
        bends = [index for index, each in enumerate(pieces) if isinstance(each, Bend)]
        if not bends:
            return clear_between(points[0], points[-1], self._lines, self.ends)
        return all(open_to(each, self._boxes(index, bends)) for index, each in enumerate(pieces))

    def _boxes(self, index: int, bends: Sequence[int]) -> Boxes:
        """Return what a piece must clear, by where it lies among the bends."""
        if index < bends[0]:
            return self.first
        if index > bends[-1]:
            return self.last
        if index == bends[0]:
            return self.only_bend if len(bends) == 1 else self.first_bend
        return self.last_bend if index == bends[-1] else self.all

    def _leaves(self, points: Sequence[Point]) -> bool:
        first, last = bearing(points[0], points[1]), bearing(points[-1], points[-2])
        return all(
            end.heading is None or abs(turn_between(end.heading, at)) < _NOISE
            for end, at in zip(self.ends, (first, last), strict=True)
        )

    def _holds(self, points: Sequence[Point], radius: float) -> bool:
        bent = turns(points)
        if any(abs(turn) > _WIDEST for turn in bent):
            return False
        held = (self.ends[0].straight, *(tangent_length(radius, turn) for turn in bent), self.ends[1].straight)
        return all(
            a.distance_to(b) >= before + after - _NOISE
            for (a, b), (before, after) in zip(pairwise(points), pairwise(held), strict=True)
        )


def open_to(piece: Straight | Bend, boxes: Boxes) -> bool:
    """Say whether a straight or a bend runs through none of the boxes; it may touch them."""
    if isinstance(piece, Straight):
        return not any(_runs_through(piece.start, piece.end, box) for box in _near(piece, boxes))
    return not any(_bends_through(piece, box) for box in _near(piece, boxes))


def _near(piece: Straight | Bend, boxes: Boxes) -> list[Box]:
    left, bottom, right, top = _around(piece)
    return [box for box in boxes if box[0] < right and box[2] > left and box[1] < top and box[3] > bottom]


def _around(piece: Straight | Bend) -> Box:
    """Return a box round a piece: a bend's ends, and what its circle reaches beyond them."""
    box = box_around((piece.start, piece.end))
    if isinstance(piece, Straight):
        return box
    half = math.radians(min(abs(piece.turn), 180.0)) / 2
    return box.grown(piece.radius * (1 - math.cos(half)))


def _runs_through(a: Point, b: Point, box: Box) -> bool:
    """Say whether a straight runs strictly through a box (clipping by Liang and Barsky, 1984)."""
    near, far = 0.0, 1.0
    for start, stop, low, high in ((a.x, b.x, box[0], box[2]), (a.y, b.y, box[1], box[3])):
        step = stop - start
        if abs(step) < _NOISE:
            if not low < start < high:
                return False
            continue
        first, last = (low - start) / step, (high - start) / step
        if first > last:
            first, last = last, first
        near, far = max(near, first), min(far, last)
    return near < far


def _bends_through(bend: Bend, box: Box) -> bool:
    """Say whether an arc runs strictly through a box: it is inside between two crossings of its sides."""
    start = bearing(bend.centre, bend.start)
    sense, sweep = (1.0 if bend.turn > 0 else -1.0), abs(bend.turn)
    at = {0.0, sweep}
    for angle in _crossings(bend, box):
        along = (angle - start) * sense % 360.0
        if along < sweep:
            at.add(along)
    for low, high in pairwise(sorted(at)):
        x, y = bend.centre.ahead(start + sense * (low + high) / 2, bend.radius)
        if box[0] < x < box[2] and box[1] < y < box[3]:
            return True
    return False


def _crossings(bend: Bend, box: Box) -> list[float]:
    """Return the directions in degrees in which a bend's circle meets the lines of a box's sides."""
    found = []
    for side in (box[0], box[2]):
        share = (side - bend.centre.x) / bend.radius
        if abs(share) < 1:
            angle = math.degrees(math.acos(share))
            found += [angle, -angle]
    for side in (box[1], box[3]):
        share = (side - bend.centre.y) / bend.radius
        if abs(share) < 1:
            angle = math.degrees(math.asin(share))
            found += [angle, 180.0 - angle]
    return found


def _legs(end: End, lines: OpenLines) -> list[Box]:
    """Return what the leg out of an end must clear."""
    spot = spot_of(end.point)
    held = (sides_for(end, each, spot) for each in lines.barriers)
    return [_box(sides) for sides in held if sides is not None]


def _own(sort: str, thing: str, end: End) -> bool:
    return sort == "body" and thing == end.owner


def _box(sides: tuple[Span, Span]) -> Box:
    (left, right), (bottom, top) = sides
    return Box(left / UNITS, bottom / UNITS, right / UNITS, top / UNITS).grown(-_TOUCH)
