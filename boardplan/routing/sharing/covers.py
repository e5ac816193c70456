"""Channel sharing, covers: a row that bars the parts of cables in a piece which no whole cables amount to.

The shares of cables in a piece must be a mean of sets of whole cables that fit in it. Where they are not, a linear
program finds weights that tell them apart: no set that fits weighs more than 1, the shares do (Crowder, Johnson and
Padberg 1983, here with the knapsack solved for each set, as by Boyd 1994). The weights of cables that have no share
in the piece are then made as great as they may be, one after the other (lifting: Padberg 1975).
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np

from boardplan.routing.sharing.rows import Integers, Numbers
from boardplan.routing.sharing.sharing import ROOM_NOISE

_STEPS = 2000
"""Into how many steps a room is cut: areas are rounded down to them, so that every set that fits still does."""
_SHARE = 1e-7
_BROKEN = 1e-4
"""By how much shares must break a row for it to be worth having."""
_GOOD = 0.6
"""A row broken by this share of what any could be broken by is good enough."""
_SETS = 60
"""How many sets are looked at for one row."""
SAFE = 1e-9
"""How much more than 1 sets may weigh: what sums of weights may be out by, so that the row bars no whole answer."""


@dataclass(frozen=True, slots=True)
class Knapsack:
    """A piece's room and the areas of cables, in whole steps: a set that fits by area fits in steps as well."""

    sizes: Integers
    room: int

    @staticmethod
    def of(areas: Numbers, room: float) -> "Knapsack":
        """Return areas in steps, rounded down, and the room, rounded as little as can be."""
        step = (room + ROOM_NOISE) / _STEPS
        return Knapsack(np.floor(areas / step * (1 - SAFE)).astype(np.int64), _STEPS)


def cover_row(shares: Numbers, areas: Numbers, room: float) -> Numbers | None:
    """Return by cable a weight of which no set that fits has more than 1, but the shares have; none if there is none.

    `shares` are how much of each cable lies in the piece, 0 to 1.
    """
    if not may_have_cover(shares, areas, room):
        return None
    inside = np.flatnonzero(shares > _SHARE)
    weights = _telling_apart(shares[inside], Knapsack.of(areas[inside], room))
    if weights is None:
        return None
    found = np.zeros(len(areas))
    found[inside] = weights
    return lifted(found, Knapsack.of(areas, room), _thickest(areas, set(inside.tolist())))


def quick_cover_row(shares: Numbers, areas: Numbers, room: float) -> Numbers | None:
    """Return weights like `cover_row`, found by rules of thumb: in a moment, but not always where there are some.

    Cables too many to fit are taken in three orders; of a least set of those at most all but one lie there, and the
    weights of all others are lifted after, those with the greatest shares first.
    """
    if not may_have_cover(shares, areas, room):
        return None
    inside = np.flatnonzero(shares > _SHARE)
    own, sizes = shares[inside], areas[inside]
    knapsack, surest = Knapsack.of(sizes, room), np.argsort(-own, kind="stable").tolist()
    best, most = None, _BROKEN
    for order in (-own, (1 - own) / sizes, -own * sizes):
        cover = _least_cover(np.argsort(order, kind="stable").tolist(), own, knapsack)
        if len(cover) > 1:
            weights = np.zeros(len(inside))
            weights[cover] = 1 / (len(cover) - 1)
            weights = lifted(weights, knapsack, [each for each in surest if each not in cover])
            if weights @ own - 1 > most:
                best, most = weights, float(weights @ own) - 1
    if best is None:
        return None
    found = np.zeros(len(areas))
    found[inside] = best
    return lifted(found, Knapsack.of(areas, room), _thickest(areas, set(inside.tolist())))


def _least_cover(order: Sequence[int], shares: Numbers, knapsack: Knapsack) -> list[int]:
    """Return cables, taken in an order, that do not fit together while any one less does; none if all fit."""
    cover, size = [], 0
    for each in order:
        cover.append(each)
        size += int(knapsack.sizes[each])
        if size > knapsack.room:
            break
    else:
        return []
    for each in sorted(cover, key=lambda one: (float(shares[one]), one)):
        if size - knapsack.sizes[each] > knapsack.room:
            cover.remove(each)
            size -= int(knapsack.sizes[each])
    return cover


def _thickest(areas: Numbers, besides: set[int]) -> list[int]:
    """Return all cables but some, the thickest first."""
    return [each for each in np.argsort(-areas, kind="stable").tolist() if each not in besides]


def may_have_cover(shares: Numbers, areas: Numbers, room: float) -> bool:
    """Say whether there may be a cover: some cable lies there in part, and not all that do fit whole."""
    inside = shares > _SHARE
    return bool(areas[inside].sum() > room and (shares[inside] < 1 - _SHARE).any())


def _telling_apart(shares: Numbers, knapsack: Knapsack) -> Numbers | None:
    """Return weights that no set exceeds and the shares do; rows for sets are added as they are exceeded."""
    from scipy.optimize import linprog  # noqa: PLC0415 - slow to load

    sets = [_filled(shares, knapsack)]
    for _ in range(_SETS):
        rows = np.zeros((len(sets), len(shares)))
        for row, some in zip(rows, sets, strict=True):
            row[some] = 1.0
        solved = linprog(-shares, A_ub=rows, b_ub=np.ones(len(sets)), bounds=(0, 1), method="highs")
        found: Numbers = np.maximum(np.asarray(solved.x, dtype=np.float64), 0.0)
        most = float(found @ shares) - 1
        if most < _BROKEN:
            return None
        heaviest, some = heaviest_set(found, knapsack)
        weights: Numbers = found / max(heaviest, 1.0)
        if float(weights @ shares) - 1 > max(_BROKEN, _GOOD * most):
            return weights
        sets.append(some)
    return None


def _filled(shares: Numbers, knapsack: Knapsack) -> list[int]:
    """Return a set that fits, those with the greatest shares first."""
    left, found = knapsack.room, []
    for each in np.argsort(-shares, kind="stable").tolist():
        if knapsack.sizes[each] <= left:
            left -= int(knapsack.sizes[each])
            found.append(each)
    return found


def heaviest_set(weights: Sequence[float] | Numbers, knapsack: Knapsack) -> tuple[float, list[int]]:
    """Return the greatest weight of a set that fits, and the set: one cable after the other (Bellman 1957)."""
    best = np.zeros(knapsack.room + 1)
    taken = []
    for size, weight in zip(knapsack.sizes.tolist(), weights, strict=True):
        new = _with(best, size, weight)
        taken.append(new > best)
        best = new
    left, found = knapsack.room, []
    for each in reversed(range(len(taken))):
        if taken[each][left]:
            found.append(each)
            left -= int(knapsack.sizes[each])
    return float(best[-1]), found


def _with(best: Numbers, size: int, weight: float) -> Numbers:
    """Return the greatest weights by room if one more cable may be among them."""
    new = best.copy()
    if weight > 0 and size < len(best):
        np.maximum(new[size:], best[: len(best) - size] + weight, out=new[size:])
    return new


def lifted(weights: Numbers, knapsack: Knapsack, others: Iterable[int]) -> Numbers:
    """Return weights with those of other cables, one after the other, as great as they may be."""
    best, found, sizes = np.zeros(knapsack.room + 1), weights.copy(), knapsack.sizes.tolist()
    for each in np.flatnonzero(weights > 0).tolist():
        best = _with(best, sizes[each], float(weights[each]))
    for each in others:
        beside = float(best[knapsack.room - sizes[each]]) if sizes[each] <= knapsack.room else math.inf
        weight = 1.0 - beside - SAFE / len(weights)
        if weight > _BROKEN:
            found[each] = weight
            best = _with(best, sizes[each], weight)
    return found
