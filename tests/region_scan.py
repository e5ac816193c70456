"""A region scanned from outside: place by place, the review's own checks are asked whether they would stop there.

Nothing here knows how a region is made. Places are taken on a grid over the board and beyond it, and close to both
sides of the region's own boundary, where a mistake would show first.
"""

import math
import random
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from random_furnishing import furnished_plan
from shapely import Point as Spike
from shapely import prepare
from shapely.geometry.base import BaseGeometry

from boardplan.checks.finding import Finding
from boardplan.checks.review import Review, refreshed, review_of
from boardplan.checks.room.allowed_region import allowed_region
from boardplan.geometry.point import Point
from boardplan.model.component import Component
from boardplan.model.plan import Plan

TOLERANCE = 0.1
"""mm: nearer to the boundary than that nothing is compared. Checks overlook overlaps of up to 1e-3 mm²: where a corner
of a body lies in another that is up to a few hundredths of a millimetre deep. Arcs are at most 0.01 mm out."""
ANYWHERE = frozenset(
    {"turn-not-allowed", "keyholes-slip", "deeper-than-compartment", "screw-goes-through", "screw-holds-too-little"}
)
"""Findings that stop a component wherever it lies on its board."""
_BESIDE = (0.15, 1.0)
"""mm off the boundary."""


@dataclass
class Scan:
    """What was seen: how many places, how many allowed, what barred, and where region and checks disagree."""

    places: int = 0
    allowed: int = 0
    barred: Counter[str] = field(default_factory=Counter)
    wrong: list[str] = field(default_factory=list)


def stops_at(review: Review, component: Component) -> tuple[set[str], Review]:
    """Return the names of what stops a component at its place, asked of the review, and the review."""
    review = refreshed(review, review.plan.with_things([component]))
    stops = {each.name for each in review.findings if each.severity == "stop" and _of_place(each, component.id)}
    return stops, review


def _of_place(finding: Finding, component: str) -> bool:
    """Say whether a finding is about a component's place: not about its turn, its screws or its own studs."""
    own = finding.name == "opposite-studs-near" and finding.things == (component,)
    return component in finding.things and not own and finding.name not in ANYWHERE


def places_about(plan: Plan, region: BaseGeometry, step: float, seed: int, near: int) -> Iterator[Point]:
    """Yield places of a grid over the board and a little beyond, and some beside the region's boundary."""
    chance = random.Random(f"places {seed}")
    box = plan.boards["A"].box
    left, bottom = box.left - 45 + chance.random(), box.bottom - 45 + chance.random()
    for column in range(math.ceil((box.width + 60) / step)):
        for row in range(math.ceil((box.height + 60) / step)):
            yield Point(left + column * step, bottom + row * step)
    line = region.boundary
    for _ in range(near if line.length else 0):
        at = line.interpolate(chance.uniform(0, line.length))
        away, far = chance.uniform(0, 2 * math.pi), chance.choice(_BESIDE)
        yield Point(at.x + far * math.cos(away), at.y + far * math.sin(away))


def scanned(scan: Scan, seed: int, step: float = 40.0, near: int = 60) -> Scan:
    """Compare the region of a component of a furnished board, turned anew, with what the checks say place by place."""
    plan = furnished_plan(seed)
    chance = random.Random(f"scan {seed}")
    new = Component("U99", chance.choice(list(plan.kinds)), "A", Point(0, 0))
    held = chance.choice([*plan.components.values(), new])
    turn = chance.choice((0.0, 90.0, 180.0, 270.0, round(chance.uniform(0, 360), 1)))
    held = replace(held, board="A", turn=turn)
    region = allowed_region(plan, plan.kind_of(held), turn, "A", without=held.id)
    prepare(region)
    review = review_of(plan)
    for at in places_about(plan, region, step, seed, near):
        spike = Spike(at)
        if region.boundary.distance(spike) < TOLERANCE:
            continue
        stops, review = stops_at(review, replace(held, position=at))
        inside = bool(region.covers(spike))
        scan.places += 1
        scan.allowed += not stops
        scan.barred.update(stops)
        if inside == bool(stops):
            says = f"region {'allows' if inside else 'bars'}, checks {sorted(stops) or 'do not stop'}"
            scan.wrong.append(f"board {seed}, {held.id} turned {turn:g} at {at.x:.3f}, {at.y:.3f}: {says}")
    return scan
