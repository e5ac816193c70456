"""Laid trouble: why a cable can't lie where a hand is pushing it - its bends find no room, or a body is below it."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from boardplan.geometry.bends import tangent_length, turns
from boardplan.geometry.point import Box, Point, box_around
from boardplan.geometry.units import length_text
from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.placed import placed
from boardplan.model.plan import Plan
from boardplan.routing.one_way import pinned_way
from boardplan.routing.route import Route
from boardplan.routing.square.ends import ends_of

_NOISE = 1e-6


@dataclass(frozen=True, slots=True)
class Trouble:
    """What is wrong in words, and where on the wall."""

    words: str
    area: Box


def trouble_of(plan: Plan, cable_id: str) -> Trouble | None:
    """Return the first thing wrong with how a pinned cable lies, none where nothing is."""
    cable = plan.cables[cable_id]
    way = pinned_way(plan, cable)
    return next(iter((*_too_tight(plan, cable, way), *_over_bodies(plan, cable, way), *_off_boards(plan, way))), None)


def _too_tight(plan: Plan, cable: Cable, way: Route) -> Iterator[Trouble]:
    """Yield legs that are shorter than the bends at their corners and the straights at their ends."""
    ends = ends_of(plan, cable)
    held = (ends[0].straight, *(tangent_length(way.radius, turn) for turn in turns(way.points)), ends[1].straight)
    for (a, b), (before, after) in zip(pairwise(way.points), pairwise(held), strict=True):
        short = before + after - a.distance_to(b)
        if short > _NOISE:
            words = f"too tight: a leg is {length_text(short, plan.job.units)} too short for its bends"
            yield Trouble(words, box_around((a, b)).grown(way.radius / 2))


def _over_bodies(plan: Plan, cable: Cable, way: Route) -> Iterator[Trouble]:
    """Yield components that the cable would lie on, its own apart."""
    own = {end.component for end in cable.ends if isinstance(end, TerminalEnd)}
    half = plan.conductors[cable.conductor].outside_diameter / 2
    legs = [box_around(leg).grown(half - _NOISE) for leg in pairwise(way.points)]
    for component in plan.components.values():
        if component.id in own:
            continue
        body = placed(plan, component).box.moved(*plan.boards[component.board].position)
        if any(leg.touches(body) for leg in legs):
            yield Trouble(f"over {component.id}", body)


def _off_boards(plan: Plan, way: Route) -> Iterator[Trouble]:
    """Yield corners that lie on no board."""
    boards = [each.box.moved(*each.position) for each in plan.boards.values()]
    for corner in way.points[1:-1]:
        if not any(board.holds(corner) for board in boards):
            yield Trouble("off the board", _about(corner))


def _about(at: Point) -> Box:
    return Box(*at, *at).grown(20.0)
