"""Acceptance edits: a person accepts a finding with a name and a reason, and may take that back."""

from collections.abc import Iterable
from dataclasses import replace

from boardplan.editing.refused import EditRefused
from boardplan.model.job import Acceptance
from boardplan.model.plan import Plan

_LONGEST_NAME = 120
_LONGEST_REASON = 2000


def accept_finding(plan: Plan, acceptance: Acceptance) -> Plan:
    """Return the plan with a finding accepted; an earlier acceptance of the same finding gives way.

    Raises EditRefused without a name or a reason.
    """
    name, reason = acceptance.name.strip(), acceptance.reason.strip()
    if not name or len(name) > _LONGEST_NAME:
        raise EditRefused("Who accepts this finding? A name is needed.")
    if not reason or len(reason) > _LONGEST_REASON:
        raise EditRefused("Why is this finding accepted? A reason is needed.")
    accepted = replace(acceptance, name=name, reason=reason)
    if accepted in plan.accepted:
        return plan
    kept = [each for each in plan.accepted if not _same(each, accepted.finding, accepted.things)]
    return replace(plan, accepted=(*kept, accepted))


def withdraw_acceptance(plan: Plan, finding: str, things: Iterable[str]) -> Plan:
    """Return the plan in which a finding is open again."""
    wanted = tuple(things)
    kept = tuple(each for each in plan.accepted if not _same(each, finding, wanted))
    return plan if len(kept) == len(plan.accepted) else replace(plan, accepted=kept)


def _same(acceptance: Acceptance, finding: str, things: tuple[str, ...]) -> bool:
    return acceptance.finding == finding and sorted(acceptance.things) == sorted(things)
