"""Changes: what differs between two plans, and which ways it can concern."""

from functools import cached_property

from boardplan.geometry.point import Box, around_boxes
from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.plan import Plan
from boardplan.routing.route import NoWay, Way
from boardplan.routing.square.blockers import blockers_of
from boardplan.routing.square.ends import ends_of
from boardplan.routing.square.low_things import low_things
from boardplan.routing.square.open_lines import units
from boardplan.routing.square.surroundings import Surroundings


class Changes:
    """The differences of two plans, as far as ways of cables depend on them."""

    def __init__(self, old: Plan, around: Surroundings) -> None:
        """Compare an old plan with a new one and what its cables have in common."""
        self.old, self._around = old, around
        self._new = new = around.plan
        self.everywhere = old.rules != new.rules or old.boards != new.boards
        self.channels = old.channels != new.channels
        before, after = set(blockers_of(old)), set(around.blockers)
        self._blockers = tuple(before ^ after)
        self._held: dict[float, tuple[Box, list[Box]]] = {}
        self._cables: dict[str, bool] = {}
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
        """Say whether a cable's way may be another one in the new plan, wherever it runs."""
        if self.everywhere or self.of_cable(cable) or (self.channels and cable.way != "outside"):
            return True
        if cable.pins:
            return False
        if isinstance(way, NoWay):
            return bool(self._blockers) or self._low
        return bool(way.full) or (bool(way.over) and self._low)

    def near(self, cable: Cable, way: Way) -> list[Box]:
        """Return what changed so near a cable's way that it may be another one, grown by what it keeps off that."""
        if cable.pins or isinstance(way, NoWay) or not self._blockers:
            return []
        around, boxes = self._held_boxes(cable)
        reaches = [each for each in way.reaches if each.touches(around)]
        near = [(reach, box) for box in boxes for reach in reaches if reach.touches(box)]
        if not near:
            return []
        lanes = self._around.lane_lines(
            self._new.conductors[cable.conductor].outside_diameter, ends_of(self._new, cable)
        )
        return [box for reach, box in near if reach.comes_by(box, lanes)]

    @cached_property
    def _low(self) -> bool:
        """Whether what thin cables may pass over changed: a cover put on, a kind that now gets warm."""
        return low_things(self.old) != self._around.low

    def blocks(self, cable: Cable, box: Box) -> bool:
        """Say whether anything that changed keeps a cable out of some of a box, or did so."""
        if not self._blockers:
            return False
        around, boxes = self._held_boxes(cable)
        return around.touches(box) and any(each.touches(box) for each in boxes)

    def _held_boxes(self, cable: Cable) -> tuple[Box, list[Box]]:
        """Return what changed, grown by what a cable keeps its centre off it, and a box around all of it."""
        half = self._new.conductors[cable.conductor].outside_diameter / 2
        held = self._held.get(half)
        if held is None:
            boxes = [each.box.grown(half + each.clearance) for each in self._blockers]
            held = self._held[half] = around_boxes(boxes), boxes
        return held

    def old_half(self, cable: str) -> int:
        """Return half the diameter a cable had, in units."""
        return units(self.old.conductors[self.old.cables[cable].conductor].outside_diameter / 2)

    def of_cable(self, cable: Cable) -> bool:
        """Say whether a cable itself or one of its ends changed."""
        held = self._cables.get(cable.id)
        if held is None:
            held = self._cables[cable.id] = self._of_cable(cable)
        return held

    def _of_cable(self, cable: Cable) -> bool:
        before = self.old.cables.get(cable.id)
        if before is None or (before is not cable and before != cable):
            return True
        was, now = self.old.conductors.get(cable.conductor), self._new.conductors[cable.conductor]
        if was is not now and was != now:
            return True
        return any(self._of_end(end.component if isinstance(end, TerminalEnd) else end.exit) for end in cable.ends)

    def _of_end(self, name: str) -> bool:
        if name in self._ends:
            return True
        component = self._new.components.get(name)
        return component is not None and component.kind in self._kinds
