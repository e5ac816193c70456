"""Stud stacks: how many lugs go on one stud, and whether its thread holds them."""

from collections.abc import Iterator, Sequence
from itertools import groupby

from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, Where
from boardplan.geometry.point import Point
from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.component import Component
from boardplan.model.component_kind import Terminal
from boardplan.model.placed import placed


def too_many_lugs(site: Site) -> Iterator[Finding]:
    """Yield a finding for each stud with more lugs than may lie on one, the largest against the contact face."""
    limit = site.limit("lugs-on-a-stud")
    for component, terminal, cables in _stacks(site):
        count = sum(cable.count for cable in cables)
        if count > limit.value:
            place = f"{component.id}.{terminal.id}"
            names = ", ".join(cable.id for cable in cables)
            words = (
                f"{count} lugs go on {place} ({names}); {limit.value:g} may: take a busbar instead of a longer stack"
            )
            yield site.finding("too-many-lugs", limit, _where(site, component, terminal, cables), words, float(count))


def thread_too_short(site: Site) -> Iterator[Finding]:
    """Yield a finding for each stud whose usable thread is known and doesn't hold palms, washers and nut."""
    hardware = site.limit("stud-hardware")
    for component, terminal, cables in _stacks(site):
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
            yield site.finding(
                "thread-too-short", site.asked("stud-hardware", need), where, words, terminal.usable_thread
            )


def _stacks(site: Site) -> Iterator[tuple[Component, Terminal, list[Cable]]]:
    """Yield each stud that lugs go on with its cables, the thickest first: it lies against the contact face."""
    plan = site.plan
    ends = sorted(
        (end.component, end.terminal, cable.id)
        for cable in plan.cables.values()
        for end in cable.ends
        if isinstance(end, TerminalEnd)
    )
    for (name, terminal_id), group in groupby(ends, key=lambda each: each[:2]):
        component = plan.components[name]
        terminal = plan.kind_of(component).terminal(terminal_id)
        if terminal is not None and terminal.sort == "stud":
            cables = [plan.cables[cable_id] for _, _, cable_id in group]
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
