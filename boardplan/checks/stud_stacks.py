"""Stud stacks: how many lugs go on one stud, and whether its thread holds them."""

from collections import Counter
from collections.abc import Iterator, Sequence
from collections.abc import Set as AbstractSet
from typing import TypeAlias

from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, Where
from boardplan.geometry.point import Point
from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.component import Component
from boardplan.model.component_kind import Terminal
from boardplan.model.placed import placed

_Stud: TypeAlias = tuple[str, str]


def too_many_lugs(site: Site) -> Iterator[Finding]:
    """Yield a finding for each stud with more lugs than may lie on one."""
    limit = site.limit("lugs-on-a-stud")
    counts = Counter[_Stud]()
    for cable in site.plan.cables.values():
        for stud in _studs_of(cable):
            counts[stud] += cable.count
    crowded = {stud for stud, count in counts.items() if count > limit.value}
    for component, terminal, cables in _stacks(site, crowded):
        place, names = f"{component.id}.{terminal.id}", ", ".join(cable.id for cable in cables)
        count = counts[component.id, terminal.id]
        words = f"{count} lugs go on {place} ({names}); {limit.value:g} may: take a busbar, not a longer stack"
        yield site.finding("too-many-lugs", limit, _where(site, component, terminal, cables), words, float(count))


def thread_too_short(site: Site) -> Iterator[Finding]:
    """Yield a finding for each stud whose usable thread is known and doesn't hold palms, washers and nut."""
    plan, hardware = site.plan, site.limit("stud-hardware")
    kinds = {kind.id for kind in plan.kinds.values() if any(each.usable_thread is not None for each in kind.terminals)}
    studs = {
        stud
        for cable in (plan.cables.values() if kinds else ())
        for stud in _studs_of(cable)
        if plan.components[stud[0]].kind in kinds
    }
    for component, terminal, cables in _stacks(site, studs):
        palms = [_palm(site, cable) for cable in cables for _ in range(cable.count)]
        known = [each for each in palms if each is not None]
        if terminal.usable_thread is None or len(known) < len(palms):
            continue
        need = sum(known) + hardware.value
        if need > terminal.usable_thread + NOISE:
            place = f"{component.id}.{terminal.id}"
            has, wants = site.two_lengths(terminal.usable_thread, need)
            words = f"The stud {place} has {has} of thread; {len(palms)} palms, washers, nut and two turns take {wants}"
            where = _where(site, component, terminal, cables)
            limit = site.asked("stud-hardware", need)
            yield site.finding("thread-too-short", limit, where, words, terminal.usable_thread)


def _studs_of(cable: Cable) -> Iterator[_Stud]:
    return ((end.component, end.terminal) for end in cable.ends if isinstance(end, TerminalEnd))


def _stacks(site: Site, studs: AbstractSet[_Stud]) -> Iterator[tuple[Component, Terminal, list[Cable]]]:
    """Yield some studs with their cables, the thickest first: it lies against the contact face."""
    plan = site.plan
    lying: dict[_Stud, list[Cable]] = {stud: [] for stud in sorted(studs)}
    for cable in plan.cables.values() if lying else ():
        for stud in _studs_of(cable):
            if stud in lying:
                lying[stud].append(cable)
    for (name, terminal_id), cables in lying.items():
        component = plan.components[name]
        terminal = plan.kind_of(component).terminal(terminal_id)
        if terminal is not None and terminal.sort == "stud":
            yield component, terminal, sorted(cables, key=lambda each: (-_area(site, each), each.id))


def _area(site: Site, cable: Cable) -> float:
    return site.plan.conductors[cable.conductor].area or 0.0


def _palm(site: Site, cable: Cable) -> float | None:
    lug = site.plan.conductors[cable.conductor].lug
    return lug.palm_thickness if lug else None


def _where(site: Site, component: Component, terminal: Terminal, cables: Sequence[Cable]) -> Where:
    at: Point = placed(site.plan, component).terminals[terminal.id].position
    return Where(
        (component.id, *(cable.id for cable in cables)), component.board, site.plan.on_wall(component.board, at)
    )
