"""Clamps: what holds the thick cables outside of channels to the board, and where a cable hangs free too far.

The first clamp comes a set distance after the mouth of a lug, the others evenly between; none on a bend or
where something else is. Two alike cables side by side share one. Thick cables come first, then by id, so that
nothing hangs on the order of the plan.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TypeAlias

from boardplan.geometry.bends import turn_between
from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.cable import Cable
from boardplan.model.plan import Plan
from boardplan.routing.clamp import Clamp, Gap, Held
from boardplan.routing.clamp_room import (
    Bench,
    Room,
    bench_of,
    cable_boxes,
    foot_of,
    includes,
    joined,
    laid,
    room_of,
    wants_clamps,
)
from boardplan.routing.clamp_runs import runs_of
from boardplan.routing.clamp_spacing import NOISE, Run, Spacing, Span, common, spaced, widest_gap
from boardplan.routing.ends import ends_of
from boardplan.routing.route import Route, Way

_PARALLEL = 0.01  # degrees


_Placed: TypeAlias = tuple[float, Clamp]
"""A clamp with its place along a cable's centre line."""


@dataclass(frozen=True)
class Lying:
    """A thick cable as it lies: what is near it, and how it is held as long as it shares no clamp."""

    cable: Cable
    way: Route
    diameter: float
    runs: tuple[Run, ...]
    benches: tuple[Bench, ...]
    alone: tuple[_Placed, ...]
    held: Held

    @property
    def half(self) -> float:
        """Half of what it takes across, all of its count side by side."""
        return self.diameter * self.cable.count / 2


@dataclass(frozen=True)
class Holding:
    """What holds every cable of a plan, and what to keep of it for the next plan."""

    held: Mapping[str, Held]
    lying: Mapping[str, Lying]


def clamps_of(plan: Plan, ways: Mapping[str, Way]) -> dict[str, tuple[Clamp, ...]]:
    """Return the clamps of every cable, in the plan's order; a clamp for a pair is with both of them."""
    return {cable: held.clamps for cable, held in holding_of(plan, ways).held.items()}


def holding_of(plan: Plan, ways: Mapping[str, Way]) -> Holding:
    """Return what holds every cable, in the plan's order."""
    return holding_with(plan, ways, {}, plan.cables)


def holding_with(plan: Plan, ways: Mapping[str, Way], kept: Mapping[str, Lying], anew: Iterable[str]) -> Holding:
    """Return what holds every cable, with what is kept of some and the others looked at anew."""
    setter = Setter(plan)
    thick = [cable for key in anew if wants_clamps(plan, cable := plan.cables[key])]
    boxes = [box for cable in thick for box in cable_boxes(plan, cable, ways.get(cable.id))]
    lying = dict(kept)
    if boxes:
        around = box_around(corner for box in boxes for corner in (box[:2], box[2:]))
        room = room_of(plan, ways, around.grown(max(map(setter.reach_of, thick))))
        for cable in thick:
            found = setter.lying(cable, ways.get(cable.id), room)
            if found is not None:
                lying[cable.id] = found
    held = {key: each.held for key, each in lying.items()} | setter.shared(lying.values())
    return Holding({cable: held.get(cable, _FREE) for cable in plan.cables}, lying)


_FREE = Held()


class Setter:
    """Sets clamps under the rules of a plan."""

    def __init__(self, plan: Plan) -> None:
        """Take the limits from the plan's rule set."""
        self._plan, self._foot = plan, foot_of(plan)
        value = plan.rules.value
        self._spacing = Spacing(value("clamp-first"), value("clamp-pitch"), 4 * self._foot.half)
        self._beside = value("clamp-pair-gap")
        self._jacket = value("jumper-free-jacket")
        self._short = value("jumper-shorter-than")

    def reach_of(self, cable: Cable) -> float:
        """Return how far beside a cable's centre line its clamps may meet something, those for a pair too."""
        diameter = self._plan.conductors[cable.conductor].outside_diameter
        return diameter * (cable.count / 2 + 1) + self._beside + 2 * self._foot.beside + self._foot.half

    def lying(self, cable: Cable, way: Way | None, room: Room) -> Lying | None:
        """Return a cable as it lies, none for one without a way and for a short jumper."""
        if not isinstance(way, Route) or len(way.points) < 2:  # noqa: PLR2004 - a line has two ends
            return None
        ends = ends_of(self._plan, cable)
        if all(end.lugged for end in ends) and laid(way).length < self._short - NOISE:
            return None
        diameter = self._plan.conductors[cable.conductor].outside_diameter
        reach = self.reach_of(cable)
        stretches = (each for each in laid(way).stretches if each.length >= 2 * self._foot.half)
        benches = tuple(bench_of(room, each, self._foot, reach) for each in stretches)
        bare = Lying(cable, way, diameter, tuple(runs_of(self._plan, way, ends)), benches, (), _FREE)
        alone = self._set(bare, [])
        return replace(bare, alone=tuple(alone), held=_held(bare, alone))

    def shared(self, lying: Iterable[Lying]) -> dict[str, Held]:
        """Return how cables are held that lie beside an alike one, as far as they share clamps with it."""
        placed: dict[str, list[_Placed]] = {}
        order = sorted(lying, key=lambda each: (-each.diameter, each.cable.id))
        known = {each.cable.id: each for each in order}
        for one, other in self._beside_each_other(order):
            for each in (one, other):
                placed.setdefault(each.cable.id, list(each.alone))
            self._share(one, other, placed)
        changed = {key: each for key, each in placed.items() if any(len(clamp.cables) > 1 for _, clamp in each)}
        return {key: _held(known[key], each) for key, each in changed.items()}

    def _beside_each_other(self, order: list[Lying]) -> Iterator[tuple[Lying, Lying]]:
        """Yield pairs of alike cables whose ways come near each other, each with an earlier one first."""
        alike: dict[tuple[str, float], list[tuple[Lying, Box]]] = {}
        for each in order:
            if each.cable.count == 1:
                around = box_around(each.way.points).grown(each.diameter + self._beside)
                before = alike.setdefault((each.cable.cable_class, each.diameter), [])
                yield from ((other, each) for other, box in before if box.touches(around))
                before.append((each, around))

    def _share(self, one: Lying, other: Lying, placed: dict[str, list[_Placed]]) -> None:
        """Widen clamps of one cable so that they hold the other too, whose own ones are then set anew."""
        before = placed[other.cable.id]
        pairs = [each for each in before if len(each[1].cables) > 1]
        given = list(pairs)
        around = box_around(other.way.points).grown(other.diameter + self._beside)
        for index, (along, clamp) in enumerate(placed[one.cable.id]):
            may_be = len(clamp.cables) == 1 and around.holds(clamp.at)
            both = self._both(other, clamp, [at for at, _ in given]) if may_be else None
            if both is not None:
                placed[one.cable.id][index] = along, both[1]
                given.append(both)
        if len(given) > len(pairs):
            placed[other.cable.id] = self._set(other, given)

    def _set(self, lying: Lying, given: list[_Placed]) -> list[_Placed]:
        """Return the clamps of a cable in order, those given among them."""
        free = joined(span for bench in lying.benches for side in (1, -1) for span in self._free(lying, bench, side))
        found = list(given)
        for run in lying.runs:
            there = [along for along, _ in given if run.start <= along <= run.end]
            places = spaced(run, common(free, *self._bounds(run, lying.diameter)), there, self._spacing)
            found += [(along, self._single(lying, along)) for along in places]
        return sorted(found, key=lambda each: each[0])

    def _bounds(self, run: Run, diameter: float) -> Span:
        """Return a run without the jacket that stays free at its ends for the cable to bend."""
        jacket = self._jacket * diameter
        return (
            run.start + (0.0 if run.channel_before else jacket),
            run.end - (0.0 if run.channel_after else jacket),
        )

    def _free(self, lying: Lying, bench: Bench, side: int) -> list[Span]:
        """Return where a clamp with its foot to the left (1) or right (-1) may be on a stretch."""
        half, out = lying.half, lying.half + self._foot.beside
        return bench.free((-half, half), [(half, out) if side > 0 else (-out, -half)], (lying.cable.id,))

    def _single(self, lying: Lying, along: float) -> Clamp:
        bench = next(each for each in lying.benches if each.stretch.holds(along, self._foot.half))
        first = 1 if bench.leads(1) else -1
        side = 90 * (first if includes(self._free(lying, bench, first), along) else -first)
        at, towards = bench.stretch.at(along), bench.stretch.towards
        return Clamp(
            cables=(lying.cable.id,),
            at=at,
            towards=towards,
            diameters=(lying.diameter,) * lying.cable.count,
            width=2 * lying.half,
            length=2 * self._foot.half,
            screws=(at.ahead(towards + side, lying.half + self._foot.screw),),
            board=_board_at(self._plan, at),
        )

    def _both(self, lying: Lying, clamp: Clamp, taken: list[float]) -> _Placed | None:
        """Return a clamp widened to hold a cable too, with its place along that; none where that can't be."""
        for bench in lying.benches:
            if _parallel(bench.stretch.towards, clamp.towards):
                beside = bench.stretch.seen(clamp.at)
                along, apart = bench.stretch.along + beside.x, abs(beside.y) - lying.diameter
                near_enough = -NOISE <= apart <= self._beside + NOISE
                fits = near_enough and bench.stretch.holds(along, self._foot.half)
                if fits and self._may_hold(lying, along, taken):
                    pair = self._pair(lying, clamp, bench)
                    if pair is not None:
                        return along, pair
        return None

    def _may_hold(self, lying: Lying, along: float, taken: list[float]) -> bool:
        inside = includes((self._bounds(run, lying.diameter) for run in lying.runs), along)
        return inside and all(abs(along - each) >= self._spacing.least for each in taken)

    def _pair(self, lying: Lying, clamp: Clamp, bench: Bench) -> Clamp | None:
        """Return a clamp over two cables, none where it has no room; with a foot on either side, or on one."""
        own, beside = (lying.cable.id, *clamp.cables), bench.stretch.seen(clamp.at)
        width = abs(beside.y) + lying.diameter
        low, high = beside.y / 2 - width / 2, beside.y / 2 + width / 2
        spans = {1: (high, high + self._foot.beside), -1: (low - self._foot.beside, low)}
        first = 1 if bench.leads(1) else -1
        along = bench.stretch.along + beside.x
        for feet in ((first, -first), (first,), (-first,)):
            if includes(bench.free((low, high), [spans[side] for side in feet], own), along):
                on_own, towards = bench.stretch.at(along), bench.stretch.towards
                at = Point((on_own.x + clamp.at.x) / 2, (on_own.y + clamp.at.y) / 2)
                out = width / 2 + self._foot.screw
                return replace(
                    clamp,
                    cables=tuple(sorted(own)),
                    at=at,
                    diameters=(*clamp.diameters, lying.diameter),
                    width=width,
                    screws=tuple(at.ahead(towards + 90 * side, out) for side in feet),
                )
        return None


def _held(lying: Lying, placed: Iterable[_Placed]) -> Held:
    """Return what holds a cable, and the widest gap between."""
    places, clamps = [at for at, _ in placed], tuple(clamp for _, clamp in placed)
    gaps = [widest_gap(run, [at for at in places if run.start <= at <= run.end]) for run in lying.runs]
    widest = max(gaps, key=lambda gap: (round(gap[1] - gap[0], 6), -gap[0]), default=None)
    return Held(clamps, _gap(lying.way, widest) if widest else None)


def _parallel(one: float, other: float) -> bool:
    turn = abs(turn_between(one, other))
    return min(turn, 180 - turn) < _PARALLEL


def _board_at(plan: Plan, at: Point) -> str:
    """Return the board that a place on the wall lies on."""
    for board in sorted(plan.boards.values(), key=lambda each: each.id):
        if board.box.moved(*board.position).holds(at):
            return board.id
    return ""


def _gap(way: Route, span: Span) -> Gap:
    """Return a stretch of the centre line as a gap on the wall."""
    middle = (span[0] + span[1]) / 2
    places = [_point_along(way, along) for along in (span[0], middle, span[1])]
    corners, along = [], 0.0
    for before, after in pairwise(laid(way).pieces):
        along += before.length
        if span[0] < along < span[1]:
            corners.append(after.start)
    return Gap(span[1] - span[0], places[1], box_around((*places, *corners)))


def _point_along(way: Route, along: float) -> Point:
    """Return the point at a distance along a centre line; on a bend, the one along the line between its ends."""
    for piece in laid(way).pieces:
        if along <= piece.length + NOISE:
            share = along / piece.length
            a, b = piece.start, piece.end
            return Point(a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share)
        along -= piece.length
    return way.points[-1]
