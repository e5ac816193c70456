"""Cable: two ends, a conductor, and a way that is chosen or pinned."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

from boardplan.geometry.point import Point
from boardplan.model.component_kind import Stage
from boardplan.model.trust import Trust

CableClass: TypeAlias = Literal["dc", "ac", "pv", "signal"]
Way: TypeAlias = Literal["channel", "outside", "choose"]
SlackClass: TypeAlias = Literal["jumper", "large", "small", "off-board", "signal"]
LoopSort: TypeAlias = Literal["service", "drip"]


@dataclass(frozen=True, slots=True)
class Lug:
    """The lug wanted at an end; clocking in degrees, clockwise seen from the cable's first end.

    A clocking of 0 leaves it to the way and to how the studs stand.
    """

    stud: str
    form: Literal["straight", "45", "90"] = "straight"
    clocking: float = 0.0


@dataclass(frozen=True, slots=True)
class Leg:
    """A stretch of the path away from the board, and how far its length can be trusted."""

    length: float
    trust: Trust
    note: str = ""


@dataclass(frozen=True, slots=True)
class Loop:
    """A loop left near an end, and how much cable it takes in mm; none for what the rule set takes.

    A service loop lets a unit swing out or come off, a drip loop hangs below an entry so that water drops off there.
    """

    sort: LoopSort
    length: float | None = None


@dataclass(frozen=True, slots=True)
class TerminalEnd:
    """An end on a terminal of a component. A lug of none means the plain one for the stud."""

    component: str
    terminal: str
    lug: Lug | None = None
    stage: Stage | None = None
    loop: Loop | None = None


@dataclass(frozen=True, slots=True)
class ExitEnd:
    """An end at an exit of the board, for a cable that somebody else carries on from there."""

    exit: str
    loop: Loop | None = None


@dataclass(frozen=True, slots=True)
class OffBoardEnd:
    """An end away from the board: the exit it passes, then the legs from there; left raw.

    `rope` is what a rope laid along the legs measured from the exit on, none where nobody laid one; `lug` what is
    pressed on there once it is cut, none where nobody said.
    """

    exit: str
    name: str
    legs: tuple[Leg, ...]
    loop: Loop | None = None
    rope: float | None = None
    lug: Lug | None = None

    @property
    def length(self) -> float:
        """The sum of the legs."""
        return sum(leg.length for leg in self.legs)


CableEnd: TypeAlias = TerminalEnd | ExitEnd | OffBoardEnd


@dataclass(frozen=True, slots=True)
class Cable:
    """A cable, or `count` alike of them. `pins`, where given, are all corners of its way, on the wall.

    A slack class of none means that the rule set's conditions decide.
    """

    id: str
    start: CableEnd
    end: CableEnd
    conductor: str
    colour: str
    cable_class: CableClass
    way: Way = "choose"
    pins: tuple[Point, ...] = ()
    count: int = 1
    slack: SlackClass | None = None
    group: str = ""
    label: str = ""

    @property
    def ends(self) -> tuple[CableEnd, CableEnd]:
        """Both ends, first to second."""
        return self.start, self.end
