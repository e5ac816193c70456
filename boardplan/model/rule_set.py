"""RuleSet: a named edition of limits, each with its severity and its source."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal, TypeAlias

from boardplan.model.cable import SlackClass
from boardplan.model.conductor import Construction
from boardplan.model.load_out import LoadOut

Severity: TypeAlias = Literal["stop", "warn", "note"]
SEVERITIES: tuple[Severity, ...] = ("stop", "warn", "note")


@dataclass(frozen=True, slots=True)
class Limit:
    """One limit: its value in `unit` (mm, degrees, %, a factor), how grave a breach is, where it comes from."""

    value: float
    unit: str
    severity: Severity
    source: str


@dataclass(frozen=True, slots=True)
class SlackRule:
    """What is added to a net length: a fixed slack, a share of the path, then rounding up to a step.

    `minus` and `plus` are the shop's tolerance on the cut, `source` says where all of it comes from.
    """

    slack: float
    share: float
    step: float
    minus: float
    plus: float
    source: str


@dataclass(frozen=True, slots=True)
class BendRule:
    """Bend radius of the centre line as multiples of the outside diameter: preferred and least."""

    prefer: float
    least: float


@dataclass(frozen=True, slots=True)
class RuleSet:
    """A rule set; `id` and `edition` are what a job file names.

    `fasteners` says which fastener is used for a purpose by its id ("clamp"); an earlier edition names none.
    `load_out` is what goes along to a job, none where the edition says nothing of it.
    """

    id: str
    edition: str
    name: str
    limits: Mapping[str, Limit]
    slack: Mapping[SlackClass, SlackRule]
    bends: Mapping[Construction, BendRule]
    colours: Mapping[str, str]
    fasteners: Mapping[str, str] = field(default_factory=dict)
    load_out: LoadOut | None = None

    def value(self, name: str) -> float:
        """Return the value of a limit; a name that is not in the rule set is a fault of the program."""
        return self.limits[name].value

    def knows(self, name: str) -> bool:
        """Say whether this edition sets a limit: what an earlier edition left open is not asked under it."""
        return name in self.limits
