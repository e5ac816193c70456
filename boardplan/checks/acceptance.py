"""Acceptance: which findings a person has accepted by name and reason, and which of those are no longer needed."""

from collections.abc import Sequence
from dataclasses import replace

from boardplan.checks.finding import Finding
from boardplan.checks.site import Site, Where
from boardplan.model.job import Acceptance

_SAME = 0.05
"""How much graver a finding may come out and still be the one accepted: less than papers show."""


def with_acceptance(site: Site, findings: Sequence[Finding]) -> tuple[list[Finding], list[Finding]]:
    """Return the findings with those marked that are accepted, and a note for each acceptance that matches nothing."""
    wanted = {(each.finding, frozenset(each.things)): each for each in site.plan.accepted}
    if not wanted:
        return list(findings), []
    used: set[Acceptance] = set()
    marked = []
    for finding in findings:
        accepted = wanted.get((finding.name, frozenset(finding.things)))
        if accepted is not None and _covers(accepted, finding):
            used.add(accepted)
            finding = replace(finding, accepted=accepted)  # noqa: PLW2901 - the same finding, marked
        marked.append(finding)
    return marked, [_not_needed(site, each) for each in site.plan.accepted if each not in used]


def _covers(accepted: Acceptance, finding: Finding) -> bool:
    """Say whether a finding is no graver than the one that was accepted."""
    if accepted.measured is None or finding.measured is None or finding.limit is None:
        return True
    return abs(finding.measured - finding.limit) <= abs(accepted.measured - finding.limit) + _SAME


def _not_needed(site: Site, accepted: Acceptance) -> Finding:
    things = ", ".join(accepted.things) or "the job"
    words = f"Acceptance no longer needed: '{accepted.finding}' of {things}, accepted by {accepted.name}"
    spots = [site.spots[each] for each in accepted.things if each in site.spots]
    where = (
        Where(accepted.things, spots[0].board.id, spots[0].box.centre, spots[0].box)
        if spots
        else Where(accepted.things)
    )
    return site.finding("acceptance-not-needed", site.limit("acceptance-needed"), where, words)
