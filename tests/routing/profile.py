"""A cable's centre line in space, bent step by step: an independent measure of lengths in three dimensions."""

import math
from itertools import pairwise

from boardplan.geometry.bends import Bend
from boardplan.geometry.point import bearing

STEP = 0.1
_NOISE = 1e-9


def place_at(pieces, along):
    """Return x and y at a distance along straights and arcs."""
    for piece in pieces:
        if along <= piece.length + _NOISE:
            share = min(1.0, along / piece.length) if piece.length else 0.0
            if isinstance(piece, Bend):
                return piece.centre.ahead(bearing(piece.centre, piece.start) + piece.turn * share, piece.radius)
            a, b = piece.start, piece.end
            return a.moved((b.x - a.x) * share, (b.y - a.y) * share)
        along -= piece.length
    return pieces[-1].end


def side_view(height, run, radius):
    """Return a climb as points (along, up), stepped along an arc, a slant and an arc; its turn is found by halving."""

    def along_of(turn):
        slant = (height - 2 * radius * (1 - math.cos(turn))) / math.sin(turn)
        return slant, 2 * radius * math.sin(turn) + slant * math.cos(turn)

    low, high = 1e-7, math.pi / 2 if height >= 2 * radius else math.acos(1 - height / (2 * radius))
    if along_of(high)[1] < run:
        for _ in range(100):
            middle = (low + high) / 2
            low, high = (middle, high) if along_of(middle)[1] > run else (low, middle)
    else:
        low = high  # too short a run: as steep as the radius allows
    slant, _ = along_of(low)
    count = max(1, math.ceil(radius * low / STEP))
    arc = [(radius * low / count, low * (index + 0.5) / count) for index in range(count)]
    pieces = max(1, math.ceil(slant / STEP))
    points = [(0.0, 0.0)]
    for length, turn in (*arc, *[(slant / pieces, low)] * pieces, *reversed(arc)):
        along, up = points[-1]
        points.append((along + length * math.cos(turn), up + length * math.sin(turn)))
    return points


def profile_points(levels, radius, counted):
    """Return a whole profile as points (along, height), from level to level.

    A climb that doesn't count is walked level: all that follows is taken to be as high as what came before.
    """
    points, height = [(levels[0][0], levels[0][2])], levels[0][2]
    for index, (start, end, own) in enumerate(levels):
        if index:
            before = levels[index - 1]
            if counted[index - 1]:
                climb = _climb(before[1], start, own - before[2], radius)
                assert climb[0][0] >= before[0] - STEP  # there is room for a square climb
                while points[-1][0] > climb[0][0]:
                    points.pop()
                points += [(along, height + up) for along, up in climb]
                height += own - before[2]
        points += _level(points[-1][0], end, height)
    return points


def _level(start, end, height):
    count = max(1, math.ceil((end - start) / STEP))
    return [(start + (end - start) * part / count, height) for part in range(1, count + 1)] if end > start else []


def _climb(end, next_start, height, radius):
    """Return a climb from where a level ends; a square one reaches into the levels beside, half on each side."""
    view = side_view(abs(height), next_start - end, radius)
    sign = 1 if height > 0 else -1
    spare = view[-1][0] - (next_start - end)
    return [(end - spare / 2 + x, sign * up) for x, up in view]


def length_in_space(pieces, points):
    """Return the length of a centre line that runs over a way at heights given along it."""
    placed = [(*place_at(pieces, along), height) for along, height in points]
    return sum(math.dist(a, b) for a, b in pairwise(placed))
