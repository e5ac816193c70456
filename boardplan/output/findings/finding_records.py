"""Finding records: all findings as plain values for JSON."""

from typing import Any

from boardplan.checks.finding import Finding
from boardplan.checks.review import Review
from boardplan.output.records_of_job import job_record, number
from boardplan.output.verdict import open_counts, verdict_words

Record = dict[str, Any]


def finding_records(review: Review) -> Record:
    """Return all findings, accepted ones too, and how many of each severity are open."""
    plan = review.plan
    return {
        **job_record(plan),
        "verdict": verdict_words(review),
        "open": open_counts(review),
        "accepted": sum(not finding.open for finding in review.findings),
        "findings": [_finding(finding) for finding in review.findings],
    }


def _finding(finding: Finding) -> Record:
    accepted = finding.accepted
    return {
        "name": finding.name,
        "severity": finding.severity,
        "sentence": finding.sentence,
        "things": list(finding.things),
        "board": finding.board,
        "place": [number(finding.place.x), number(finding.place.y)],
        "area": [number(side) for side in finding.area] if finding.area else None,
        "measured": number(finding.measured),
        "limit": number(finding.limit),
        "unit": finding.unit,
        "source": finding.source,
        "accepted": {"name": accepted.name, "reason": accepted.reason, "date": accepted.date} if accepted else None,
    }
