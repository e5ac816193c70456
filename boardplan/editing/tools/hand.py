"""Hand: what a tool works with - the plan, what is selected, where the cables lie, and what was taken in hand."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from boardplan.editing.channel_edits import SECTIONS
from boardplan.editing.selection import Selection
from boardplan.model.channel_section import ChannelSection
from boardplan.model.component_kind import ComponentKind
from boardplan.model.conductor import Conductor
from boardplan.model.fastener import Fastener
from boardplan.model.plan import Plan
from boardplan.model.shelf import Shelf
from boardplan.routing.route import Way


@dataclass(frozen=True, slots=True)
class Hand:
    """What a gesture begins with. `turn` is how the kind in hand is turned, `conductor` the one used last."""

    plan: Plan
    selection: Selection = field(default_factory=Selection)
    ways: Mapping[str, Way] = field(default_factory=dict)
    shelf: Shelf = field(default_factory=Shelf)
    kind: ComponentKind | None = None
    turn: float = 0.0
    section: ChannelSection = SECTIONS[3]
    fastener: Fastener | None = None
    conductor: Conductor | None = None
    diameter: float | None = None
    grid: float = 1.0
