"""Buying: what is still to buy of each part, with what is at hand taken off: nothing is bought twice."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from boardplan.model.supply import Supply
from boardplan.output.cutting.cutting_plan import CutBar, CuttingPlan
from boardplan.output.cutting.reel_plan import CutGroup, cut_groups, metres
from boardplan.output.parts.cables import cable_key
from boardplan.output.parts.channels import channel_key
from boardplan.output.parts.part import Part
from boardplan.output.parts.parts_list import PartsList
from boardplan.routing.lengths.cut_length import rounded_up
from boardplan.routing.lengths.reels import ReelNeed, reel_needs

_LEAST_CABLE = 100.0
"""Cable is bought by the tenth of a metre, in mm."""


@dataclass(frozen=True, slots=True)
class Buying:
    """One line of the bill: how much to buy in the part's unit, none where a person has to say; what is at hand."""

    part: Part
    buy: float | None
    unit: str
    at_hand: str = ""
    as_words: str = ""

    @property
    def done(self) -> bool:
        """Whether nothing is left to buy."""
        return self.buy == 0


def buyings_of(parts: PartsList) -> tuple[Buying, ...]:
    """Return all lines of the bill, alike parts as one."""
    merged = _merged(each for each in parts.parts if each.bought)
    from_stock = {**_cables(parts), **_channels(parts)}
    lines = []
    left: dict[str, float] = {}
    for part in merged:
        if part.mark is not None:
            lines.append(_marked(part, part.mark, left))
        elif part.key in from_stock and part.category in ("raw-cable", "channels"):
            lines.append(replace(from_stock[part.key], part=part))
        else:
            lines.append(Buying(part, part.quantity, part.unit))
    return tuple(lines)


def _merged(parts: Iterable[Part]) -> list[Part]:
    """Return parts with those alike put together."""
    found: dict[tuple[str, str, str, str], Part] = {}
    for each in parts:
        key = each.key, each.words, each.size, each.unit
        held = found.get(key)
        found[key] = each if held is None else _together(held, each)
    return list(found.values())


def _together(one: Part, other: Part) -> Part:
    needed = None if one.needed is None or other.needed is None else round(one.needed + other.needed, 6)
    spare = None if one.spare is None or other.spare is None else round(one.spare + other.spare, 6)
    note = one.note if other.note in one.note else f"{one.note}; {other.note}"
    return replace(one, needed=needed, spare=spare, uses=(*one.uses, *other.uses), note=note)


def _marked(part: Part, mark: Supply, left: dict[str, float]) -> Buying:
    """Return a line as a person marked it; a count at hand is used up by one line after the other."""
    note = f": {mark.note}" if mark.note else ""
    if mark.state == "stock" and mark.count is not None:
        at_hand = left.get(part.key, mark.count)
        taken = min(at_hand, part.quantity or 0.0)
        left[part.key] = round(at_hand - taken, 6)
        buy = None if part.quantity is None else round(part.quantity - taken, 6)
        return Buying(part, buy, part.unit, f"{taken:g} {part.unit} in stock{note}")
    when = f" {mark.date}" if mark.date else ""
    words = {
        "stock": "in stock",
        "bought": "bought already",
        "ordered": f"ordered, expected{when or ' when?'}",
        "customer": f"from the customer, asked on{when or ' ____'}",
    }
    return Buying(part, 0.0, part.unit, f"{words[mark.state]}{note}")


def _cables(parts: PartsList) -> dict[str, Buying]:
    """Return what to buy of the cables that the job names reels or offcuts for."""
    plan, lengths = parts.shop.plan, parts.shop.review.lengths
    needs = reel_needs(plan, lengths)
    groups = [each for each in cut_groups(plan, lengths) if not each.channel]
    found = {}
    for need, group in zip(needs, groups, strict=True):
        if group.plan is not None:
            key = cable_key(need.conductor, need.colour)
            part = next(each for each in parts.parts if each.key == key)
            found[key] = _cable(parts, part, need, group)
    return found


def _cable(parts: PartsList, part: Part, need: ReelNeed, group: CutGroup) -> Buying:
    plan = group.plan
    if plan is None:
        raise ValueError("expected a group with stock")
    stock = [
        each for each in parts.shop.plan.stock.cables if (each.conductor, each.colour) == (need.conductor, need.colour)
    ]
    endless = {each.name or f"reel of {metres(each.length)}" for each in stock if each.count is None}
    bought = [bar for bar in plan.bars if bar.name in endless]
    rests = [bar.left for bar in plan.bars] + _unused(plan, [(each.length, each.count) for each in stock])
    covered = max(rests, default=0.0) >= group.longest and math.fsum(rests) >= need.reserve
    missing = plan.missing_length + group.cut * len(plan.missing)
    extra = rounded_up(missing + (0.0 if covered else need.reserve), _LEAST_CABLE) / 1000
    buy = extra + sum(bar.length for bar in bought) / 1000
    own = [bar.name for bar in plan.bars if bar.name not in endless]
    words = [f"cut from {', '.join(dict.fromkeys(own))}" if own else "", "reserve is at hand" if covered else ""]
    return Buying(part, round(buy, 6), "m", "; ".join(each for each in words if each), _bars_words(bought, extra))


def _unused(plan: CuttingPlan, stock: Sequence[tuple[float, int | None]]) -> list[float]:
    """Return the lengths of what is at hand and not cut."""
    used = [bar.length for bar in plan.bars]
    rests = [length for length, count in stock for _ in range(count or 0)]
    for length in used:
        if length in rests:
            rests.remove(length)
    return rests


def _bars_words(bars: Sequence[CutBar], extra: float) -> str:
    counts: dict[str, int] = {}
    for bar in bars:
        counts[bar.name] = counts.get(bar.name, 0) + 1
    words = [f"{count} x {name}" for name, count in counts.items()]
    if words and extra:
        words.append(f"{extra:g} m more")
    return ", ".join(words)


def _channels(parts: PartsList) -> dict[str, Buying]:
    """Return how many lengths to buy of each section that the job names lengths for, one to spare with them."""
    groups = {each.title: each for each in cut_groups(parts.shop.plan, parts.shop.review.lengths) if each.channel}
    found = {}
    for part in parts.parts:
        if part.category == "channels" and part.bought:
            sizes = part.key.removeprefix("channel ").replace("x", " x ")
            those = [groups[name] for name in (f"Channel {sizes}, bases", f"Channel {sizes}, covers") if name in groups]
            if those and all(each.plan is not None for each in those):
                found[part.key] = _channel(parts, part, those)
    return found


def _channel(parts: PartsList, part: Part, groups: Sequence[CutGroup]) -> Buying:
    """Return the lengths: one holds a base and its cover, so the larger number counts."""
    stock = [each for each in parts.shop.plan.stock.channels if channel_key(each.width, each.height) == part.key]
    endless = {each.name or f"length of {metres(each.length)}" for each in stock if each.count is None}
    plans = [each.plan for each in groups if each.plan is not None]
    most = {
        name: max(sum(bar.name == name for bar in plan.bars) for plan in plans)
        for name in dict.fromkeys(bar.name for plan in plans for bar in plan.bars)
    }
    spare = sum(each.spare or 0.0 for each in parts.parts if each.key == part.key and not each.bought)
    buy = sum(count for name, count in most.items() if name in endless) + spare
    own = ", ".join(f"{count} x {name}" for name, count in most.items() if name not in endless)
    short = max(plan.missing_length for plan in plans)
    words = [f"{count} x {name}" for name, count in most.items() if name in endless]
    if spare:
        words.append(f"{spare:g} to spare")
    if short:
        words.append(f"{metres(short)} found no room on what is named: which lengths are on sale?")
    return Buying(part, None if short else buy, "lengths", f"cut from {own}" if own else "", ", ".join(words))
