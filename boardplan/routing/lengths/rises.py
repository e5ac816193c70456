"""Rises: what the heights of a cable add to its length, as lines of its sum; nothing where lengths are flat.

All in mm. An edition of the rule set that doesn't say which slopes count has flat lengths.
"""

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from boardplan.geometry.units import tidy_number
from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.plan import Plan
from boardplan.routing.lengths.end_work import EndWork
from boardplan.routing.lengths.heights import Climb, climbs_of, height_profile, through_hole
from boardplan.routing.lengths.passed import Passable, cables_passing, passables
from boardplan.routing.lengths.risen_lug import angled_lug, risen_lug
from boardplan.routing.route import Route, Way


@dataclass(frozen=True, slots=True)
class Rises:
    """What goes into the sum, words and mm, and in words which slopes are left out."""

    parts: tuple[tuple[str, float], ...] = ()
    left_out: str = ""

    @property
    def adds(self) -> float:
        """All of it together."""
        return sum(value for _, value in self.parts)


FLAT = Rises()


def has_heights(plan: Plan) -> bool:
    """Say whether lengths are true in three dimensions under the plan's edition of the rule set."""
    return plan.rules.knows("slope-counts-from")


def things_passed(plan: Plan) -> tuple[Passable, ...]:
    """Return what ways may lie in or over; nothing where lengths are flat."""
    return passables(plan) if has_heights(plan) else ()


def passing_moved(plans: Iterable[Plan], ways: Mapping[str, Way], moved: Collection[str]) -> set[str]:
    """Return the cables whose heights may hang on things that moved, as they stand in any of the plans."""
    return cables_passing(ways, [thing for plan in plans if has_heights(plan) for thing in passables(plan, moved)])


def rises_of(
    plan: Plan, cable: Cable, way: Route, things: Sequence[Passable], ends: tuple[EndWork, EndWork], *, stiff: bool
) -> Rises:
    """Return what a cable's heights add; of a stiff jumper every slope counts, of others the steep ones."""
    if not has_heights(plan):
        return FLAT
    levels = height_profile(plan, cable, way, things)
    climbs = climbs_of(levels, way.radius, plan.rules.value("slope-counts-from"))
    counted = [each for each in climbs if each.counts or stiff]
    return Rises(
        parts=(
            *_lugs(plan, cable, way, ends),
            *((each.words, each.adds) for each in counted),
            *_holes(plan, cable, way, ends),
        ),
        left_out=_left_out(plan, [each for each in climbs if each not in counted]),
    )


def _left_out(plan: Plan, gentle: Sequence[Climb]) -> str:
    adds = sum(each.adds for each in gentle)
    if tidy_number(adds) == "0":
        return ""
    slope = tidy_number(plan.rules.value("slope-counts-from"))
    return f"slopes no steeper than 1 in {slope} are left out: they would add {tidy_number(adds)} mm"


def _lugs(plan: Plan, cable: Cable, way: Route, ends: tuple[EndWork, EndWork]) -> Iterator[tuple[str, float]]:
    conductor = plan.conductors[cable.conductor]
    for end, work in zip(cable.ends, ends, strict=True):
        if isinstance(end, TerminalEnd) and work.lugged and angled_lug(end, conductor):
            lug = risen_lug(plan, end, conductor)
            yield f"up the {lug.angle:g}° lug at {work.place} and back to level", lug.adds(way.radius)


def _holes(plan: Plan, cable: Cable, way: Route, ends: tuple[EndWork, EndWork]) -> Iterator[tuple[str, float]]:
    half = plan.conductors[cable.conductor].outside_diameter / 2
    for end, work in zip(cable.ends, ends, strict=True):
        adds = through_hole(plan, end, way.radius, half)
        if adds and not isinstance(end, TerminalEnd):
            yield f"down hole {plan.exits[end.exit].name or end.exit} to the back, towards {work.place}", adds
