"""Gland tails: whether it is known how much cable goes on inside a unit, beyond its gland."""

from collections.abc import Iterator

from boardplan.checks.finding import Finding
from boardplan.checks.site import Site, Where
from boardplan.model.cable import TerminalEnd


def gland_tail_unknown(site: Site) -> Iterator[Finding]:
    """Yield a question for each kind with a gland that a cable goes in by, and no tail: nothing is added for it."""
    if not site.knows("gland-tail"):
        return
    asked: dict[str, set[str]] = {}
    for cable in site.plan.cables.values():
        for end in cable.ends:
            if isinstance(end, TerminalEnd) and _lacks_tail(site, end):
                asked.setdefault(site.plan.components[end.component].kind, set()).add(end.component)
    for kind, components in asked.items():
        users = tuple(sorted(components))
        spot = site.spots[users[0]]
        words = (
            f"{site.plan.kinds[kind].name} ({', '.join(users)}): how long are the tails inside its glands? "
            "Nothing is added to the cables for them"
        )
        where = Where(users, spot.board.id, spot.box.centre, spot.box)
        yield site.finding("gland-tail-unknown", site.limit("gland-tail"), where, words)


def _lacks_tail(site: Site, end: TerminalEnd) -> bool:
    terminal = site.plan.kind_of(site.plan.components[end.component]).terminal(end.terminal)
    return terminal is not None and terminal.sort == "gland" and terminal.tail is None
