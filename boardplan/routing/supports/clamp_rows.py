"""Clamp rows: clamps of cables that lie side by side are moved so that they stand in a row across them.

Common practice, no source: a row looks neat and its screws are marked along one straightedge. No clamp leaves the
place that its own rules allow: the first stays near its distance from the lug, no gap grows beyond the pitch.
"""

from collections.abc import Iterable, Sequence

from boardplan.geometry.bends import turn_between
from boardplan.routing.supports.clamp import Clamp
from boardplan.routing.supports.clamp_room import includes
from boardplan.routing.supports.clamp_setter import Lying, Placed, Seat, Setter
from boardplan.routing.supports.clamp_spacing import NEAR_FIRST, NOISE, Run

_PARALLEL = 0.01  # degrees


def lined_up(
    setter: Setter, lying: Lying, own: tuple[Placed, ...], others: Iterable[tuple[Placed, ...]]
) -> tuple[Placed, ...]:
    """Return a cable's clamps moved to those of the cables beside it that come first; shared ones stay."""
    moved, clamps = list(own), [clamp for each in others for _, clamp in each]
    for _ in own:  # one may have to wait until the next has moved
        before = list(moved)
        for index in range(len(moved)):
            moved[index] = _lined_up(setter, lying, moved, index, clamps)
        if moved == before:
            break
    return own if moved == list(own) else tuple(moved)


def _lined_up(setter: Setter, lying: Lying, own: Sequence[Placed], index: int, others: Iterable[Clamp]) -> Placed:
    """Return a clamp in the nearest place across from another that it may stand in, or where it is."""
    along, clamp = own[index]
    if len(clamp.cables) > 1:
        return own[index]
    seat = next(each for each in lying.seats if each.bench.stretch.holds(along, setter.foot.half))
    wanted = {place for each in others if (place := _across(setter, lying, seat, each)) is not None}
    for place in sorted(wanted, key=lambda at: (abs(at - along), at)):
        if abs(place - along) <= NOISE:
            break
        if _may_move(setter, lying, [at for at, _ in own], index, place):
            return place, setter.single(lying, place)
    return own[index]


def _across(setter: Setter, lying: Lying, seat: Seat, clamp: Clamp) -> float | None:
    """Return the place along a cable straight across from a clamp beside it, none where that is not beside it."""
    stretch = seat.bench.stretch
    turn = abs(turn_between(stretch.towards, clamp.towards))
    if min(turn, 180 - turn) >= _PARALLEL:
        return None
    seen = stretch.seen(clamp.at)
    apart = abs(seen.y) - lying.half - clamp.width / 2
    along = stretch.along + seen.x
    fits = -NOISE <= apart <= setter.row + NOISE and stretch.holds(along, setter.foot.half)
    return along if fits else None


def _may_move(setter: Setter, lying: Lying, places: Sequence[float], index: int, to: float) -> bool:
    """Say whether a clamp may stand elsewhere: free there, in bounds, its neighbours as far off as the rules ask."""
    run = next((each for each in lying.runs if each.start <= places[index] <= each.end), None)
    if run is None or not includes([setter.bounds(run, lying.diameter)], to) or not includes(lying.free, to):
        return False
    own = [at for at in places if run.start <= at <= run.end]
    here = own.index(places[index])
    before, after = own[here - 1] if here else None, own[here + 1] if here + 1 < len(own) else None
    return _side(setter, run, (before, places[index], to), low=True) and _side(
        setter, run, (after, places[index], to), low=False
    )


def _side(setter: Setter, run: Run, places: tuple[float | None, float, float], *, low: bool) -> bool:
    """Say whether what holds the cable on one side lets a clamp move from one place to another."""
    neighbour, here, to = places
    in_channel = run.channel_before if low else run.channel_after
    if neighbour is None and not in_channel:  # the first one after a terminal or an exit
        return abs(to - here) <= NEAR_FIRST + NOISE
    held = neighbour if neighbour is not None else run.start if low else run.end
    gap, before = (to - held, here - held) if low else (held - to, held - here)
    least = setter.spacing.least if neighbour is not None else 0.0
    return least - NOISE <= gap <= max(setter.spacing.pitch, before) + NOISE
