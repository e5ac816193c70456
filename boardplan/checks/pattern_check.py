"""Pattern check: how many kinds have a hole pattern that nobody compared with the unit itself."""

from collections.abc import Iterator

from boardplan.checks.finding import Finding
from boardplan.checks.site import Site, Where


def patterns_not_checked(site: Site) -> Iterator[Finding]:
    """Yield one note for the job that says how many kinds have a pattern nobody compared with the unit itself."""
    kinds = {component.kind: None for component in site.plan.components.values()}
    doubtful = [
        site.plan.kinds[each] for each in kinds if site.plan.kinds[each].data_state in ("typical", "from sheet")
    ]
    doubtful = [kind for kind in doubtful if len(kind.holes) > 1]
    if not doubtful:
        return
    count, all_of = len(doubtful), len(kinds)
    words = (
        f"Hole patterns of {count} of {all_of} component kinds aren't checked: "
        "measure each unit in your hand against its pattern check dimensions before drilling"
    )
    yield site.finding("pattern-not-checked", site.limit("pattern-check"), Where(()), words)
