"""What frees: what would give a cable without a way one, in an installer's words. Slow: asked for, never on every move.

Tried out, not reckoned: each unit that may be to blame is moved aside, a little and then farther, and the cable's way
is looked for again; the smallest move that gives it one is the answer. So is a cable by the channel or outside, where
somebody chose otherwise, and a larger section for a channel that stops it; that is offered to a cable with a way too,
where it is full or too shallow for it. A tighter bend than the least is never an answer.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from boardplan.geometry.point import Box, Point
from boardplan.geometry.units import length_text
from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.channel_section import ChannelSection
from boardplan.model.component import Component
from boardplan.model.placed import placed
from boardplan.model.plan import Plan
from boardplan.routing.find_route import find_routes
from boardplan.routing.lengths.cut_length import cut_lengths
from boardplan.routing.lugs.link_bar import link_bar_of
from boardplan.routing.one_way import found_way
from boardplan.routing.route import NoWay, Route
from boardplan.routing.square.ends import ends_of
from boardplan.routing.square.surroundings import surroundings_of
from boardplan.routing.wider_channel import wider_channels

_STEPS = (5.0, 10.0, 15.0, 20.0, 30.0, 40.0, 60.0, 80.0, 100.0, 125.0, 150.0)
"""How far units are moved, in mm, one after the other."""
_FINE = 1.0  # mm: how closely the least move is told
_MOST_BLAMED = 4
_DIRECTIONS = {"left": Point(-1, 0), "right": Point(1, 0), "down": Point(0, -1), "up": Point(0, 1)}


@dataclass(frozen=True, slots=True)
class Freed:
    """What gives a cable a way: in words, and what it is.

    Where it is a move, `component` moves `by` so much; where it is another section, `channel` gets it.
    """

    words: str
    component: str = ""
    by: Point = Point(0, 0)
    channel: str = ""
    section: ChannelSection | None = None


def what_frees(plan: Plan, cable_id: str, sections: Sequence[ChannelSection] = ()) -> tuple[Freed, ...]:
    """Return what would give a cable a way, the smallest move first; nothing where all that was tried is in vain.

    `sections` are those of channel within reach.
    """
    cable = plan.cables[cable_id]
    way = found_way(surroundings_of(plan), replace(cable, pins=()))
    if isinstance(way, Route):
        unpinned = [Freed(f"Without its pins {cable.id} has a way.")] if cable.pins else []
        return (*_bar_for_a_way(plan, cable), *unpinned, *_wider(plan, cable, sections))
    moves = sorted(_moves(plan, cable, way), key=_how_far)
    return (*_link_bar(plan, cable), *_otherwise(plan, cable), *moves, *_wider(plan, cable, sections))


def _wider(plan: Plan, cable: Cable, sections: Sequence[ChannelSection]) -> Iterator[Freed]:
    for each in wider_channels(plan, cable, sections):
        yield Freed(each.words(cable.id), channel=each.channel.id, section=each.section)


def _how_far(freed: Freed) -> tuple[float, str]:
    return abs(freed.by.x) + abs(freed.by.y), freed.words


def _has_way(plan: Plan, cable: Cable) -> bool:
    return isinstance(found_way(surroundings_of(plan), replace(cable, pins=())), Route)


def _otherwise(plan: Plan, cable: Cable) -> Iterator[Freed]:
    """Yield the way by channel or outside, where the cable was told to go by the other."""
    if cable.way != "choose" and _has_way(plan, replace(cable, way="choose")):
        told = {"channel": "through channels", "outside": "outside of channels"}[cable.way]
        yield Freed(f"{cable.id} is told to go {told}: it has a way if the program may choose.")


def _link_bar(plan: Plan, cable: Cable) -> Iterator[Freed]:
    """Yield a link bar where a cable without a way goes between two studs as far apart as bars are made for."""
    start, end = ends_of(plan, cable)
    if not (start.lugged and end.lugged and plan.rules.knows("link-bar-from")):
        return
    apart = start.point.distance_to(end.point)
    if plan.rules.value("link-bar-from") <= apart <= plan.rules.value("link-bar-to"):
        yield _bar_words(plan, apart)


def _bar_for_a_way(plan: Plan, cable: Cable) -> Iterator[Freed]:
    """Yield a link bar where a cable has a way that is shorter than the shortest jumper that can be made."""
    bar = link_bar_of(plan, cable, cut_lengths(plan, find_routes(plan)).get(cable.id))
    if bar is not None:
        yield _bar_words(plan, bar.centres)


def _bar_words(plan: Plan, apart: float) -> Freed:
    centre = length_text(apart, plan.job.units)
    return Freed(f"The studs are {centre} apart: a link bar joins them better than a cable.")


def _moves(plan: Plan, cable: Cable, way: NoWay) -> Iterator[Freed]:
    """Yield for each unit that may be to blame its least move in the direction that takes the least."""
    for component in _blamed(plan, cable, way):
        best: Freed | None = None
        for name, ahead in _DIRECTIONS.items():
            most = abs(best.by.x) + abs(best.by.y) if best else _STEPS[-1]
            by = _least_move(plan, cable, component, ahead, most)
            if by is not None and (best is None or by < most):
                words = f"Move {component.id} {length_text(by, plan.job.units)} {name}."
                best = Freed(words, component.id, Point(ahead.x * by, ahead.y * by))
        if best is not None:
            yield best


def _blamed(plan: Plan, cable: Cable, way: NoWay) -> list[Component]:
    """Return the units that may be to blame: those of the ends, and the nearest to where the cable is stuck."""
    own = [end.component for end in cable.ends if isinstance(end, TerminalEnd)]
    others = sorted(
        (each for each in plan.components.values() if each.id not in own),
        key=lambda each: (_distance(_box(plan, each), way.near), each.id),
    )
    return [plan.components[name] for name in dict.fromkeys(own)] + others[:_MOST_BLAMED]


def _box(plan: Plan, component: Component) -> Box:
    return placed(plan, component).box.moved(*plan.boards[component.board].position)


def _distance(box: Box, point: Point) -> float:
    aside = max(box.left - point.x, 0.0, point.x - box.right)
    above = max(box.bottom - point.y, 0.0, point.y - box.top)
    return Point(0, 0).distance_to((aside, above))


def _least_move(plan: Plan, cable: Cable, component: Component, ahead: Point, most: float) -> float | None:
    """Return how far a unit must go in a direction for the cable to have a way, none where it doesn't get there."""

    def frees(by: float) -> bool:
        moved = replace(component, position=component.position.moved(ahead.x * by, ahead.y * by))
        return _has_room(plan, moved) and _has_way(plan.with_things([moved]), cable)

    before = 0.0
    for step in _STEPS:
        if step > most:
            return None
        if frees(step):
            while step - before > _FINE:
                middle = round((before + step) / 2)
                if middle in (before, step):
                    break
                before, step = (before, middle) if frees(middle) else (middle, step)  # noqa: PLW2901
            return step
        before = step
    return None


def _has_room(plan: Plan, component: Component) -> bool:
    """Say whether a unit stands on its board with its margin, and clear of all others."""
    body, margins = placed(plan, component).box, plan.boards[component.board].edge_margins
    sheet, gap = plan.boards[component.board].box, plan.rules.value("gap-between-components")
    on_sheet = (
        body.left >= sheet.left + margins.left
        and body.bottom >= sheet.bottom + margins.bottom
        and body.right <= sheet.right - margins.right
        and body.top <= sheet.top - margins.top
    )
    grown = _box(plan, component).grown(gap - 1e-6)
    others = (each for each in plan.components.values() if each.id != component.id)
    return on_sheet and not any(_box(plan, each).touches(grown) for each in others)
