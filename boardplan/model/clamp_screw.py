"""Clamp screw: which screw holds the clamps of a job, as far as its rules name one and the job has it."""

from boardplan.model.fastener import Fastener
from boardplan.model.plan import Plan


def clamp_screw_of(plan: Plan) -> Fastener | None:
    """Return the screw that the rule set fits clamps with; none where it names none or the job does not list it.

    Only a wood screw counts: a clamp's hole is never drilled through.
    """
    fastener = plan.fasteners.get(plan.rules.fasteners.get("clamp", ""))
    return fastener if fastener is not None and fastener.hole == "pilot" else None
