"""Thing fields: components, channels and cables, and the table of the fields of every sort of thing."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any, Literal

from boardplan.editing.cable_edits import pin_way, set_cable
from boardplan.editing.channel_edits import SECTIONS, section_of, set_channel_section
from boardplan.editing.component_edits import (
    replace_kind,
    set_label,
    set_locked,
    set_stage,
    turn_components,
)
from boardplan.editing.thing_edits import put_thing
from boardplan.files.shelf_file import bundled_shelf
from boardplan.model.board import BackPart, Board, BoardFixing, Exit, Framing, NoGoBox
from boardplan.model.cable import Cable, CableEnd, Lug, TerminalEnd
from boardplan.model.channel import Channel
from boardplan.model.channel_section import ChannelSection
from boardplan.model.component import Component
from boardplan.model.plan import Plan
from boardplan.model.shelf import Shelf
from boardplan.ui.panels.corners_text import corners_of, corners_text
from boardplan.ui.panels.fields import Choices, Field, FieldRow, Sort, choices, plain, position, reference
from boardplan.ui.panels.survey_fields import (
    BACK_PART_FIELDS,
    BOARD_FIELDS,
    EXIT_FIELDS,
    FIXING_FIELDS,
    FRAMING_FIELDS,
    NO_GO_FIELDS,
    fasteners,
    with_fastener,
)
from boardplan.ui.words import tr


def _kinds(_plan: Plan, shelf: Shelf) -> Choices:
    return [(kind.id, kind.name) for kind in {**shelf.kinds, **_plan.kinds}.values()]


def _conductors(plan: Plan, shelf: Shelf) -> Choices:
    return [(each.id, each.name) for each in {**shelf.conductors, **plan.conductors}.values()]


def _colours(plan: Plan, _shelf: Shelf) -> Choices:
    return [(name, name) for name in plan.rules.colours]


def _put_kind(plan: Plan, component: Component, value: str) -> Plan:
    shelf = bundled_shelf()
    kind = plan.kinds.get(value) or shelf.kinds[value]
    return replace_kind(plan, component.id, kind, shelf.fasteners)[0]


def _put_conductor(plan: Plan, cable: Cable, value: str) -> Plan:
    return set_cable(plan, cable.id, conductor=plan.conductors.get(value) or bundled_shelf().conductors[value])


def _cable(attribute: str, words: str, sort: Sort, **more: Any) -> Field:  # noqa: ANN401
    return Field(
        words,
        sort,
        lambda _plan, cable: getattr(cable, attribute),
        lambda plan, cable, value: set_cable(plan, cable.id, **{attribute: value}),
        **more,
    )


def _screws(attribute: str, words: str, name: str) -> Field:
    return Field(
        words,
        "length",
        lambda _plan, channel: getattr(channel.screws, attribute),
        lambda plan, channel, value: put_thing(
            plan, replace(channel, screws=replace(channel.screws, **{attribute: value}))
        ),
        name=name,
    )


_LUG_FORMS = choices(
    (None, "plain, straight"), ("straight", "straight, clocked"), ("45", "45 degrees"), ("90", "90 degrees")
)


def _lug_fields(which: Literal["start", "end"], words: str) -> FieldRow:
    """Return the form and the clocking of the lug at an end; there is none at an exit."""

    def lug(cable: Cable) -> Lug | None:
        end = getattr(cable, which)
        return end.lug if isinstance(end, TerminalEnd) else None

    def put(plan: Plan, cable: Cable, new: Lug | None) -> Plan:
        end = getattr(cable, which)
        if not isinstance(end, TerminalEnd):
            return plan
        changed = replace(end, lug=new)
        return set_cable(plan, cable.id, start=changed) if which == "start" else set_cable(plan, cable.id, end=changed)

    def with_form(plan: Plan, cable: Cable, form: Any) -> Plan:  # noqa: ANN401
        held = lug(cable) or Lug(_stud(plan, getattr(cable, which)))
        return put(plan, cable, None if form is None else replace(held, form=form))

    def with_clocking(plan: Plan, cable: Cable, degrees: float) -> Plan:
        if lug(cable) is None and not degrees:
            return plan
        held = lug(cable) or Lug(_stud(plan, getattr(cable, which)))
        return put(plan, cable, replace(held, clocking=degrees))

    return (
        Field(words, "choice", lambda _plan, cable: held.form if (held := lug(cable)) else None, with_form, _LUG_FORMS),
        Field(
            "",
            "number",
            lambda _plan, cable: held.clocking if (held := lug(cable)) else 0.0,
            with_clocking,
            unit="°",
            name=f"{words}, clocked by",
        ),
    )


def _stud(plan: Plan, end: CableEnd) -> str:
    """Return the stud a lug must fit: that of its terminal."""
    if not isinstance(end, TerminalEnd):
        return ""
    terminal = plan.kind_of(plan.components[end.component]).terminal(end.terminal)
    return terminal.size if terminal else ""


def _turn(plan: Plan, component: Component, value: float) -> Plan:
    return turn_components(plan, [component.id], value - component.turn)


_STAGES = choices((None, "as its kind"), ("shop", "in the shop"), ("site", "on site"))
_DATA_STATES = {
    "typical": "typical, measure your own",
    "from sheet": "drawn from its sheet",
    "checked": "checked against the unit",
    "used": "used on a finished job",
}


def _data_state(plan: Plan, component: Component) -> str:
    return tr(_DATA_STATES[plan.kind_of(component).data_state])


def _sections(_plan: Plan, shelf: Shelf) -> Choices:
    return [(each, tr("{} mm").format(each.words)) for each in sections_of(shelf)]


def sections_of(shelf: Shelf) -> tuple[ChannelSection, ...]:
    """Return the sections of channel within reach."""
    return tuple(shelf.channel_sections.values()) or SECTIONS


COMPONENT_FIELDS: tuple[FieldRow, ...] = (
    (reference(),),
    (Field("Kind", "choice", lambda _plan, thing: thing.kind, _put_kind, _kinds),),
    position(),
    (Field("Turn", "number", lambda _plan, thing: thing.turn, _turn, unit="degrees"),),
    (Field("Label", "text", lambda _plan, thing: thing.label, lambda p, thing, value: set_label(p, thing.id, value)),),
    (
        Field(
            "Fitted",
            "choice",
            lambda _plan, thing: thing.stage,
            lambda plan, thing, value: set_stage(plan, [thing.id], value),
            _STAGES,
        ),
    ),
    (
        Field(
            "Locked in place",
            "check",
            lambda _plan, thing: thing.locked,
            lambda plan, thing, value: set_locked(plan, [thing.id], value),
        ),
    ),
    (Field("Data", "fact", _data_state),),
)

CHANNEL_FIELDS: tuple[FieldRow, ...] = (
    (reference(),),
    (
        Field(
            "Section",
            "choice",
            lambda _plan, channel: section_of(channel),
            lambda plan, channel, value: set_channel_section(plan, channel.id, value),
            _sections,
        ),
    ),
    (
        plain("width", "Width, height", "length", name="Width outside"),
        plain("height", "", "length", name="Height outside"),
    ),
    (
        plain("inner_width", "inside", "length", name="Width inside"),
        plain("inner_height", "", "length", name="Height inside"),
    ),
    (
        Field(
            "Corners",
            "text",
            lambda _plan, channel: corners_text(channel.line),
            lambda plan, channel, value: put_thing(plan, replace(channel, line=corners_of(value))),
            unit="mm",
        ),
    ),
    (
        Field(
            "Screws",
            "choice",
            lambda _plan, channel: channel.screws.fastener,
            lambda plan, channel, value: put_thing(
                with_fastener(plan, value), replace(channel, screws=replace(channel.screws, fastener=value))
            ),
            fasteners,
        ),
    ),
    (
        _screws("first", "First, pitch", "First screw from each end"),
        _screws("pitch", "", "Greatest pitch of screws"),
    ),
    (plain("cover", "Has a cover", "check"),),
)

CABLE_FIELDS: tuple[FieldRow, ...] = (
    (reference(),),
    (Field("Conductor", "choice", lambda _plan, cable: cable.conductor, _put_conductor, _conductors),),
    (_cable("colour", "Colour", "choice", choices=_colours),),
    (
        _cable(
            "cable_class",
            "Class",
            "choice",
            choices=choices(("dc", "DC"), ("ac", "AC"), ("pv", "PV"), ("signal", "signal")),
        ),
    ),
    (
        _cable(
            "way",
            "Way",
            "choice",
            choices=choices(("choose", "as the program finds it"), ("channel", "in channels"), ("outside", "outside")),
        ),
    ),
    (
        _cable(
            "slack",
            "Slack",
            "choice",
            choices=choices(
                (None, "by the rule set"),
                ("jumper", "as a jumper"),
                ("large", "as a large cable"),
                ("small", "as a small cable"),
                ("off-board", "as off the board"),
                ("signal", "as a signal cable"),
            ),
        ),
    ),
    (_cable("count", "How many alike", "whole"),),
    (_cable("group", "Matched group", "text"),),
    (_cable("label", "Label", "text"),),
    (
        Field(
            "Pinned corners",
            "text",
            lambda _plan, cable: corners_text(cable.pins),
            lambda plan, cable, value: pin_way(plan, cable.id, corners_of(value)),
            unit="mm",
        ),
    ),
    _lug_fields("start", "Lug, first end"),
    _lug_fields("end", "Lug, second end"),
)

THING_FIELDS: Mapping[type, tuple[FieldRow, ...]] = {
    Component: COMPONENT_FIELDS,
    Channel: CHANNEL_FIELDS,
    Cable: CABLE_FIELDS,
    Framing: FRAMING_FIELDS,
    NoGoBox: NO_GO_FIELDS,
    Exit: EXIT_FIELDS,
    BoardFixing: FIXING_FIELDS,
    BackPart: BACK_PART_FIELDS,
    Board: BOARD_FIELDS,
}
