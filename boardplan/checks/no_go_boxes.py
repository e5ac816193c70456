"""No-go boxes: whether anything stands in space that must stay empty, or has its front blocked by it."""

from collections.abc import Iterator

from boardplan.checks.bodies_apart import SHARED
from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, where_is
from boardplan.checks.spots import BodySpot, ComponentSpot, FixingSpot, NoGoSpot
from boardplan.geometry.point import Box
from boardplan.model.component_kind import KeepClear


def in_no_go_box(site: Site, spot: BodySpot, no_go: NoGoSpot) -> Iterator[Finding]:
    """Yield a finding where a body reaches into the box, seen from the front and by its depth."""
    empty = no_go.no_go
    if not reaches_depth(spot, no_go):
        return
    shared = spot.body.intersection(no_go.body)
    if shared.area > SHARED:
        has, from_z = site.two_lengths(spot.height, empty.from_z)
        name = empty.name or empty.id
        words = f"{spot.id}, {has} deep, stands in the space of {name}, which begins {from_z} off the board"
        yield site.finding(
            "in-no-go-box", site.limit("no-go-box"), where_is(spot, no_go, area=Box(*shared.bounds)), words
        )


def reaches_depth(spot: BodySpot, no_go: NoGoSpot) -> bool:
    """Say whether a body is so deep that it stands in the box where both lie one over the other."""
    return spot.height > no_go.no_go.from_z + NOISE and no_go.no_go.to_z > 0


def front_meets_no_go_box(site: Site, spot: ComponentSpot, no_go: NoGoSpot) -> Iterator[Finding]:
    """Yield a finding where the room before a component's front ends at a no-go box."""
    empty, asked = no_go.no_go, max((each.distance for each in _fronts(spot)), default=0.0)
    room = empty.from_z - spot.height
    if not 0 <= room < asked - NOISE:
        return
    shared = spot.body.intersection(no_go.body)
    if shared.area > SHARED:
        has, wants = site.two_lengths(room, asked)
        words = f"{spot.id} asks for {wants} clear in front; {empty.name or empty.id} leaves {has}"
        where = where_is(spot, no_go, area=Box(*shared.bounds))
        yield site.finding("front-blocked", site.asked("front-access", asked), where, words, room)


def _fronts(spot: ComponentSpot) -> list[KeepClear]:
    return [each for each in spot.kind.keep_clear if each.face == "front"]


def fixing_in_no_go_box(site: Site, spot: FixingSpot, no_go: NoGoSpot) -> Iterator[Finding]:
    """Yield a finding where the head of a board fixing lies in a no-go box that begins at the board."""
    if no_go.no_go.from_z <= 0 < no_go.no_go.to_z and no_go.box.holds(spot.hole.at):
        words = f"The head of board fixing {spot.id} lies in the space of {no_go.no_go.name or no_go.id}"
        yield site.finding("fixing-in-no-go-box", site.limit("no-go-box"), where_is(spot, no_go), words)
