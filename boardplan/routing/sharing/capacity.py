"""Capacity: no more cables into a section of channel than the rule set lets in, where they have another way.

Where a section is overfull, cables need other ways. Some come from moving them out one by one - pinned cables stay,
then come the thickest, then by id -, some from closing all overfull sections at once, some from sharing the cables
out over the network of channels. Of all real ways found, each cable then gets the one with which all together
overfill nothing, or as little as can be, and are least long. A cable that finds no other way stays: a check says so.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from functools import lru_cache
from itertools import pairwise
from typing import TypeAlias

from boardplan.geometry.bends import straight_length
from boardplan.model.cable import Cable
from boardplan.model.plan import Plan
from boardplan.routing.channels.channel_fill import channel_fills
from boardplan.routing.route import InChannel, Route, Way
from boardplan.routing.sharing.choice import chosen_among, cost, worth
from boardplan.routing.sharing.clusters import Cluster, bound_together, overfull_clusters
from boardplan.routing.sharing.network import Network, Path, Wish
from boardplan.routing.sharing.plan import Layout, area_of, layout_of
from boardplan.routing.sharing.search import Work, sharings
from boardplan.routing.sharing.sharing import Chosen, Loads

Another: TypeAlias = Callable[[Cable, tuple[InChannel, ...]], Way]
"""Finds a way of a cable beside stretches that are full."""
WORK = Work(rounds=12, tries=1)
"""How much work to put into a cluster while somebody waits."""
_NOISE = 1e-6
_NEARLY = 1.001
"""What cables may cost together against each alone before they are shared out over the network of channels as well."""


def spread_over_channels(plan: Plan, ways: Mapping[str, Way], another: Another) -> dict[str, Way]:
    """Return the ways with cables moved out of overfull stretches; `another` finds a way beside those given."""
    most = plan.rules.value("channel-fill-most")
    over = overfull(plan, ways, most)
    if not over:
        return dict(ways)
    finder, left = _Remembering(another, ways), _left_by(ways, over)
    for name, stretches in left.items():
        if not plan.cables[name].pins:
            finder(plan.cables[name], stretches)
    answers = [dict(ways), _one_by_one(plan, ways, most, finder)]
    chosen = chosen_among(plan, finder.known, answers, most)
    too_much, costs = worth(plan, chosen, most)
    if too_much or costs > _NEARLY * cost(plan, ways):
        answers = [chosen, _shared_out(plan, ways, most, finder)]
        chosen = chosen_among(plan, finder.known, answers, most)
    return {name: _as_left(ways[name], way, left.get(name, ())) for name, way in chosen.items()}


def _left_by(ways: Mapping[str, Way], over: Sequence[InChannel]) -> dict[str, tuple[InChannel, ...]]:
    """Return by cable the overfull stretches it should leave: its own, and those that share cables with them."""
    inside = {
        name: frozenset(number for number, each in enumerate(over) if overlaps(way.in_channels, (each,)))
        for name, way in sorted(ways.items())
        if isinstance(way, Route)
    }
    names = [name for name, own in inside.items() if own]
    found: dict[str, tuple[InChannel, ...]] = {}
    for group in bound_together([inside[name] for name in names]):
        together = sorted(frozenset[int]().union(*(inside[names[each]] for each in group)))
        found |= {names[each]: tuple(over[number] for number in together) for each in group}
    return {name: found[name] for name in names}


def _as_left(alone: Way, way: Way, left: tuple[InChannel, ...]) -> Way:
    """Return a way as one that had to leave what is overfull, whatever was closed when it was found."""
    if way is alone or not left or not isinstance(way, Route):
        return way
    if isinstance(alone, Route) and (way.points, way.radius) == (alone.points, alone.radius):
        return alone
    return replace(way, full=left)


def overfull(plan: Plan, ways: Mapping[str, Way], most: float) -> tuple[InChannel, ...]:
    """Return the stretches of channels that hold more than a share in percent, those that touch made one."""
    crowded = _crowded(plan, ways, most)
    return _joined(
        [
            InChannel(name, each.start, each.end)
            for name, fill in (sorted(channel_fills(plan, ways).items()) if crowded else ())
            for each in fill.sections
            if each.percent > most + _NOISE
        ]
    )


def _crowded(plan: Plan, ways: Mapping[str, Way], most: float) -> bool:
    """Say whether any section of a channel may be overfull: one by one is slower, and seldom needed."""
    for channel, stretches in _held(plan, ways).items():
        changes = sorted((at, area) for start, end, each in stretches for at, area in ((start, each), (end, -each)))
        held, fullest = 0.0, plan.channels[channel].inner_area * most / 100 * (1 - 1e-9)
        if any((held := held + area) > fullest for _, area in changes):
            return True
    return False


def _held(plan: Plan, ways: Mapping[str, Way]) -> dict[str, list[tuple[float, float, float]]]:
    """Return the stretches that lie in each channel: from where to where, and what area they take."""
    areas: dict[tuple[str, int], float] = {}
    found: dict[str, list[tuple[float, float, float]]] = {each: [] for each in plan.channels}
    for name, way in ways.items():
        for part in way.in_channels if isinstance(way, Route) and name in plan.cables else ():
            cable = plan.cables[name]
            area = areas.setdefault((cable.conductor, cable.count), area_of(plan, cable))
            if part.channel in found:
                found[part.channel].append((part.start, part.end, area))
    return found


class _Remembering:
    """Looks for each way once, and knows all that were found."""

    def __init__(self, another: Another, ways: Mapping[str, Way]) -> None:
        self._another = another
        self._found: dict[tuple[str, tuple[InChannel, ...]], Way] = {}
        self.known: dict[str, list[Way]] = {name: [way] for name, way in ways.items()}

    def __call__(self, cable: Cable, full: tuple[InChannel, ...]) -> Way:
        key = cable.id, full
        if key not in self._found:
            self._found[key] = self._another(cable, full)
            self.known[cable.id].append(self._found[key])
        return self._found[key]


def _shared_out(plan: Plan, ways: Mapping[str, Way], most: float, another: Another) -> dict[str, Way]:
    """Return the ways with all clusters of cables in overfull sections shared out over the channels."""
    settled = dict(ways)
    layout = layout_of(plan, ways, most)
    for cluster in overfull_clusters(layout.network, layout.wishes, layout.now):
        chosen = best_sharing(cluster.network, cluster.wishes)
        for number, given in zip(cluster.cables, _given(layout, cluster, chosen), strict=True):
            if given is not None:
                cable = plan.cables[layout.wishes[number].cable]
                settled[cable.id] = another(cable, _closed(layout, cluster, given))
    return settled


@lru_cache(maxsize=64)
def best_sharing(network: Network, wishes: tuple[Wish, ...], work: Work = WORK) -> Chosen:
    """Return the best answer that so much work finds; asked again for the same it is known."""
    chosen: Chosen = ()
    for each in sharings(network, wishes, work):
        chosen = each.chosen
    return chosen


def _given(layout: Layout, cluster: Cluster, chosen: Chosen) -> list[frozenset[int] | None]:
    """Return the pieces given to each cable of a cluster, none where it may stay as it lies now."""
    loads = Loads(cluster.network, cluster.wishes, chosen)
    number_of = {piece: number for number, piece in enumerate(cluster.pieces)}
    found: list[frozenset[int] | None] = []
    for number, (cable, path) in enumerate(zip(cluster.cables, chosen, strict=True)):
        now = [number_of[piece] for piece in sorted(layout.now[cable]) if piece in number_of]
        area = cluster.wishes[number].area
        loads.lay(number, None)
        stays = bool(now) and all(loads.left[piece] >= area - _NOISE for piece in now)
        loads.lay(number, Path(-1, tuple(now), 0.0) if stays else path)
        found.append(None if stays else frozenset(cluster.pieces[each] for each in (path.pieces if path else ())))
    return found


def _closed(layout: Layout, cluster: Cluster, given: frozenset[int]) -> tuple[InChannel, ...]:
    """Return the stretches of a cluster that a cable was not given."""
    parts = [layout.stretches[each] for each in cluster.pieces if each not in given]
    return _joined(sorted((part for part in parts if part is not None), key=lambda one: (one.channel, one.start)))


def _joined(parts: Sequence[InChannel]) -> tuple[InChannel, ...]:
    """Return stretches in their order, those that follow each other made one."""
    joined: list[InChannel] = []
    for each in parts:
        if joined and joined[-1].channel == each.channel and joined[-1].end == each.start:
            joined[-1] = InChannel(each.channel, joined[-1].start, each.end)
        else:
            joined.append(each)
    return tuple(joined)


def _one_by_one(plan: Plan, ways: Mapping[str, Way], most: float, another: Another) -> dict[str, Way]:
    """Return the ways with cables laid in one after the other, each that doesn't fit any more moved."""
    settled, laid = dict(ways), _Laid(plan, most)
    for cable in sorted(plan.cables.values(), key=lambda each: _order(plan, each)):
        way = settled[cable.id]
        if not isinstance(way, Route) or not way.in_channels:
            continue
        full = laid.full_for(cable)
        if not cable.pins and overlaps(way.in_channels, full):
            other = another(cable, full)
            if isinstance(other, Route) and not overlaps(other.in_channels, full):
                way = settled[cable.id] = other
        laid.add(cable, way)
    return settled


def _order(plan: Plan, cable: Cable) -> tuple[bool, float, str]:
    return not cable.pins, -area_of(plan, cable), cable.id


_SHARED = 1e-6  # mm: stretches that only touch share nothing


def overlaps(stretches: tuple[InChannel, ...], full: tuple[InChannel, ...]) -> bool:
    """Say whether any stretch shares some length with a full one."""
    return any(
        a.channel == b.channel and min(a.end, b.end) - max(a.start, b.start) > _SHARED for a in stretches for b in full
    )


class _Laid:
    """What has been laid into the channels so far."""

    def __init__(self, plan: Plan, most: float) -> None:
        """Begin with empty channels; `most` in percent of their inner area."""
        self._plan = plan
        self._most = most
        self._stretches: dict[str, list[tuple[float, float, float]]] = {each: [] for each in plan.channels}

    def add(self, cable: Cable, way: Route) -> None:
        """Lay a cable in."""
        for each in way.in_channels:
            self._stretches[each.channel].append((each.start, each.end, area_of(self._plan, cable)))

    def full_for(self, cable: Cable) -> tuple[InChannel, ...]:
        """Return the stretches that can't take a cable any more."""
        area = area_of(self._plan, cable)
        found: list[InChannel] = []
        for channel in sorted(self._stretches):
            room = self._plan.channels[channel].inner_area * self._most / 100 - area
            found += [InChannel(channel, start, end) for start, end in self._over(channel, room)]
        return tuple(found)

    def _over(self, channel: str, room: float) -> list[tuple[float, float]]:
        changes = {0.0: 0.0, straight_length(self._plan.channels[channel].line): 0.0}
        for start, end, area in self._stretches[channel]:
            changes[start] = changes.get(start, 0.0) + area
            changes[end] = changes.get(end, 0.0) - area
        full: list[tuple[float, float]] = []
        held = 0.0
        for start, end in pairwise(sorted(changes)):
            held += changes[start]
            if held > room + _NOISE:
                if full and full[-1][1] == start:
                    full[-1] = full[-1][0], end
                else:
                    full.append((start, end))
        return full
