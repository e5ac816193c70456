"""Low things: the bodies and covered channels that a thin cable may pass over where it finds no other way.

How thin is the rule set's; an earlier edition that sets no limit, or has no heights to reckon the climb with, lets no
cable over anything.
"""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.board import Ring
from boardplan.model.channel import Channel
from boardplan.model.component import Component
from boardplan.model.component_kind import ComponentKind
from boardplan.model.placed import Placed, placed
from boardplan.model.plan import Plan
from boardplan.model.rule_set import RuleSet
from boardplan.routing.square.blockers import NEAR_BOARD, Blocker, boxes_of_ring, channel_rings

NO_LINE = -1
"""An axis that no line runs along."""


@dataclass(frozen=True, slots=True)
class LowThing:
    """A body or a channel that thin cables may pass over, straight across it.

    `top` is how high it stands and `room` how high a cable may reach there, in mm off the board. `lets` are the
    blockers that hold off only lines along an axis, `kept` what stays blocked on it.
    """

    thing: str
    top: float
    room: float
    lets: tuple[tuple[Blocker, int], ...]
    kept: tuple[Blocker, ...] = ()

    def takes(self, diameter: float) -> bool:
        """Say whether a cable of a diameter (mm) has room on top."""
        return self.top + diameter <= self.room


def is_thin(rules: RuleSet, diameter: float) -> bool:
    """Say whether a cable is thin enough to pass over a plain unit, under an edition that lets any; mm outside."""
    return rules.knows("thin-over-component") and diameter < rules.value("thin-over-component")


def why_not_over(kind: ComponentKind) -> str:
    """Return why not even a thin cable passes over a kind, "" where nothing is known against it."""
    if any(each.face == "front" for each in kind.keep_clear):
        return ", which is opened or reached from the front"
    return ", which gets warm" if kind.heat or kind.cooling.exhaust else ""


def low_things(plan: Plan) -> tuple[LowThing, ...]:
    """Return what thin cables may pass over in a plan, bodies first, by id."""
    if not (plan.rules.knows("thin-over-component") and plan.rules.knows("slope-counts-from")):
        return ()
    bodies = (_body(plan, each) for each in sorted(plan.components.values(), key=lambda one: one.id))
    channels = (_channel(plan, each) for each in sorted(plan.channels.values(), key=lambda one: one.id))
    return tuple(each for each in (*bodies, *channels) if each is not None)


def _body(plan: Plan, component: Component) -> LowThing | None:
    """Return a body as a low thing, none where the search lets no cable over it.

    It must be a rectangle that lies square, so that a cable crosses it between two parallel sides; and it must carry
    no stud: a cable doesn't lie on bare metal, nor where a spanner turns. Over its other terminals, where cables leave
    them and over its screws it stays blocked. No body is low that a cable lies on higher than the cables go that
    no-go boxes farther off the board don't trouble. Common practice, no source.
    """
    lies, clearance = placed(plan, component), plan.rules.value("cable-to-body")
    if why_not_over(lies.kind) or any(each.sort == "stud" for each in lies.kind.terminals):
        return None
    boxes = boxes_of_ring([plan.on_wall(component.board, point) for point in lies.outline])
    if len(boxes) != 1:
        return None
    (box,) = boxes
    body = Blocker("body", component.id, box, clearance)
    rims = tuple((Blocker("body", component.id, rim, clearance), axis) for axis in (0, 1) for rim in _rims(box, axis))
    taken = (*_terminals(plan, component, lies, box), *_screws(plan, component, lies))
    kept = tuple(Blocker("body", component.id, each, clearance) for each in taken)
    room = min(NEAR_BOARD, _room_over(plan, (box,)))
    return LowThing(component.id, lies.kind.depth, room, ((body, NO_LINE), *rims), kept)


def _rims(box: Box, axis: int) -> tuple[Box, Box]:
    """Return the two sides of a box that run along an axis, as boxes without width."""
    if axis == 0:
        return box._replace(top=box.bottom), box._replace(bottom=box.top)
    return box._replace(right=box.left), box._replace(left=box.right)


def _terminals(plan: Plan, component: Component, lies: Placed, box: Box) -> Iterator[Box]:
    """Yield what the terminals of a body take, out to the sides where cables leave them, if it has any."""
    points: list[Point] = []
    for each in lies.terminals.values():
        at = plan.on_wall(component.board, each.position)
        points += [at, *([] if each.exit is None else [_out_of(box, at, each.exit)])]
    if points:
        yield box_around(points)


def _screws(plan: Plan, component: Component, lies: Placed) -> Iterator[Box]:
    """Yield what the heads of a body's screws take; the place of one whose head isn't known."""
    fastener = plan.fasteners.get(lies.kind.fastener)
    head = (fastener.head_diameter if fastener else None) or 0.0
    for _, place in lies.holes:
        yield box_around((plan.on_wall(component.board, place),)).grown(head / 2)


def _out_of(box: Box, at: Point, heading: float) -> Point:
    """Return where a cable that leaves a place in a direction comes over a side of a box; askew, the nearest way."""
    quarter = round(heading / 90.0) % 4
    return (Point(box.right, at.y), Point(at.x, box.top), Point(box.left, at.y), Point(at.x, box.bottom))[quarter]


def _channel(plan: Plan, channel: Channel) -> LowThing | None:
    """Return a channel with its cover on whose legs all lie square; a cable crosses each leg squarely."""
    rings = channel_rings(plan, channel)
    boxes = [box for ring in rings for box in boxes_of_ring(ring)]
    if not channel.cover or not boxes or len(boxes) != len(rings):
        return None
    clearance = plan.rules.value("cable-to-body")
    line = [plan.on_wall(channel.board, each) for each in channel.line]
    legs = zip(boxes, rings, strict=True)
    lets = [(Blocker("channel", channel.id, box, clearance), _axis(ring)) for box, ring in legs]
    for box, ring, end in ((boxes[0], rings[0], line[0]), (boxes[-1], rings[-1], line[-1])):
        across = 1 - _axis(ring)
        rim = min(_rims(box, across), key=lambda each: each.centre.distance_to(end))
        lets.append((Blocker("channel", channel.id, rim, clearance), across))
    return LowThing(channel.id, channel.height, _room_over(plan, boxes), tuple(lets))


def _axis(ring: Ring) -> int:
    """Return the axis that a leg of channel runs along, by its ring."""
    return 0 if ring[0].y == ring[1].y else 1


def _room_over(plan: Plan, boxes: Iterable[Box]) -> float:
    """Return how high over the board the lowest no-go box over some boxes begins that cables needn't go round."""
    return min(
        (
            each.from_z
            for each in plan.no_go_boxes.values()
            for box in boxes
            if each.from_z >= NEAR_BOARD and each.box.moved(*plan.boards[each.board].position).touches(box)
        ),
        default=math.inf,
    )
