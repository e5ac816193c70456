"""Edge margin: whether every body is on its board, and far enough inside its edges."""

from collections.abc import Iterator
from dataclasses import replace

from shapely import distance, get_coordinates, get_parts, point_on_surface, points, segmentize

from boardplan.checks.finding import Finding
from boardplan.checks.grounds import Ground
from boardplan.checks.site import NOISE, Site, where_is
from boardplan.checks.spots import BodySpot, ComponentSpot


def off_the_board(site: Site, spot: BodySpot) -> Iterator[Finding]:
    """Yield a finding where a part of a body lies beyond its board's outline."""
    ground = site.grounds[spot.board.id]
    if _inside_by(ground, spot, 0.0):
        return
    beyond = _beyond(ground, spot)
    if beyond > NOISE:
        limit = site.asked("edge-margin", 0.0)
        words = f"{spot.id} reaches {site.length(beyond)} beyond the edge of board {spot.board.id}"
        yield site.finding("off-the-board", limit, where_is(spot), words, -beyond)


def too_near_edge(site: Site, spot: ComponentSpot) -> Iterator[Finding]:
    """Yield a finding for each side of the board whose margin a body on the board doesn't keep."""
    ground = site.grounds[spot.board.id]
    if _inside_by(ground, spot, ground.widest_margin) or _beyond(ground, spot) > NOISE:
        return
    limit = site.limit("edge-margin")
    nearest: dict[str, tuple[float, float]] = {}
    for edge in ground.edges:
        gap = edge.line.distance(spot.body)
        if gap < edge.margin - NOISE and gap < nearest.get(edge.side, (edge.margin, 0.0))[0]:
            nearest[edge.side] = gap, edge.margin
    for side, (gap, margin) in nearest.items():
        has, wants = site.two_lengths(gap, margin)
        words = f"{spot.id} is {has} from the {side} edge of board {spot.board.id}, which keeps a margin of {wants}"
        yield site.finding("too-near-edge", replace(limit, value=margin), where_is(spot), words, gap)


def _inside_by(ground: Ground, spot: BodySpot, margin: float) -> bool:
    """Say whether a body is clearly inside a plain board; the quick answer for nearly everything."""
    board, body = ground.box, spot.box
    return (
        ground.plain
        and body.left >= board.left + margin
        and body.bottom >= board.bottom + margin
        and body.right <= board.right - margin
        and body.top <= board.top - margin
    )


def _beyond(ground: Ground, spot: BodySpot) -> float:
    """Return how far a body reaches over the outline of its board, in mm; cut-outs are another question.

    Where it bridges a notch, all corners of what is beyond may lie on the outline: places between them count as well,
    one in each millimetre, and one inside.
    """
    if ground.outer.covers(spot.body):
        return 0.0
    beyond = spot.body.difference(ground.outer)
    between = points(get_coordinates(segmentize(beyond, 1.0)))
    inside = point_on_surface(get_parts(beyond))
    return float(max(distance(ground.outer, places).max(initial=0.0) for places in (between, inside)))
