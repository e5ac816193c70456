"""Unit parts: boards as they are carried, units that go on at site with their bolts, all units to buy, pads, sheets."""

from collections.abc import Iterator

from boardplan.model.board import Board
from boardplan.model.component import Component
from boardplan.model.component_kind import Stage
from boardplan.model.weights import weights_of
from boardplan.output.parts.cables import bundle_of
from boardplan.output.parts.part import Part, Use, named
from boardplan.output.parts.shop import Shop

_M2 = 1e6


def unit_parts(shop: Shop) -> Iterator[Part]:
    """Yield boards, units for site, all units by kind, then pads and what boards are made of."""
    for board in shop.plan.boards.values():
        yield _board(shop, board)
    for component in shop.plan.components.values():
        if _stage(shop, component) == "site":
            yield _site_unit(shop, component)
    yield from _kinds(shop)
    yield from _pads(shop)
    for board in shop.plan.boards.values():
        yield from _sheet(shop, board)
    yield from _back_parts(shop)


def _stage(shop: Shop, component: Component) -> Stage:
    return component.stage or shop.plan.kind_of(component).stage


def lift_words(shop: Shop, mass: float | None) -> str:
    """Return how many people carry a thing; a question where nobody weighed it."""
    if mass is None:
        return "? not weighed"
    if mass <= shop.rules.lift.one:
        return "one person"
    return "two people" if mass <= shop.rules.lift.two else "aid: more than two people lift"


def _board(shop: Shop, board: Board) -> Part:
    """Return a board with what is on it; cables count as far as they are weighed, channels don't."""
    weights = weights_of(shop.plan, board)
    on_it = [each for each in shop.plan.components.values() if each.board == board.id and _stage(shop, each) == "shop"]
    fitted = [
        each.id
        for each in shop.plan.cables.values()
        if not shop.plan.conductors[each.conductor].stock_lengths and bundle_of(shop, each)[1] == board.id
    ]
    cables = sum(shop.review.lengths[each].mass or 0.0 for each in fitted)
    unknown = [
        each for each in weights.unknown if each not in shop.plan.components or shop.plan.components[each] in on_it
    ]
    whole = None if unknown else weights.carried + cables
    name = f"  {board.name}" if board.name else "  "
    size = f"{board.box.width:g} x {board.box.height:g} x {weights.carried_depth:g} mm carried"
    loads = f"{weights.carried:.1f} kg, its cables {cables:.1f} kg"
    question = f"not weighed, and not in these: {named(unknown)}" if unknown else ""
    return Part(
        f"board {board.id}", "boards", f"Board {board.id}{name}, fitted", 1,
        uses=tuple(Use(each.id, 1, "", "shop") for each in on_it), size=size, mass=whole,
        note=f"{size}; {loads}; covers on", question=question, bought=False, own="made",
        lift="? not all weighed" if whole is None else _lift_with(shop, whole, _unweighed_on(shop, board, fitted)),
    )  # fmt: skip


def _unweighed_on(shop: Shop, board: Board, cables: list[str]) -> list[str]:
    """Return the channels and cables on a board that are in no weight."""
    channels = [each.id for each in shop.plan.channels.values() if each.board == board.id]
    return [*channels, *(each for each in cables if shop.review.lengths[each].mass is None)]


def _lift_with(shop: Shop, mass: float, rest: list[str]) -> str:
    """Return how many people carry a thing, and what the rest on it may weigh at most for that to be true."""
    words = lift_words(shop, mass)
    limit = shop.rules.lift.one if mass <= shop.rules.lift.one else shop.rules.lift.two
    if not rest or mass > limit:
        return words
    return f"{words} while {named(rest)}, not weighed, {'is' if len(rest) == 1 else 'are'} below {limit - mass:.1f} kg"


def _site_unit(shop: Shop, component: Component) -> Part:
    kind = shop.plan.kind_of(component)
    fastener = shop.plan.fasteners.get(kind.fastener)
    bolts = f"{len(kind.holes)} x {fastener.name}" if fastener else f"{len(kind.holes)} fastenings, which?"
    pad = "pad, " if kind.non_combustible_backing else ""
    return Part(
        f"unit {kind.id}", "units", f"{component.id}  {component.label or kind.name}", 1,
        uses=(Use(component.id, 1, component.board, "site"),), mass=kind.mass,
        note=f"with {bolts}, washers, {pad}instruction sheet" if kind.holes else f"with {pad}instruction sheet",
        question="" if fastener or not kind.holes else f"which fastener for {component.id}?",
        hazard=shop.rules.hazards.get(kind.family, ""), fragile=True, bought=False,
        lift=lift_words(shop, kind.mass),
    )  # fmt: skip


def _kinds(shop: Shop) -> Iterator[Part]:
    """Yield all units to buy, alike ones together."""
    groups: dict[str, list[Component]] = {}
    for component in shop.plan.components.values():
        groups.setdefault(component.kind, []).append(component)
    for name, those in groups.items():
        kind = shop.plan.kinds[name]
        uses = tuple(Use(each.id, 1, each.board, _stage(shop, each)) for each in those)
        box = kind.box
        yield shop.part(
            f"unit {kind.id}", "units", kind.name, uses, mass=kind.mass, packed=False,
            size=f"{box.width:g} x {box.height:g} x {kind.depth:g} mm", hazard=shop.rules.hazards.get(kind.family, ""),
        )  # fmt: skip


def _pads(shop: Shop) -> Iterator[Part]:
    margin = shop.rules.pad_margin
    for component in shop.plan.components.values():
        kind = shop.plan.kind_of(component)
        if kind.non_combustible_backing:
            width, height = kind.box.width + 2 * margin, kind.box.height + 2 * margin
            size = f"{width:g} x {height:g} mm"
            use = Use(component.id, 1, component.board, _stage(shop, component))
            yield shop.part(
                f"pad {size}", "board-material", f"Non-combustible pad {size}", (use,), size=size,
                note=f"{margin:g} mm larger all round than {component.id}", question="which material and thickness?",
            )  # fmt: skip


def _sheet(shop: Shop, board: Board) -> Iterator[Part]:
    box, use = board.box, (Use(board.id, 1, board.id),)
    size = f"{box.width:g} x {box.height:g} x {board.thickness:g} mm"
    area = box.width * box.height / _M2
    per_area = board.material.mass_per_area
    yield shop.part(
        f"sheet {board.material.name} {board.thickness:g}", "board-material", board.material.name, use, unit="piece",
        size=size, note=f"{area:.2f} m², blank of board {board.id}", packed=False,
        mass=None if per_area is None else per_area * area,
    )  # fmt: skip
    if board.fabric:
        wrap = 2 * board.fabric.wrap
        width, height = box.width + wrap, box.height + wrap
        yield shop.part(
            "fabric", "board-material", f"Fabric, {board.fabric.thickness:g} mm", use, unit="piece", counter="fabric",
            size=f"{width:g} x {height:g} mm", packed=False, mass=board.fabric.mass_per_area * width * height / _M2,
            note=f"{width * height / _M2:.2f} m², board {board.id} and {board.fabric.wrap:g} mm round the back",
            question="which colour and quality? It has to be accepted for this vehicle, boat or building",
        )  # fmt: skip


def _back_parts(shop: Shop) -> Iterator[Part]:
    for part in shop.plan.back_parts.values():
        xs, ys = [each.x for each in part.outline], [each.y for each in part.outline]
        size = f"{max(xs) - min(xs):g} x {max(ys) - min(ys):g} mm"
        use = Use(part.id, 1, part.board)
        yield shop.part(
            f"back {part.name} {size}", "board-material", part.name, (use,), size=size, packed=False,
            question="how thick?",
        )  # fmt: skip
