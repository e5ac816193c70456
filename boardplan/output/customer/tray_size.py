"""Tray size: the inside of a battery tray as sums that anybody can check, and what a built tray is out by."""

from collections.abc import Iterator
from dataclasses import dataclass

from boardplan.geometry.units import INCH
from boardplan.model.job import Units
from boardplan.model.rule_set import RuleSet
from boardplan.model.tray import Tray

_OVER: dict[Units, float] = {"mm": 3.0, "inch": INCH / 8}
GRAVITY = 9.80665
"""Standard acceleration of gravity, m/s²: 3rd CGPM, 1901."""
MOST_PULL = 90 * 0.45359237 * GRAVITY
"""A pull of 90 pounds in N, for boats: 33 CFR 183.420(a)."""


@dataclass(frozen=True, slots=True)
class Gap:
    """Free room in mm, none where neither plan nor rule set says it; `source` says whence it comes."""

    value: float | None
    source: str


@dataclass(frozen=True, slots=True)
class Term:
    """A part of a sum: how often what comes in, in mm each, none where nobody knows it."""

    count: int
    each: float | None
    words: str


@dataclass(frozen=True, slots=True)
class InsideSum:
    """An inside measure: its name, what adds up to it, and what of it is not known yet."""

    name: str
    terms: tuple[Term, ...]

    @property
    def total(self) -> float | None:
        """The sum in mm, none where a part is not known."""
        if not self.terms or any(term.each is None for term in self.terms):
            return None
        return sum(term.count * (term.each or 0.0) for term in self.terms)

    @property
    def missing(self) -> tuple[str, ...]:
        """What nobody knows yet, in words."""
        return tuple(term.words for term in self.terms if term.each is None)


@dataclass(frozen=True, slots=True)
class Inside:
    """The inside of a tray: from left to right, from front to back, from the floor up to the lid."""

    length: InsideSum
    width: InsideSum
    height: InsideSum


def gap_of(given: float | None, rules: RuleSet, limit: str) -> Gap:
    """Return a gap as the plan gives it, or else as the rule set does, which says where it has it from."""
    if given is not None:
        return Gap(given, "as given for this job")
    if rules.knows(limit):
        return Gap(rules.limits[limit].value, rules.limits[limit].source)
    return Gap(None, "")


def side_gap(tray: Tray, rules: RuleSet) -> Gap:
    """Return the room between a battery and the side of its tray."""
    return gap_of(tray.gaps.side, rules, "battery-gap-side")


def between_gap(tray: Tray, rules: RuleSet) -> Gap:
    """Return the room between two batteries."""
    return gap_of(tray.gaps.between, rules, "battery-gap-between")


def lid_gap(tray: Tray) -> Gap:
    """Return the room above the posts, for lugs, boots and a spanner; no rule set says how much."""
    return Gap(tray.gaps.lid, "as given for this job")


def sides(tray: Tray) -> tuple[float | None, float | None]:
    """Return how much a battery takes from left to right and from front to back, none where that is not known."""
    battery = tray.battery
    if tray.along is None:
        return None, None
    return (battery.length, battery.width) if tray.along == "length" else (battery.width, battery.length)


def inside_of(tray: Tray, rules: RuleSet) -> Inside:
    """Return the sums of a tray's inside."""
    across, deep = sides(tray)
    side, between = side_gap(tray, rules).value, between_gap(tray, rules).value
    lid = (Term(1, tray.battery.height, "battery height"), Term(1, lid_gap(tray).value, "room above the posts"))
    return Inside(
        InsideSum("length", tuple(_terms(tray.columns, across, between, side))),
        InsideSum("width", tuple(_terms(tray.rows, deep, between, side))),
        InsideSum("free height", lid),
    )


def _terms(count: int | None, battery: float | None, between: float | None, side: float | None) -> Iterator[Term]:
    if count is None:
        yield Term(1, None, "arrangement of the batteries")
        return
    yield Term(count, battery, "battery size, and how the batteries lie")
    if count > 1:
        yield Term(count - 1, between, "gap between batteries")
    yield Term(2, side, "gap to the tray's side")


def over_of(units: Units) -> float:
    """Return how much larger than needed a tray may be inside, in mm; never smaller (common practice, no source).

    >>> over_of("mm"), over_of("inch")
    (3.0, 3.175)
    """
    return _OVER[units]


def built_over(needed: float | None, built: float) -> float | None:
    """Return by how much a built measure is larger than needed, in mm; none where what is needed is not known.

    >>> built_over(840.0, 838.0)
    -2.0
    """
    return None if needed is None else round(built - needed, 6)


def pull_newton(tray: Tray) -> float | None:
    """Return the pull in N that a battery in a boat must stand with an inch of movement: 90 lb or twice its weight."""
    if tray.craft != "boat" or tray.battery.mass is None:
        return None
    return min(MOST_PULL, 2 * tray.battery.mass * GRAVITY)
