"""Clamp sharing: alike cables side by side share clamps.

Thick cables come first, then by id, so that nothing hangs on the order of the plan.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TypeAlias

from boardplan.geometry.bends import turn_between
from boardplan.geometry.point import Point
from boardplan.routing.supports.clamp import Clamp
from boardplan.routing.supports.clamp_room import Bench, includes
from boardplan.routing.supports.clamp_setter import ROOM, Lying, Placed, Setter
from boardplan.routing.supports.clamp_spacing import NOISE

_PARALLEL = 0.01  # degrees

Beside: TypeAlias = Mapping[str, frozenset[str]]
"""Which cables lie beside which, by their ids."""


def order_of(lying: Lying) -> tuple[float, str]:
    """Return what sorts cables: the thick ones first, then by id."""
    return -lying.diameter, lying.cable.id


def side_by_side(one: Lying, other: Lying, gap: float) -> bool:
    """Say whether straights of two cables lie beside each other with no more than a gap between the jackets."""
    apart = one.half + other.half + gap + ROOM
    for ours in one.seats:
        near = ours.bench.box.grown(apart)
        for theirs in other.seats:
            if near.touches(theirs.bench.box) and parallel(ours.bench.stretch.towards, theirs.bench.stretch.towards):
                return True
    return False


def alike(one: Lying, other: Lying) -> bool:
    """Say whether two cables may share a clamp: single ones of one class and thickness."""
    same = one.cable.cable_class == other.cable.cable_class and one.diameter == other.diameter
    return same and one.cable.count == other.cable.count == 1


@dataclass(frozen=True, eq=False)
class Share:
    """What came of asking whether two cables share clamps: their clamps before and after, the thicker's first."""

    before: tuple[Lying, Lying, tuple[Placed, ...], tuple[Placed, ...]]
    after: tuple[tuple[Placed, ...], tuple[Placed, ...]]


Shares: TypeAlias = Mapping[tuple[str, str], Share]
"""What is kept of each pair, by the ids of its cables."""


def shared(
    setter: Setter, order: Sequence[Lying], pairs: Beside, old: Shares
) -> tuple[dict[str, tuple[Placed, ...]], dict[tuple[str, str], Share]]:
    """Return the clamps of cables, some of them shared, and what to keep; asked anew where anything is another."""
    placed = {each.cable.id: each.alone for each in order}
    known = {each.cable.id: each for each in order}
    rank = {each.cable.id: number for number, each in enumerate(order)}
    shares: dict[tuple[str, str], Share] = {}
    for other in order:
        key = other.cable.id
        for one in sorted((each for each in pairs.get(key, ()) if rank[each] < rank[key]), key=rank.__getitem__):
            before = known[one], other, placed[one], placed[key]
            kept = old.get((one, key))
            same = kept is not None and all(a is b for a, b in zip(kept.before, before, strict=True))
            share = kept if kept is not None and same else Share(before, _share(setter, *before))
            shares[one, key] = share
            placed[one], placed[key] = share.after
    return placed, shares


def _share(
    setter: Setter, one: Lying, other: Lying, first: tuple[Placed, ...], second: tuple[Placed, ...]
) -> tuple[tuple[Placed, ...], tuple[Placed, ...]]:
    """Return the clamps of one cable widened to hold the other too, whose own ones are then set anew."""
    pairs = [each for each in second if len(each[1].cables) > 1]
    given, widened = list(pairs), list(first)
    around = other.around.grown(one.half + setter.beside)
    for index, (along, clamp) in enumerate(first):
        may_be = len(clamp.cables) == 1 and around.holds(clamp.at)
        both = _both(setter, other, clamp, [at for at, _ in given]) if may_be else None
        if both is not None:
            widened[index] = along, both[1]
            given.append(both)
    if len(given) == len(pairs):
        return first, second
    return tuple(widened), setter.set_along(other, given)


def _both(setter: Setter, lying: Lying, clamp: Clamp, taken: list[float]) -> Placed | None:
    """Return a clamp widened to hold a cable too, with its place along that; none where that can't be."""
    for seat in lying.seats:
        stretch = seat.bench.stretch
        if parallel(stretch.towards, clamp.towards):
            beside = stretch.seen(clamp.at)
            along, apart = stretch.along + beside.x, abs(beside.y) - lying.diameter
            near_enough = -NOISE <= apart <= setter.beside + NOISE
            fits = near_enough and stretch.holds(along, setter.foot.half)
            if fits and _may_hold(setter, lying, along, taken):
                pair = _pair(setter, lying, clamp, seat.bench)
                if pair is not None:
                    return along, pair
    return None


def _may_hold(setter: Setter, lying: Lying, along: float, taken: list[float]) -> bool:
    inside = includes((setter.bounds(run, lying.diameter) for run in lying.runs), along)
    return inside and all(abs(along - each) >= setter.spacing.least for each in taken)


def _pair(setter: Setter, lying: Lying, clamp: Clamp, bench: Bench) -> Clamp | None:
    """Return a clamp over two cables, none where it has no room; with a foot on either side, or on one."""
    own, beside = (lying.cable.id, *clamp.cables), bench.stretch.seen(clamp.at)
    width = abs(beside.y) + lying.diameter
    low, high = beside.y / 2 - width / 2, beside.y / 2 + width / 2
    spans = {1: (high, high + setter.foot.beside), -1: (low - setter.foot.beside, low)}
    first = 1 if bench.leads(1) else -1
    along = bench.stretch.along + beside.x
    for feet in ((first, -first), (first,), (-first,)):
        if includes(bench.free((low, high), [spans[side] for side in feet], own), along):
            on_own, towards = bench.stretch.at(along), bench.stretch.towards
            at = Point((on_own.x + clamp.at.x) / 2, (on_own.y + clamp.at.y) / 2)
            out = width / 2 + setter.foot.screw
            return replace(
                clamp,
                cables=tuple(sorted(own)),
                at=at,
                diameters=(*clamp.diameters, lying.diameter),
                width=width,
                screws=tuple(at.ahead(towards + 90 * side, out) for side in feet),
            )
    return None


def parallel(one: float, other: float) -> bool:
    """Say whether two directions are the same or opposite."""
    turn = abs(turn_between(one, other))
    return min(turn, 180 - turn) < _PARALLEL
