"""Open questions: what isn't known of the component kinds in use, so that nobody takes a gap for an answer."""

from collections.abc import Iterator

from boardplan.checks.finding import Finding
from boardplan.checks.site import Site, Where
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
