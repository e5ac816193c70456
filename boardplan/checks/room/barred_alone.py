"""Barred alone: the shifts that its board bars for a component: its edges, cut-outs and holes, lips and walls.

The component is measured at the origin of its board; a shift is then the lower left where it comes to lie.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from shapely import LineString, Point, Polygon, box
from shapely.affinity import translate
from shapely.geometry.base import BaseGeometry

from boardplan.checks.hole_to_edge import limit_of_edge
from boardplan.checks.keep_clear import inside_lips, zone_limit
from boardplan.checks.site import NOISE, Site
from boardplan.checks.spots import ComponentSpot
from boardplan.geometry.point import Box, box_around
from boardplan.geometry.shifts import shifts_within
from boardplan.model.rule_set import Limit


@dataclass(frozen=True, slots=True)
class Frame:
    """The shifts by which the box round a body lies in that of its board, and the wall that all of it passes over."""

    shifts: Polygon
    swept: Polygon


def frame_of(site: Site, spot: ComponentSpot) -> Frame:
    """Return the frame of a component that was measured at the origin of its board."""
    shifts = fitting(spot.box, site.grounds[spot.board.id].box.grown(NOISE))
    whole = [spot.box, *(zone.box for zone in spot.zones), *([spot.hole_box] if spot.hole_box else [])]
    around = box_around(corner for each in whole for corner in each.corners())
    if shifts.is_empty:
        return Frame(shifts, shifts)
    left, bottom, right, top = shifts.bounds
    swept = Box(left + around.left, bottom + around.bottom, right + around.right, top + around.top)
    return Frame(shifts, box(*swept.grown(1.0)))


def grave(limit: Limit) -> bool:
    """Say whether a breach of a limit stops the papers."""
    return limit.severity == "stop"


def off_the_board_at(site: Site, spot: ComponentSpot, frame: Frame) -> Iterator[BaseGeometry]:
    """Yield where a part of the body would lie beyond the outline (`off_the_board`); the frame is inside its box."""
    ground = site.grounds[spot.board.id]
    if grave(site.limit("edge-margin")) and not ground.plain:
        yield from shifts_within(frame.swept.difference(ground.outer), spot.body)


def too_near_edge_at(site: Site, spot: ComponentSpot, _frame: Frame) -> Iterator[BaseGeometry]:
    """Yield where the body would not keep the margin of an edge (`too_near_edge`)."""
    if grave(site.limit("edge-margin")):
        for edge in site.grounds[spot.board.id].edges:
            if edge.margin > NOISE:
                yield from shifts_within(edge.line, spot.body, edge.margin - NOISE)


def hole_near_edge_at(site: Site, spot: ComponentSpot, frame: Frame) -> Iterator[BaseGeometry]:
    """Yield where a hole would be too near an edge or a cut-out, or not in the wood (`hole_near_edge`)."""
    limit = limit_of_edge(site, spot)
    if not grave(limit):
        return
    sheet = site.grounds[spot.board.id].sheet
    beside = frame.swept.difference(sheet)
    rings = [ring.coords for ring in (sheet.exterior, *sheet.interiors)]
    edges = [LineString(edge) for ring in rings for edge in pairwise(ring)]
    for hole in spot.holes:
        yield translate(beside, -hole.at.x, -hole.at.y)
        for edge in edges:
            yield from shifts_within(edge, Point(hole.at), limit.value - NOISE)


def over_cutout_at(site: Site, spot: ComponentSpot, _frame: Frame) -> Iterator[BaseGeometry]:
    """Yield where the body would stand over a cut-out (`over_cutout`)."""
    if grave(site.limit("cutout")):
        for cutout in site.grounds[spot.board.id].cutouts:
            yield from shifts_within(cutout, spot.body)


def keep_clear_at_lip_at(site: Site, spot: ComponentSpot, frame: Frame) -> Iterator[BaseGeometry]:
    """Yield where a zone that counts would reach over a raised edge (`keep_clear_at_lip`)."""
    inside = inside_lips(site.grounds[spot.board.id])
    if inside is not None:
        for zone in spot.zones:
            if grave(zone_limit(site, zone, zone.keep_clear.distance)):
                yield frame.shifts.difference(fitting(zone.box, inside))


def keep_clear_walled_at(site: Site, spot: ComponentSpot, frame: Frame) -> Iterator[BaseGeometry]:
    """Yield where a zone that counts would reach into a wall of the compartment (`keep_clear_walled`)."""
    ground = site.grounds[spot.board.id]
    if ground.room is None:
        return
    for zone in spot.zones:
        if grave(zone_limit(site, zone, zone.keep_clear.distance)):
            over_board = fitting(zone.box, ground.box)
            for shift in shifts_within(frame.swept.difference(site.rooms), Polygon(zone.ring)):
                yield shift.difference(over_board)


def fitting(inner: Box, outer: Box) -> Polygon:
    """Return the shifts by which one box lies in another, an empty shape where it is too large."""
    room = Box(outer.left - inner.left, outer.bottom - inner.bottom, outer.right - inner.right, outer.top - inner.top)
    return box(*room) if room.left <= room.right and room.bottom <= room.top else Polygon()
