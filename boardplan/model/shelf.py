"""Shelf: the component kinds, conductors, fasteners and channel sections a shop can reach for."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from boardplan.model.channel_section import ChannelSection
from boardplan.model.component_kind import ComponentKind
from boardplan.model.conductor import Conductor
from boardplan.model.fastener import Fastener


@dataclass(frozen=True, slots=True)
class Shelf:
    """What can be taken into a job, each by its id; kinds in the order of their families."""

    kinds: Mapping[str, ComponentKind] = field(default_factory=dict)
    conductors: Mapping[str, Conductor] = field(default_factory=dict)
    fasteners: Mapping[str, Fastener] = field(default_factory=dict)
    channel_sections: Mapping[str, ChannelSection] = field(default_factory=dict)

    def families(self) -> tuple[str, ...]:
        """Return the families of kinds in the order they stand on the shelf."""
        return tuple(dict.fromkeys(kind.family for kind in self.kinds.values()))
