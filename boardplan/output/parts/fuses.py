"""Fuse parts: a fuse for each place that a cable is on, by rating where the job says one; else a blank to fill in."""

from collections.abc import Iterator

from boardplan.model.cable import TerminalEnd
from boardplan.model.fuse import Fuse
from boardplan.model.fuse_place import FusePlace, fuse_in, places_in
from boardplan.model.load_out import SpareSort
from boardplan.output.parts.part import Part, Use
from boardplan.output.parts.shop import Shop

_IN_LINE = 2
_NAMES: dict[SpareSort, str] = {
    "main-fuses": "Main fuse",
    "bolt-down-fuses": "Bolt-down fuse",
    "blade-fuses": "Blade fuse",
}
_ORDER = tuple(_NAMES)
_CLASS_T = "class t"
_STAY = "spares stay with the customer"


def fuse_parts(shop: Shop) -> Iterator[Part]:
    """Yield fuses by sort: those of one rating together, then those of each component that nobody gave a rating."""
    rated: dict[tuple[SpareSort, Fuse, str], list[FusePlace]] = {}
    blank: dict[tuple[SpareSort, str], list[FusePlace]] = {}
    for place in _in_use(shop):
        fuse, sort = fuse_in(shop.plan, place), _sort(place)
        if fuse.rating_a is None:
            blank.setdefault((sort, place.component), []).append(place)
        else:
            alike = Fuse("", fuse.type, fuse.rating_a, fuse.voltage_v, fuse.breaking_capacity_ka)
            rated.setdefault((sort, alike, _standard(sort, _kind_name(shop, place))), []).append(place)
    for sort in _ORDER:
        yield from (_rated(shop, key, those) for key, those in rated.items() if key[0] == sort)
        yield from (_blank(shop, key, those) for key, those in blank.items() if key[0] == sort)


def _in_use(shop: Shop) -> list[FusePlace]:
    """Return the places for fuses that a cable is on; breakers are bought as units."""
    joined = {
        (end.component, end.terminal)
        for cable in shop.plan.cables.values()
        for end in cable.ends
        if isinstance(end, TerminalEnd)
    }
    return [
        each
        for each in places_in(shop.plan)
        if not each.breaker
        and (not each.terminals or any((each.component, one.id) in joined for one in each.terminals))
    ]


def _rated(shop: Shop, key: tuple[SpareSort, Fuse, str], places: list[FusePlace]) -> Part:
    sort, fuse, standard = key
    facts = [
        fuse.type,
        "" if fuse.voltage_v is None else f"{fuse.voltage_v:g} V",
        "" if fuse.breaking_capacity_ka is None else f"breaks {fuse.breaking_capacity_ka:g} kA",
    ]
    words = f"{_NAMES[sort]} {fuse.rating_a:g} A"
    known = ", ".join(each for each in facts if each)
    return shop.part(
        f"fuse {fuse.rating_a:g} A {fuse.type}".strip(), "fuses", words, tuple(_use(shop, each) for each in places),
        spare=shop.spare(sort, len(places)), rating=f"{fuse.rating_a:g} A", size=known, standard=standard, note=_STAY,
    )  # fmt: skip


def _blank(shop: Shop, key: tuple[SpareSort, str], places: list[FusePlace]) -> Part:
    sort, component = key
    rule = shop.rules.spares.get(sort)
    name = _kind_name(shop, places[0])
    blanks = ", ".join(f"{each.place} ____ A".strip() for each in places)
    unsure = "" if all(each.terminals for each in places) else "which fuses does it hold? "
    return shop.part(
        f"fuse {component}", "fuses", f"{_NAMES[sort]} of {component}, {name}",
        tuple(_use(shop, each) for each in places), spare=None,
        spare_words=f"{rule.least:g} spare of each rating" if rule else "", note=_STAY,
        standard=_standard(sort, name), question=f"{unsure}which rating? {blanks}",
    )  # fmt: skip


def _use(shop: Shop, place: FusePlace) -> Use:
    component = shop.plan.components[place.component]
    stage = component.stage or shop.plan.kind_of(component).stage
    return Use(place.name, 1, component.board, stage)


def _kind_name(shop: Shop, place: FusePlace) -> str:
    return shop.plan.kind_of(shop.plan.components[place.component]).name


def _sort(place: FusePlace) -> SpareSort:
    if any(each.sort == "blade" for each in place.terminals):
        return "blade-fuses"
    return "main-fuses" if len(place.terminals) == _IN_LINE else "bolt-down-fuses"


def _standard(sort: SpareSort, name: str) -> str:
    """Return the standard of a fuse's body, where the component's name or its terminals say which body it is."""
    if _CLASS_T in name.casefold():
        return "UL 248-15, class T"
    return "ISO 8820-3" if sort == "blade-fuses" else ""
