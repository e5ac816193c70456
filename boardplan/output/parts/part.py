"""Part: one line of what a job needs, how many of it and for what; nothing is made up where nobody said."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Literal, TypeAlias

from boardplan.model.component_kind import Stage
from boardplan.model.load_out import Counter, PartCategory
from boardplan.model.supply import Supply

Origin: TypeAlias = Literal["", "stock", "bought", "ordered", "customer", "made", "shop"]
"""Where a part comes from: by a mark, made for the job in the shop, or the shop's own; empty where nobody said."""


@dataclass(frozen=True, slots=True)
class Use:
    """So many of a part for one thing: a component, a cable, a channel; `board` is whose bag it goes into."""

    thing: str
    count: float
    board: str = ""
    stage: Stage = "shop"


@dataclass(frozen=True)
class Part:
    """One line: `needed` and `spare` in its unit, none where a person has to say; `question` then says what is asked.

    `key` is what a mark of supply names; lines of one part share it. `mass` is that of one unit in kg, none where
    nobody weighed it. A line that is `packed` stands in the load-out list, one that is `bought` in the bill of
    materials. `size`, `stud`, `rating` and `standard` are what a counter asks for; `spare_words` say how much spare is
    wanted where that can't be reckoned, `hazard` is a note for the transport, `on_board` the board that carries it.
    """

    key: str
    category: PartCategory
    words: str
    needed: float | None
    spare: float | None = 0.0
    unit: str = "pcs"
    uses: tuple[Use, ...] = ()
    counter: Counter = ""
    size: str = ""
    stud: str = ""
    rating: str = ""
    standard: str = ""
    mass: float | None = None
    note: str = ""
    question: str = ""
    spare_words: str = ""
    hazard: str = ""
    fragile: bool = False
    on_board: str = ""
    packed: bool = True
    bought: bool = True
    own: Origin = ""
    mark: Supply | None = None
    lift: str = ""

    @property
    def quantity(self) -> float | None:
        """Needed and spare together; none where either is for a person to say."""
        return None if self.needed is None or self.spare is None else round(self.needed + self.spare, 6)

    @property
    def origin(self) -> Origin:
        """Where it comes from: as marked, else as the list knows."""
        return self.mark.state if self.mark else self.own

    @property
    def weight(self) -> float | None:
        """All of it in kg; none where nobody weighed it or said how many."""
        return None if self.mass is None or self.quantity is None else self.mass * self.quantity

    @cached_property
    def things(self) -> tuple[str, ...]:
        """What it is for, each once."""
        return tuple(dict.fromkeys(each.thing for each in self.uses))

    @cached_property
    def bags(self) -> dict[str, float]:
        """How many of it for each board; nothing where that isn't known."""
        sums: dict[str, float] = {}
        for each in self.uses:
            if each.board:
                sums[each.board] = sums.get(each.board, 0.0) + each.count
        return sums

    @property
    def on_site(self) -> float:
        """How many of the needed ones are fitted on site."""
        return sum(each.count for each in self.uses if each.stage == "site")


def total(uses: Iterable[Use]) -> float:
    """Return how many a list of uses comes to."""
    return round(sum(each.count for each in uses), 6)


_MOST_NAMES = 12
"""More names than that are counted, so that no row of a table outgrows its sheet."""


def named(names: Sequence[str], between: str = ", ") -> str:
    """Return names one after the other; the last of many are counted.

    >>> named(["W1", "W2"]), named([f"W{n}" for n in range(1, 15)])[-20:]
    ('W1, W2', 'W11, W12, and 2 more')
    """
    more = len(names) - _MOST_NAMES
    return between.join([*names[:_MOST_NAMES], *([f"and {more} more"] if more > 0 else [])])


def counted(number: float, one: str, several: str = "") -> str:
    """Return a number with its word.

    >>> counted(1, "hole"), counted(3, "hole")
    ('1 hole', '3 holes')
    """
    return f"{number:g} {one if number == 1 else several or one + 's'}"
