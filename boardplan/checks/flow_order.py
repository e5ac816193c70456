"""Flow order: whether the current passes fuse, shut-off, bus and shunt in their order, as far as a plan says it."""

from collections.abc import Iterator

from boardplan.checks.finding import Finding
from boardplan.checks.site import Site, Where
from boardplan.model.placed import placed
from boardplan.routing.currents.current_flow import FaultSort, FlowFault, flow_faults

_WORDS: dict[FaultSort, str] = {
    "load before shunt": "{at} is on the battery side of the shunt, at {source}: the shunt doesn't count what it takes",
    "shunt bypassed": "{at} and {source}, the two sides of the shunt, are joined past it",
    "battery behind shunt": "The battery's {at} is on the system side of the shunt, at {source}",
    "shut-off before fuse": "The shut-off {at} comes before any fuse from the battery's {source}",
    "bus before fuse": "The positive bus {at} comes before any fuse from the battery's {source}",
    "no fuse": "{at} has no fuse between itself and {source}",
}


def flow_out_of_order(site: Site) -> Iterator[Finding]:
    """Yield a finding for each place where the order of current flow is broken for certain."""
    if not site.knows("flow-order"):
        return
    limit = site.limit("flow-order")
    for fault in flow_faults(site.plan):
        names = {"at": ".".join(fault.at), "source": ".".join(fault.source)}
        by = f" (by {', '.join(fault.cables)})" if fault.cables else ""
        yield site.finding("flow-out-of-order", limit, _where(site, fault), _WORDS[fault.sort].format(**names) + by)


def _where(site: Site, fault: FlowFault) -> Where:
    component = site.plan.components[fault.at[0]]
    at = placed(site.plan, component).terminals[fault.at[1]].position
    return Where(fault.things, component.board, site.plan.on_wall(component.board, at))
