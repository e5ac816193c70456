"""Verdict: what a review comes to, in the words that screens and papers share."""

from boardplan.checks.review import Review


def open_counts(review: Review) -> dict[str, int]:
    """Return how many findings of each severity nobody has accepted."""
    counts = {"stop": 0, "warn": 0, "note": 0}
    for finding in review.findings:
        if finding.open:
            counts[finding.severity] += 1
    return counts


def verdict_words(review: Review) -> str:
    """Return what the review comes to, and under which rules."""
    rules = f"under rule set {review.plan.rules.id}, edition {review.plan.rules.edition}"
    if not review.findings:
        return f"no finding {rules}"
    counts = ", ".join(f"{count} {severity}" for severity, count in open_counts(review).items())
    accepted = sum(not finding.open for finding in review.findings)
    return f"{counts}, {accepted} accepted, {rules}"


def stop_words(stops: int) -> str:
    """Return the words that every sheet carries while findings stop the job."""
    return f"NOT TO BE ISSUED: {stops} {'finding stops' if stops == 1 else 'findings stop'}"
