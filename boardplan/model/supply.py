"""Supply: where a part of a job comes from, as somebody marked it."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

SupplyState: TypeAlias = Literal["stock", "bought", "ordered", "customer"]


@dataclass(frozen=True, slots=True)
class Supply:
    """A mark on a part, by the key that the load-out list gives it.

    `count` is how many are at hand of what is in stock, none for enough. `date` says when an order comes, or when a
    customer was asked. `substitute` is what else will do, "none" where nothing else will; empty where nobody said.
    """

    part: str
    state: SupplyState
    count: float | None = None
    date: str = ""
    note: str = ""
    substitute: str = ""
