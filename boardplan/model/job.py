"""Job: the order a plan belongs to, and findings that somebody has accepted."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

Units: TypeAlias = Literal["mm", "inch"]


@dataclass(frozen=True, slots=True)
class Job:
    """What every sheet carries: title, place, revision letter, date as year-month-day, units for people."""

    title: str
    number: str = ""
    customer: str = ""
    place: str = ""
    units: Units = "mm"
    revision: str = "A"
    date: str = ""
    drawn_by: str = ""


@dataclass(frozen=True, slots=True)
class Acceptance:
    """A finding that a person accepts, by its name and the things it concerns, with a reason.

    `measured` is what the finding measured when it was accepted: a graver one is not accepted with it.
    """

    finding: str
    things: tuple[str, ...]
    name: str
    reason: str
    date: str = ""
    measured: float | None = None
