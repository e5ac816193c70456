"""Component: a kind, placed on a board."""

from dataclasses import dataclass

from boardplan.geometry.point import Point
from boardplan.model.component_kind import Stage
from boardplan.model.fuse import Fuse


@dataclass(frozen=True, slots=True)
class Component:
    """A placed piece of equipment.

    `position` is the lower left of the box round its turned outline, in board coordinates; `turn` is
    counter-clockwise in degrees. A stage of none means the kind's own. `fuses` are those that
    somebody said something of.
    """

    id: str
    kind: str
    board: str
    position: Point
    turn: float = 0.0
    label: str = ""
    stage: Stage | None = None
    locked: bool = False
    fuses: tuple[Fuse, ...] = ()
