"""Thing fields: components and channels, and the table of the fields of every sort of thing."""

from collections.abc import Mapping
from dataclasses import replace

from boardplan.editing.channel_edits import SECTIONS, section_of, set_channel_section
from boardplan.editing.component_edits import (
    replace_kind,
    set_label,
    set_locked,
    set_stage,
    turn_components,
)
from boardplan.editing.thing_edits import put_thing
from boardplan.files.own_shelf import shelf_in_reach
from boardplan.model.board import BackPart, Board, BoardFixing, Exit, Framing, NoGoBox
from boardplan.model.cable import Cable
from boardplan.model.channel import Channel
from boardplan.model.channel_section import ChannelSection
from boardplan.model.component import Component
from boardplan.model.plan import Plan
from boardplan.model.shelf import Shelf
from boardplan.ui.panels.cable_fields import CABLE_FIELDS
from boardplan.ui.panels.corners_text import corners_of, corners_text
from boardplan.ui.panels.fields import Choices, Field, FieldRow, choices, plain, position, reference
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


def _put_kind(plan: Plan, component: Component, value: str) -> Plan:
    shelf = shelf_in_reach()
    kind = plan.kinds.get(value) or shelf.kinds[value]
    return replace_kind(plan, component.id, kind, shelf.fasteners)[0]


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
