"""Allowed region: every place where a component may lie on a board so that no check of its place stops the papers.

The region is what the checks say, turned round: each asks whether a place is wrong, here each bars the places that are.
It holds no place that the checks would stop. It lacks places right beside what bars them: up to `shifts.EXCESS` at
arcs, and where bodies may touch, as much as checks overlook (an overlap of `SHARED` mm²). How cables would lie, and
what is only advised, bars nothing.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from typing import Any, TypeAlias

from shapely import Polygon, union_all
from shapely.geometry.base import BaseGeometry

from boardplan.checks.all_checks import CHECKS
from boardplan.checks.check import CheckBetween
from boardplan.checks.grounds import all_room, fixing_loads, grounds_of
from boardplan.checks.room.barred_alone import (
    Frame,
    frame_of,
    hole_near_edge_at,
    keep_clear_at_lip_at,
    keep_clear_walled_at,
    off_the_board_at,
    over_cutout_at,
    too_near_edge_at,
)
from boardplan.checks.room.barred_beside import (
    bodies_apart_at,
    exit_covered_at,
    fixing_head_blocked_at,
    hole_meets_back_part_at,
    hole_meets_nut_at,
    in_no_go_box_at,
    keep_clear_blocked_at,
    opposite_studs_near_at,
)
from boardplan.checks.site import Site
from boardplan.checks.spots import ComponentSpot, Spot
from boardplan.checks.survey import spot_of
from boardplan.geometry.point import Point
from boardplan.model.component import Component
from boardplan.model.component_kind import ComponentKind
from boardplan.model.plan import Plan
from boardplan.routing.supports.clamps import holding_of

Alone: TypeAlias = Callable[[Site, ComponentSpot, Frame], Iterator[BaseGeometry]]
Beside: TypeAlias = Callable[[Site, ComponentSpot, Any], Iterator[BaseGeometry]]

ALONE: Mapping[str, Alone] = {
    "off the board": off_the_board_at,
    "edge margin": too_near_edge_at,
    "hole to edge": hole_near_edge_at,
    "cut-outs": over_cutout_at,
    "keep-clear lip": keep_clear_at_lip_at,
    "keep-clear walls": keep_clear_walled_at,
}
BESIDE: Mapping[str, Beside] = {
    "bodies apart": bodies_apart_at,
    "keep-clear": keep_clear_blocked_at,
    "no-go boxes": in_no_go_box_at,
    "exits": exit_covered_at,
    "fixing head": fixing_head_blocked_at,
    "back parts": hole_meets_back_part_at,
    "nuts behind": hole_meets_nut_at,
    "opposite studs": opposite_studs_near_at,
}
"""What each check bars, by its name in the table of checks."""
QUARTERS = (0.0, 90.0, 180.0, 270.0)
_IN_HAND = "(in hand)"
"""The id of a piece that lies nowhere yet: no thing of a plan is called so."""


def allowed_region(
    plan: Plan, kind: ComponentKind, turn: float, board: str, without: str | None = None
) -> BaseGeometry:
    """Return where the lower left of a kind, at a turn, may lie on a board, in its coordinates; empty for nowhere.

    `without` is the component that is being moved: it bars nothing.
    """
    return _region(_site_round(plan, kind, without), kind, turn, board)


def turns_with_room(
    plan: Plan,
    kind: ComponentKind,
    board: str,
    without: str | None = None,
    turns: Sequence[float] = QUARTERS,
) -> tuple[float, ...]:
    """Return those of some turns that a kind may hang in and for which the board has any room at all."""
    site = _site_round(plan, kind, without)
    allowed = (each for each in turns if kind.allowed_turns is None or each in kind.allowed_turns)
    return tuple(each for each in allowed if not _region(site, kind, each, board).is_empty)


def _site_round(plan: Plan, kind: ComponentKind, without: str | None) -> Site:
    """Return everything on the wall but the component that is moved; cables lie nowhere."""
    still = replace(
        plan,
        components={key: each for key, each in plan.components.items() if key != without},
        kinds={**plan.kinds, kind.id: kind},
        cables={},
    )
    found = ((thing.id, spot_of(still, thing, None)) for thing in still.things.values())
    grounds = grounds_of(still)
    return Site(
        plan=still,
        ways={},
        lengths={},
        fills={},
        holding=holding_of(still, {}),
        grounds=grounds,
        rooms=all_room(grounds),
        loads=fixing_loads(still),
        spots={key: spot for key, spot in found if spot is not None},
    )


def _region(site: Site, kind: ComponentKind, turn: float, board: str) -> BaseGeometry:
    spot = spot_of(site.plan, Component(_IN_HAND, kind.id, board, Point(0.0, 0.0), turn), None)
    if not isinstance(spot, ComponentSpot):  # a component always is one
        return Polygon()
    frame = frame_of(site, spot)
    if frame.shifts.is_empty:
        return frame.shifts
    barred = [each for function in ALONE.values() for each in function(site, spot, frame)]
    for other in site.spots.values():
        for function in _BESIDE_SORT.get(type(other), ()):
            barred += function(site, spot, other)
    return frame.shifts.difference(union_all(barred))


def _sorts_of(name: str) -> set[type[Spot]]:
    """Return the sorts of things that a check sees beside a component, whichever of the two it is asked of."""
    checks = (check for check in CHECKS if isinstance(check, CheckBetween) and check.name == name)
    pairs = [pair for check in checks for pair in ((check.of, check.near), (check.near, check.of))]
    return {sort for one, others in pairs if ComponentSpot in one for sort in others}


_BESIDE_SORT: dict[type[Spot], tuple[Beside, ...]] = {
    sort: tuple(function for name, function in BESIDE.items() if sort in _sorts_of(name))
    for sort in set().union(*map(_sorts_of, BESIDE))
}
