"""Slow lattice: lines a pitch apart through both ends of a cable, and how far one can go along each among what blocks.

Headings are whole quarter turns counter-clockwise from the right; those four apart are the same direction.
"""

import math

import numpy as np
import shapely
from shapely import LineString

from boardplan.geometry.point import Point

COARSE = 4.0
"""The pitch of the lattice at most, in mm; a bend's radius is a whole number of pitches."""
NEVER = 1e6
PIXEL = 1.0
AHEAD = ((1, 0), (0, 1), (-1, 0), (0, -1))
"""The four headings, counter-clockwise from the right."""


def arc_points(heading, turn, radius, count=10):
    """Return places along a bend from its beginning, the beginning itself left out."""
    dx, dy = AHEAD[heading % 4]
    tx, ty = AHEAD[(heading + turn) % 4]
    angles = np.linspace(0, math.pi / 2, count)[1:]
    return np.stack(
        [
            dx * radius * np.sin(angles) + tx * radius * (1 - np.cos(angles)),
            dy * radius * np.sin(angles) + ty * radius * (1 - np.cos(angles)),
        ],
        axis=1,
    )


class Lattice:
    """Lines through both ends, a pitch apart, and how far one can go along each."""

    def __init__(self, board, radius, start, end):
        self.board, self.radius = board, radius
        self.count = math.ceil(radius / COARSE)
        pitch = radius / self.count
        left, bottom, right, top = board.frame.bounds
        self.x = _lines([_anchor(each, 0) for each in (start, end)], pitch, left, right)
        self.y = _lines([_anchor(each, 1) for each in (start, end)], pitch, bottom, top)
        self.shape = len(self.x), len(self.y)
        self.shift = _shifts(self.x, radius), _shifts(self.y, radius)
        self._parts = [
            np.array([_parts(board.solid, self.x, y, level=True) for y in self.y]).T,
            np.array([_parts(board.solid, self.y, x, level=False) for x in self.x]),
        ]
        self.clear = {(h, t): self._arcs_clear(h, t) for h in range(4) for t in (1, -1)}

    def point(self, place):
        return Point(float(self.x[place[0]]), float(self.y[place[1]]))

    def corner(self, place, heading):
        """Return the corner of the bend that begins at a place."""
        (x, y), (dx, dy) = self.point(place), AHEAD[heading % 4]
        return Point(x + dx * self.radius, y + dy * self.radius)

    def apart(self, a, b):
        return abs(self.x[a[0]] - self.x[b[0]]) + abs(self.y[a[1]] - self.y[b[1]])

    def gone_straight(self, lengths, heading):
        """Return the least length at each place for who may go on straight in a heading."""
        axis = heading % 2
        values = np.where(self._parts[axis] % 2, NEVER, lengths)  # odd where blocked
        values = values if axis == 0 else values.T
        along = self.x if axis == 0 else self.y
        parts = self._parts[axis] if axis == 0 else self._parts[axis].T
        if heading >= 2:
            values, along, parts = values[::-1], -along[::-1], parts.max() - parts[::-1]
        far = 1e9
        rest = values - along[:, None] + (parts.max() - parts) * far
        least = np.minimum.accumulate(rest, axis=0) - (parts.max() - parts) * far + along[:, None]
        least = np.where(least < NEVER / 2, least, NEVER)
        if heading >= 2:
            least = least[::-1]
        return least if axis == 0 else least.T

    def bent_everywhere(self, after, ahead, bend):
        """Return the least length just after a bend at each place, with one more bend everywhere it is open."""
        fresh = [each.copy() for each in after]
        for heading in range(4):
            for turn in (1, -1):
                self.bend_all(ahead[heading], heading, turn, bend, fresh[(heading + turn) % 4])
        return fresh

    def bend_all(self, lengths, heading, turn, bend, into):
        places = np.nonzero((lengths < NEVER / 2) & self.clear[heading, turn])
        to = self._after(places, heading, turn)
        fits = (to[0] >= 0) & (to[1] >= 0)
        np.minimum.at(into, (to[0][fits], to[1][fits]), lengths[places][fits] + bend)

    def bent(self, place, heading, turn):
        to = self._after((np.array([place[0]]), np.array([place[1]])), heading, turn)
        return None if to[0][0] < 0 or to[1][0] < 0 else (int(to[0][0]), int(to[1][0]))

    def _after(self, places, heading, turn):
        dx, dy = AHEAD[heading % 4]
        tx, ty = AHEAD[(heading + turn) % 4]
        return self.shift[0][dx + tx][places[0]], self.shift[1][dy + ty][places[1]]

    def along(self, end, heading, price):
        """Yield the places where a first bend can begin, with the length up to there and the price of leaving so."""
        dx, dy = AHEAD[heading % 4]
        axis, lines = heading % 2, (self.x, self.y)[heading % 2]
        line = np.flatnonzero(np.isclose((self.y, self.x)[axis], (end.at.y, end.at.x)[axis], atol=1e-6))[0]
        for number, at in enumerate(lines):
            length = (at - (end.at.x, end.at.y)[axis]) * (dx + dy)
            if length < end.straight - 1e-6:
                continue
            point = Point(at, end.at.y) if axis == 0 else Point(end.at.x, at)
            if not end.leg.intersects(LineString([end.at, point])):
                yield ((number, line) if axis == 0 else (line, number)), float(length) + price

    def _arcs_clear(self, heading, turn):
        picture, (left, bottom) = self.board.picture
        clear = np.ones(self.shape, dtype=bool)
        for dx, dy in arc_points(heading, turn, self.radius):
            i = np.clip(np.round((self.x + dx - left) / PIXEL).astype(int), 0, picture.shape[0] - 1)
            j = np.clip(np.round((self.y + dy - bottom) / PIXEL).astype(int), 0, picture.shape[1] - 1)
            clear &= ~picture[np.ix_(i, j)]
        return clear


def _anchor(end, axis):
    """Return where a line across an axis must run for an end: where its first bend can begin at the earliest."""
    if len(end.headings) == 1 and end.headings[0] % 2 == axis:
        return end.at[axis] + sum(AHEAD[end.headings[0]]) * end.straight
    return end.at[axis]


def _lines(anchors, pitch, low, high):
    """Return the places of lines a pitch apart from some anchors on."""
    found = [
        at + pitch * np.arange(math.ceil((low - at) / pitch), math.floor((high - at) / pitch) + 1) for at in anchors
    ]
    places = np.sort(np.concatenate(found))
    return places[np.concatenate([[True], np.diff(places) > 1e-6])]


def _shifts(lines, radius):
    """Return for -1, 0 and 1 which line lies so many radii from each, -1 for none."""
    found = {0: np.arange(len(lines))}
    for sign in (-1, 1):
        near = np.clip(np.searchsorted(lines, lines + sign * radius), 1, len(lines) - 1)
        near = np.where(
            np.abs(lines[near - 1] - lines - sign * radius) < np.abs(lines[near] - lines - sign * radius),
            near - 1,
            near,
        )
        found[sign] = np.where(np.abs(lines[near] - lines - sign * radius) < 1e-5, near, -1)
    return found


def _parts(solid, places, line, *, level):
    """Return numbers for places along a line: the same number where nothing blocks between them."""
    ends = [(places[0] - 1, line), (places[-1] + 1, line)]
    blocked = LineString(ends if level else [each[::-1] for each in ends]).intersection(solid)
    stops = []
    for piece in shapely.get_parts(blocked):
        at = [each[0 if level else 1] for each in piece.coords]
        if max(at) - min(at) > 0.02:
            stops.append((min(at) + 0.01, max(at) - 0.01))
    if not stops:
        return np.zeros(len(places), dtype=int)
    low, high = (np.array(sorted(each)) for each in zip(*stops, strict=True))
    begun = np.searchsorted(low, places)
    # a place's number grows by two for each blocked stretch that begins before it, by one inside of it
    return 2 * begun - (begun > np.searchsorted(high, places, side="right"))
