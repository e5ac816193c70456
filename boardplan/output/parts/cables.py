"""Cable parts: cables made in the shop by the place they go to, raw cable with its reserve, and leads bought whole."""

from collections.abc import Iterator

from boardplan.model.cable import Cable, ExitEnd, OffBoardEnd, TerminalEnd
from boardplan.model.component_kind import Stage
from boardplan.output.parts.part import Part, Use, counted, named
from boardplan.output.parts.shop import Shop
from boardplan.routing.lengths.end_work import size_words
from boardplan.routing.lengths.length_sum import CutLength
from boardplan.routing.lengths.reels import ReelNeed, reel_needs

_RESCUE = 2.0
"""Metres of the largest conductor taken along in red and in black, to help oneself with: common practice, no source."""


FITTED = ", fitted"
"""How the place of a cable ends that is fitted at both ends."""


def cable_key(conductor: str, colour: str) -> str:
    """Return the key of a cable off the reel."""
    return f"cable {conductor} {colour}"


def cable_parts(shop: Shop) -> Iterator[Part]:
    """Yield cables by the place they go to, then what comes off reels, then leads."""
    cables = [each for each in shop.plan.cables.values() if not shop.plan.conductors[each.conductor].stock_lengths]
    places = {each.id: bundle_of(shop, each) for each in cables}
    for cable in sorted(cables, key=lambda each: places[each.id]):
        yield _made(shop, cable, *places[cable.id])
    for need in reel_needs(shop.plan, shop.review.lengths):
        yield from _raw(shop, need)
    yield from _rescue(shop)
    yield from _leads(shop)


def bundle_of(shop: Shop, cable: Cable) -> tuple[str, str]:
    """Return where a cable goes in words, and the board it hangs on when that is carried; empty where on none.

    One end fitted in the shop is enough; the other is then tied back. What leaves the boards travels by itself.
    """
    exits = [each for each in cable.ends if isinstance(each, (ExitEnd, OffBoardEnd))]
    if exits:
        place = shop.plan.exits[exits[0].exit]
        return f"off board {place.board}: {place.name or place.id}", ""
    ends = [
        (shop.plan.components[end.component], work.stage)
        for end, work in zip(cable.ends, shop.review.lengths[cable.id].ends, strict=True)
        if isinstance(end, TerminalEnd)
    ]
    boards = list(dict.fromkeys(component.board for component, _ in ends))
    fitted = [component.board for component, stage in ends if stage == "shop"]
    units = ", ".join(dict.fromkeys(component.id for component, stage in ends if stage == "site"))
    on = fitted[0] if fitted else ""
    if len(boards) > 1:
        return f"between boards {' and '.join(sorted(boards))}", on
    return (f"board {boards[0]}, for {units}" if units else f"board {boards[0]}{FITTED}"), on


def _made(shop: Shop, cable: Cable, place: str, board: str) -> Part:
    length = shop.review.lengths[cable.id]
    cut = "no length yet" if length.cut is None else f"{length.cut:g} mm"
    per_piece = None if length.mass is None else length.mass / cable.count
    return Part(
        key=f"made {cable.id}",
        category="made-cables",
        words=f"{cable.id}  {size_words(shop.plan.conductors[cable.conductor])} {cable.colour}, {cut}",
        needed=cable.count,
        uses=tuple(Use(end.place, cable.count, "", end.stage) for end in length.ends),
        size=place,
        mass=per_piece,
        note="" if place.endswith(FITTED) else _loose_ends(length),
        question="" if length.final and length.cut is not None else "not final: cut nothing yet",
        on_board=board,
        bought=False,
        own="made",
    )


def _loose_ends(length: CutLength) -> str:
    """Return what becomes of the ends that the shop leaves loose."""
    if not any(each.raw for each in length.ends):
        return "loose ends tied back and capped"
    near = next((each for each in length.ends if not each.raw), None)
    made = "" if near is None or near.stage == "site" else "board end made; "
    return f"{made}rest raw: its lugs, tubes and labels in a bag tied to it"


def _raw(shop: Shop, need: ReelNeed) -> Iterator[Part]:
    """Yield what to buy of a reel, and the reserve that goes along."""
    conductor = shop.plan.conductors[need.conductor]
    key, words = cable_key(need.conductor, need.colour), f"{conductor.name}, {need.colour}"
    uses = tuple(
        Use(each.id, each.count * (shop.review.lengths[each.id].cut or 0.0) / 1000)
        for each in shop.plan.cables.values()
        if (each.conductor, each.colour) == (need.conductor, need.colour)
    )
    open_ones = f"still without a length: {named(need.open)}" if need.open else ""
    fine = "IEC 60228, class 5 or 6" if conductor.construction == "fine-strand" else ""
    yield Part(
        key, "raw-cable", words, round(need.total / 1000, 6), round(need.take - need.total / 1000, 6), "m", uses,
        counter=shop.rules.counters.get("raw-cable", ""), size=conductor.name, standard=fine, packed=False,
        mass=conductor.mass_per_m, question=open_ones, note=f"sum of {counted(need.pieces, 'cut')}",
    )  # fmt: skip
    yield Part(
        key, "raw-cable", f"{words}: reserve", 0.0, round(need.reserve / 1000, 6), "m", counter="", bought=False,
        mass=conductor.mass_per_m, question=open_ones,
    )  # fmt: skip


def _rescue(shop: Shop) -> Iterator[Part]:
    """Yield two lengths of the largest DC conductor."""
    sizes = [shop.plan.conductors[each.conductor] for each in shop.plan.cables.values() if each.cable_class == "dc"]
    known = [each for each in sizes if each.area is not None]
    if not known:
        return
    largest = max(known, key=lambda each: (each.area or 0.0, each.id))
    for colour in ("red", "black"):
        yield Part(
            cable_key(largest.id, colour), "recovery", f"Rescue length {largest.name}, {colour}", _RESCUE, 0.0,
            "m", mass=largest.mass_per_m, note="in one piece", counter=shop.rules.counters.get("raw-cable", ""),
            size=largest.name,
        )  # fmt: skip


def _leads(shop: Shop) -> Iterator[Part]:
    """Yield leads with moulded ends by length, and a long one of each sort to help oneself with."""
    groups: dict[tuple[str, float], list[Use]] = {}
    asked: dict[str, list[str]] = {}
    for cable in shop.plan.cables.values():
        length = shop.review.lengths[cable.id]
        if not shop.plan.conductors[cable.conductor].stock_lengths:
            continue
        if length.cut is None:
            asked.setdefault(cable.conductor, []).append(cable.id)
        else:
            stage: Stage = "site" if any(each.stage == "site" for each in length.ends) else "shop"
            groups.setdefault((cable.conductor, length.cut), []).append(Use(cable.id, cable.count, "", stage))
    for (name, cut), uses in sorted(groups.items()):
        conductor = shop.plan.conductors[name]
        words = f"{conductor.name} {cut / 1000:g} m"
        yield _lead(shop, name, cut, words, tuple(uses), 0.0)
    for name in sorted({each for each, _ in groups} | set(asked)):
        conductor = shop.plan.conductors[name]
        long = max(conductor.stock_lengths)
        words = f"{conductor.name} {long / 1000:g} m, one long spare"
        spare = shop.spare("data-leads", 1)
        yield _lead(shop, name, long, words, (), spare)
        if name in asked:
            question = f"how long? {named(asked[name])}"
            yield Part(
                f"lead {name}", "data-leads", conductor.name, None, None, question=question, counter="electrical"
            )


def _lead(shop: Shop, name: str, cut: float, words: str, uses: tuple[Use, ...], spare: float) -> Part:
    per_metre = shop.plan.conductors[name].mass_per_m
    return shop.part(
        f"lead {name} {cut:g}", "data-leads", words, uses, spare=spare, size=f"{cut / 1000:g} m",
        mass=None if per_metre is None else per_metre * cut / 1000,
    )  # fmt: skip
