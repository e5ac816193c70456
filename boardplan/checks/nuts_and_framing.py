"""Nuts and framing: whether a nut set from the back would lie between the board and a member of the framing."""

from collections.abc import Iterator

from boardplan.checks.board_fixings import inside_by
from boardplan.checks.finding import Finding
from boardplan.checks.holes_behind import flange_radius
from boardplan.checks.site import NOISE, Site, where_is
from boardplan.checks.spots import ComponentSpot, HoleSpot
from boardplan.geometry.point import box_around
from boardplan.model.board import Framing


def nut_on_framing(site: Site, spot: ComponentSpot) -> Iterator[Finding]:
    """Yield a finding for each nut on a member that the board lies flat against; a question where nobody said."""
    gap = spot.board.stand_off
    if gap:
        return
    members = [each for each in site.plan.framing.values() if each.board == spot.board.id]
    met = [(hole, member) for hole in spot.holes for member in members if _meets(hole, member)]
    if gap is None and met:
        names = ", ".join(sorted({member.id for _, member in met}))
        words = (
            f"How far does board {spot.board.id} stand off the framing? "
            f"Nuts of {spot.id} lie on {names} and hold a flat board off it"
        )
        yield site.finding("stand-off-unknown", site.limit("open-question"), where_is(spot), words)
        return
    for hole, member in met:
        words = f"The nut at hole {hole.hole.id} lies on {member.id}, which the board is to lie flat against"
        area = box_around([hole.at]).grown(flange_radius(hole))
        yield site.finding("nut-on-framing", site.limit("nut-clear-of-framing"), where_is(spot, area=area), words)


def _meets(hole: HoleSpot, member: Framing) -> bool:
    flange = flange_radius(hole)
    return bool(flange) and inside_by(member, hole.hole.position) > -flange + NOISE
