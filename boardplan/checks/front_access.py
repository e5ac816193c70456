"""Front access: whether every unit fits the depth before its board, with room to work on its front."""

from collections.abc import Iterator

from boardplan.checks.finding import Finding
from boardplan.checks.keep_clear import REASONS
from boardplan.checks.site import NOISE, Site, Where, where_is
from boardplan.checks.spots import ComponentSpot


def front_in_compartment(site: Site, spot: ComponentSpot) -> Iterator[Finding]:
    """Yield a finding where a unit is deeper than its compartment, or its front is too close to what is before it."""
    compartment = spot.board.compartment
    if compartment is None or compartment.depth is None:
        return
    depth, room = compartment.depth, compartment.depth - spot.kind.depth
    if room < -NOISE:
        has, wants = site.two_lengths(depth, spot.kind.depth)
        limit = site.asked("depth-in-compartment", spot.kind.depth)
        words = f"{spot.id} is {wants} deep; the compartment in front of board {spot.board.id} has {has}"
        yield site.finding("deeper-than-compartment", limit, where_is(spot), words, depth)
        return
    for keep in spot.kind.keep_clear:
        if keep.face == "front" and room < keep.distance - NOISE:
            has, wants = site.two_lengths(room, keep.distance)
            limit = site.asked("front-access", keep.distance)
            words = f"{spot.id} asks for {wants} clear in front {REASONS[keep.reason]}; the compartment leaves {has}"
            yield site.finding("front-too-close", limit, where_is(spot), words, room)


def compartment_depth_unknown(site: Site) -> Iterator[Finding]:
    """Yield a question for each board with components whose compartment has no depth."""
    used = {component.board for component in site.plan.components.values()}
    for board in site.plan.boards.values():
        depth = board.compartment.depth if board.compartment else None
        if depth is None and board.id in used:
            where = Where((board.id,), board.id, site.grounds[board.id].box.centre)
            words = f"How deep is the room in front of board {board.id}? Depth and front access are not checked"
            yield site.finding("compartment-depth-unknown", site.limit("open-question"), where, words)
