"""Site: what checks look at: the plan, everything on it as it lies on the wall, and how to say what is found."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from shapely.geometry.base import BaseGeometry

from boardplan.checks.finding import Finding
from boardplan.checks.grounds import Ground
from boardplan.checks.spots import Spot
from boardplan.geometry.point import Box, Point
from boardplan.geometry.units import length_text, tidy_number
from boardplan.model.plan import Plan
from boardplan.model.rule_set import Limit
from boardplan.routing.channels.channel_fill import ChannelFill
from boardplan.routing.lengths.length_sum import CutLength
from boardplan.routing.route import Way
from boardplan.routing.supports.clamps import Holding

NOISE = 1e-6
"""What sums of floats may be out by, in mm: no breach is as small as that."""


NOWHERE = Point(0, 0)


@dataclass(frozen=True, slots=True)
class Where:
    """What a finding is about: ids, and the board, place and area on the wall to show."""

    things: tuple[str, ...]
    board: str = ""
    at: Point = NOWHERE
    area: Box | None = None


@dataclass(frozen=True, eq=False)
class Site:
    """A plan on its wall; `rooms` is all boards together with the room round them, as far as it was measured.

    `loads` is what each fixing of a board carries, in kg.
    """

    plan: Plan
    ways: Mapping[str, Way]
    lengths: Mapping[str, CutLength]
    fills: Mapping[str, ChannelFill]
    holding: Holding
    grounds: Mapping[str, Ground]
    rooms: BaseGeometry
    loads: Mapping[str, float | None]
    spots: Mapping[str, Spot]

    def limit(self, name: str) -> Limit:
        """Return a limit of the rule set; a name that is not there is a fault of the program."""
        return self.plan.rules.limits[name]

    def knows(self, name: str) -> bool:
        """Say whether the rule set sets a limit; an earlier edition may not, and then nothing is asked."""
        return self.plan.rules.knows(name)

    def asked(self, name: str, value: float) -> Limit:
        """Return a limit whose value in mm the thing itself states; how grave and whence are the rule set's."""
        return replace(self.plan.rules.limits[name], value=value, unit="mm")

    def length(self, value: float) -> str:
        """Return a length in the job's units."""
        return length_text(value, self.plan.job.units)

    def two_lengths(self, measured: float, asked: float) -> tuple[str, str]:
        """Return two lengths in the job's units, with as many digits as tell them apart."""
        for units, places in ((self.plan.job.units, 1), ("mm", 1), ("mm", 3)):
            texts = length_text(measured, units, places), length_text(asked, units, places)
            if texts[0] != texts[1]:
                return texts
        return f"a shade from {length_text(asked, 'mm')}", length_text(asked, "mm")

    def finding(self, name: str, limit: Limit, where: Where, words: str, measured: float | None = None) -> Finding:
        """Return a finding; the words are a sentence without its full stop, the source is put behind it."""
        at, area = where.at, where.area
        if where.board:
            origin = self.plan.boards[where.board].position
            at = at.moved(-origin.x, -origin.y)
            area = area.moved(-origin.x, -origin.y) if area else None
        return Finding(
            name=name,
            severity=limit.severity,
            sentence=f"{words} ({limit.source}).",
            things=where.things,
            board=where.board,
            place=at,
            area=area,
            measured=measured,
            limit=limit.value if measured is not None else None,
            unit=limit.unit,
            source=limit.source,
        )


def where_is(*spots: Spot, at: Point | None = None, area: Box | None = None) -> Where:
    """Return where a finding about things is: at the middle of the first, unless something nearer is given."""
    first = spots[0]
    shown = area or first.box
    return Where(tuple(spot.id for spot in spots), first.board.id, at or shown.centre, shown)


def percent_text(value: float, places: int = 1) -> str:
    """Return a share for people.

    >>> percent_text(41.26)
    '41.3 %'
    """
    return f"{tidy_number(value, places)} %"


def two_percents(measured: float, asked: float) -> tuple[str, str]:
    """Return two shares with as many digits as tell them apart.

    >>> two_percents(40.02, 40)
    ('40.02 %', '40 %')
    """
    for places in (1, 3):
        texts = percent_text(measured, places), percent_text(asked, places)
        if texts[0] != texts[1]:
            return texts
    return f"a shade from {percent_text(asked)}", percent_text(asked)
