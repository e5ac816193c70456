"""Clipboard: copied things as a small plan, pasted under new references; also as text, from window to window."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from boardplan.editing.cable_edits import with_conductor
from boardplan.editing.component_edits import with_kind
from boardplan.editing.lookup import board_of, things_of
from boardplan.editing.placing import OnBoard, is_on_board, moved_thing, reach_of
from boardplan.editing.references import next_reference
from boardplan.editing.refused import EditRefused
from boardplan.editing.soundness import with_changed
from boardplan.files.faults import BadFile
from boardplan.files.plan_file import plan_of_text, plan_text
from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.board import Exit, Framing, NoGoBox
from boardplan.model.cable import Cable, CableEnd, TerminalEnd
from boardplan.model.component import Component
from boardplan.model.plan import Plan, Thing

_PREFIXES = {
    "channels": "RW",
    "exits": "X",
    "fixings": "BF-",
    "no_go_boxes": "NG",
    "back_parts": "BP",
    "framing": "post-",
}
_STEP_ASIDE = Point(20, -20)


@dataclass(frozen=True, slots=True)
class Clipping:
    """What was copied: a plan of nothing but the things, what they are made of, and the boards they came from."""

    plan: Plan

    @property
    def things(self) -> tuple[OnBoard, ...]:
        """The copied things but for the cables between them."""
        return tuple(each for each in self.plan.things.values() if is_on_board(each))

    @property
    def box(self) -> Box:
        """The box round what was copied, on the wall."""
        return box_around(
            self.plan.on_wall(each.board, corner)
            for each in self.things
            for corner in reach_of(self.plan, each).corners()
        )


def copied(plan: Plan, ids: Iterable[str]) -> Clipping | None:
    """Return things on boards, and the cables that run from one of them to another; none for nothing."""
    things = [each for each in things_of(plan, ids) if is_on_board(each)]
    names = {each.id for each in things}
    if not names:
        return None
    cables = [each for each in plan.cables.values() if all(_owner(end) in names for end in each.ends)]
    boards = {each.board for each in things}
    bare = replace(
        plan,
        accepted=(),
        **{field: {} for field in ("framing", "back_parts", "no_go_boxes", "exits", "fixings", "components")},  # type: ignore[arg-type]
        channels={},
        cables={},
        boards={key: board for key, board in plan.boards.items() if key in boards},
    )
    return Clipping(_without_unused(bare.with_things([*things, *cables])))


def _without_unused(plan: Plan) -> Plan:
    """Return a plan with only the kinds, conductors and fasteners that its things need."""
    kinds = {each.kind for each in plan.components.values()}
    conductors = {each.conductor for each in plan.cables.values()}
    fasteners = {plan.kinds[each].fastener for each in kinds}
    fasteners |= {each.screws.fastener for each in plan.channels.values()}
    fasteners |= {each.fastener for each in plan.fixings.values()}
    return replace(
        plan,
        kinds={key: each for key, each in plan.kinds.items() if key in kinds},
        conductors={key: each for key, each in plan.conductors.items() if key in conductors},
        fasteners={key: each for key, each in plan.fasteners.items() if key in fasteners},
    )


def clipping_text(clipping: Clipping) -> str:
    """Return a clipping as text for the desktop's clipboard: a job file of its own."""
    return plan_text(clipping.plan)


def clipping_of_text(text: str) -> Clipping | None:
    """Return the clipping a text means, none where it means none."""
    try:
        clipping = Clipping(plan_of_text(text))
    except BadFile:
        return None
    return clipping if clipping.things else None


def pasted(
    plan: Plan, clipping: Clipping, board: str, by: Point = _STEP_ASIDE, *, at: Point | None = None
) -> tuple[Plan, tuple[str, ...]]:
    """Return the plan with copies on a board, and the new references of all but the cables.

    They lie as on the board they came from moved `by`, or with the lower left of all at a point of the board.
    Things from several boards keep their distances on the wall. Raises EditRefused.
    """
    target = board_of(plan, board)
    source = next(iter(clipping.plan.boards.values()))
    if at is not None:
        corner = clipping.box
        by = at.minus((corner.left, corner.bottom)).moved(*source.position)
    on_wall = target.position.minus(source.position).moved(*by)
    plan = _stocked(plan, clipping.plan)
    names: dict[str, str] = {}
    copies: list[Thing] = []
    for thing in clipping.things:
        copy = _copy(plan, clipping.plan, thing, names)
        shift = clipping.plan.boards[thing.board].position.minus(source.position).moved(*by)
        copies.append(moved_thing(replace(copy, board=board), shift))
    plan = with_changed(plan, copies)
    return with_changed(plan, _cables(plan, clipping.plan, names, on_wall)), tuple(names.values())


def duplicate_things(plan: Plan, ids: Iterable[str], by: Point = _STEP_ASIDE) -> tuple[Plan, tuple[str, ...]]:
    """Return the plan with copies of things beside them on their board, and the new references."""
    clipping = copied(plan, ids)
    if clipping is None:
        raise EditRefused("Select components, channels or other things on a board to duplicate them.")
    return pasted(plan, clipping, next(iter(clipping.plan.boards)), by)


def _stocked(plan: Plan, clipping: Plan) -> Plan:
    for kind in clipping.kinds.values():
        plan = with_kind(plan, kind, clipping.fasteners)
    for conductor in clipping.conductors.values():
        plan = with_conductor(plan, conductor)
    missing = {key: each for key, each in clipping.fasteners.items() if key not in plan.fasteners}
    return replace(plan, fasteners={**plan.fasteners, **missing}) if missing else plan


def _copy(plan: Plan, clipping: Plan, thing: OnBoard, names: dict[str, str]) -> OnBoard:
    """Return a thing under a new reference, and note that reference."""
    if isinstance(thing, Component):
        prefix = clipping.kind_of(thing).prefix
        thing = replace(thing, locked=False, fuses=())  # a rating is decided for one place
    else:
        prefix = next(word for field, word in _PREFIXES.items() if thing.id in getattr(clipping, field))
    if isinstance(thing, Framing | NoGoBox | Exit):
        thing = replace(thing, trust=None)  # nobody measured the copy
    names[thing.id] = next_reference(plan, prefix, taken=names.values())
    return replace(thing, id=names[thing.id])


def _cables(plan: Plan, clipping: Plan, names: dict[str, str], by: Point) -> list[Cable]:
    """Return the copied cables between copied ends; one whose terminal the job's own kind lacks is left out."""
    copies: list[Cable] = []
    for cable in clipping.cables.values():
        start, end = _renamed(cable.start, names), _renamed(cable.end, names)
        if _lands(plan, start) and _lands(plan, end):
            reference = next_reference(plan, "W", digits=2, taken=[each.id for each in copies])
            pins = tuple(pin.moved(*by) for pin in cable.pins)
            copies.append(replace(cable, id=reference, start=start, end=end, pins=pins, group=""))
    return copies


def _owner(end: CableEnd) -> str:
    return end.component if isinstance(end, TerminalEnd) else end.exit


def _renamed(end: CableEnd, names: dict[str, str]) -> CableEnd:
    if isinstance(end, TerminalEnd):
        return replace(end, component=names[end.component])
    return replace(end, exit=names[end.exit])


def _lands(plan: Plan, end: CableEnd) -> bool:
    if not isinstance(end, TerminalEnd):
        return True
    return plan.kind_of(plan.components[end.component]).terminal(end.terminal) is not None
