"""Cut length: how long to cut each cable: its way, its lugs, its slack, its matched group.

All lengths in mm; `length_sum.CutLength` says what stands in each.
"""

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import pairwise

from boardplan.geometry.bends import corner_saving, tangent_length, turns, without_repeats
from boardplan.geometry.units import tidy_number
from boardplan.model.cable import Cable, ExitEnd, Leg, OffBoardEnd, SlackClass
from boardplan.model.plan import Plan
from boardplan.model.trust import Trust
from boardplan.routing.lengths.clocking import clocked
from boardplan.routing.lengths.end_work import work_at_ends
from boardplan.routing.lengths.length_sum import BendSaving, CutLength
from boardplan.routing.lengths.loops import doubts_of, loops_of, rope_doubts
from boardplan.routing.lengths.matched_group import matched
from boardplan.routing.lengths.passed import Passable
from boardplan.routing.lengths.rises import has_heights, rises_of, things_passed
from boardplan.routing.route import NoWay, Route, Way

TRUST_FALLING: tuple[Trust, ...] = ("measured", "customer", "photo", "estimated")
"""How far a leg's length can be trusted, the best first."""
_JUMPER_FROM = 16.0  # mm²: thinner cables bend by hand, so they get the slack of small ones
_CLASS_WORDS: dict[SlackClass, str] = {
    "jumper": "a short jumper",
    "large": "a large cable on the board",
    "small": "a small or medium cable",
    "off-board": "an off-board run",
    "signal": "a signal lead",
}


def cut_lengths(plan: Plan, ways: Mapping[str, Way]) -> dict[str, CutLength]:
    """Return the cut length of every cable, in the plan's order, matched groups cut alike."""
    things = things_passed(plan)
    own = {cable.id: _own_length(plan, cable, ways.get(cable.id), things) for cable in plan.cables.values()}
    groups: dict[tuple[str, bool], list[CutLength]] = {}
    for length in own.values():
        if length.group:  # bought leads match bought leads: no shop sells them cut to a cable
            groups.setdefault((length.group, length.stock), []).append(length)
    for members in groups.values():
        for each in matched(members, plan):
            own[each.cable] = each
    return {each.cable: _weighed(plan, each) for each in own.values()}


def _own_length(plan: Plan, cable: Cable, way: Way | None, things: Sequence[Passable]) -> CutLength:
    """Return what a cable needs for itself, before its group has a say."""
    bare = _bare(plan, cable)
    if not isinstance(way, Route):
        return replace(bare, reason=way.reason if isinstance(way, NoWay) else "no way was looked for", final=False)
    walked = _walked(plan, bare, way, things)
    if walked.net is None:
        return walked
    if plan.conductors[cable.conductor].stock_lengths:
        return _from_stock(plan, cable, walked)
    return _cut_to_step(plan, cable, way, walked)


def _bare(plan: Plan, cable: Cable) -> CutLength:
    """Return a length with what is known of a cable without its way."""
    trust, ends = _trust_of(cable), work_at_ends(plan, cable)
    estimated = ["an off-board leg is estimated: measure again before cutting"] if trust == "estimated" else []
    open_words = (*estimated, *rope_doubts(plan, cable, ends))
    return CutLength(
        cable.id,
        cable.count,
        ends,
        group=cable.group,
        trust=trust,
        final=not open_words,
        flat=not has_heights(plan),
        notes=open_words,
    )


def _trust_of(cable: Cable) -> Trust:
    """Return the worst trust of the off-board legs."""
    return max((leg.trust for leg in off_board_legs(cable)), key=TRUST_FALLING.index, default="measured")


def off_board_legs(cable: Cable) -> tuple[Leg, ...]:
    """Return the stretches of a cable away from the board, those of its first end first."""
    return tuple(leg for end in cable.ends if isinstance(end, OffBoardEnd) for leg in end.legs)


def _walked(plan: Plan, bare: CutLength, way: Route, things: Sequence[Passable]) -> CutLength:
    """Return the length with its path and net: straight legs, corner savings, rises, off-board legs, lugs, loops."""
    cable = plan.cables[bare.cable]
    corners = without_repeats(way.points)
    legs = tuple(a.distance_to(b) for a, b in pairwise(corners))
    bends = tuple(BendSaving(turn, corner_saving(way.radius, turn)) for turn in turns(corners))
    if _bends_overlap(legs, bends, way.radius):
        words = f"its bends with radius {tidy_number(way.radius)} need more than a leg of its way is long"
        return replace(bare, reason=words, final=False)
    flat_path = sum(legs) - sum(bend.saving for bend in bends) + sum(leg.length for leg in off_board_legs(cable))
    stiff = _stiff_jumper(plan, cable, way, flat_path)
    rises = rises_of(plan, cable, way, things, bare.ends, stiff=stiff)
    path = flat_path + rises.adds
    net = path - sum(end.deduction for end in bare.ends)
    if net <= 0:
        return replace(bare, reason="its lugs take more than its way is long", final=False)
    loops = tuple(loops_of(plan, cable, bare.ends))
    walked = replace(
        bare,
        ends=clocked(plan, cable, way, bare.ends),
        legs=legs,
        radius=way.radius,
        bends=bends,
        rise=rises.adds,
        rises=rises.parts,
        left_out=rises.left_out,
        off_board=sum(leg.length for leg in off_board_legs(cable)),
        path=path,
        net=net,
        extra=sum(value for _, value in loops),
        notes=bare.notes + _unknown_lugs(bare) + tuple(doubts_of(plan, cable, bare.ends)) + _beyond_exits(bare, cable),
    )
    return replace(walked, parts=tuple(_parts_of_net(walked, cable)) + loops)


def _parts_of_net(length: CutLength, cable: Cable) -> Iterator[tuple[str, float]]:
    """Yield the lines of the sum that lead to the net, words and mm."""
    yield f"straight legs on the board, {_sum_words(length.legs)}", sum(length.legs)
    if length.bends:
        words = f"{_corner_words(length.bends)} with radius {tidy_number(length.radius)}"
        yield words, -sum(bend.saving for bend in length.bends)
    yield from length.rises
    if length.off_board:
        yield f"off the board, {_sum_words(leg.length for leg in off_board_legs(cable))}", length.off_board
    for end in length.ends:
        if end.deduction:
            yield f"stud to wire stop in the lug at {end.place}", -end.deduction


def _unknown_lugs(length: CutLength) -> tuple[str, ...]:
    return tuple(
        f"the lug at {each.place} is not measured: nothing is taken off" for each in length.ends if each.lug_unknown
    )


def _beyond_exits(bare: CutLength, cable: Cable) -> tuple[str, ...]:
    """Return a note for each end at an exit: nobody may take the cut for what reaches further."""
    ends = zip(cable.ends, bare.ends, strict=True)
    return tuple(f"ends at {work.place}: nothing is added beyond it" for end, work in ends if isinstance(end, ExitEnd))


def _bends_overlap(legs: Sequence[float], bends: Sequence[BendSaving], radius: float) -> bool:
    """Say whether two bends share a stretch of a leg: what they save is then no measure of anything."""
    tangents = [0.0, *(tangent_length(radius, bend.turn) for bend in bends), 0.0]
    shares = zip(legs, pairwise(tangents), strict=True) if legs else ()
    return any(leg < before + after - _OVERLAP for leg, (before, after) in shares)


_OVERLAP = 0.01  # mm: a way found bend to bend may be out by float noise


def _sum_words(lengths: Iterable[float]) -> str:
    return " + ".join(tidy_number(each) for each in lengths)


def _corner_words(bends: tuple[BendSaving, ...]) -> str:
    square = all(abs(abs(bend.turn) - 90) < 0.05 for bend in bends)  # noqa: PLR2004 - as square as any print shows
    return f"{len(bends)} {'square ' if square else ''}{'corner' if len(bends) == 1 else 'corners'}"


def slack_class_of(plan: Plan, cable: Cable, way: Route, path: float) -> SlackClass:
    """Return the slack class of a cable: the one it names, or what the rule set's conditions make of it."""
    conductor = plan.conductors[cable.conductor]
    area = conductor.area or 0.0
    outside = not way.in_channels
    conditions: tuple[tuple[SlackClass, bool], ...] = (
        ("signal", bool(conductor.stock_lengths)),
        ("off-board", any(isinstance(end, OffBoardEnd) for end in cable.ends)),
        ("jumper", _stiff_jumper(plan, cable, way, path)),
        ("large", outside and area >= plan.rules.value("large-cable-from")),
    )
    if cable.slack is not None:
        return cable.slack
    for name, holds in conditions:
        if holds:
            return name
    return "small"


def _stiff_jumper(plan: Plan, cable: Cable, way: Route, path: float) -> bool:
    """Say whether a thick cable goes from lug to lug by a short path, outside of channels."""
    if way.in_channels or (plan.conductors[cable.conductor].area or 0.0) < _JUMPER_FROM:
        return False
    lugged = all(end.lugged for end in work_at_ends(plan, cable))
    return lugged and path < plan.rules.value("jumper-shorter-than") - 1e-9


def _slack(plan: Plan, slack_class: SlackClass, path: float) -> float:
    rule = plan.rules.slack[slack_class]
    return rule.slack + rule.share * path


def _cut_to_step(plan: Plan, cable: Cable, way: Route, length: CutLength) -> CutLength:
    path, net = length.path or 0.0, length.net or 0.0
    slack_class = slack_class_of(plan, cable, way, path)
    rule, slack = plan.rules.slack[slack_class], _slack(plan, slack_class, path)
    needed = net + length.extra + slack
    cut = rounded_up(needed, rule.step)
    parts = [
        *length.parts,
        (f"slack for {_CLASS_WORDS[slack_class]}", slack),
        (f"rounded up to {tidy_number(rule.step)}", cut - needed),
    ]
    return replace(
        length,
        slack_class=slack_class,
        slack=slack,
        step=rule.step,
        own_cut=cut,
        cut=cut,
        minus=rule.minus,
        plus=rule.plus,
        parts=tuple(parts),
    )


def _from_stock(plan: Plan, cable: Cable, length: CutLength) -> CutLength:
    """Return a lead with moulded ends: the next stock length above its path and slack, if there is one."""
    path = length.path or 0.0
    slack_class = cable.slack or "signal"
    slack = _slack(plan, slack_class, path)
    lengths = sorted(plan.conductors[cable.conductor].stock_lengths)
    needed = path + length.extra + slack
    cut = next((each for each in lengths if each >= needed - _ROUNDING), None)
    parts = [*length.parts, (f"slack for {_CLASS_WORDS[slack_class]}", slack)]
    notes = list(length.notes)
    if cut is None:
        words = f"no stock lead is long enough: {tidy_number(needed)} mm wanted, {lengths[-1]:g} is the longest"
        notes.insert(0 if length.final else 1, words)  # why it isn't final comes first
    else:
        parts.append(("up to the next stock length", cut - needed))
    return replace(
        length,
        slack_class=slack_class,
        slack=slack,
        own_cut=cut,
        cut=cut,
        stock=True,
        final=length.final and cut is not None,
        parts=tuple(parts),
        notes=tuple(notes),
    )


_ROUNDING = 1e-6  # a sum of floats may lie this far above the step it means, in mm


def rounded_up(length: float, step: float) -> float:
    """Return a length rounded up to a whole number of steps; noise of float sums does not count as more.

    >>> rounded_up(405.5, 5), rounded_up(100.0000001, 5)
    (410.0, 100.0)
    """
    return float(math.ceil((length - _ROUNDING) / step) * step)


def _weighed(plan: Plan, length: CutLength) -> CutLength:
    per_metre = plan.conductors[plan.cables[length.cable].conductor].mass_per_m
    if length.cut is None or per_metre is None:
        return length
    return replace(length, mass=length.count * length.cut / 1000 * per_metre)
