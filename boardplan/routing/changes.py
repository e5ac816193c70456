"""Changes: what differs between two plans, and which ways it can concern."""

from boardplan.geometry.point import Box
from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.plan import Plan
from boardplan.routing.blockers import Blocker, blockers_of
from boardplan.routing.open_lines import units
from boardplan.routing.route import NoWay, Way


class Changes:
    """The differences of two plans, as far as ways of cables depend on them."""

    def __init__(self, old: Plan, new: Plan, new_blockers: tuple[Blocker, ...]) -> None:
        """Compare two plans; `new_blockers` are those of the new one."""
        self._old, self._new = old, new
        self.everywhere = old.rules != new.rules or old.boards != new.boards
        self.channels = old.channels != new.channels
        before, after = set(blockers_of(old)), set(new_blockers)
        self._blockers = tuple(before ^ after)
        self._ends = {
            name
            for held, now in ((old.components, new.components), (old.exits, new.exits))
            for name in held.keys() | now.keys()
            if held.get(name) is not now.get(name) and held.get(name) != now.get(name)
        }
        self._kinds = {
            name
            for name in old.kinds.keys() | new.kinds.keys()
            if old.kinds.get(name) is not new.kinds.get(name) and old.kinds.get(name) != new.kinds.get(name)
        }

    def concern(self, cable: Cable, way: Way) -> bool:
        """Say whether a cable's way may be another one in the new plan."""
        if self.everywhere or self.of_cable(cable) or (self.channels and cable.way != "outside"):
            return True
        if cable.pins:
            return False
        if isinstance(way, NoWay):
            return bool(self._blockers)
        half = self._new.conductors[cable.conductor].outside_diameter / 2
        boxes = [each.box.grown(half + each.clearance) for each in self._blockers]
        return bool(way.full) or any(reach.comes_by(box) for box in boxes for reach in way.reaches)

    def blocks(self, cable: Cable, box: Box) -> bool:
        """Say whether anything that changed keeps a cable out of some of a box, or did so."""
        half = self._new.conductors[cable.conductor].outside_diameter / 2
        return any(each.box.grown(half + each.clearance).touches(box) for each in self._blockers)

    def old_half(self, cable: str) -> int:
        """Return half the diameter a cable had, in units."""
        return units(self._old.conductors[self._old.cables[cable].conductor].outside_diameter / 2)

    def of_cable(self, cable: Cable) -> bool:
        """Say whether a cable itself or one of its ends changed."""
        before = self._old.cables.get(cable.id)
        if before is None or (before is not cable and before != cable):
            return True
        if self._old.conductors.get(cable.conductor) != self._new.conductors[cable.conductor]:
            return True
        return any(self._of_end(end.component if isinstance(end, TerminalEnd) else end.exit) for end in cable.ends)

    def _of_end(self, name: str) -> bool:
        if name in self._ends:
            return True
        component = self._new.components.get(name)
        return component is not None and component.kind in self._kinds
