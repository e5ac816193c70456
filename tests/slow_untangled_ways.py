"""Slow untangled ways: the corners of a least square way that does not cross itself, by all places of a fine lattice.

As in slow_square_ways.py, but ways are kept apart by how far they have turned in all: a loop turns round once more than
the way that goes by on its other side, and among the least ways of both one lies clear of itself. Of all ways that
arrive, the shortest of these is taken.
"""

import math
from dataclasses import dataclass, replace

import numpy as np
from slow_lattice import AHEAD, NEVER, Lattice
from slow_square_ways import MOST_BENDS, NEITHER, SlowBoard, SlowEnd, arrivals_at, departed, ends_of_cable
from way_sampler import crosses_itself

from boardplan.geometry.point import Point
from boardplan.model.cable import Cable

_TRACED = 1e-6
_MOST_TURNED = 6
"""Quarter turns that a way may have turned in all."""
_MOST_TRIES = 300


@dataclass(frozen=True)
class _Corners:
    """The corners of a way and the radius of its bends."""

    points: tuple[Point, ...]
    radius: float


def shortest_points(
    board: SlowBoard, cable: Cable, radius: float, *, roomy: tuple[bool, bool] = NEITHER, most: int = MOST_BENDS + 2
) -> list[Point]:
    """Return the corners of a least way with two bends or more and at most so many, ends and all; none without one.

    Ways that cross themselves are left out. `roomy` is as in shortest_square.
    """
    start, end = ends_of_cable(board, cable, radius, roomy)
    if start is None or end is None:
        return []
    lattice = Lattice(board, radius, start, end)
    found = [_from_heading(lattice, replace(start, headings=(each,)), end, most) for each in start.headings]
    return min((each for each in found if each[1]), key=lambda each: each[0], default=(NEVER, []))[1]


def _from_heading(lattice: Lattice, start: SlowEnd, end: SlowEnd, most: int) -> tuple[float, list[Point]]:
    """Return length and corners of the least way that leaves its start in its one heading."""
    (out,), bend = start.headings, math.pi / 2 * lattice.radius
    first = departed(lattice, start, bend)
    rounds = [{out + turn: first[(out + turn) % 4] for turn in (1, -1)}]
    for _ in range(most - 2):
        rounds.append(_bent_once_more(lattice, rounds[-1], out, bend))
    ahead = {heading: lattice.gone_straight(each, heading % 4) for heading, each in rounds[-1].items()}
    arrivals = sorted(
        (float(lengths[at]) + bend + rest, heading, at)
        for to, at, rest in arrivals_at(lattice, end)
        for heading, lengths in ahead.items()
        if heading % 4 == to and lengths[at] < NEVER / 2
    )
    for length, heading, at in arrivals[:_MOST_TRIES]:
        points = [start.at, *_traced(lattice, rounds, start, (heading, at)), lattice.corner(at, heading), end.at]
        if not crosses_itself(_Corners(tuple(points), lattice.radius)):
            return length, points
    return NEVER, []


def _bent_once_more(lattice, after, out, bend):
    """Return the least lengths just after a bend for each heading turned to, with one more bend everywhere."""
    fresh = dict(after)
    for heading, lengths in after.items():
        ahead = lattice.gone_straight(lengths, heading % 4)
        for turn in (1, -1):
            to = heading + turn
            if abs(to - out) <= _MOST_TURNED:
                into = fresh[to].copy() if to in fresh else np.full(lattice.shape, NEVER)
                lattice.bend_all(ahead, heading % 4, turn, bend, into)
                fresh[to] = into
    return fresh


def _traced(lattice, rounds, start, arrival):
    """Return the corners before the last bend, followed back through the least lengths just after each bend."""
    (heading, at), points = arrival, []
    while True:
        rounds, at = _before_straight(lattice, rounds, heading, at)
        step = _before_bend(lattice, rounds, heading, at) if len(rounds) > 1 else None
        if step is None:
            return [_first_corner(lattice, start, heading, at, float(rounds[0][heading][at])), *points[::-1]]
        (heading, at), rounds = step, rounds[:-1]
        points.append(lattice.corner(at, heading))


def _before_straight(lattice, rounds, heading, at):
    """Return the rounds up to the first in which a place is reached as it is at last, and where its straight began."""
    dx, dy = AHEAD[heading % 4]
    target, place = float(lattice.gone_straight(rounds[-1][heading], heading % 4)[at]), at
    while abs(rounds[-1][heading][place] + lattice.apart(place, at) - target) > _TRACED:
        place = (place[0] - dx, place[1] - dy)
    value, count = rounds[-1][heading][place], len(rounds)
    while count > 1 and heading in rounds[count - 2] and abs(rounds[count - 2][heading][place] - value) < _TRACED:
        count -= 1
    return rounds[:count], place


def _before_bend(lattice, rounds, heading, at):
    """Return the heading before the bend that ends at a place, and where it began."""
    for turn in (1, -1):
        before = heading - turn
        (dx, dy), (tx, ty) = AHEAD[before % 4], AHEAD[heading % 4]
        place = tuple(int(lattice.shift[axis][-by][at[axis]]) for axis, by in ((0, dx + tx), (1, dy + ty)))
        if before in rounds[-2] and min(place) >= 0 and lattice.clear[before % 4, turn][place]:
            length = float(lattice.gone_straight(rounds[-2][before], before % 4)[place])
            if abs(length + math.pi / 2 * lattice.radius - rounds[-1][heading][at]) < _TRACED:
                return before, place
    raise AssertionError("a bend comes from nowhere")


def _first_corner(lattice, start, heading, at, length):
    """Return the corner of the first bend, which ends at a place after so much length."""
    (out,) = start.headings
    turn = heading - out
    for place, straight in lattice.along(start, out, start.prices[out]):
        there = straight + math.pi / 2 * lattice.radius
        if lattice.bent(place, out, turn) == at and abs(there - length) < _TRACED:
            return lattice.corner(place, out)
    raise AssertionError("a first bend comes from nowhere")
