"""Barred beside: the shifts that another thing on the wall bars for a component.

The component is measured at the origin of its board; a shift is then the lower left where it comes to lie.
"""

from collections.abc import Iterator

from shapely import Point as Spike
from shapely import Polygon, box, union_all
from shapely.geometry.base import BaseGeometry

from boardplan.checks.board_fixings import head_square
from boardplan.checks.bodies_apart import cover_strips
from boardplan.checks.exits_open import disc_of
from boardplan.checks.holes_behind import flange_radius
from boardplan.checks.keep_clear import zone_limit, zones_towards
from boardplan.checks.no_go_boxes import reaches_depth
from boardplan.checks.opposite_poles import OPPOSITE, studs_with_pole
from boardplan.checks.room.barred_alone import grave
from boardplan.checks.site import NOISE, Site
from boardplan.checks.spots import (
    BackPartSpot,
    BodySpot,
    ComponentSpot,
    ExitSpot,
    FixingSpot,
    HoledSpot,
    HoleSpot,
    NoGoSpot,
    ZoneSpot,
    holes_of_spot,
)
from boardplan.geometry.shifts import shifts_within


def bodies_apart_at(site: Site, spot: ComponentSpot, other: BodySpot) -> Iterator[BaseGeometry]:
    """Yield where two bodies would lack the gap asked, which is wider beside a snap cover (`bodies_apart`)."""
    gap, beside_cover = site.limit("gap-between-components"), site.limit("gap-beside-snap-cover")
    if grave(gap):
        yield from shifts_within(other.body, spot.body, gap.value - NOISE)
    if grave(beside_cover):
        strips = [each for strip in cover_strips(spot) for each in shifts_within(box(*other.box), box(*strip))]
        if isinstance(other, ComponentSpot):
            strips += [each for strip in cover_strips(other) for each in shifts_within(box(*strip), box(*spot.box))]
        if strips:
            near = shifts_within(other.body, spot.body, beside_cover.value - NOISE)
            yield union_all(near).intersection(union_all(strips))


def keep_clear_blocked_at(site: Site, spot: ComponentSpot, other: BodySpot) -> Iterator[BaseGeometry]:
    """Yield where a zone of either would be blocked by the other's body (`keep_clear_blocked`)."""
    for room in _rooms_that_count(site, spot, other):
        yield from shifts_within(other.body, Polygon(room.ring))
    if isinstance(other, ComponentSpot):
        for room in _rooms_that_count(site, other, spot):
            yield from shifts_within(Polygon(room.ring), spot.body)


def _rooms_that_count(site: Site, spot: ComponentSpot, other: BodySpot) -> Iterator[ZoneSpot]:
    for zone, room, added in zones_towards(spot, other):
        if grave(zone_limit(site, zone, zone.keep_clear.distance + added)):
            yield room


def in_no_go_box_at(site: Site, spot: ComponentSpot, no_go: NoGoSpot) -> Iterator[BaseGeometry]:
    """Yield where the body would stand in space to stay empty (`in_no_go_box`)."""
    if grave(site.limit("no-go-box")) and reaches_depth(spot, no_go):
        yield from shifts_within(no_go.body, spot.body)


def exit_covered_at(site: Site, spot: ComponentSpot, leaves: ExitSpot) -> Iterator[BaseGeometry]:
    """Yield where the body would lie over an exit hole, or over its middle (`exit_covered`)."""
    if leaves.exit.through == "hole" and grave(site.limit("exit-stays-open")):
        yield from shifts_within(disc_of(leaves), spot.body)
        yield from shifts_within(Spike(leaves.at), spot.body)


def fixing_head_blocked_at(site: Site, spot: ComponentSpot, fixing: FixingSpot) -> Iterator[BaseGeometry]:
    """Yield where the body would stand in the square of a fixing's head (`fixing_head_blocked`)."""
    if grave(site.limit("fixing-head-room")):
        yield from shifts_within(box(*head_square(site, fixing)), spot.body)


def hole_meets_back_part_at(site: Site, spot: ComponentSpot, part: BackPartSpot) -> Iterator[BaseGeometry]:
    """Yield where a hole, or its nut, would be too near a part on the back (`hole_meets_back_part`)."""
    limit = site.limit("hole-to-back-part")
    if spot.board.id == part.board.id and grave(limit):
        for hole in spot.holes:
            wide = limit.value + max(hole.radius, flange_radius(hole))
            yield from shifts_within(part.body, Spike(hole.at), wide - NOISE)


def hole_meets_nut_at(site: Site, spot: ComponentSpot, other: HoledSpot) -> Iterator[BaseGeometry]:
    """Yield where a hole or nut of either would be too near a nut of the other (`hole_meets_nut`)."""
    limit = site.limit("hole-to-back-part")
    if spot.board.id != other.board.id or not grave(limit):
        return
    for own in spot.holes:
        for hole in holes_of_spot(other):
            wide = max(_with_nut(own, hole), _with_nut(hole, own))
            if wide:
                yield from shifts_within(Spike(hole.at), Spike(own.at), limit.value + wide - NOISE)


def _with_nut(hole: HoleSpot, nut: HoleSpot) -> float:
    """Return the radii of a hole and a nut together, nought where the second has no nut."""
    flange = flange_radius(nut)
    return flange + max(hole.radius, flange_radius(hole)) if flange else 0.0


def opposite_studs_near_at(site: Site, spot: ComponentSpot, other: ComponentSpot) -> Iterator[BaseGeometry]:
    """Yield where studs of opposite polarity would stand too near each other (`opposite_studs_near`)."""
    if not site.knows("opposite-studs") or not grave(site.limit("opposite-studs")):
        return
    limit = site.limit("opposite-studs").value
    theirs = list(studs_with_pole(other))
    for mine, at, radius in studs_with_pole(spot):
        for stud, there, wide in theirs:
            if OPPOSITE.get(mine.terminal.pole) == stud.terminal.pole:
                yield from shifts_within(Spike(there), Spike(at), limit + radius + wide - NOISE)
