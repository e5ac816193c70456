"""Check: one question about a plan, and of what it is asked."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any, TypeAlias

from boardplan.checks.finding import Finding
from boardplan.checks.site import Site
from boardplan.checks.spots import Spot

OnOne: TypeAlias = Callable[[Site, Any], Iterator[Finding]]
OnPair: TypeAlias = Callable[[Site, Any, Any], Iterator[Finding]]
OnAll: TypeAlias = Callable[[Site], Iterator[Finding]]
Sorts: TypeAlias = tuple[type[Spot], ...]


@dataclass(frozen=True, slots=True)
class CheckOnOne:
    """A question asked of each thing of some sorts; it looks at the thing, its board and the rules alone.

    What else it needs stands in the site under the thing's own id (`Site.told`): a change there asks it again.
    """

    name: str
    question: str
    of: Sorts
    function: OnOne


@dataclass(frozen=True, slots=True)
class CheckBetween:
    """A question asked of one thing about another that is near; `mutual` asks each pair just once."""

    name: str
    question: str
    of: Sorts
    near: Sorts
    function: OnPair
    mutual: bool = False


@dataclass(frozen=True, slots=True)
class CheckOnJob:
    """A question asked of the whole job after every change; it has to be a quick one."""

    name: str
    question: str
    function: OnAll


Check: TypeAlias = CheckOnOne | CheckBetween | CheckOnJob
