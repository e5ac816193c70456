"""Record listing: the blanks of the test record as rows to fill in, and as plain values for JSON."""

from collections.abc import Iterator
from typing import Any

from boardplan.model.plan import Plan
from boardplan.output.hand_over.closing_tables import services
from boardplan.output.hand_over.points_to_test import (
    cables_to_test,
    has_ac,
    sources,
    units_with_settings,
    watched_studs,
)
from boardplan.output.tables.csv_table import Value
from boardplan.output.tables.listing import Listing

_OF_A_CABLE = (
    ("continuity", "ohm"), ("polarity", "right or wrong"), ("insulation", "megohm"), ("current", "A"),
    ("voltage drop at that current", "V"),
)  # fmt: skip


def record_listing(plan: Plan) -> Listing:
    """Return a row for each value to measure, its value empty."""
    heads = ("test", "of", "cable", "unit", "value", "done_by", "date")
    return Listing("Test record", heads, tuple((*each, None, None, None) for each in _blanks(plan)))


def _blanks(plan: Plan) -> Iterator[tuple[Value, ...]]:
    for cable in cables_to_test(plan):
        yield from ((test, "", cable.id, unit) for test, unit in _OF_A_CABLE)
    for stud in watched_studs(plan):
        yield "voltage", stud.place, "", "V"
        yield from (("temperature after 30 min", stud.place, lug.cable, "°C") for lug in stud.lugs)
    yield from (("charging current", each.id, "", "A") for each in sources(plan))
    if has_ac(plan):
        yield "residual-current trip", "", "", "ms"


def record_records(plan: Plan) -> dict[str, Any]:
    """Return what is to be measured and written down: no value of it is known to the program."""
    return {
        "cables": [each.id for each in cables_to_test(plan)],
        "studs": [
            {"stud": each.place, "pole": each.pole or None, "lugs": [lug.cable for lug in each.lugs]}
            for each in watched_studs(plan)
        ],
        "sources": [each.id for each in sources(plan)],
        "residual_current": has_ac(plan),
        "settings": [each.id for each in units_with_settings(plan)],
        "service": [{"what": each.what, "when": each.when or None} for each in services(plan)],
    }
