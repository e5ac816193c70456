"""Fuse rows: each fuse and breaker of a job with what it feeds, from where it is fed, and what the job says of it."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from boardplan.model.cable import Cable
from boardplan.model.fuse import Fuse
from boardplan.model.fuse_place import FusePlace, fuse_in, places_in
from boardplan.model.plan import Plan
from boardplan.routing.currents.current_flow import Place, Wiring, has_fuses, reached, through_shut_offs, wiring_of
from boardplan.routing.lengths.fuse_distance import FuseRun, fuse_runs
from boardplan.routing.lengths.length_sum import CutLength
from boardplan.routing.lugs.lug_stack import cables_on_studs
from boardplan.routing.route import Way


@dataclass(frozen=True, slots=True)
class FusedSide:
    """The cables that leave one terminal of a fuse, up to the next fuse or bus; the plain buses that they lead to."""

    terminal: str
    cables: tuple[Cable, ...]
    buses: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class FuseRow:
    """A fuse place: what is known of its fuse, the cables from a source to it, the sides that it protects.

    Where no cable tells which side is fed both sides stand there.
    """

    place: FusePlace
    fuse: Fuse
    feeds: tuple[FuseRun, ...]
    sides: tuple[FusedSide, ...]

    @property
    def spare(self) -> bool:
        """Whether no cable is on it: nothing is decided, and nothing asked."""
        return bool(self.place.terminals) and not self.feeds and not any(each.cables for each in self.sides)

    @property
    def side_unknown(self) -> bool:
        """Whether nobody can tell from the plan which side is fed."""
        return len([each for each in self.sides if each.cables]) > 1


def fuse_rows(plan: Plan, lengths: Mapping[str, CutLength], ways: Mapping[str, Way]) -> tuple[FuseRow, ...]:
    """Return a row for each fuse place and breaker of a job, in the order of its components."""
    wiring, runs, on_terminals = wiring_of(plan), fuse_runs(plan, lengths, ways), cables_on_studs(plan)
    places = tuple(places_in(plan))
    taken = {(place.component, each.id) for place in places for each in place.terminals}
    return tuple(_row(wiring, place, on_terminals, _feeds(place, runs, taken)) for place in places)


def _feeds(place: FusePlace, runs: Sequence[FuseRun], taken: set[tuple[str, str]]) -> tuple[FuseRun, ...]:
    """Return the runs that end on a place's own terminals, or where all places of its component are fed together."""
    own = {f"{place.component}.{each.id}" for each in place.terminals}
    others = {".".join(each) for each in taken}
    shared = (each for each in runs if each.fuse not in others and each.fuse.startswith(f"{place.component}."))
    return (*(each for each in runs if each.fuse in own), *shared)


def _row(
    wiring: Wiring,
    place: FusePlace,
    on_terminals: Mapping[tuple[str, str], Sequence[Cable]],
    feeds: tuple[FuseRun, ...],
) -> FuseRow:
    fed = {each.fuse for each in feeds}
    sides = tuple(
        _side(wiring, (place.component, terminal.id), on_terminals.get((place.component, terminal.id), ()))
        for terminal in place.terminals
        if f"{place.component}.{terminal.id}" not in fed
    )
    return FuseRow(place, fuse_in(wiring.plan, place), feeds, sides)


def _side(wiring: Wiring, start: Place, direct: Sequence[Cable]) -> FusedSide:
    """Return the cables on a terminal, then those that it is one conductor with, through shut-offs."""
    joined = reached(wiring, start, through_shut_offs)
    own = {each.id: each for each in direct}
    others = dict.fromkeys(name for way in joined.values() for name in way if name not in own)
    buses = dict.fromkeys(each[0] for each in joined if each != start and _is_plain_bus(wiring, each))
    return FusedSide(start[1], (*own.values(), *(wiring.plan.cables[name] for name in others)), tuple(buses))


def _is_plain_bus(wiring: Wiring, place: Place) -> bool:
    return wiring.role(place) == "bus" and not has_fuses(wiring.kind(place))
