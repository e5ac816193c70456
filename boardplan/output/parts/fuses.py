"""Fuse parts: a fuse for each place that a cable is on; no job says a rating, so none is said here."""

from collections.abc import Iterator

from boardplan.model.cable import TerminalEnd
from boardplan.model.component import Component
from boardplan.model.component_kind import Terminal
from boardplan.model.load_out import SpareSort
from boardplan.output.labels.label_words import fuse_places
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


def fuse_parts(shop: Shop) -> Iterator[Part]:
    """Yield the fuses of each component, by sort, with a blank for each rating."""
    joined = {
        (end.component, end.terminal)
        for cable in shop.plan.cables.values()
        for end in cable.ends
        if isinstance(end, TerminalEnd)
    }
    found = []
    for component in shop.plan.components.values():
        places = fuse_places(shop.plan.kind_of(component))
        used = [each for each in places if not each or any((component.id, one.id) in joined for one in each)]
        if used:
            found.append((_ORDER.index(_sort(used[0])), _fuses(shop, component, used)))
    yield from (part for _, part in sorted(found, key=lambda each: each[0]))


def _fuses(shop: Shop, component: Component, used: list[tuple[Terminal, ...]]) -> Part:
    sort, kind = _sort(used[0]), shop.plan.kind_of(component)
    names = [f"{'-'.join(one.id for one in each)} ____ A" for each in used if len(each) == 1]
    rule = shop.rules.spares.get(sort)
    each = f"{rule.least:g} spare of each rating" if rule else ""
    unsure = "" if all(used) else "which fuses does it hold? "
    return shop.part(
        f"fuse {component.id}", "fuses", f"{_NAMES[sort]} of {component.id}, {kind.name}",
        (Use(component.id, len(used), component.board, component.stage or kind.stage),),
        spare=None, spare_words=each, note="spares stay with the customer",
        standard=_standard(sort, kind.name), question=f"{unsure}which rating? {', '.join(names) or '____ A'}",
    )  # fmt: skip


def _sort(terminals: tuple[Terminal, ...]) -> SpareSort:
    if any(each.sort == "blade" for each in terminals):
        return "blade-fuses"
    return "main-fuses" if len(terminals) == _IN_LINE else "bolt-down-fuses"


def _standard(sort: SpareSort, name: str) -> str:
    """Return the standard of a fuse's body, where the component's name or its terminals say which body it is."""
    if _CLASS_T in name.casefold():
        return "UL 248-15, class T"
    return "ISO 8820-3" if sort == "blade-fuses" else ""
