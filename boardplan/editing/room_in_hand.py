"""Room in hand: where the piece that is being carried may come to lie, for whoever looks for a place."""

from dataclasses import dataclass

from shapely.affinity import translate
from shapely.geometry.base import BaseGeometry

from boardplan.checks.room.allowed_region import allowed_region, turns_with_room
from boardplan.geometry.point import Point
from boardplan.model.component import Component
from boardplan.model.placed import placed
from boardplan.model.plan import Plan


@dataclass(frozen=True, slots=True)
class Room:
    """Where on the wall the middle of a piece may lie as it is turned; where nowhere, the quarter turns with room."""

    middles: BaseGeometry
    turns: tuple[float, ...] = ()


def room_of(plan: Plan, component: Component) -> Room:
    """Return the room that everything but a component itself leaves for it on its board."""
    kind, origin = plan.kind_of(component), plan.boards[component.board].position
    region = allowed_region(plan, kind, component.turn, component.board, without=component.id)
    if region.is_empty:
        return Room(region, turns_with_room(plan, kind, component.board, without=component.id))
    middle = middle_of(plan, component).minus(component.position).minus(origin)
    return Room(translate(region, middle.x + origin.x, middle.y + origin.y))


def middle_of(plan: Plan, component: Component) -> Point:
    """Return the middle of a component on the wall: that of the box round it as it is turned."""
    return plan.on_wall(component.board, placed(plan, component).centre)
