"""Stock edits: what is at hand to cut from, as a person says."""

from dataclasses import replace

from boardplan.editing.refused import EditRefused
from boardplan.geometry.units import tidy_number
from boardplan.model.plan import Plan
from boardplan.model.stock import CableStock, ChannelStock, Stock

LONGEST = 10_000_000.0
"""mm: more is on no reel, so it is a slip of the hand."""
MOST, WIDEST_CUT = 1000, 100.0


def with_stock(plan: Plan, stock: Stock) -> Plan:
    """Return the plan with other reels, offcuts and lengths at hand. Raises EditRefused where one can't be."""
    for channel in stock.channels:
        _check(channel)
    for cable in stock.cables:
        _check(cable)
        if cable.conductor not in plan.conductors:
            raise EditRefused(f"There is no conductor {cable.conductor} in this job.")
    for cut, words in ((stock.cable_cut, "cable"), (stock.channel_cut, "channel")):
        if not 0 <= cut <= WIDEST_CUT:
            raise EditRefused(f"A cut takes {tidy_number(cut)} mm of {words}? Expected 0 to {tidy_number(WIDEST_CUT)}.")
    return plan if stock == plan.stock else replace(plan, stock=stock)


def _check(each: CableStock | ChannelStock) -> None:
    name = each.name or ("a reel" if isinstance(each, CableStock) else "a length of channel")
    if not 0 < each.length <= LONGEST:
        raise EditRefused(f"How long is {name}? A length is needed.")
    if each.count is not None and not 1 <= each.count <= MOST:
        raise EditRefused(f"How many of {name}? Expected 1 to {MOST}, or nothing for any number.")
