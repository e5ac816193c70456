"""Pattern check: the pitches of a unit's own holes, to compare with the unit in the hand before drilling."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations

from boardplan.checks.finding import Finding
from boardplan.checks.site import Site, Where
from boardplan.geometry.point import Point
from boardplan.model.component import Component
from boardplan.model.placed import placed
from boardplan.model.plan import Plan


@dataclass(frozen=True, slots=True)
class PatternDimensions:
    """Pitches of a hole pattern as it is turned, in mm: the widest along x and along y, and the longest diagonal.

    `ends` are the numbers of the two holes that the diagonal joins, counted from 1.
    """

    pitch_x: float
    pitch_y: float
    diagonal: float
    ends: tuple[int, int]


def pattern_dimensions(plan: Plan, component: Component) -> PatternDimensions | None:
    """Return what to measure on a unit in the hand, none where it has fewer than two holes."""
    centres = [at for _, at in placed(plan, component).holes]
    if len(centres) < 2:  # noqa: PLR2004 - a pitch has two ends
        return None
    xs, ys = [at.x for at in centres], [at.y for at in centres]
    first, second = max(combinations(range(len(centres)), 2), key=lambda pair: _apart(centres, pair))
    diagonal = _apart(centres, (first, second))
    return PatternDimensions(max(xs) - min(xs), max(ys) - min(ys), diagonal, (first + 1, second + 1))


def _apart(centres: list[Point], pair: tuple[int, int]) -> float:
    return centres[pair[0]].distance_to(centres[pair[1]])


def patterns_not_checked(site: Site) -> Iterator[Finding]:
    """Yield one note for the job that says how many kinds have a pattern nobody compared with the unit itself."""
    kinds = {component.kind: None for component in site.plan.components.values()}
    doubtful = [
        site.plan.kinds[each] for each in kinds if site.plan.kinds[each].data_state in ("typical", "from sheet")
    ]
    doubtful = [kind for kind in doubtful if len(kind.holes) > 1]
    if not doubtful:
        return
    count, all_of = len(doubtful), len(kinds)
    words = (
        f"Hole patterns of {count} of {all_of} component kinds aren't checked: "
        "measure each unit in your hand against its pattern check dimensions before drilling"
    )
    yield site.finding("pattern-not-checked", site.limit("pattern-check"), Where(()), words)
