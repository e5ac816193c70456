"""Finding: one thing that is wrong, or worth knowing, about a plan."""

from dataclasses import dataclass

from boardplan.geometry.point import Box, Point
from boardplan.model.job import Acceptance
from boardplan.model.rule_set import Severity


@dataclass(frozen=True, slots=True)
class Finding:
    """What a check reports.

    `name` is stable, `sentence` is for an installer and holds the measured value, the limit and its
    source. `things` are the ids concerned, `place` is on the board named (`board` may be empty for a
    finding about the job). `measured` and `limit` are in `unit`; none where there is nothing to measure.
    """

    name: str
    severity: Severity
    sentence: str
    things: tuple[str, ...]
    board: str
    place: Point
    area: Box | None = None
    measured: float | None = None
    limit: float | None = None
    unit: str = "mm"
    source: str = ""
    accepted: Acceptance | None = None

    @property
    def open(self) -> bool:
        """Whether nobody has accepted it."""
        return self.accepted is None

    @property
    def stops(self) -> bool:
        """Whether papers must not be issued because of it."""
        return self.severity == "stop" and self.open
