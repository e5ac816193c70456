"""Open questions: what isn't known of the things in a job, so that nobody takes a gap for an answer."""

from collections.abc import Iterator

from boardplan.checks.finding import Finding
from boardplan.checks.site import Site, Where, where_is
from boardplan.checks.spots import ChannelSpot, ExitSpot
from boardplan.model.component_kind import ComponentKind
from boardplan.model.plan import Plan


def kind_data_missing(site: Site) -> Iterator[Finding]:
    """Yield a question for each kind in use that lacks a mass, a fastener or the flange its screws go through."""
    for kind_id in dict.fromkeys(component.kind for component in site.plan.components.values()):
        kind = site.plan.kinds[kind_id]
        missing = missing_of(site.plan, kind)
        if missing:
            users = tuple(each.id for each in site.plan.components.values() if each.kind == kind_id)
            first = site.spots[users[0]]
            words = f"{kind.name} ({', '.join(users)}): what is its {' and its '.join(missing)}? {_LEFT_OUT}"
            where = Where(users, first.board.id, first.box.centre, first.box)
            yield site.finding("kind-data-missing", site.limit("open-question"), where, words)


_LEFT_OUT = "What hangs on it is not checked"


def missing_of(plan: Plan, kind: ComponentKind) -> list[str]:
    """Return what a kind lacks, in words."""
    missing = [] if kind.mass is not None else ["mass"]
    if not kind.holes:
        return missing
    fastener = plan.fasteners.get(kind.fastener)
    if fastener is None:
        return [*missing, "fastener"]
    if fastener.hole == "pilot":
        missing += [] if kind.flange is not None else ["flange thickness"]
        missing += [] if fastener.length is not None else [f"screw length ({fastener.name})"]
    return missing


def exit_width_missing(site: Site, spot: ExitSpot) -> Iterator[Finding]:
    """Yield a question for an exit through the board that nobody says the width of."""
    if spot.exit.through == "hole" and spot.exit.diameter is None:
        words = f"How wide is the exit hole {spot.exit.name or spot.id}? {_LEFT_OUT}"
        yield site.finding("exit-width-missing", site.limit("open-question"), where_is(spot), words)


def channel_screws_missing(site: Site, spot: ChannelSpot) -> Iterator[Finding]:
    """Yield a question for a channel that has no fastener."""
    if spot.channel.screws.fastener not in site.plan.fasteners:
        words = f"Which screws hold channel {spot.id}? {_LEFT_OUT}"
        yield site.finding("channel-screws-missing", site.limit("open-question"), where_is(spot), words)


def board_mass_missing(site: Site) -> Iterator[Finding]:
    """Yield a question for each board with fixings whose material nobody weighed: their load decides their room."""
    for board_id in dict.fromkeys(each.board for each in site.plan.fixings.values()):
        if site.plan.boards[board_id].mass is None:
            words = f"What does the material of board {board_id} weigh per m²? What its fixings carry is not checked"
            where = Where((board_id,), board_id, site.grounds[board_id].box.centre)
            yield site.finding("board-mass-missing", site.limit("open-question"), where, words)
