"""Board fixings: whether every one hits the framing behind the board, and its head can be reached."""

from collections.abc import Iterator

from shapely import box as rectangle

from boardplan.checks.bent_line import NEARER, bent_line
from boardplan.checks.bodies_apart import SHARED, boxes_overlap
from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, Where, where_is
from boardplan.checks.spots import BodySpot, CableSpot, FixingSpot
from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.board import Framing
from boardplan.routing.route import Route


def fixing_misses_framing(site: Site, spot: FixingSpot) -> Iterator[Finding]:
    """Yield a finding where no member of the framing holds a board fixing far enough inside its edges."""
    members = [each for each in site.plan.framing.values() if each.board == spot.board.id]
    if not members:
        return
    limit, at = site.limit("fixing-inside-member"), spot.fixing.position
    inside, nearest = max(((inside_by(each, at), each.id) for each in members), key=lambda each: each[0])
    if inside < limit.value - NOISE:
        has, wants = site.two_lengths(abs(inside), limit.value)
        place = f"only {has} inside the edge of {nearest}" if inside >= 0 else f"{has} beside {nearest}"
        words = f"Board fixing {spot.id} is {place}, the nearest member; {wants} inside is asked"
        yield site.finding("fixing-misses-framing", limit, where_is(spot), words, inside)


def inside_by(member: Framing, at: Point) -> float:
    """Return how far inside the edges of a member a point of the board is, in mm; below nought outside.

    >>> inside_by(Framing("post", "A", "upright", 30, 40), Point(32, 500))
    18.0
    """
    across, along = (at.x, at.y) if member.direction == "upright" else (at.y, at.x)
    inside = member.width / 2 - abs(across - member.centre)
    if member.start is not None:
        inside = min(inside, along - member.start)
    if member.end is not None:
        inside = min(inside, member.end - along)
    return inside


def framing_unknown(site: Site) -> Iterator[Finding]:
    """Yield a question for each board that has fixings but no framing behind it."""
    framed = {each.board for each in site.plan.framing.values()}
    for board in dict.fromkeys(each.board for each in site.plan.fixings.values() if each.board not in framed):
        where = Where((board,), board, site.grounds[board].box.centre)
        words = f"Where are the members behind board {board}? Whether its fixings hit them is not checked"
        yield site.finding("framing-unknown", site.limit("open-question"), where, words)


def fixing_head_blocked(site: Site, spot: FixingSpot, other: BodySpot) -> Iterator[Finding]:
    """Yield a finding where a body stands in the square that the head of a board fixing needs."""
    limit = site.limit("fixing-head-room")
    square = head_square(site, spot)
    if not boxes_overlap(square, other.box):
        return
    if other.upright or rectangle(*square).intersection(other.body).area > SHARED:
        wants = site.length(limit.value)
        words = f"{other.id} stands in the {wants} square that the head of board fixing {spot.id} needs"
        yield site.finding("fixing-head-blocked", limit, where_is(spot, other, area=square), words)


def head_square(site: Site, spot: FixingSpot) -> Box:
    """Return the square on the wall that the head of a board fixing needs."""
    return box_around([spot.hole.at]).grown(site.limit("fixing-head-room").value / 2)


def fixing_under_cable(site: Site, spot: FixingSpot, cable: CableSpot) -> Iterator[Finding]:
    """Yield a finding where a cable lies over the square that the head of a board fixing needs."""
    if not isinstance(cable.way, Route):
        return
    limit = site.limit("fixing-under-cable")
    square = box_around([spot.hole.at]).grown(limit.value / 2)
    if rectangle(*square).distance(bent_line(cable.way)) < cable.conductor.outside_diameter / 2 - NEARER:
        wants = site.length(limit.value)
        words = f"Cable {cable.id} lies over the {wants} square that the head of board fixing {spot.id} needs"
        yield site.finding("fixing-under-cable", limit, where_is(spot, cable, area=square), words)
