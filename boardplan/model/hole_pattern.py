"""Hole pattern: the pitches of a unit's own holes, to compare with the unit in the hand before drilling."""

from dataclasses import dataclass
from itertools import combinations

from boardplan.geometry.point import Point
from boardplan.model.placed import Placed


@dataclass(frozen=True, slots=True)
class PatternDimensions:
    """Pitches of a hole pattern as it is turned, in mm: the widest along x and along y, and the longest diagonal.

    `ends` are the numbers of the two holes that the diagonal joins, counted from 1.
    """

    pitch_x: float
    pitch_y: float
    diagonal: float
    ends: tuple[int, int]


def pattern_dimensions(unit: Placed) -> PatternDimensions | None:
    """Return what to measure on a unit in the hand, none where it has fewer than two holes."""
    centres = [at for _, at in unit.holes]
    if len(centres) < 2:  # noqa: PLR2004 - a pitch has two ends
        return None
    xs, ys = [at.x for at in centres], [at.y for at in centres]
    first, second = max(combinations(range(len(centres)), 2), key=lambda pair: _apart(centres, pair))
    diagonal = _apart(centres, (first, second))
    return PatternDimensions(max(xs) - min(xs), max(ys) - min(ys), diagonal, (first + 1, second + 1))


def _apart(centres: list[Point], pair: tuple[int, int]) -> float:
    return centres[pair[0]].distance_to(centres[pair[1]])
