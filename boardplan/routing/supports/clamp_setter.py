"""Clamp setter: sets the clamps of one cable as if no other shared them.

The first clamp comes a set distance after the mouth of a lug, the others evenly between; none on a bend or where
something else is.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import TypeAlias

from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.cable import Cable
from boardplan.model.plan import Plan
from boardplan.routing.route import Route, Way
from boardplan.routing.square.ends import ends_of
from boardplan.routing.supports.clamp import Clamp, Held
from boardplan.routing.supports.clamp_gaps import widest, widest_between
from boardplan.routing.supports.clamp_obstacles import foot_of
from boardplan.routing.supports.clamp_room import Bench, Room, bench_of, includes, joined
from boardplan.routing.supports.clamp_runs import runs_of
from boardplan.routing.supports.clamp_spacing import NOISE, Run, Spacing, Span, common, spaced
from boardplan.routing.supports.laid_way import Stretch, laid

Placed: TypeAlias = tuple[float, Clamp]
"""A clamp with its place along a cable's centre line."""

FREE = Held()

ROOM = 1.0  # mm: what is looked for reaches so much farther than it has to


@dataclass(frozen=True)
class Seat:
    """A stretch of a cable where clamps can be: free for one with its foot to the left, and to the right."""

    bench: Bench
    left: tuple[Span, ...]
    right: tuple[Span, ...]


@dataclass(frozen=True, eq=False)
class Lying:
    """A thick cable as it lies: what is near it, and how it is held as long as it shares no clamp.

    `free` is where along it a clamp may be, `around` the box that holds all that could share one with it.
    """

    cable: Cable
    way: Route
    diameter: float
    battery: bool
    runs: tuple[Run, ...]
    seats: tuple[Seat, ...]
    free: tuple[Span, ...]
    around: Box
    alone: tuple[Placed, ...]

    @property
    def half(self) -> float:
        """Half of what it takes across, all of its count side by side."""
        return self.diameter * self.cable.count / 2

    @property
    def neighbours(self) -> set[str]:
        """The ids of the thick cables near its straights."""
        return {cable for seat in self.seats for _, cable, feet in seat.bench.near if feet} - {self.cable.id}

    def held_by(self, placed: Iterable[Placed]) -> Held:
        """Return what holds the cable with these clamps, and the widest gaps between."""
        placed = list(placed)
        places = [at for at, _ in placed]
        return Held(
            tuple(clamp for _, clamp in placed),
            widest(self.way, self.runs, places),
            widest_between(self.way, self.runs, places) if self.battery else None,
        )


class Kept:
    """The seats of a cable that are as they were before a change of the plan."""

    def __init__(self, before: Lying | None, cable: Cable, diameter: float, differing: Room) -> None:
        """Take how the cable lay before, and all that came or went since then."""
        self._cable, self._differing = cable.id, differing
        same = before is not None and before.diameter == diameter and before.cable.count == cable.count
        seats = before.seats if before is not None and same else ()
        self._seats = {each.bench.stretch: each for each in seats}

    def seat(self, stretch: Stretch) -> Seat | None:
        """Return the seat on a stretch, none where it lay elsewhere or something near it is not as it was.

        Its own jacket is in no cable's way.
        """
        seat = self._seats.get(stretch)
        if seat is None or any(each.cable != self._cable for each in self._differing.within(seat.bench.around)):
            return None
        return seat


class Setter:
    """Sets clamps under the rules of a plan."""

    def __init__(self, plan: Plan) -> None:
        """Take the limits from the plan's rule set."""
        self.plan, self.foot = plan, foot_of(plan)
        value = plan.rules.value
        self.spacing = Spacing(value("clamp-first"), value("clamp-pitch"), 4 * self.foot.half)
        self.beside = value("clamp-pair-gap")
        self.row = value("clamp-row-gap") if plan.rules.knows("clamp-row-gap") else 0.0
        self._jacket = value("jumper-free-jacket")
        self._short = value("jumper-shorter-than")

    def reach_of(self, cable: Cable) -> float:
        """Return how far beside a cable's centre line something can be in the way of its clamps.

        A foot of its own beyond that of the cable beside it, in a clamp that holds both; a row reaches farther still.
        """
        diameter = self.plan.conductors[cable.conductor].outside_diameter
        clamped = diameter * max(2.0, cable.count) + 2 * self.foot.beside + self.beside
        return max(clamped, diameter * cable.count / 2 + self.row + ROOM)

    def lying(self, cable: Cable, way: Way | None, room: Room, kept: Kept, *, battery: bool) -> Lying | None:
        """Return a cable as it lies, none for one without a way and for a short jumper.

        Of how it lay before, the seats are kept that nothing came near or left.
        """
        if not isinstance(way, Route) or len(way.points) < 2:  # noqa: PLR2004 - a line has two ends
            return None
        ends = ends_of(self.plan, cable)
        if all(end.lugged for end in ends) and laid(way).length < self._short - NOISE:
            return None
        diameter = self.plan.conductors[cable.conductor].outside_diameter
        reach = self.reach_of(cable)
        half = diameter * cable.count / 2
        stretches = (each for each in laid(way).stretches if each.length >= 2 * self.foot.half)
        seats = tuple(
            kept.seat(each) or self._seat(bench_of(room, each, self.foot, reach), half, cable.id) for each in stretches
        )
        bare = Lying(
            cable=cable,
            way=way,
            diameter=diameter,
            battery=battery,
            runs=tuple(runs_of(self.plan, way, ends)),
            seats=seats,
            free=tuple(joined(span for seat in seats for span in (*seat.left, *seat.right))),
            around=box_around(way.points).grown(half + max(self.beside, self.row) / 2 + ROOM),
            alone=(),
        )
        return replace(bare, alone=self.set_along(bare, ()))

    def _seat(self, bench: Bench, half: float, cable: str) -> Seat:
        left, right = bench.free_beside(half, half + self.foot.beside, cable)
        return Seat(bench, left, right)

    def set_along(self, lying: Lying, given: Sequence[Placed]) -> tuple[Placed, ...]:
        """Return the clamps of a cable in order, those given among them."""
        found = list(given)
        for run in lying.runs:
            there = [along for along, _ in given if run.start <= along <= run.end]
            places = spaced(run, common(lying.free, *self.bounds(run, lying.diameter)), there, self.spacing)
            found += [(along, self.single(lying, along)) for along in places]
        return tuple(sorted(found, key=lambda each: each[0]))

    def bounds(self, run: Run, diameter: float) -> Span:
        """Return a run without the jacket that stays free at its ends for the cable to bend."""
        jacket = self._jacket * diameter
        return (
            run.start + (0.0 if run.channel_before else jacket),
            run.end - (0.0 if run.channel_after else jacket),
        )

    def single(self, lying: Lying, along: float) -> Clamp:
        """Return a clamp of one cable at a place along it that is free."""
        seat = next(each for each in lying.seats if each.bench.stretch.holds(along, self.foot.half))
        stretch = seat.bench.stretch
        first = 1 if seat.bench.leads(1) else -1
        side = 90 * (first if includes(seat.left if first > 0 else seat.right, along) else -first)
        at, towards = stretch.at(along), stretch.towards
        return Clamp(
            cables=(lying.cable.id,),
            at=at,
            towards=towards,
            diameters=(lying.diameter,) * lying.cable.count,
            width=2 * lying.half,
            length=2 * self.foot.half,
            screws=(at.ahead(towards + side, lying.half + self.foot.screw),),
            board=_board_at(self.plan, at),
        )


def _board_at(plan: Plan, at: Point) -> str:
    """Return the board that a place on the wall lies on."""
    for board in sorted(plan.boards.values(), key=lambda each: each.id):
        if board.box.moved(*board.position).holds(at):
            return board.id
    return ""
