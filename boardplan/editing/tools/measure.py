"""Measure: the distance between two places, from terminals, screw holes and corners where one is near."""

from collections.abc import Iterator

from boardplan.editing.tools.gesture import Done, Gesture, Pointer, Shown
from boardplan.editing.tools.grip import CATCHING
from boardplan.editing.tools.hand import Hand
from boardplan.geometry.point import Point
from boardplan.geometry.units import length_text
from boardplan.model.holes import holes_of
from boardplan.model.placed import placed
from boardplan.model.plan import Plan


def measure(hand: Hand) -> Gesture:
    """Take the first place by a click or the start of a drag, the second by the next click or its end."""
    points = tuple(telling_points(hand.plan))
    event = yield Shown(hint="Click where to measure from")
    while not (event.kind == "press" and event.button == "left"):
        if event.kind == "key" and event.key == "escape":
            return Done()
        at = _caught(points, event)
        event = yield Shown(hint="Click where to measure from", guides=((at, at),))
    start, pressed = _caught(points, event), event
    while True:
        end = _caught(points, event)
        words = distance_words(start, end, hand.plan.job.units)
        event = yield Shown(hint=words, guides=((start, end),))
        if event.kind == "key" and event.key == "escape":
            return Done(again=True)
        dragged = event.kind == "release" and event.at.distance_to(pressed.at) > CATCHING * event.reach
        if event.kind == "press" or dragged:
            words = distance_words(start, _caught(points, event), hand.plan.job.units)
            return Done(again=True, said=words)


def distance_words(start: Point, end: Point, units: str = "mm") -> str:
    """Return a distance straight, across and up, in the job's units."""
    straight = length_text(start.distance_to(end), units)
    return f"{straight}: {length_text(end.x - start.x, units)} across, {length_text(end.y - start.y, units)} up"


def telling_points(plan: Plan) -> Iterator[Point]:
    """Yield the places of a plan that people measure from, on the wall."""
    for board in plan.boards.values():
        yield from (plan.on_wall(board.id, corner) for corner in board.outline)
    for component in plan.components.values():
        held = placed(plan, component)
        yield from (plan.on_wall(component.board, corner) for corner in held.outline)
        yield from (plan.on_wall(component.board, each.position) for each in held.terminals.values())
    yield from (plan.on_wall(hole.board, hole.position) for hole in holes_of(plan))
    for exit_ in plan.exits.values():
        yield plan.on_wall(exit_.board, exit_.position)


def _caught(points: tuple[Point, ...], event: Pointer) -> Point:
    """Return the nearest telling place within reach; with alt, or where there is none, the pointer's own."""
    if event.alt or not points:
        return event.at
    nearest = min(points, key=lambda each: each.distance_to(event.at))
    return nearest if nearest.distance_to(event.at) <= CATCHING * event.reach else event.at
