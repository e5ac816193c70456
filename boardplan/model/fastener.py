"""Fastener: a screw or bolt, and the hole it wants in the board."""

from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True, slots=True)
class Fastener:
    """A screw or bolt. `bit` is the diameter to drill, `length` none for a bolt cut to suit.

    `hole` says how it is held: a wood screw in a pilot hole, a T-nut or insert set from the back of a
    through hole, a through bolt.
    """

    id: str
    name: str
    hole: Literal["pilot", "t-nut", "through"]
    bit: float
    thread: float
    length: float | None = None
    head_diameter: float | None = None
    flange_diameter: float | None = None
    source: str = ""
