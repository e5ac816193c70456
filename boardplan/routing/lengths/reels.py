"""Reels: how much of each cable to take along, and how many lugs, ferrules and leads.

ReelNeed fields: conductor (id), colour, pieces, total (mm, sum of cuts), reserve (mm), take (m, rounded up to 0.1),
open (ids of cables without a length yet). CountNeed fields: name (words), count.
Functions: reel_needs(plan, lengths), lug_needs(plan, lengths), ferrule_needs(plan, lengths),
tube_needs(plan, lengths), stock_lead_needs(plan, lengths), clamp_needs(clamps), retainer_needs(retainers).
"""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass

from boardplan.model.plan import Plan
from boardplan.routing.lengths.cut_length import rounded_up
from boardplan.routing.lengths.end_work import core_words, size_words
from boardplan.routing.lengths.length_sum import CutLength
from boardplan.routing.supports.clamp import Clamp, own_clamps
from boardplan.routing.supports.retainers import Retainer

_RESERVE_SHARE = 0.10
"""Part of the sum kept in reserve, unless the longest single cut is more: common practice, no source."""


@dataclass(frozen=True, slots=True)
class ReelNeed:
    """One sort of cable in one colour: pieces, the sum of their cuts and the reserve in mm, what to take in m."""

    conductor: str
    colour: str
    pieces: int
    total: float
    reserve: float
    take: float
    open: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class CountNeed:
    """So many of one thing, by its words."""

    name: str
    count: int


def reel_needs(plan: Plan, lengths: Mapping[str, CutLength]) -> tuple[ReelNeed, ...]:
    """Return what to take from each reel, the largest conductors first; leads with moulded ends are not cut."""
    groups: dict[tuple[str, str], list[CutLength]] = {}
    for cable in plan.cables.values():
        if not plan.conductors[cable.conductor].stock_lengths:
            groups.setdefault((cable.conductor, cable.colour), []).append(lengths[cable.id])

    def largest_first(key: tuple[str, str]) -> tuple[float, str, str]:
        return -(plan.conductors[key[0]].area or 0.0), key[0], key[1]

    return tuple(
        _need(conductor, colour, groups[conductor, colour]) for conductor, colour in sorted(groups, key=largest_first)
    )


def _need(conductor: str, colour: str, members: list[CutLength]) -> ReelNeed:
    cuts = [(each.cut, each.count) for each in members if each.cut is not None]
    total = sum(cut * count for cut, count in cuts)
    reserve = max([_RESERVE_SHARE * total, *(cut for cut, _ in cuts)])
    return ReelNeed(
        conductor,
        colour,
        pieces=sum(count for _, count in cuts),
        total=total,
        reserve=reserve,
        take=rounded_up(total + reserve, 100.0) / 1000,
        open=tuple(each.cable for each in members if each.cut is None),
    )


def lug_needs(plan: Plan, lengths: Mapping[str, CutLength]) -> tuple[CountNeed, ...]:
    """Return the lugs at the ends on the boards, by what is ordered."""
    counts: Counter[str] = Counter()
    for cable in plan.cables.values():
        for end in lengths[cable.id].ends:
            if end.lugged:
                counts[end.lug] += cable.count
    return _sorted(counts)


def ferrule_needs(plan: Plan, lengths: Mapping[str, CutLength]) -> tuple[CountNeed, ...]:
    """Return the ferrules at clamps on the boards, one for each core."""
    counts: Counter[str] = Counter()
    for cable in plan.cables.values():
        conductor = plan.conductors[cable.conductor]
        for end in lengths[cable.id].ends:
            if end.ferrule:
                counts[core_words(conductor)] += cable.count * conductor.cores
    return _sorted(counts)


def blade_needs(plan: Plan, lengths: Mapping[str, CutLength]) -> tuple[CountNeed, ...]:
    """Return the blade terminals at the ends on the boards, by the size of a core."""
    counts: Counter[str] = Counter()
    for cable in plan.cables.values():
        for end in lengths[cable.id].ends:
            if end.blade:
                counts[core_words(plan.conductors[cable.conductor])] += cable.count
    return _sorted(counts)


def tube_needs(plan: Plan, lengths: Mapping[str, CutLength]) -> tuple[CountNeed, ...]:
    """Return the pieces of heat-shrink tube to cut for the ends on the boards, by size, colour and length in mm."""
    counts: Counter[tuple[float, str, float, str]] = Counter()
    for cable in plan.cables.values():
        conductor = plan.conductors[cable.conductor]
        for end in lengths[cable.id].ends:
            if end.tube is not None:
                name = size_words(conductor)
                counts[-(conductor.area or 0.0), name, end.tube, cable.colour] += cable.count
    return tuple(
        CountNeed(f"{name}, {colour}, {tube:g} mm", count) for (_, name, tube, colour), count in sorted(counts.items())
    )


def stock_lead_needs(plan: Plan, lengths: Mapping[str, CutLength]) -> tuple[CountNeed, ...]:
    """Return the leads with moulded ends, by length."""
    counts: Counter[tuple[float, str]] = Counter()
    for cable in plan.cables.values():
        length = lengths[cable.id]
        if length.stock and length.cut is not None:
            counts[length.cut, plan.conductors[cable.conductor].name] += cable.count
    return tuple(CountNeed(f"{name} {cut / 1000:g} m", count) for (cut, name), count in sorted(counts.items()))


def clamp_needs(clamps: Mapping[str, tuple[Clamp, ...]]) -> tuple[CountNeed, ...]:
    """Return the clamps by what they hold: a jacket of a diameter, or two side by side."""
    counts = Counter((each.diameters, each.size) for each in own_clamps(clamps))
    return tuple(CountNeed(f"for {size} mm", count) for (_, size), count in sorted(counts.items()))


def retainer_needs(retainers: Mapping[str, tuple[Retainer, ...]]) -> tuple[CountNeed, ...]:
    """Return the retainers of channels by how wide those are inside."""
    counts = Counter(each.width for those in retainers.values() for each in those)
    return tuple(CountNeed(f"{width:g} mm wide inside", count) for width, count in sorted(counts.items()))


def _sorted(counts: Counter[str]) -> tuple[CountNeed, ...]:
    return tuple(CountNeed(name, count) for name, count in sorted(counts.items()))
