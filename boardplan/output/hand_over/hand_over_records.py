"""Hand-over records: what fuse schedule, torque list and test record say, as plain values for JSON."""

from collections.abc import Mapping
from typing import Any

from boardplan.model.plan import Plan
from boardplan.output.hand_over.fuse_rows import fuse_rows
from boardplan.output.hand_over.fuse_schedule import fuse_records
from boardplan.output.hand_over.record_listing import record_records
from boardplan.output.hand_over.torque_list import torque_records, torque_rows
from boardplan.routing.lengths.length_sum import CutLength
from boardplan.routing.route import Way


def hand_over_records(plan: Plan, lengths: Mapping[str, CutLength], ways: Mapping[str, Way]) -> dict[str, Any]:
    """Return all three by the keys of their papers."""
    return {
        "fuses": fuse_records(plan, fuse_rows(plan, lengths, ways)),
        "torque": torque_records(torque_rows(plan)),
        "tests": record_records(plan),
    }
