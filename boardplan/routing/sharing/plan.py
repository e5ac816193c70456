"""Channel sharing of a plan: its channels as a network, and what each cable asks of them.

A cable may enter where its way enters now, or straight opposite its ends; it may lie in channels that are deep
enough for it and beside no cable of a class that it must not lie with. Costs are mm in a channel; a mm outside
counts as in the search for ways.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from boardplan.model.cable import Cable
from boardplan.model.plan import Plan
from boardplan.routing.channels.channel_fill import jacket_area
from boardplan.routing.one_way import way_meant
from boardplan.routing.route import InChannel, Route, Way
from boardplan.routing.sharing.network import Entry, Network, Piece, Wish
from boardplan.routing.sharing.places import Place, Places, square
from boardplan.routing.square.ends import ends_of
from boardplan.routing.square.open_lines import WEIGHT

_IN_LANE = {"channel": 1, "choose": 3}
"""What a unit of length counts for in a channel, WEIGHT outside: as in the search for ways."""
_CHOICES = 4
"""How many channels an end may choose from besides that of its way."""
_APART = ("ac", "pv")
"""Classes that lie in a channel alone."""


@dataclass(frozen=True)
class Layout:
    """A network, what its pieces are (none where channels meet), the wishes of cables that may be laid otherwise.

    `now` are the pieces each of those lies in.
    """

    network: Network
    stretches: tuple[InChannel | None, ...]
    wishes: tuple[Wish, ...]
    now: tuple[frozenset[int], ...]


def layout_of(plan: Plan, ways: Mapping[str, Way], most: float) -> Layout:
    """Return the network of a plan's channels, `most` percent of which may be filled, and what cables ask of it.

    Pinned cables, and those that lie in a channel alone by their class, stay where they are and take their room.
    """
    routes = {name: way for name, way in sorted(ways.items()) if isinstance(way, Route) and name in plan.cables}
    places = Places(plan)
    free = [name for name, way in routes.items() if _may_move(plan.cables[name], way)]
    entries = {name: _entries(places, plan, plan.cables[name], routes[name]) for name in free}
    for way in routes.values():
        for part in way.in_channels:
            places.add((part.channel, part.start))
            places.add((part.channel, part.end))
    return _Maker(plan, places, most).layout(routes, entries)


def _may_move(cable: Cable, way: Route) -> bool:
    """Say whether a cable lies in a channel, or left one for others, and may be laid otherwise."""
    return bool(way.in_channels or way.full) and not cable.pins and cable.cable_class not in _APART


def outside_costs(plan: Plan, cable: Cable) -> float:
    """Return what a mm outside costs a cable against one in a channel."""
    return WEIGHT / _IN_LANE.get(way_meant(plan, cable)[0], WEIGHT)


def area_of(plan: Plan, cable: Cable) -> float:
    """Return the area a cable takes of a channel, over its jacket, in mm²."""
    return jacket_area(plan.conductors[cable.conductor].outside_diameter, cable.count)


def _entries(places: Places, plan: Plan, cable: Cable, way: Route) -> tuple[dict[Place, float], dict[Place, float]]:
    """Return by end the places where a cable may enter channels, and what it costs to get there."""
    weight = outside_costs(plan, cable)
    used = [(part.channel, at) for part in way.in_channels for at in (part.start, part.end)]
    found: list[dict[Place, float]] = []
    for end in ends_of(plan, cable):
        near = min(((square(end.point, places.point(each)), each) for each in used), default=None)
        choices = places.opposite(end.point)[:_CHOICES] + ([near] if near else [])
        costs: dict[Place, float] = {}
        for far, place in choices:
            known = places.add(place)
            costs[known] = min(costs.get(known, far * weight), far * weight)
        found.append(costs)
    return found[0], found[1]


class _Maker:
    """Numbers places and pieces."""

    def __init__(self, plan: Plan, places: Places, most: float) -> None:
        self._plan, self._places = plan, places
        along = [(name, at) for name in places.lines for at in sorted(places.along[name])]
        self._nodes = {place: number for number, place in enumerate(along)}
        self._stretches: list[InChannel | None] = [
            InChannel(one[0], one[1], other[1]) for one, other in pairwise(along) if one[0] == other[0]
        ]
        self._pieces = [
            Piece(
                self._nodes[each.channel, each.start],
                self._nodes[each.channel, each.end],
                each.end - each.start,
                plan.channels[each.channel].inner_area * most / 100,
            )
            for each in self._stretches
            if each is not None
        ]
        self._middles: dict[str, tuple[list[float], int]] = {}
        for number, each in enumerate(self._stretches):
            if each is not None:
                self._middles.setdefault(each.channel, ([], number))[0].append((each.start + each.end) / 2)
        ample = sum(area_of(plan, each) for each in plan.cables.values())
        for one, other, gap in places.joints:
            self._pieces.append(Piece(self._nodes[one], self._nodes[other], gap, ample))
            self._stretches.append(None)

    def layout(
        self, routes: Mapping[str, Route], entries: Mapping[str, tuple[dict[Place, float], dict[Place, float]]]
    ) -> Layout:
        """Return the network with the room that cables without a wish leave."""
        lie = {name: self._lies(way) for name, way in routes.items()}
        left = [each.room for each in self._pieces]
        apart: list[bool] = [False] * len(left)
        for name in routes.keys() - entries.keys():
            cable = self._plan.cables[name]
            for number in lie[name]:
                left[number] -= area_of(self._plan, cable)
                apart[number] |= cable.cable_class in _APART
        pieces = tuple(
            Piece(each.a, each.b, each.length, max(0.0, room)) for each, room in zip(self._pieces, left, strict=True)
        )
        wishes = tuple(self._wish(name, both, apart, lie[name]) for name, both in entries.items())
        return Layout(
            Network(len(self._nodes), pieces), tuple(self._stretches), wishes, tuple(lie[name] for name in entries)
        )

    def _lies(self, way: Route) -> frozenset[int]:
        """Return the pieces a way lies in, by their middles."""
        found: set[int] = set()
        for part in way.in_channels:
            middles, first = self._middles[part.channel]
            found.update(range(first + bisect_left(middles, part.start), first + bisect_right(middles, part.end)))
        return frozenset(found)

    def _wish(
        self,
        name: str,
        entries: tuple[dict[Place, float], dict[Place, float]],
        apart: Sequence[bool],
        now: frozenset[int],
    ) -> Wish:
        cable = self._plan.cables[name]
        first, second = ends_of(self._plan, cable)
        starts, ends = (self._numbered(each) for each in entries)
        outside = outside_costs(self._plan, cable) * square(first.point, second.point)
        shallow = self._shallow(cable)
        barred = {
            number
            for number, each in enumerate(self._stretches)
            if each is not None
            and number not in now
            and (each.channel in shallow or (apart[number] and not self._plan.channels[each.channel].dividers))
        }
        return Wish(name, area_of(self._plan, cable), starts, ends, outside, frozenset(barred))

    def _numbered(self, entries: Mapping[Place, float]) -> tuple[Entry, ...]:
        return tuple(sorted((self._nodes[place], cost) for place, cost in entries.items()))

    def _shallow(self, cable: Cable) -> set[str]:
        """Return the channels that are not deep enough for a cable."""
        most = self._plan.rules.value("channel-largest-cable") / 100
        diameter = self._plan.conductors[cable.conductor].outside_diameter
        return {name for name, each in self._plan.channels.items() if diameter > most * each.inner_height}
