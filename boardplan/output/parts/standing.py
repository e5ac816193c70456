"""Standing parts: what a shop takes along whatever the job is, and what follows from the sort of job."""

from collections.abc import Iterator

from boardplan.model.cable import ExitEnd, OffBoardEnd
from boardplan.model.load_out import Condition, StandingLine
from boardplan.output.parts.fastenings import all_holes
from boardplan.output.parts.part import Part, Use
from boardplan.output.parts.shop import Shop
from boardplan.routing.lugs.link_bar import link_bar_offers


def standing_parts(shop: Shop) -> Iterator[Part]:
    """Yield the lines of the shop's table, then labels, link bars, connectors of the array and far ends."""
    met = conditions(shop)
    for line in shop.rules.lines:
        if not line.when or line.when in met:
            yield _line(line)
    yield from _link_bars(shop)
    if _pv_leaves(shop):
        spare = shop.spare("pv-connectors", 1)
        yield Part(
            "pv connectors", "pv-connectors", "PV connectors, plug and socket of one make", None, None, "pairs",
            spare_words=f"{spare:g} spare pairs", question="how many pairs at the array?", counter="electrical",
            standard=shop.rules.standards.get("pv-connectors", ""),
        )  # fmt: skip
    yield from _from_customer(shop)


def conditions(shop: Shop) -> set[Condition]:
    """Return what is true of the job that lines of the table ask for."""
    plan = shop.plan
    asked: dict[Condition, bool] = {
        "ac": any(each.cable_class == "ac" for each in plan.cables.values()),
        "pv": any(each.cable_class == "pv" for each in plan.cables.values()),
        "fabric": any(each.fabric for each in plan.boards.values()),
        "t-nuts": any(hole.sort == "t-nut" for hole in all_holes(shop)),
        "site units": any((each.stage or plan.kind_of(each).stage) == "site" for each in plan.components.values()),
        "link bars": bool(link_bar_offers(plan, shop.review.lengths)),
    }
    return {name for name, is_so in asked.items() if is_so}


def _line(line: StandingLine) -> Part:
    return Part(
        line.words, line.category, line.words, line.quantity, 0.0, line.unit, note=line.note,
        question=line.question, hazard=line.hazard, fragile=line.fragile, counter=line.counter,
        bought=bool(line.counter), own="" if line.counter or line.category == "customer" else "shop",
    )  # fmt: skip


def _link_bars(shop: Shop) -> Iterator[Part]:
    for bar in link_bar_offers(shop.plan, shop.review.lengths):
        holes = " and ".join("?" if each.hole is None else f"{each.hole:g}" for each in bar.ends)
        yield Part(
            f"link bar {bar.cable}", "made-cables", f"Link bar in place of {bar.cable}, {bar.centres:g} mm centres",
            bar.count, uses=(Use(bar.cable, bar.count),), note=f"holes {holes} mm", question=bar.question,
            counter="electrical", size="link bars",
        )  # fmt: skip


def _pv_leaves(shop: Shop) -> bool:
    return any(
        each.cable_class == "pv" and any(isinstance(end, (OffBoardEnd, ExitEnd)) for end in each.ends)
        for each in shop.plan.cables.values()
    )


def _from_customer(shop: Shop) -> Iterator[Part]:
    """Yield the places off the board that cables go to: who has what ready there is asked by phone."""
    places: dict[str, list[Use]] = {}
    for cable in shop.plan.cables.values():
        for end in cable.ends:
            if isinstance(end, OffBoardEnd):
                places.setdefault(end.name, []).append(Use(cable.id, cable.count, "", "site"))
    for name, uses in places.items():
        yield Part(
            f"far end {name}", "customer", f"Ready on site: {name}", None, None, "", tuple(uses), bought=False,
            question="who supplies terminal, fuse, supports? asked by phone on ________",
        )  # fmt: skip
