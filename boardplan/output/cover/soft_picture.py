"""Soft picture: what lies on a board as the screen shows it, lightened so that words and dimensions read on paper."""

from collections.abc import Collection, Iterable, Iterator
from dataclasses import replace

from boardplan.drawing.board_picture import on_wall
from boardplan.drawing.palette import colour
from boardplan.drawing.picture import Area, Ink, Line, Mark, Picture, Strand, Words
from boardplan.drawing.tint import mixed
from boardplan.model.board import BackPart, Board, Framing
from boardplan.model.cable import Cable
from boardplan.model.component import Component
from boardplan.model.placed import placed
from boardplan.model.plan import Plan

_SHOP, _SITE, _CABLE, _OTHER = 0.30, 0.72, 0.05, 0.2
"""How much white is mixed in: what comes later stands pale, so that it tells itself apart without colour."""
_SHEET = "#F4F2EE"


def soft_picture(plan: Plan, lying: Iterable[tuple[str, Picture]], boards: Collection[str]) -> Iterator[Mark]:
    """Yield all that lies on some boards in wall coordinates, but for words, which the sheet sets at their own size.

    `lying` are the pictures of all things on the wall by their ids, the lowest first.
    """
    for key, picture in lying:
        thing = plan.things.get(key)
        if isinstance(thing, Board):
            if thing.id in boards:
                yield from on_wall(plan, thing.id, _sheet(thing))
        elif not isinstance(thing, BackPart) and (isinstance(thing, Cable) or getattr(thing, "board", "") in boards):
            yield from (_softened(mark, _share(plan, thing)) for mark in picture if not isinstance(mark, Words))


def _sheet(board: Board) -> Picture:
    return (
        Area((board.outline, *board.cutouts), _SHEET),
        *(Line(ring, "ink", 4.0, closed=True) for ring in (board.outline, *board.cutouts)),
    )


def _share(plan: Plan, thing: object) -> float:
    if isinstance(thing, Component):
        return _SITE if stage_of(plan, thing) == "site" else _SHOP
    return _CABLE if isinstance(thing, Cable) else 0.0 if isinstance(thing, Framing) else _OTHER


def stage_of(plan: Plan, component: Component) -> str:
    """Return when a component is mounted: its own stage, or that of its kind."""
    return component.stage or plan.kind_of(component).stage


def _softened(mark: Mark, share: float) -> Mark:
    if isinstance(mark, Area):
        return replace(mark, fill=_soft(mark.fill, share), edge=_soft(mark.edge, share))
    if isinstance(mark, Line | Strand | Words):
        return replace(mark, ink=mixed(colour(mark.ink, "paper"), "#FFFFFF", share))
    return replace(mark, fill=_soft(mark.fill, share), edge=_soft(mark.edge, share))


def _soft(ink: Ink | None, share: float) -> Ink | None:
    return mixed(colour(ink, "paper"), "#FFFFFF", share) if ink else None


def stage_outlines(plan: Plan, board: Board) -> Picture:
    """Return the outline of each component in wall coordinates: a thin line for the shop, heavy dashes for the site."""
    marks: list[Mark] = []
    for component in plan.components.values():
        if component.board == board.id:
            site = stage_of(plan, component) == "site"
            width, dashes = (5.0, (22.0, 13.0)) if site else (2.2, ())
            marks.append(Line(placed(plan, component).outline, "ink", width, dashes, closed=True))
    return on_wall(plan, board.id, tuple(marks))
