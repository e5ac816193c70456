"""Sights: the table of what is seen on the canvas - which things, how deep they lie, what their picture is.

Each row names what a thing's picture is made from; as long as those are the same objects, nothing is made anew.
"""

# ruff: noqa: ANN401 - one table holds things of all sorts

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any, TypeAlias

from boardplan.drawing.board_sheet_picture import board_sheet_picture
from boardplan.drawing.cable_picture import cable_picture
from boardplan.drawing.channel_picture import channel_base_picture, channel_cover_picture
from boardplan.drawing.clamp_picture import clamp_picture
from boardplan.drawing.component_picture import component_picture
from boardplan.drawing.fill_picture import FillLimits, fill_picture
from boardplan.drawing.opening_picture import exit_picture, fixing_picture
from boardplan.drawing.palette import Theme
from boardplan.drawing.picture import Line, Picture
from boardplan.drawing.retainer_picture import retainer_picture
from boardplan.drawing.wall_picture import back_part_picture, framing_picture, no_go_picture
from boardplan.drawing.zone_picture import zone_picture
from boardplan.editing.known import Known
from boardplan.geometry.point import Box, Point
from boardplan.model.cable import TerminalEnd
from boardplan.model.component_kind import ComponentKind
from boardplan.model.placed import placed
from boardplan.model.plan import Plan
from boardplan.routing.route import Route
from boardplan.routing.supports.retainers import Retainer
from boardplan.ui.canvas.painter import Ready, made_ready

_FILL_LIMITS = ("channel-fill-design", "channel-fill-most")
Source: TypeAlias = tuple[Any, ...]
Pose: TypeAlias = tuple[float, float, float]
"""Where a picture's own origin lies on the wall, and its turn."""


@dataclass(frozen=True, slots=True)
class Sight:
    """A row: name, collection of the plan, depth (greater is nearer), the source of a thing's picture, the picture."""

    name: str
    collection: str
    depth: float
    source: Callable[[Plan, Known, Any], Source | None]
    ready: Callable[[Plan, Source, Theme], Ready]
    pose: Callable[[Source], Pose]
    pickable: bool = True


def _on_board(_plan: Plan, _review: Known, thing: Any) -> Source:
    return (thing, _plan.boards[thing.board])


def _board_pose(source: Source) -> Pose:
    return (*source[1].position, 0.0)


def _drawn(picture: Callable[..., Picture], *, with_board: bool = False) -> Callable[[Plan, Source, Theme], Ready]:
    def ready(_plan: Plan, source: Source, theme: Theme) -> Ready:
        return made_ready(picture(*source[: 2 if with_board else 1]), theme)

    return ready


def _compartment(board: Any) -> Picture:
    room = board.compartment
    if room is None:
        return ()
    box = board.box
    around = Box(box.left - room.left, box.bottom - room.bottom, box.right + room.right, box.top + room.top)
    return (Line(around.corners(), "quiet", 0.0, (2.0, 5.0), closed=True),)


def _component_source(plan: Plan, _review: Known, component: Any) -> Source:
    return (component, plan.kinds[component.kind], plan.boards[component.board], placed(plan, component))


@lru_cache(maxsize=1024)
def _body(kind: "Held", label: str, turn: float, theme: Theme) -> Ready:
    return made_ready(component_picture(kind.value, label, turn), theme)


class Held:
    """A value that is looked up by which object it is, not by what is in it."""

    __slots__ = ("value",)

    def __init__(self, value: ComponentKind) -> None:
        self.value = value

    def __hash__(self) -> int:  # noqa: D105
        return id(self.value)

    def __eq__(self, other: object) -> bool:  # noqa: D105
        return isinstance(other, Held) and other.value is self.value


def component_ready(kind: ComponentKind, label: str, turn: float, theme: Theme) -> Ready:
    """Return a kind's picture in its own coordinates; made once for each label, turn and theme."""
    return _body(Held(kind), label, turn, theme)


def _component_ready(_plan: Plan, source: Source, theme: Theme) -> Ready:
    component, kind, _, lies = source
    return component_ready(kind, component.label or component.id, lies.placement.turn, theme)


def _component_pose(source: Source) -> Pose:
    _, _, board, lies = source
    shift: Point = lies.placement.shift
    return (board.position.x + shift.x, board.position.y + shift.y, lies.placement.turn)


def _cover_source(plan: Plan, _review: Known, channel: Any) -> Source | None:
    return (channel, plan.boards[channel.board]) if channel.cover else None


def _fill_source(plan: Plan, review: Known, channel: Any) -> Source | None:
    fill = review.fills.get(channel.id)
    return (channel, plan.boards[channel.board], fill, plan.rules) if fill is not None and fill.fullest else None


def _fill_ready(_plan: Plan, source: Source, theme: Theme) -> Ready:
    channel, _, fill, rules = source
    limits = (rules.value(name) if rules.knows(name) else None for name in _FILL_LIMITS)
    return made_ready(fill_picture(channel, fill, FillLimits(*limits)), theme)


def _cable_source(plan: Plan, review: Known, cable: Any, *, inside: bool) -> Source | None:
    way = review.drawn.get(cable.id)
    if not isinstance(way, Route) or bool(way.in_channels) is not inside:
        return None
    ends = (plan.kind_of(plan.components[end.component]) for end in cable.ends if isinstance(end, TerminalEnd))
    return (cable, plan.conductors[cable.conductor], way, plan.rules, review.clamps.get(cable.id, ()), *ends)


def _inside_source(plan: Plan, review: Known, cable: Any) -> Source | None:
    return _cable_source(plan, review, cable, inside=True)


def _outside_source(plan: Plan, review: Known, cable: Any) -> Source | None:
    return _cable_source(plan, review, cable, inside=False)


def _cable_ready(plan: Plan, source: Source, theme: Theme) -> Ready:
    return made_ready(cable_picture(plan, source[0], source[2], source[4]), theme)


def _clamp_source(_plan: Plan, review: Known, cable: Any) -> Source | None:
    clamps = review.clamps.get(cable.id, ())
    return (cable, clamps) if any(clamp.cables[0] == cable.id for clamp in clamps) else None


def _clamp_ready(_plan: Plan, source: Source, theme: Theme) -> Ready:
    cable, clamps = source
    own = (clamp for clamp in clamps if clamp.cables[0] == cable.id)
    return made_ready(tuple(mark for clamp in own for mark in clamp_picture(clamp)), theme)


def _retainer_source(plan: Plan, review: Known, channel: Any) -> Source | None:
    retainers = review.retainers.get(channel.id)
    return (channel, plan.boards[channel.board], _as_before(retainers)) if retainers else None


@lru_cache(maxsize=1024)
def _as_before(retainers: tuple[Retainer, ...]) -> tuple[Retainer, ...]:
    """Return retainers as the same object as those like them that were shown before."""
    return retainers


def _retainer_ready(_plan: Plan, source: Source, theme: Theme) -> Ready:
    channel, _, retainers = source
    return made_ready(tuple(mark for each in retainers for mark in retainer_picture(channel, each)), theme)


def _no_pose(_source: Source) -> Pose:
    return (0.0, 0.0, 0.0)


def _own_board(_plan: Plan, _review: Known, board: Any) -> Source:
    return (board, board)


def _zone_ready(_plan: Plan, source: Source, theme: Theme) -> Ready:
    return made_ready(zone_picture(source[3]), theme)


def _zone_pose(source: Source) -> Pose:
    return (*source[2].position, 0.0)


SIGHTS: tuple[Sight, ...] = (
    Sight("compartment", "boards", 0, _own_board, _drawn(_compartment), _board_pose, pickable=False),
    Sight("board", "boards", 1, _own_board, _drawn(board_sheet_picture), _board_pose),
    Sight("back part", "back_parts", 2, _on_board, _drawn(back_part_picture), _board_pose),
    Sight("framing", "framing", 3, _on_board, _drawn(framing_picture, with_board=True), _board_pose),
    Sight("no-go box", "no_go_boxes", 4, _on_board, _drawn(no_go_picture), _board_pose),
    Sight("fixing", "fixings", 5, _on_board, _drawn(fixing_picture), _board_pose),
    Sight("exit", "exits", 6, _on_board, _drawn(exit_picture, with_board=True), _board_pose),
    Sight("channel", "channels", 7, _on_board, _drawn(channel_base_picture), _board_pose),
    Sight("keep-clear", "components", 8, _component_source, _zone_ready, _zone_pose, pickable=False),
    Sight("component", "components", 9, _component_source, _component_ready, _component_pose),
    Sight("cable inside", "cables", 10, _inside_source, _cable_ready, _no_pose),
    Sight("retainers", "channels", 10.5, _retainer_source, _retainer_ready, _no_pose, pickable=False),
    Sight("cover", "channels", 11, _cover_source, _drawn(channel_cover_picture), _board_pose),
    Sight("channel fill", "channels", 11.5, _fill_source, _fill_ready, _board_pose, pickable=False),
    Sight("cable", "cables", 12, _outside_source, _cable_ready, _no_pose),
    Sight("clamps", "cables", 13, _clamp_source, _clamp_ready, _no_pose, pickable=False),
)
BY_NAME: Mapping[str, Sight] = {sight.name: sight for sight in SIGHTS}
FINDING_DEPTH, SELECTED_DEPTH, GUIDE_DEPTH, PLATE_DEPTH = 40, 30, 35, 45
