"""Lane price: what it costs to lay a leg so far aside, among the legs of other cables near it.

The price is in mm: the distance aside and what the way becomes longer, and so much for each crossing, for a
crossing in a bend, for each mm that is lacking to cables to be kept apart or too much to those that belong with it.
All prices are common practice, no source.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import TypeAlias

from boardplan.routing.square.open_lines import units
from boardplan.routing.together.laid_legs import Leg, Lies
from boardplan.routing.together.lying_order import Apart, Who

CROSSING = units(30)
"""As much as a corner: who crosses another cable lays a spacer and lifts a clamp."""
IN_BEND = units(20)
"""More for a crossing in a bend, which never is square."""
ON_TOP = units(100)
"""For a neighbouring leg that lies on another cable."""
LONGER = 2
"""For each mm that the way becomes longer: cable costs more than room."""
LACKING = 2
TOGETHER = 2
TOGETHER_WITHIN = units(40)
"""Cables that belong together are laid beside each other where no more than this lies between them."""
SEEN = units(40)
"""How far along its neighbours a leg looks for crossings it might spare them."""
_Spans: TypeAlias = list[tuple[int, int]]
_Priced: TypeAlias = list[tuple[int, int, int]]
"""Stretches across the leg: from where to where, and what it costs to lie between."""


@dataclass(frozen=True, slots=True)
class Neighbour:
    """A leg next to the one to be moved: the line it runs on, and where along it its far end lies, in units."""

    line: int
    far: int


class LanePrice:
    """The prices of the places for one leg."""

    def __init__(self, leg: Leg, who: Who, neighbours: Sequence[Neighbour], gap: int, apart: Apart) -> None:
        """Begin with nothing near; `gap` is what stays between jackets, in units."""
        self._leg, self._who, self._gap, self._apart = leg, who, gap, apart
        self._neighbours = neighbours
        self._taken: _Spans = []
        self._lacking: _Spans = []
        self._together: _Spans = []
        self._crossed: _Priced = []
        self._doubtful: _Spans = []
        self._met: list[tuple[int, int, Neighbour]] = []
        self._under: list[tuple[int, int, Neighbour]] = []

    def take(self, near: Iterable[Lies]) -> None:
        """Sort what lies near by how it matters."""
        for each in near:
            if each.leg.axis == self._leg.axis:
                self._take_along(each)
                self._take_across_neighbours(each)
            else:
                self._take_across(each)
                if each.settled_for(self._who.rank):
                    self._take_under_neighbours(each.leg)

    def _take_along(self, each: Lies) -> None:
        """Note a leg that runs the same way."""
        leg, other = self._leg, each.leg
        shared, reach = min(leg.end, other.end) - max(leg.start, other.start), leg.half + other.half
        if shared <= 0:
            return
        if each.settled_for(self._who.rank):
            self._taken.append((other.line - reach - self._gap, other.line + reach + self._gap))
        asked = self._apart.asked(self._who, each.who)
        if asked and shared > self._apart.least:
            self._lacking.append((other.line, reach + asked))
        if each.who.id in self._who.with_others and abs(other.line - leg.line) - reach <= TOGETHER_WITHIN:
            self._together.append((other.line, reach))

    def _take_across(self, each: Lies) -> None:
        """Note a leg that runs square to the leg: on it, the bends at its ends cost more.

        One that is only expected may yet be moved: as near to its end as cables lie, it crosses as likely as not.
        """
        leg, other = self._leg, each.leg
        if leg.start < other.line < leg.end:
            price = CROSSING + (IN_BEND if _in_bend(leg, other.line) else 0)
            self._crossed.append((other.start, other.end, price))
            if each.who.rank > self._who.rank:
                reach = leg.half + other.half + self._gap
                self._doubtful += [(other.start - reach, other.start), (other.end, other.end + reach)]
            for low, high in ((other.start, other.start + other.bends[0]), (other.end - other.bends[1], other.end)):
                self._crossed.append((low, high, IN_BEND))

    def _take_across_neighbours(self, lies: Lies) -> None:
        other = lies.leg
        for each in self._neighbours:
            if other.start < each.line < other.end:
                price = CROSSING + (IN_BEND if _in_bend(other, each.line) else 0)
                self._met.append((other.line, price, each))
                if lies.who.rank > self._who.rank:
                    reach = self._leg.half + other.half + self._gap
                    past = (
                        (other.line, other.line + reach) if each.far > other.line else (other.line - reach, other.line)
                    )
                    self._doubtful.append(past)

    def _take_under_neighbours(self, other: Leg) -> None:
        for each in self._neighbours:
            if abs(other.line - each.line) < self._leg.half + other.half + self._gap:
                self._under.append((other.start, other.end, each))

    def taken(self, by: int) -> bool:
        """Say whether the leg moved aside would lie on another one, or nearer than cables lie."""
        place = self._leg.line + by
        return any(low < place < high for low, high in self._taken)

    def at(self, by: int) -> int:
        """Return the price of the place so far aside, in units; the distance itself is left out."""
        place = self._leg.line + by
        price = sum(cost for low, high, cost in self._crossed if low < place < high)
        price += CROSSING // 2 * sum(low <= place <= high for low, high in self._doubtful)
        price += sum(LACKING * max(0, wanted - abs(line - place)) for line, wanted in self._lacking)
        price += sum(TOGETHER * max(0, abs(line - place) - reach) for line, reach in self._together)
        return price + self._of_neighbours(place)

    def _of_neighbours(self, place: int) -> int:
        """Return what the neighbours cost that reach to a place."""
        leg, price = self._leg, 0
        low, high = min(place, leg.line), max(place, leg.line)
        for line, cost, each in self._met:
            if (abs(line - leg.line) < SEEN or low <= line <= high) and (line - place) * (each.far - line) > 0:
                price += cost + (IN_BEND if abs(line - place) < max(leg.bends) else 0)
        for start, end, each in self._under:
            longer = (leg.line - place) * (each.far - leg.line) > 0
            price += ON_TOP if longer and start < high and low < end else 0
        return price


def _in_bend(leg: Leg, at: int) -> bool:
    """Say whether a place on a leg lies in a bend at one of its ends."""
    return at < leg.start + leg.bends[0] or at > leg.end - leg.bends[1]
