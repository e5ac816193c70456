"""Hole pattern: the pitches of a unit's own holes, to compare with the unit in the hand before drilling."""

from dataclasses import dataclass
from itertools import combinations

from boardplan.geometry.bends import turn_between
from boardplan.geometry.point import Point
from boardplan.model.placed import Placed


@dataclass(frozen=True, slots=True)
class PatternDimensions:
    """Pitches of a hole pattern in mm: the widest along x and along y, and the longest diagonal.

    x and y are those of the board for a unit turned by quarters; at any other turn the unit's own, since
    only those can be measured on it.

    `ends` are the numbers of the two holes that the diagonal joins, counted from 1.
    """

    pitch_x: float
    pitch_y: float
    diagonal: float
    ends: tuple[int, int]


def pattern_dimensions(unit: Placed) -> PatternDimensions | None:
    """Return what to measure on a unit in the hand, none where it has fewer than two holes."""
    square = abs(turn_between(unit.placement.turn, round(unit.placement.turn / 90) * 90)) < _SQUARE
    centres = [at if square else hole.position for hole, at in unit.holes]
    if len(centres) < 2:  # noqa: PLR2004 - a pitch has two ends
        return None
    xs, ys = [at.x for at in centres], [at.y for at in centres]
    first, second = max(combinations(range(len(centres)), 2), key=lambda pair: _apart(centres, pair))
    diagonal = _apart(centres, (first, second))
    return PatternDimensions(max(xs) - min(xs), max(ys) - min(ys), diagonal, (first + 1, second + 1))


_SQUARE = 1e-6  # degrees: what sums of floats may be out by


def _apart(centres: list[Point], pair: tuple[int, int]) -> float:
    return centres[pair[0]].distance_to(centres[pair[1]])
