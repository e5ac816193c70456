"""Fastenings: every screw, bolt, nut and T-nut that the holes of a job ask for, then clamps and retainers."""

from collections.abc import Iterator
from dataclasses import replace

from boardplan.model.component_kind import Stage
from boardplan.model.fastener import Fastener
from boardplan.model.holes import Hole, holes_of
from boardplan.model.load_out import SpareSort
from boardplan.output.parts.part import Part, Use, counted
from boardplan.output.parts.shop import Shop
from boardplan.routing.supports.clamp import named_clamps
from boardplan.routing.supports.clamp_holes import clamp_holes

_WASHERS = {"t-nut": 1, "through": 2}
"""Under the head, and under the nut where there is one: common practice, no source."""


def all_holes(shop: Shop) -> tuple[Hole, ...]:
    """Return all holes of a job, those for the screws of clamps with them."""
    return (*holes_of(shop.plan), *clamp_holes(shop.plan, shop.review.clamps))


def fastening_parts(shop: Shop) -> Iterator[Part]:
    """Yield fasteners by what the holes ask for, then clamps and retainers."""
    held: dict[str, list[Hole]] = {}
    unknown: dict[str, list[Hole]] = {}
    for hole in all_holes(shop):
        if hole.sort == "exit":
            continue
        groups = held if hole.fastener in shop.plan.fasteners else unknown
        groups.setdefault(hole.fastener, []).append(hole)
    for name in sorted(held, key=lambda each: (shop.plan.fasteners[each].hole, shop.plan.fasteners[each].thread, each)):
        yield from _fastener(shop, shop.plan.fasteners[name], _uses(held[name]))
    yield from _unknown(shop, [hole for those in unknown.values() for hole in those])
    yield from _clamps(shop)
    yield from _retainers(shop)


def _uses(holes: list[Hole]) -> tuple[Use, ...]:
    counts: dict[tuple[str, str, Stage], int] = {}
    for hole in holes:
        key = hole.owner, hole.board, hole.stage
        counts[key] = counts.get(key, 0) + 1
    return tuple(Use(owner, n, board, stage) for (owner, board, stage), n in counts.items())


def _fastener(shop: Shop, fastener: Fastener, uses: tuple[Use, ...]) -> Iterator[Part]:
    """Yield a fastener, and the nuts and washers that go with it."""
    count = sum(each.count for each in uses)
    sort: SpareSort = "screws" if fastener.hole == "pilot" else "bolts"
    size = f"M{fastener.thread:g}" if fastener.hole != "pilot" else f"{fastener.thread:g} mm"
    long = "" if fastener.length is None else f" x {fastener.length:g} mm"
    yield shop.part(
        f"fastener {fastener.id}", "fasteners", fastener.name, uses, spare=shop.spare(sort, count),
        size=f"{size}{long}", standard=_standard(fastener), question="" if long else "how long? which head?",
    )  # fmt: skip
    if fastener.hole == "pilot":
        return
    nut = "T-nut" if fastener.hole == "t-nut" else "Nut"
    spare = shop.spare("bolts", count)
    nuts = tuple(replace(each, stage="shop") for each in uses) if nut == "T-nut" else uses
    yield shop.part(f"{nut.lower()} {size}", "fasteners", f"{nut} {size}", nuts, spare=spare, size=size)
    several = tuple(Use(each.thing, each.count * _WASHERS[fastener.hole], each.board, each.stage) for each in uses)
    spare = shop.spare("bolts", sum(each.count for each in several))
    yield shop.part(f"washer {size}", "fasteners", f"Washer {size}", several, spare=spare, size=size)


def _standard(fastener: Fastener) -> str:
    """Return the standard of a thread as far as the fastener's source names it."""
    found = [part.removeprefix("thread:").strip() for part in fastener.source.split(";") if part.startswith("thread:")]
    return found[0] if found else ""


def _unknown(shop: Shop, holes: list[Hole]) -> Iterator[Part]:
    """Yield what holes ask for that nobody said, by the width of the hole."""
    groups: dict[tuple[str, str], list[Hole]] = {}
    for hole in holes:
        bit = "?" if hole.bit is None else f"{hole.bit:g} mm"
        what = "Board fixing" if hole.sort == "fixing" else "Fastener"
        named = f" '{hole.fastener}'" if hole.fastener else ""
        groups.setdefault((f"{what}{named} for holes of {bit}", bit), []).append(hole)
    for (words, bit), those in groups.items():
        spare = shop.spare("bolts", len(those))
        yield shop.part(
            words[0].lower() + words[1:], "fasteners", words, _uses(those), spare=spare, size=f"hole {bit}",
            question="which, and how long?",
        )  # fmt: skip


def _clamps(shop: Shop) -> Iterator[Part]:
    groups: dict[tuple[tuple[float, ...], str], list[Use]] = {}
    screws = 0
    for _, clamp in named_clamps(shop.review.clamps):
        groups.setdefault((clamp.diameters, clamp.size), []).append(Use(clamp.cables[0], 1, clamp.board))
        screws += len(clamp.screws)
    for (_, size), uses in sorted(groups.items()):
        spare = shop.spare("clamps", len(uses))
        words = f"Lined cable clamp for {size} mm"
        yield shop.part(f"clamp {size}", "clamps", words, _merged(uses), spare=spare, size=f"{size} mm")
    open_ones = screws - len(clamp_holes(shop.plan, shop.review.clamps))
    if open_ones:
        words, spare = "Screws of clamps", shop.spare("screws", open_ones)
        asked = f"which? point inside the board; {counted(open_ones, 'screw')} drilled freehand"
        yield Part("clamp screws", "fasteners", words, open_ones, spare, question=asked, counter="fasteners")


def _retainers(shop: Shop) -> Iterator[Part]:
    groups: dict[float, list[Use]] = {}
    for key, those in shop.review.retainers.items():
        for each in those:
            groups.setdefault(each.width, []).append(Use(key, 1, shop.plan.channels[key].board))
    for width, uses in sorted(groups.items()):
        words, spare = f"Cable retainer, channel {width:g} mm wide inside", shop.spare("clamps", len(uses))
        yield shop.part(
            f"retainer {width:g}", "clamps", words, _merged(uses), spare=spare, size=f"{width:g} mm", standard="",
            counter="electrical",
        )  # fmt: skip


def _merged(uses: list[Use]) -> tuple[Use, ...]:
    counts: dict[tuple[str, str], float] = {}
    for each in uses:
        counts[each.thing, each.board] = counts.get((each.thing, each.board), 0) + each.count
    return tuple(Use(thing, count, board) for (thing, board), count in counts.items())
