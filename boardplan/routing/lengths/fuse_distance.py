"""Fuse distance: how far along a cable the first fuse lies from the battery or the bus that feeds it, in mm."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from boardplan.model.cable import Cable, CableEnd, OffBoardEnd, TerminalEnd
from boardplan.model.plan import Plan
from boardplan.routing.currents.current_flow import Place, Wiring, has_fuses, wiring_of
from boardplan.routing.lengths.length_sum import CutLength
from boardplan.routing.route import Route, Way


@dataclass(frozen=True, slots=True)
class FuseRun:
    """A cable from a source to its first fuse; lengths in mm.

    `length` is the cable's path with its legs off the board, `free` how much of that is neither sheathed nor in a
    channel. `battery` says that the source is one.
    """

    cable: str
    source: str
    fuse: str
    length: float
    free: float
    sheathed: bool
    battery: bool


def fuse_runs(plan: Plan, lengths: Mapping[str, CutLength], ways: Mapping[str, Way]) -> tuple[FuseRun, ...]:
    """Return the cables that lead from a battery, or from a plain positive bus, straight to a fuse.

    A cable from a bus counts where it is thinner than the thickest one on that bus: what feeds the bus then can't be
    trusted to protect it. A far end off the board counts as a battery where its name says so and names no fuse.
    """
    fused = {key for key, kind in plan.kinds.items() if has_fuses(kind)}
    if not any(each.kind in fused for each in plan.components.values()):
        return ()
    wiring = wiring_of(plan)
    runs = (_run(wiring, cable, lengths.get(cable.id), ways.get(cable.id)) for cable in plan.cables.values())
    return tuple(each for each in runs if each is not None)


def _run(wiring: Wiring, cable: Cable, length: CutLength | None, way: Way | None) -> FuseRun | None:
    if cable.cable_class != "dc" or length is None or length.path is None:
        return None
    for source, end in (cable.ends, cable.ends[::-1]):
        if not isinstance(end, TerminalEnd) or not _is_fused(wiring, (end.component, end.terminal)):
            continue
        battery = _battery_name(wiring, source)
        name = battery or _bus_name(wiring, source, cable)
        if name:
            sheathed = wiring.plan.conductors[cable.conductor].construction == "sheathed"
            covered = length.path if sheathed else sum(_in_channels(way))
            fuse = f"{end.component}.{end.terminal}"
            return FuseRun(cable.id, name, fuse, length.path, length.path - covered, sheathed, bool(battery))
    return None


def _in_channels(way: Way | None) -> Iterator[float]:
    return (part.end - part.start for part in way.in_channels) if isinstance(way, Route) else iter(())


def _is_fused(wiring: Wiring, place: Place) -> bool:
    return has_fuses(wiring.kind(place)) and wiring.terminal(place).pole == "+"


def _battery_name(wiring: Wiring, end: CableEnd) -> str:
    """Return what to call a battery's positive end, "" where an end isn't one for certain."""
    if isinstance(end, OffBoardEnd):
        words = end.name.casefold()
        return end.name if "battery" in words and "fuse" not in words and "breaker" not in words else ""
    if isinstance(end, TerminalEnd):
        place = end.component, end.terminal
        if wiring.role(place) == "battery" and wiring.terminal(place).pole == "+":
            return f"{end.component}.{end.terminal}"
    return ""


def _bus_name(wiring: Wiring, end: CableEnd, cable: Cable) -> str:
    """Return what to call a plain positive bus that is fed by a thicker cable, "" for any other end."""
    if not isinstance(end, TerminalEnd):
        return ""
    place = end.component, end.terminal
    kind = wiring.kind(place)
    if wiring.role(place) != "bus" or has_fuses(kind) or wiring.terminal(place).pole != "+":
        return ""
    areas = [
        wiring.plan.conductors[other.conductor].area or 0.0
        for terminal in kind.terminals
        if terminal.pole == "+"
        for other, _ in wiring.ends.get((end.component, terminal.id), ())
    ]
    area = wiring.plan.conductors[cable.conductor].area
    thinner = area is not None and area < max(areas, default=0.0)
    return f"{end.component}.{end.terminal}" if thinner else ""
