"""Evening: which component to move, and how far, so that two cables of a matched group come out alike."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TypeAlias

from boardplan.geometry.point import Point
from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.plan import Plan
from boardplan.routing.square.ends import ends_of

Gain: TypeAlias = tuple[Point, Point, int]
"""Where a cable ends on a unit, where its other end is, and whether it is to get longer (1) or shorter (-1)."""
_TOWARDS = (("to the right", 1, 0), ("to the left", -1, 0), ("up", 0, 1), ("down", 0, -1))


@dataclass(frozen=True, slots=True)
class Shift:
    """A move of a component, in mm, that makes two cables alike; `towards` in words, `cables` shorter then longer."""

    component: str
    by: float
    towards: str
    cables: tuple[str, str]

    def words(self, length: str) -> str:
        """Return what to do as half a sentence, with the length in the reader's units."""
        shorter, longer = self.cables
        return f"moving {self.component} about {length} {self.towards} would even {shorter} and {longer}"


def evening_shift(plan: Plan, longer: str, shorter: str, difference: float) -> Shift | None:
    """Return which component to move, how far and where to; none where no such move is found.

    A unit that both cables end on, moved by half the difference away from the far end of the shorter and towards that
    of the longer, takes from one what it gives to the other. Else a unit that the longer alone ends on is moved towards
    its far end by all of it. Cables are taken to run square, so that what a unit moves along a side counts whole.
    """
    ends = tuple(_ends(plan, plan.cables[each]) for each in (longer, shorter))
    common = [each for each in ends[0] if each in ends[1]]
    moves: list[tuple[str, float, tuple[Gain, ...]]] = [
        *((each, difference / 2, ((*ends[0][each], -1), (*ends[1][each], 1))) for each in common),
        *((each, difference, ((*ends[0][each], -1),)) for each in ends[0] if each not in common),
    ]
    for component, by, gains in moves:
        towards = _first_move(by, gains)
        if towards:
            return Shift(component, by, towards, (shorter, longer))
    return None


def _ends(plan: Plan, cable: Cable) -> dict[str, tuple[Point, Point]]:
    """Return by component where a cable ends on it, and where its other end is, on the wall."""
    first, second = (end.point for end in ends_of(plan, cable))
    found = {}
    for end, here, there in ((cable.end, second, first), (cable.start, first, second)):
        if isinstance(end, TerminalEnd):
            found[end.component] = here, there
    return found


def _first_move(by: float, gains: Sequence[Gain]) -> str:
    """Return the first direction in which a move makes each cable longer (1) or shorter (-1) by all of itself."""
    for words, x, y in _TOWARDS:
        if all(abs(_grows(here, there, x * by, y * by) - sign * by) < _NOISE for here, there, sign in gains):
            return words
    return ""


_NOISE = 1e-6


def _grows(here: Point, there: Point, x: float, y: float) -> float:
    """Return how much farther an end is from the other one, along the sides, once it is moved."""

    def apart(point: Point) -> float:
        return abs(point.x - there.x) + abs(point.y - there.y)

    return apart(here.moved(x, y)) - apart(here)
