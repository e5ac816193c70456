"""Pulled tight: a found way laid to the millimetre where tidy places make it longer than it need be.

The search turns on tidy places, and on few of them round a corner, so that a short way can be some per cent longer. It
is searched again on lines close beside its own legs, farther and nearer ones, each time bound to cost less.
"""

from collections.abc import Callable, Sequence
from dataclasses import replace
from itertools import pairwise

from boardplan.routing.square.open_lines import WEIGHT, Spot, units
from boardplan.routing.square.square_way import Found, Search, Turning

_WORTH = 100
"""A way stays in tidy places if it becomes shorter by less than one part of so many: common practice, no source."""
_ASIDES = (1, 2, 3, 4, 6, 8, 12, 16, 24, 32)  # mm
_BESIDE = (0, *(units(sign * each) for each in _ASIDES for sign in (-1, 1)))


def pulled_tight(found: Found, radius: int, search: Callable[[Turning], Search]) -> Found:
    """Return a way on whole mm beside a found one if it costs clearly less; radius in units.

    `search` gives the search that found it, on other lines to turn on, for ways that begin and end with the same rays.
    """
    tight: Found | None = None
    better: Found | None = found
    bound = worth_pulling(found)
    while better is not None:
        better = search(lines_beside(better.spots, radius)).run(bound)
        if better is not None:
            tight, bound = better, better.cost - 1
    return found if tight is None else replace(tight, start=found.start, end=found.end)


def worth_pulling(found: Found) -> int:
    """Return what a way costs at most that is worth to be laid in place of a found one."""
    return found.cost - found.cost // _WORTH


def may_be_loose(found: Found, least: int) -> bool:
    """Say whether a way could be clearly shorter: if it costs more than `least`, as any does, and goes back at all."""
    if found.cost - least <= found.cost // _WORTH:
        return False
    back = 0
    for axis in (0, 1):
        ahead = [b[axis] - a[axis] for a, b in pairwise(found.spots)]
        back += min(sum(each for each in ahead if each > 0), -sum(each for each in ahead if each < 0))
    return 2 * back * WEIGHT * _WORTH >= found.cost


def lines_beside(spots: Sequence[Spot], radius: int) -> Turning:
    """Return the lines of all legs, some beside those between corners, and those on which a way turns back at once."""
    turning: Turning = ({}, {})
    legs = [(0, a[0]) if a[0] == b[0] else (1, a[1]) for a, b in pairwise(spots)]
    last = len(legs) - 1
    for index, (axis, line) in enumerate(legs):
        turning[axis][line] = []
        if 0 < index < last:
            at_once = [legs[each][1] for each in (index - 2, index + 2) if 0 <= each <= last]
            places = [line + each for each in _BESIDE]
            places += [each + sign * 2 * radius for each in at_once for sign in (-1, 1)]
            turning[axis].update({each: [] for each in places})
    return turning
