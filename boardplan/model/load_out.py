"""LoadOut: what a shop packs for every job, how much spare of each sort, and into which boxes it goes."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, TypeAlias

PartCategory: TypeAlias = Literal[
    "boards", "units", "made-cables", "raw-cable", "lugs", "small-terminals", "ferrules", "tubes", "fuses", "fasteners",
    "channels", "glands", "clamps", "labels", "ac-parts", "pv-connectors", "data-leads", "board-material", "sealants",
    "bits", "tools", "test", "safety", "papers", "access", "customer", "recovery",
]  # fmt: skip
SpareSort: TypeAlias = Literal[
    "lugs", "small-terminals", "ferrules", "tubes", "main-fuses", "bolt-down-fuses", "blade-fuses", "screws", "bolts",
    "channels", "glands", "clamps", "pv-connectors", "data-leads", "bits", "small-bits",
]  # fmt: skip
Counter: TypeAlias = Literal["", "electrical", "marine", "timber", "fabric", "fasteners"]
Condition: TypeAlias = Literal["", "ac", "pv", "fabric", "t-nuts", "site units", "link bars"]


@dataclass(frozen=True, slots=True)
class SpareRule:
    """How much more than needed is taken: a share in %, and no less than so many; `source` says who says so."""

    share: float
    least: float
    source: str

    def spare(self, needed: float, step: float = 1.0) -> float:
        """Return what to take beyond what is needed, in whole steps; nothing beside nothing.

        >>> SpareRule(10, 2, "").spare(11), SpareRule(25, 10, "").spare(56), SpareRule(25, 10, "").spare(0)
        (2.0, 14.0, 0.0)
        """
        if needed <= 0:
            return 0.0
        steps = math.ceil(round(needed * self.share / 100 / step, 6))
        return max(round(steps * step, 6), float(self.least))


@dataclass(frozen=True, slots=True)
class StandingLine:
    """A thing that goes along whatever the job is, or on a condition; a quantity of none is for a person to say.

    `counter` says where it is bought, nowhere where the shop has it; `hazard` is its note for the transport.
    """

    category: PartCategory
    words: str
    quantity: float | None = 1
    unit: str = "pcs"
    when: Condition = ""
    counter: Counter = ""
    hazard: str = ""
    note: str = ""
    question: str = ""
    fragile: bool = False


@dataclass(frozen=True, slots=True)
class BoxRule:
    """A box of the load by its name and what goes in; `loose` things are carried by themselves.

    What is not for the `van` is on site already, or somebody else brings it.
    """

    name: str
    categories: tuple[PartCategory, ...]
    loose: bool = False
    van: bool = True


@dataclass(frozen=True, slots=True)
class LiftRule:
    """What one person lifts in kg, which share of their sum two lift together, from when two or an aid are wanted."""

    one: float
    together: float
    source: str

    @property
    def two(self) -> float:
        """What two people lift together, in kg."""
        return 2 * self.one * self.together


@dataclass(frozen=True, slots=True)
class LoadOut:
    """All that a rule set's edition says of loading; boxes in the order in which they are wanted on site.

    `heaviest_box` is in kg, `pad_margin` in mm, `small_terminal` the largest conductor in mm² that a ring terminal is
    pressed on instead of a lug, `small_bit` the diameter in mm below which bits break. `hazards` are transport notes by
    the family of a component kind, `standards` by category.
    """

    id: str
    name: str
    heaviest_box: float
    pad_margin: float
    small_terminal: float
    small_bit: float
    lift: LiftRule
    spares: Mapping[SpareSort, SpareRule]
    boxes: tuple[BoxRule, ...]
    lines: tuple[StandingLine, ...]
    before_leaving: tuple[str, ...]
    counters: Mapping[PartCategory, Counter]
    standards: Mapping[PartCategory, str]
    hazards: Mapping[str, str]
