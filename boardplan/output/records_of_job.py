"""Records of a job: what stands at the head of every JSON, and how numbers stand in it."""

from typing import Any

from boardplan.model.plan import Plan

_PLACES = 6


def job_record(plan: Plan) -> dict[str, Any]:
    """Return which job it is, and under which rules."""
    return {
        "job": plan.job.title,
        "number": plan.job.number,
        "revision": plan.job.revision,
        "date": plan.job.date,
        "units": "mm",
        "rule_set": {"id": plan.rules.id, "edition": plan.rules.edition},
    }


def number(value: float | None) -> float | None:
    """Return a number to six places, zero without a sign."""
    return None if value is None else round(value, _PLACES) + 0.0
