"""Fuse: what sits in a fuse place or is set on a breaker, as the designer of the system gave it."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Fuse:
    """What is known of one fuse or breaker; none, or no words, where nobody said.

    `place` is where it sits on its component as `fuse_place` names it, "" for the only one there. Rating in A, voltage
    in V, breaking capacity in kA. `spare` says where spare ones are kept.
    """

    place: str = ""
    type: str = ""
    rating_a: float | None = None
    voltage_v: float | None = None
    breaking_capacity_ka: float | None = None
    spare: str = ""
    note: str = ""
