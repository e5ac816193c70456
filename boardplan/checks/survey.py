"""Survey: measures every thing of a plan where it lies on the wall, and how far it concerns others."""

from dataclasses import dataclass
from functools import cache

from shapely import LineString, Polygon

from boardplan.checks.corridors import corridors_of
from boardplan.checks.spots import (
    BackPartSpot,
    CableSpot,
    ChannelSpot,
    ComponentSpot,
    ExitSpot,
    FixingSpot,
    HoleSpot,
    NoGoSpot,
    Spot,
    ZoneSpot,
    leg_boxes,
)
from boardplan.geometry.placement import Placement
from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.board import BackPart, BoardFixing, Exit, Face, NoGoBox, Ring
from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.channel import Channel
from boardplan.model.component import Component
from boardplan.model.component_kind import ComponentKind, KeepClear
from boardplan.model.holes import Hole, channel_holes, component_holes, fixing_hole
from boardplan.model.placed import placed
from boardplan.model.plan import Plan, Thing
from boardplan.model.rule_set import RuleSet
from boardplan.routing.lugs.lug_place import laid_lugs
from boardplan.routing.route import NoWay, Route, Way

NORMALS: dict[Face, float] = {"right": 0.0, "top": 90.0, "left": 180.0, "bottom": 270.0}
"""Which way a side face of an upright component looks, in degrees."""


def spot_of(plan: Plan, thing: Thing, way: Way | None) -> Spot | None:
    """Return a thing on the wall, none for a board or a member of the framing: those are the ground itself."""
    match thing:
        case Component():
            return _component(plan, thing)
        case Channel():
            return _channel(plan, thing)
        case Cable() if way is not None:
            return _cable(plan, thing, way)
        case BoardFixing() | Exit() | NoGoBox() | BackPart():
            return _fitting(plan, thing)
        case _:
            return None


@dataclass(frozen=True, slots=True)
class _Reach:
    """How far the rule set's limits between two things go, in mm."""

    gap: float
    beside_channel: float
    above: float
    head: float
    diameters: float
    back: float
    cable: float
    lugs: float


@cache
def _reach_of_limits(values: tuple[float, ...]) -> _Reach:
    return _Reach(*values)


def _reach(rules: RuleSet) -> _Reach:
    value = rules.value
    return _reach_of_limits(
        (
            max(value("gap-between-components"), value("gap-beside-snap-cover"), _half(rules, "opposite-studs")),
            max(value("channel-finger-room"), value("channel-cover-side")),
            value("above-hot-unit"),
            max(value("hole-covered"), value("fixing-head-room")),
            value("hole-to-hole"),
            value("hole-to-back-part"),
            value("cable-to-body"),
            _half(rules, "opposite-lugs"),
        )
    )


def _half(rules: RuleSet, name: str) -> float:
    """Return half of a gap between two things alike, each of which reaches so far; an earlier edition may ask none."""
    return rules.value(name) / 2 if rules.knows(name) else 0.0


def _hole_spots(plan: Plan, board: str, holes: list[Hole]) -> tuple[HoleSpot, ...]:
    origin = plan.boards[board].position
    return tuple(
        HoleSpot(hole, hole.position.moved(origin.x, origin.y), plan.fasteners.get(hole.fastener)) for hole in holes
    )


def _hole_boxes(rules: RuleSet, holes: tuple[HoleSpot, ...]) -> tuple[Box, ...]:
    """Return how far holes reach: their spacing, their screw heads with the driver, their nuts on the back."""
    if not holes:
        return ()
    reach = _reach(rules)
    widest = 0.0
    for each in holes:
        bit, fastener = each.hole.bit or 0.0, each.fastener
        head = (fastener.head_diameter if fastener else None) or bit
        flange = (fastener.flange_diameter if fastener else None) or bit
        widest = max(widest, bit * reach.diameters, head + reach.head, flange / 2 + reach.back)
    return (box_around(each.at for each in holes).grown(widest),)


def _component(plan: Plan, component: Component) -> ComponentSpot:
    lying, board = placed(plan, component), plan.boards[component.board]
    origin, kind, reach = board.position, lying.kind, _reach(plan.rules)
    around = lying.box.moved(origin.x, origin.y)
    holes = _hole_spots(plan, board.id, component_holes(plan, component))
    zones = tuple(
        _zone(each.keep_clear, lying.placement, tuple(point.moved(origin.x, origin.y) for point in each.ring))
        for each in lying.zones
    )
    with_terminals = box_around((*lying.box.corners(), *(each.position for each in lying.terminals.values())))
    extents = [with_terminals.moved(origin.x, origin.y).grown(reach.gap)]
    extents += [*(zone.box for zone in zones), *_hole_boxes(plan.rules, holes)]
    if is_hot(kind, component.turn):
        extents.append(Box(around.left, around.top, around.right, around.top + reach.above))
    return ComponentSpot(
        id=component.id,
        board=board,
        box=around,
        reach=tuple(extents),
        body=Polygon([(x + origin.x, y + origin.y) for x, y in lying.outline]),
        height=kind.depth,
        holes=holes,
        hole_box=box_around(each.at for each in holes) if holes else None,
        upright=len(lying.outline) == _CORNERS and set(lying.outline) == set(lying.box.corners()),
        component=component,
        kind=kind,
        placed=lying,
        zones=zones,
    )


_CORNERS = 4


def _zone(keep_clear: KeepClear, placement: Placement, ring: Ring) -> ZoneSpot:
    return ZoneSpot(keep_clear, ring, box_around(ring), placement.direction(NORMALS[keep_clear.face]))


def is_hot(kind: ComponentKind, turn: float) -> bool:
    """Say whether a unit warms what hangs above it: it gives off heat, or blows out upwards as it is turned."""
    upwards = any(face != "front" and (NORMALS[face] + turn) % 360.0 == NORMALS["top"] for face in kind.cooling.exhaust)
    return bool(kind.heat) or upwards


def _channel(plan: Plan, channel: Channel) -> ChannelSpot:
    board, reach = plan.boards[channel.board], _reach(plan.rules)
    line = tuple(point.moved(board.position.x, board.position.y) for point in channel.line)
    holes = _hole_spots(plan, board.id, channel_holes(plan, channel))
    body = LineString(line).buffer(channel.width / 2, cap_style="flat", join_style="mitre")
    extents = [each.grown(channel.width / 2 + reach.beside_channel) for each in leg_boxes(line)]
    straight = len(line) == 2 and (line[0].x == line[1].x or line[0].y == line[1].y)  # noqa: PLR2004 - one leg
    return ChannelSpot(
        id=channel.id,
        board=board,
        box=Box(*body.bounds),
        reach=(*extents, *_hole_boxes(plan.rules, holes)),
        body=body,
        height=channel.height,
        holes=holes,
        hole_box=box_around(each.at for each in holes) if holes else None,
        upright=straight,
        channel=channel,
        line=line,
    )


def _cable(plan: Plan, cable: Cable, way: Way) -> CableSpot:
    conductor = plan.conductors[cable.conductor]
    board = plan.boards[_board_of(plan, cable)]
    if isinstance(way, Route) and len(way.points) > 1:
        line, around = LineString(way.points), box_around(way.points)
        corridors, lugs = corridors_of(plan, cable, conductor, way), laid_lugs(plan, cable, way)
        limits = _reach(plan.rules)
        beside = leg_boxes(way.points, conductor.outside_diameter / 2 + limits.cable)
        reach = (*beside, *(each.box for each in corridors), *(each.box.grown(limits.lugs) for each in lugs))
    else:
        at = way.near if isinstance(way, NoWay) else way.points[0]
        line, around, reach, corridors, lugs = None, box_around([at]), (), (), ()
    return CableSpot(
        id=cable.id,
        board=board,
        box=around,
        reach=reach,
        cable=cable,
        conductor=conductor,
        way=way,
        line=line,
        corridors=corridors,
        lugs=lugs,
    )


def _board_of(plan: Plan, cable: Cable) -> str:
    """Return the board that a cable's first end is on."""
    start = cable.start
    return plan.components[start.component].board if isinstance(start, TerminalEnd) else plan.exits[start.exit].board


def _fitting(plan: Plan, thing: BoardFixing | Exit | NoGoBox | BackPart) -> Spot:
    origin = plan.boards[thing.board].position
    match thing:
        case BoardFixing():
            return _fixing(plan, thing, thing.position.moved(origin.x, origin.y))
        case Exit():
            return _exit(plan, thing, thing.position.moved(origin.x, origin.y))
        case NoGoBox():
            around = thing.box.moved(origin.x, origin.y)
            body = Polygon(around.corners())
            return NoGoSpot(
                id=thing.id, board=plan.boards[thing.board], box=around, reach=(around,), no_go=thing, body=body
            )
        case BackPart():
            body = Polygon([(x + origin.x, y + origin.y) for x, y in thing.outline])
            around = Box(*body.bounds)
            reach = (around.grown(_reach(plan.rules).back),)
            return BackPartSpot(
                id=thing.id, board=plan.boards[thing.board], box=around, reach=reach, part=thing, body=body
            )


def _fixing(plan: Plan, fixing: BoardFixing, at: Point) -> FixingSpot:
    fastener = plan.fasteners.get(fixing.fastener)
    board, hole = plan.boards[fixing.board], fixing_hole(fixing)
    spot = HoleSpot(hole, at, fastener)
    return FixingSpot(
        id=fixing.id,
        board=board,
        box=box_around([at]).grown(fixing.diameter / 2),
        reach=_hole_boxes(plan.rules, (spot,)),
        fixing=fixing,
        hole=spot,
    )


def _exit(plan: Plan, leaves: Exit, at: Point) -> ExitSpot:
    around = box_around([at]).grown((leaves.diameter or 0.0) / 2)
    return ExitSpot(id=leaves.id, board=plan.boards[leaves.board], box=around, reach=(around,), exit=leaves, at=at)
