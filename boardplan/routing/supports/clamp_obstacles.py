"""Clamp obstacles: the boxes on the wall that no clamp may stand in, thing by thing.

Boxes are on the wall, in mm. What a thing puts in the way hangs on that thing, its way and the rules alone, so that
a change of one thing asks for the boxes of no other.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import TypeAlias

from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.board import BackPart, BoardFixing, Exit, NoGoBox
from boardplan.model.cable import Cable
from boardplan.model.channel import Channel
from boardplan.model.clamp_screw import clamp_screw_of
from boardplan.model.component import Component
from boardplan.model.holes import Hole, channel_holes, component_holes, fixing_hole
from boardplan.model.placed import placed
from boardplan.model.plan import Plan
from boardplan.routing.route import Route, Way
from boardplan.routing.square.blockers import NEAR_BOARD, blockers_of, boxes_of_ring, channel_rings
from boardplan.routing.supports.laid_way import laid

_SCREW_SHARE = 0.6
"""Where in its foot a clamp's screw is, counted from the jacket; as on the shelf's clamps."""

GROUND = ""
"""The key of what the boards themselves put in the way."""


@dataclass(frozen=True, slots=True)
class Foot:
    """The room a clamp takes: half its length along the cable, and how far its foot reaches beside the jacket."""

    half: float
    beside: float

    @property
    def screw(self) -> float:
        """How far the screw is from the jacket."""
        return self.beside * _SCREW_SHARE

    @property
    def round_screw(self) -> float:
        """How far everything that keeps off the foot is from the screw at least."""
        return min(self.half, self.beside - self.screw)


def foot_of(plan: Plan) -> Foot:
    """Return the room a clamp takes under the plan's rules."""
    return Foot(plan.rules.value("clamp-length") / 2, plan.rules.value("clamp-foot"))


@dataclass(frozen=True, slots=True)
class Obstacle:
    """A box on the wall that no clamp may stand in.

    `cable` is the one it belongs to, "" for anything else; `clamped` says that clamps may stand beside it.
    """

    box: Box
    cable: str = ""
    clamped: bool = False


Obstacles: TypeAlias = Mapping[str, tuple[Obstacle, ...]]
"""What each thing puts in the way, by its id; the boards' edges and joints under `GROUND`."""


def all_obstacles(plan: Plan, ways: Mapping[str, Way]) -> dict[str, tuple[Obstacle, ...]]:
    """Return what a clamp must keep off: bodies, channels, openings, screws, nuts, parts behind, cables, edges."""
    found = {GROUND: (*_edges(plan), *_joints(plan))}
    for name in ("components", "channels", "exits", "fixings", "no_go_boxes", "back_parts", "cables"):
        for key in getattr(plan, name):
            found[key] = obstacles_of(plan, ways, key)
    return found


def obstacles_of(plan: Plan, ways: Mapping[str, Way], key: str) -> tuple[Obstacle, ...]:
    """Return what one thing puts in a clamp's way; nothing for a thing that is not there."""
    if key in plan.cables:
        cable = plan.cables[key]
        clamped = wants_clamps(plan, cable)
        return tuple(Obstacle(box, key, clamped) for box in cable_boxes(plan, cable, ways.get(key)))
    for group in (plan.components, plan.channels, plan.exits, plan.fixings, plan.no_go_boxes, plan.back_parts):
        if key in group:
            return tuple(Obstacle(box) for box in _boxes(plan, group[key]))
    return ()


_Standing: TypeAlias = Component | Channel | Exit | BoardFixing | NoGoBox | BackPart


def _boxes(plan: Plan, thing: _Standing) -> Iterator[Box]:
    """Yield the boxes of a thing other than a cable, each grown by the room it wants."""
    match thing:
        case Component():
            outline = [plan.on_wall(thing.board, point) for point in placed(plan, thing).outline]
            yield from _body_boxes(plan, [outline])
            yield from _hole_boxes(plan, component_holes(plan, thing))
        case Channel():
            yield from _body_boxes(plan, channel_rings(plan, thing))
            yield from _hole_boxes(plan, channel_holes(plan, thing))
        case BackPart():
            yield from _behind(plan, thing)
        case _:
            yield from _fitting_boxes(plan, thing)


def _fitting_boxes(plan: Plan, thing: Exit | BoardFixing | NoGoBox) -> Iterator[Box]:
    if isinstance(thing, BoardFixing):
        room = max(plan.rules.value("fixing-head-room"), thing.diameter) / 2
        yield _round(plan, thing.board, thing.position, room)
        yield from _hole_boxes(plan, [fixing_hole(thing)])
    elif isinstance(thing, Exit):
        if thing.through == "hole":
            room = (thing.diameter or 0.0) / 2 + plan.rules.value("gap-between-components")
            yield _round(plan, thing.board, thing.position, room)
    elif thing.from_z < NEAR_BOARD:
        yield thing.box.moved(*plan.boards[thing.board].position)


def _body_boxes(plan: Plan, rings: Iterable[Sequence[Point]]) -> Iterator[Box]:
    beside = plan.rules.value("gap-between-components")
    yield from (box.grown(beside) for ring in rings for box in boxes_of_ring(ring))


def _round(plan: Plan, board: str, at: Point, room: float) -> Box:
    return box_around([plan.on_wall(board, at)]).grown(room)


def _hole_boxes(plan: Plan, holes: Iterable[Hole]) -> Iterator[Box]:
    """Yield where no foot may be so that its screw keeps off holes and nuts; an edition that drills none asks none.

    The screw is inside the foot: what the foot keeps off is farther from the screw by as much.
    """
    screw = clamp_screw_of(plan)
    if screw is None:
        return
    apart, behind = plan.rules.value("hole-to-hole"), plan.rules.value("hole-to-back-part")
    for hole in holes:
        fastener = plan.fasteners.get(hole.fastener)
        flange = (fastener.flange_diameter or 0.0) if fastener and fastener.hole == "t-nut" else 0.0
        to_hole = apart * max(hole.bit or 0.0, screw.bit)
        to_nut = flange / 2 + behind + screw.bit / 2 if flange else 0.0
        room = max(to_hole, to_nut) - foot_of(plan).round_screw
        if room > 0:
            yield _round(plan, hole.board, hole.position, room)


def _behind(plan: Plan, part: BackPart) -> Iterator[Box]:
    """Yield where no foot may be so that its screw keeps off a part on the back, where the edition asks for it."""
    screw = clamp_screw_of(plan)
    if screw is None:
        return
    room = plan.rules.value("hole-to-back-part") + screw.bit / 2 - foot_of(plan).round_screw
    for box in boxes_of_ring([plan.on_wall(part.board, point) for point in part.outline]):
        yield box.grown(max(0.0, room))


def _edges(plan: Plan) -> Iterator[Obstacle]:
    bare = Plan(plan.job, plan.rules, boards=plan.boards)
    yield from (Obstacle(each.box.grown(_edge_room(plan))) for each in blockers_of(bare))


def _edge_room(plan: Plan) -> float:
    """Return how far a foot keeps off an edge, so that its screw keeps off by what the rule set asks of holes."""
    foot = foot_of(plan)
    return max(0.0, plan.rules.value("hole-to-edge") - (foot.beside - foot.screw))


def _joints(plan: Plan) -> Iterator[Obstacle]:
    """Yield the level and upright edges of boards that hang beside others: cables cross there, clamps don't.

    An edition that names a clamp screw has it keep off these edges as off any other.
    """
    room = _edge_room(plan) if "clamp" in plan.rules.fasteners else 0.0
    if len(plan.boards) > 1:
        for board in plan.boards.values():
            ring = [point.moved(*board.position) for point in board.outline]
            for a, b in pairwise((*ring, ring[0])):
                if a.x == b.x or a.y == b.y:
                    yield Obstacle(box_around((a, b)).grown(room))


def cable_boxes(plan: Plan, cable: Cable, way: Way | None) -> list[Box]:
    """Return boxes on the wall that hold a cable, each of its pieces in its own."""
    half = plan.conductors[cable.conductor].outside_diameter * cable.count / 2
    return [box.grown(half) for box in laid(way).boxes] if isinstance(way, Route) else []


def wants_clamps(plan: Plan, cable: Cable) -> bool:
    """Say whether a cable is so thick that it is clamped on its own."""
    conductor = plan.conductors[cable.conductor]
    by_area = (conductor.area or 0.0) >= plan.rules.value("clamp-from-area")
    return by_area or conductor.outside_diameter >= plan.rules.value("clamp-from-diameter")
