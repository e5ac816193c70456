"""Channel lanes: how cables lie beside each other in a channel, for the picture: side by side and crossing little.

A way runs along a channel's centre line, so that all cables of a channel would be drawn on top of each other. Here
each strand - a stretch of a way along one channel - gets a distance from the centre line. Where a strand leaves the
channel to a side, it crosses those that lie between it and that wall; strands are ordered so that few do. Lengths and
findings know nothing of it: the difference is within what a channel's slots leave open.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import TypeAlias

from boardplan.geometry.point import Point, bearing, direction
from boardplan.model.channel import Channel
from boardplan.model.plan import Plan
from boardplan.routing.route import Route, Way

_LEAST = 1.0  # mm: a shorter stretch along a channel is none
_NOISE = 1e-6
_MOST_HELD = 4096
_BUNDLE = 24
"""More strands than that in a channel are drawn as one bundle: nobody tells them apart, and all would move for one."""


@dataclass(frozen=True, slots=True)
class Strand:
    """A stretch of a cable's way along a channel, by the distances along its centre line, the lesser first.

    `before` and `after` say to which side it leaves at its lesser and at its greater end: 1 left, -1 right looking
    along the channel's line, 0 where it goes straight on or ends. `legs` are the numbers of the way's legs in it.
    """

    cable: str
    start: float
    end: float
    before: int
    after: int
    diameter: float
    legs: tuple[int, ...] = ()

    @property
    def side(self) -> int:
        """To which side it leaves altogether: from 2, both ends to the left, to -2."""
        return self.before + self.after


def drawn_beside_each_other(plan: Plan, ways: Mapping[str, Way]) -> dict[str, Way]:
    """Return the ways as they are drawn: on the wall, each strand in a channel moved into its lane.

    Ways that run along no channel, and those that lie as they lay when this was last asked, are the same objects.
    """
    shifts: dict[str, dict[int, Point]] = {}
    inside: dict[str, list[tuple[Route, float]]] = {}
    for name in sorted(ways):
        way = ways[name]
        if not isinstance(way, Route):
            continue
        diameter = plan.conductors[plan.cables[name].conductor].outside_diameter
        for channel_id in dict.fromkeys(each.channel for each in way.in_channels):
            inside.setdefault(channel_id, []).append((way, diameter))
    for channel in (each for each in plan.channels.values() if each.id in inside):
        origin = plan.boards[channel.board].position
        for cable, leg, shift in _channel_shifts(channel, origin, tuple(inside[channel.id])):
            shifts.setdefault(cable, {})[leg] = shift
    return {name: _drawn(way, shifts[name]) if name in shifts else way for name, way in ways.items()}


_Inside: TypeAlias = tuple[tuple[Route, float], ...]
_Shifts: TypeAlias = tuple[tuple[str, int, Point], ...]
_channels_held: dict[str, tuple[Channel, Point, _Inside, _Shifts]] = {}
_ways_held: dict[str, tuple[Route, dict[int, Point], Route]] = {}


def _channel_shifts(channel: Channel, origin: Point, inside: _Inside) -> _Shifts:
    """Return which leg of which way moves by how much; remembered as long as the same ways lie in the channel."""
    held = _channels_held.get(channel.id)
    same = held is not None and held[:2] == (channel, origin) and len(held[2]) == len(inside)
    if held is not None and same and all(a[0] is b[0] and a[1] == b[1] for a, b in zip(held[2], inside, strict=True)):
        return held[3]
    line = [point.moved(*origin) for point in channel.line]
    strands = strands_in(channel, line, inside)
    points_of = {way.cable: way.points for way, _ in inside}
    found = []
    offsets = lanes(strands, channel.inner_width) if len(strands) <= _BUNDLE else []
    for strand, offset in zip(strands, offsets, strict=False):  # none for a bundle
        points = points_of[strand.cable]
        for leg in strand.legs:
            cos, sin = _along(line, points[leg], points[leg + 1], channel.width / 2)
            found.append((strand.cable, leg, Point(-sin * offset, cos * offset)))
    if len(_channels_held) > _MOST_HELD:
        _channels_held.clear()
    _channels_held[channel.id] = channel, origin, inside, tuple(found)
    return tuple(found)


def _drawn(way: Way, shifts: dict[int, Point]) -> Way:
    """Return a way with its legs moved, as the same object as long as it lies there."""
    if not isinstance(way, Route):
        return way
    held = _ways_held.get(way.cable)
    if held is not None and held[0] is way and held[1] == shifts:
        return held[2]
    if len(_ways_held) > _MOST_HELD:
        _ways_held.clear()
    drawn = replace(way, points=_shifted(way.points, shifts))
    _ways_held[way.cable] = way, shifts, drawn
    return drawn


def _shifted(points: tuple[Point, ...], shifts: Mapping[int, Point]) -> tuple[Point, ...]:
    """Return the corners with legs moved aside; what lies on an end stays, so its leg does."""
    moved = list(points)
    for leg, shift in shifts.items():
        if 0 < leg < len(points) - 2:
            moved[leg] = moved[leg].moved(*shift)
            moved[leg + 1] = moved[leg + 1].moved(*shift)
    return tuple(moved)


def strands_in(channel: Channel, line: Sequence[Point], inside: Iterable[tuple[Route, float]]) -> list[Strand]:
    """Return the strands in a channel whose line lies on the wall, by cable; `inside` are ways and their diameters."""
    return [each for way, diameter in inside for each in _joined(_strands(line, channel.width / 2, way, diameter))]


def _strands(line: Sequence[Point], half: float, way: Route, diameter: float) -> Iterable[Strand]:
    """Yield a strand for each leg of a way along a leg of a channel's line."""
    for number, (a, b) in enumerate(pairwise(way.points)):
        before_leg = 0.0
        for start, end in pairwise(line):
            span = _span(start, end, half, (a, b))
            if span is not None:
                cos, sin = direction(bearing(start, end))
                near = way.points[number - 1] if number else a
                far = way.points[number + 2] if number + 2 < len(way.points) else b
                sides = [_side(cos * (p.y - q.y) - sin * (p.x - q.x)) for p, q in ((near, a), (far, b))]
                low, high = sorted(span)
                before, after = sides if span[0] < span[1] else reversed(sides)
                places = before_leg + low, before_leg + high
                yield Strand(way.cable, *places, before, after, diameter, (number,))
            before_leg += start.distance_to(end)


def _span(start: Point, end: Point, half: float, leg: tuple[Point, Point]) -> tuple[float, float] | None:
    """Return from where to where a leg of a way runs along a leg of a channel, none where it doesn't."""
    length = start.distance_to(end)
    if not length:
        return None
    cos, sin = direction(bearing(start, end))
    (u0, v0), (u1, v1) = [
        ((p.x - start.x) * cos + (p.y - start.y) * sin, (p.y - start.y) * cos - (p.x - start.x) * sin) for p in leg
    ]
    if abs(v1 - v0) > _NOISE or abs(v0) > half:
        return None
    u0, u1 = min(max(u0, 0.0), length), min(max(u1, 0.0), length)
    return (u0, u1) if abs(u1 - u0) >= _LEAST else None


def _along(line: Sequence[Point], a: Point, b: Point, half: float) -> tuple[float, float]:
    """Return the direction of the leg of a channel that a leg of a way runs along."""
    for start, end in pairwise(line):
        if _span(start, end, half, (a, b)) is not None:
            return direction(bearing(start, end))
    raise ValueError("the leg doesn't run along the channel")


def _side(across: float) -> int:
    return 0 if abs(across) <= _NOISE else (1 if across > 0 else -1)


def _joined(strands: Iterable[Strand]) -> list[Strand]:
    """Return the strands with those made one that follow a channel round its corner."""
    found: list[Strand] = []
    for each in strands:
        last = found[-1] if found else None
        if last and last.legs[-1] + 1 == each.legs[0] and abs(last.end - each.start) < _LEAST:
            found[-1] = Strand(
                each.cable, last.start, each.end, last.before, each.after, each.diameter, last.legs + each.legs
            )
        elif last and last.legs[-1] + 1 == each.legs[0] and abs(last.start - each.end) < _LEAST:
            found[-1] = Strand(
                each.cable, each.start, last.end, each.before, last.after, each.diameter, last.legs + each.legs
            )
        else:
            found.append(each)
    return found


def lanes(strands: Sequence[Strand], inner_width: float) -> list[float]:
    """Return how far left of the centre line each strand lies, in mm, right being negative.

    Strands that share some length lie beside each other with nothing between. Where they are wider together than the
    channel inside they come to lie over each other: all distances are then shortened alike.
    """
    order = least_crossing(strands)
    left = _pushed(strands, order)
    right = _pushed(strands, order[::-1])
    wide = max((place + strands[each].diameter / 2 for each, place in left.items()), default=0.0)
    share = min(1.0, inner_width / wide) if wide else 1.0
    return [share * (right[each] - left[each]) / 2 for each in range(len(strands))]


def _pushed(strands: Sequence[Strand], order: Sequence[int]) -> dict[int, float]:
    """Return how far each strand's middle is from a wall that all are pushed to, in an order from that wall."""
    places: dict[int, float] = {}
    for number in order:
        own = strands[number].diameter / 2
        beside = [
            place + strands[other].diameter / 2
            for other, place in places.items()
            if _share(strands[other], strands[number])
        ]
        places[number] = max(beside, default=0.0) + own
    return places


def _share(a: Strand, b: Strand) -> bool:
    return min(a.end, b.end) - max(a.start, b.start) > _NOISE


def least_crossing(strands: Sequence[Strand]) -> list[int]:
    """Return the strands by number from the left wall to the right one, in an order in which few cross.

    Begins with those that leave to the left, the shortest outermost, then takes each out and puts it back where it
    crosses least, as long as that helps.
    """
    order = sorted(range(len(strands)), key=lambda each: _rank(strands[each]))
    over = [[_crossings(a, b) for b in strands] for a in strands]
    for _ in range(len(strands)):
        before = tuple(order)
        for number in before:
            at = order.index(number)
            order.remove(number)
            order.insert(_best_place(order, number, at, over), number)
        if tuple(order) == before:
            break
    return order


def _rank(strand: Strand) -> tuple[int, float, float, str]:
    long = strand.end - strand.start
    return -strand.side, long * strand.side, -strand.diameter, strand.cable


def _best_place(order: Sequence[int], number: int, at: int, over: Sequence[Sequence[int]]) -> int:
    """Return where in an order a strand crosses least, where it was if nowhere less."""
    cost = sum(over[number][other] for other in order)
    costs = [cost]
    for other in order:
        cost += over[other][number] - over[number][other]
        costs.append(cost)
    least = min(costs)
    return at if costs[at] == least else costs.index(least)


def _crossings(left: Strand, right: Strand) -> int:
    """Return how often two strands cross if the first lies left of the second."""
    return sum(
        side == towards
        for one, other, towards in ((left, right, -1), (right, left, 1))
        for place, side in ((one.start, one.before), (one.end, one.after))
        if other.start + _NOISE < place < other.end - _NOISE
    )
