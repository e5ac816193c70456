"""Risen lug: how far an angled lug lifts its cable off the stud, and what the way back to level takes.

All in mm. The cable leaves the barrel at the lug's angle and bends back to level with its own radius: elementary
geometry of an arc.
"""

import math
from dataclasses import dataclass

from boardplan.model.cable import TerminalEnd
from boardplan.model.conductor import AngledLug, Conductor
from boardplan.model.plan import Plan
from boardplan.routing.square.ends import straight_at


@dataclass(frozen=True, slots=True)
class RisenLug:
    """A lug, or any other end: how far the wire stop, then the mouth lie along the way, how high, at which angle.

    `stop` and `mouth` are along the board, `rise` of the wire stop and `lift` of the mouth off the stud's plane.
    A straight end has no angle and no rise.
    """

    stop: float
    mouth: float
    barrel: float = 0.0
    rise: float = 0.0
    angle: float = 0.0

    @property
    def lift(self) -> float:
        """How high the mouth is over the stud's plane."""
        return self.rise + self.barrel * math.sin(math.radians(self.angle))

    def reach(self, radius: float) -> float:
        """Return how far along the way the cable is level again: an arc reaches R sin t beyond the mouth."""
        return self.mouth + radius * math.sin(math.radians(self.angle))

    def height(self, radius: float) -> float:
        """Return how high over the stud the cable is level: an arc rises R (1 - cos t) over the mouth."""
        return self.lift + radius * (1 - math.cos(math.radians(self.angle)))

    def adds(self, radius: float) -> float:
        """Return how much longer barrel and arc are than what lies below them: b (1 - cos t) + R (t - sin t)."""
        turn = math.radians(self.angle)
        return self.barrel * (1 - math.cos(turn)) + radius * (turn - math.sin(turn))


def risen_lug(plan: Plan, end: TerminalEnd, conductor: Conductor) -> RisenLug:
    """Return what stands at a terminal: an angled lug where there is one that was measured, straight else."""
    terminal = plan.kind_of(plan.components[end.component]).terminal(end.terminal)
    if terminal is None:
        raise KeyError(f"{end.component} has no terminal {end.terminal}")
    angled = angled_lug(end, conductor) if terminal.sort == "stud" else None
    if angled is None:
        straight = straight_at(plan.rules, terminal, conductor)
        return RisenLug(straight, straight)
    flat = math.cos(math.radians(angled.degrees))
    return RisenLug(angled.stop, angled.stop + angled.barrel * flat, angled.barrel, angled.rise, float(angled.degrees))


def angled_lug(end: TerminalEnd, conductor: Conductor) -> AngledLug | None:
    """Return the measures of the angled lug an end wants, none for a straight one and where nobody measured it."""
    form = end.lug.form if end.lug else "straight"
    return conductor.lug.angled_lug(form) if conductor.lug and not conductor.stock_lengths else None
