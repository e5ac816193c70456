"""Clamps: what holds the thick cables outside of channels to the board, and where a cable hangs free too far.

Each cable is first held as if alone; alike cables side by side then share clamps, and rows are lined up. What each
of these steps finds is kept with what it was found from, so that a change of the plan asks little anew.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from boardplan.model.plan import Plan
from boardplan.routing.currents.battery_cables import battery_cables
from boardplan.routing.route import Way
from boardplan.routing.supports.clamp import Clamp, Held
from boardplan.routing.supports.clamp_obstacles import Obstacles, all_obstacles, wants_clamps
from boardplan.routing.supports.clamp_room import Room
from boardplan.routing.supports.clamp_rows import lined_up
from boardplan.routing.supports.clamp_setter import FREE, Kept, Lying, Placed, Setter
from boardplan.routing.supports.clamp_sharing import Beside, Shares, alike, order_of, shared, side_by_side


@dataclass(frozen=True, eq=False)
class Row:
    """The clamps of a cable before they were lined up, those of its neighbours they were lined up with, and after."""

    lying: Lying
    before: tuple[Placed, ...]
    others: tuple[tuple[Placed, ...], ...]
    after: tuple[Placed, ...]
    held: Held


@dataclass(frozen=True, eq=False)
class Surroundings:
    """What stands in the way of clamps, and which cables lead to batteries."""

    obstacles: Obstacles
    room: Room
    battery: frozenset[str]


@dataclass(frozen=True, eq=False)
class Holding:
    """What holds every cable of a plan, and what to keep of it for the next plan.

    `pairs` says which alike cables lie so near each other that they could share clamps, `beside` which cables could
    stand in a row.
    """

    held: Mapping[str, Held]
    lying: Mapping[str, Lying]
    pairs: Beside
    beside: Beside
    shares: Shares
    rows: Mapping[str, Row]
    around: Surroundings


def clamps_of(plan: Plan, ways: Mapping[str, Way]) -> dict[str, tuple[Clamp, ...]]:
    """Return the clamps of every cable, in the plan's order; a clamp for a pair is with both of them."""
    return {cable: held.clamps for cable, held in holding_of(plan, ways).held.items()}


def holding_of(plan: Plan, ways: Mapping[str, Way]) -> Holding:
    """Return what holds every cable, in the plan's order."""
    obstacles = all_obstacles(plan, ways)
    room = Room(each for those in obstacles.values() for each in those)
    around = Surroundings(obstacles, room, battery_cables(plan))
    return holding_with(
        plan, ways, around, Holding({}, {}, {}, {}, {}, {}, around), Differing(set(plan.cables), Room(()))
    )


@dataclass(frozen=True)
class Differing:
    """What is not as it was: the cables to look at anew, and all that came into the way of clamps or left it."""

    cables: set[str]
    obstacles: Room


def holding_with(
    plan: Plan, ways: Mapping[str, Way], around: Surroundings, old: Holding, differing: Differing
) -> Holding:
    """Return what holds every cable: some cables are looked at anew, all others lie as they did."""
    setter, lost = Setter(plan), differing.cables
    kept = {key: each for key, each in old.lying.items() if key in plan.cables and key not in lost}
    fresh = {}
    for key, cable in plan.cables.items():
        if key in lost and wants_clamps(plan, cable):
            diameter = plan.conductors[cable.conductor].outside_diameter
            seats = Kept(old.lying.get(key), cable, diameter, differing.obstacles)
            found = setter.lying(cable, ways.get(key), around.room, seats, battery=key in around.battery)
            if found is not None:
                fresh[key] = found
    lying = kept | fresh
    pairs = _beside(old.pairs, lying, fresh, setter.beside, only_alike=True)
    beside = _beside(old.beside, lying, fresh, setter.row) if setter.row else {}
    order = sorted(lying.values(), key=order_of)
    placed, shares = shared(setter, order, pairs, old.shares)
    rows = _rows(setter, old.rows, order, placed, beside)
    held = {key: rows[key].held if key in rows else FREE for key in plan.cables}
    return Holding(held, lying, pairs, beside, shares, rows, around)


def _beside(
    old: Beside, lying: Mapping[str, Lying], fresh: Mapping[str, Lying], gap: float, *, only_alike: bool = False
) -> dict[str, frozenset[str]]:
    """Return which cables lie beside which, asking only about those that lie anew; those beside none are left out."""
    stay = lying.keys() - fresh.keys()
    found = {key: set(old[key] & stay) for key in stay if key in old}
    for key, each in fresh.items():
        for other_key in each.neighbours & lying.keys():
            other = lying[other_key]
            if (not only_alike or alike(each, other)) and side_by_side(each, other, gap):
                found.setdefault(key, set()).add(other_key)
                found.setdefault(other_key, set()).add(key)
    return {key: frozenset(those) for key, those in found.items() if those}


def _rows(
    setter: Setter,
    old: Mapping[str, Row],
    order: Sequence[Lying],
    placed: Mapping[str, tuple[Placed, ...]],
    beside: Beside,
) -> dict[str, Row]:
    """Return the clamps of all cables in their last places; kept where nothing they hang on is another."""
    found: dict[str, Row] = {}
    for each in order:
        key = each.cable.id
        own = placed[key]
        others = tuple(found[other].after for other in sorted(beside.get(key, ())) if other in found)
        before = old.get(key)
        if before is not None and before.lying is each and before.before is own and _same(before.others, others):
            found[key] = before
        else:
            after = lined_up(setter, each, own, others) if others else own
            found[key] = Row(each, own, others, after, each.held_by(after))
    return found


def _same(before: Sequence[object], now: Sequence[object]) -> bool:
    return len(before) == len(now) and all(a is b for a, b in zip(before, now, strict=True))
