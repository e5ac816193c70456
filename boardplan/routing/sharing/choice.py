"""Channel sharing, the choice: of all real ways found for some cables, which each takes.

Unlike the network of channels these ways are real: what they cost and where they lie is not reckoned but found.
"""

import math
from bisect import bisect_left, bisect_right
from collections.abc import Mapping, Sequence

from boardplan.geometry.bends import straight_length
from boardplan.model.cable import Cable
from boardplan.model.plan import Plan
from boardplan.routing.channels.channel_fill import channel_fills
from boardplan.routing.reach import CORNER
from boardplan.routing.route import Route, Way
from boardplan.routing.sharing.clusters import bound_together
from boardplan.routing.sharing.exchange import Exchange
from boardplan.routing.sharing.network import Network, Path, Piece, Wish
from boardplan.routing.sharing.plan import area_of, outside_costs
from boardplan.routing.sharing.sharing import Loads

_ROUNDS, _PASSES = 2, 10
_NO_WAY_COSTS = 1e6
"""mm: what a cable without any way counts for."""
_NOISE = 1e-6


def chosen_among(
    plan: Plan, known: Mapping[str, Sequence[Way]], answers: Sequence[Mapping[str, Way]], most: float
) -> dict[str, Way]:
    """Return the ways, one of those known for each cable, that overfill least and cost least; no worse than any answer.

    `most` is the share of a channel's inside that may be filled, in percent. Cables that share no section whichever
    way they take are chosen for apart, so that what is known of one makes no difference to the other.
    """
    best = min(answers, key=lambda each: worth(plan, each, most))
    names = sorted(name for name, some in known.items() if len(some) > 1)
    ways = {name: [each for each in known[name] if isinstance(each, Route)] for name in names}
    cells = _Cells(plan, best, ways)
    paths = {name: {cells.path(plan, plan.cables[name], way): way for way in reversed(ways[name])} for name in names}
    chosen = dict(best)
    for group in bound_together([_all_cells(paths[name]) for name in names]):
        within = [names[each] for each in group]
        others = [way for name, way in best.items() if name not in within]
        network = cells.network(plan, most, others)
        chosen |= _choice(plan, network, {name: paths[name] for name in within}, best)
    return min((chosen, dict(best)), key=lambda each: worth(plan, each, most))


def _all_cells(paths: Mapping[Path, Route]) -> frozenset[int]:
    return frozenset(cell for path in paths for cell in path.pieces)


def _choice(
    plan: Plan, network: Network, paths: Mapping[str, Mapping[Path, Route]], best: Mapping[str, Way]
) -> dict[str, Way]:
    """Return the ways of cables that may share sections."""
    wishes = [Wish(name, area_of(plan, plan.cables[name]), (), (), _NO_WAY_COSTS) for name in paths]
    now = [next((path for path, way in some.items() if way == best[name]), None) for name, some in paths.items()]
    alone = [min((path.cost for path in some), default=_NO_WAY_COSTS) for some in paths.values()]
    now = _relieved(
        network, wishes, now, [sorted(some, key=lambda each: (each.cost, each.pieces)) for some in paths.values()]
    )
    room = _with_room(network, wishes, now)
    exchange = Exchange(Loads(room, wishes, now), [list(some) for some in paths.values()], alone, searched=0.0)
    *_, found = exchange.answers(_ROUNDS)
    return {
        name: some[path]
        for (name, some), path in zip(paths.items(), found, strict=True)
        if path is not None and (some[path] != best[name])
    }


def _relieved(
    network: Network, wishes: Sequence[Wish], now: Sequence[Path | None], paths: Sequence[Sequence[Path]]
) -> list[Path | None]:
    """Return an answer with single cables moved as long as less is overfilled by it, or as much at less cost."""
    loads = Loads(network, wishes, now)
    for _ in range(_PASSES):
        before = list(loads.chosen)
        for number, some in enumerate(paths):
            held = loads.chosen[number]
            loads.lay(number, None)
            loads.lay(number, min((*((held,) if held else ()), *some), key=lambda each: _harm(loads, number, each)))
        if loads.chosen == before:
            break
    return loads.chosen


def _harm(loads: Loads, number: int, path: Path) -> tuple[float, float]:
    """Return how much more is overfilled if a cable not laid now takes a way, and what the way costs."""
    area = loads.wishes[number].area
    more = (
        loads.network.pieces[each].length * (max(0.0, area - loads.left[each]) - max(0.0, -loads.left[each]))
        for each in path.pieces
    )
    return round(math.fsum(more), 3), path.cost


def _with_room(network: Network, wishes: Sequence[Wish], now: Sequence[Path | None]) -> Network:
    """Return the network with as much room as is taken now, where that is too much already."""
    left = Loads(network, wishes, now).left
    return Network(
        network.nodes,
        tuple(
            Piece(each.a, each.b, each.length, each.room - min(0.0, spare))
            for each, spare in zip(network.pieces, left, strict=True)
        ),
    )


class _Cells:
    """Channels cut wherever one of some ways begins or ends to lie in them."""

    def __init__(self, plan: Plan, best: Mapping[str, Way], ways: Mapping[str, Sequence[Way]]) -> None:
        self._cuts: dict[str, list[float]] = {}
        self._first: dict[str, int] = {}
        cuts: dict[str, set[float]] = {name: set() for name in sorted(plan.channels)}
        for way in (*best.values(), *(way for some in ways.values() for way in some)):
            for part in way.in_channels if isinstance(way, Route) else ():
                cuts[part.channel] |= {part.start, part.end}
        count = 0
        for name, places in cuts.items():
            self._cuts[name], self._first[name] = sorted(places), count
            count += max(0, len(places) - 1)
        self._count = count

    def _inside(self, way: Route) -> tuple[int, ...]:
        """Return the cells a way lies in."""
        found: list[int] = []
        for part in way.in_channels:
            cuts, first = self._cuts[part.channel], self._first[part.channel]
            found += range(first + bisect_left(cuts, part.start), first + bisect_right(cuts, part.end) - 1)
        return tuple(sorted(set(found)))

    def path(self, plan: Plan, cable: Cable, way: Route) -> Path:
        """Return a way as cells and what it costs."""
        return Path(0, self._inside(way), cost_of(plan, cable, way))

    def network(self, plan: Plan, most: float, others: Sequence[Way]) -> Network:
        """Return the cells with the room that other ways leave."""
        room, lengths = [0.0] * self._count, [0.0] * self._count
        for name, cuts in self._cuts.items():
            for number in range(self._first[name], self._first[name] + max(0, len(cuts) - 1)):
                room[number] = plan.channels[name].inner_area * most / 100
                lengths[number] = cuts[number - self._first[name] + 1] - cuts[number - self._first[name]]
        for way in others:
            for cell in self._inside(way) if isinstance(way, Route) else ():
                room[cell] -= area_of(plan, plan.cables[way.cable])
        return Network(1, tuple(Piece(0, 0, length, each) for length, each in zip(lengths, room, strict=True)))


def worth(plan: Plan, ways: Mapping[str, Way], most: float) -> tuple[float, float]:
    """Return how much ways overfill sections, then what they cost: of two answers the lesser is better."""
    return over(plan, ways, most), cost(plan, ways)


def over(plan: Plan, ways: Mapping[str, Way], most: float) -> float:
    """Return how much is too much, over all sections: area by length, in mm³, to a thousandth."""
    too_much = (
        (each.area - fill.inner_area * most / 100) * (each.end - each.start)
        for fill in channel_fills(plan, ways).values()
        for each in fill.sections
        if each.percent > most + _NOISE
    )
    return round(math.fsum(too_much), 3)


def cost(plan: Plan, ways: Mapping[str, Way]) -> float:
    """Return what all ways come to, in mm in channels, to a tenth of a mm."""
    return round(math.fsum(cost_of(plan, plan.cables[name], way) for name, way in ways.items()), 1)


def cost_of(plan: Plan, cable: Cable, way: Way) -> float:
    """Return what a way comes to, in mm in channels; a mm outside and a corner count as in the search for ways."""
    if not isinstance(way, Route):
        return _NO_WAY_COSTS
    inside = sum(each.end - each.start for each in way.in_channels)
    outside = max(0.0, straight_length(way.points) - inside) + CORNER * max(0, len(way.points) - 2)
    return inside + outside_costs(plan, cable) * outside
