"""Fields: the table of what can be typed about each sort of thing, and the edit each field makes."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any, Literal, TypeAlias

from boardplan.editing.cable_edits import set_cable
from boardplan.editing.channel_edits import SECTIONS, section_of, set_channel_section
from boardplan.editing.component_edits import (
    put_component,
    replace_kind,
    set_label,
    set_locked,
    set_stage,
    turn_components,
)
from boardplan.editing.survey_edits import set_board_size, set_compartment, set_job
from boardplan.editing.thing_edits import put_thing, rename_thing
from boardplan.geometry.point import Point
from boardplan.model.board import BackPart, Board, BoardFixing, Compartment, Exit, Fabric, Framing, NoGoBox
from boardplan.model.cable import Cable
from boardplan.model.channel import Channel
from boardplan.model.channel_section import ChannelSection
from boardplan.model.component import Component
from boardplan.model.job import Job
from boardplan.model.plan import Plan
from boardplan.model.shelf import Shelf
from boardplan.ui.words import tr

Sort: TypeAlias = Literal["text", "length", "choice", "check", "whole", "number", "fact"]
Choices: TypeAlias = Sequence[tuple[Any, str]]


@dataclass(frozen=True, slots=True)
class Field:
    """A field: its words, how it is typed, how its value is read from a thing and put into the plan."""

    words: str
    sort: Sort
    get: Callable[[Plan, Any], Any]
    put: Callable[[Plan, Any, Any], Plan] | None = None
    choices: Callable[[Plan, Shelf], Choices] | None = None
    may_be_empty: bool = False
    unit: str = ""
    name: str = ""
    """What the field is called for people who don't see its neighbours; its words where empty."""
    renames: bool = False
    empty: str = ""
    """What an empty field means, where that is not plain."""


FieldRow: TypeAlias = tuple[Field, ...]
"""Fields that stand beside each other; the first one's words label the row."""


def _plain(attribute: str, words: str, sort: Sort = "text", **more: Any) -> Field:  # noqa: ANN401
    """Return a field that is simply one attribute of its thing."""
    return Field(
        words,
        sort,
        lambda _plan, thing: getattr(thing, attribute),
        lambda plan, thing, value: put_thing(plan, replace(thing, **{attribute: value})),
        **more,
    )


def _reference() -> Field:
    def put(plan: Plan, thing: Any, value: str) -> Plan:  # noqa: ANN401
        return rename_thing(plan, thing.id, value)

    return Field("Reference", "text", lambda _plan, thing: thing.id, put, renames=True)


def _position() -> FieldRow:
    def put(axis: int) -> Callable[[Plan, Any, Any], Plan]:
        def moved(plan: Plan, thing: Any, value: float) -> Plan:  # noqa: ANN401
            at = Point(value, thing.position.y) if axis == 0 else Point(thing.position.x, value)
            if isinstance(thing, Component):
                return put_component(plan, thing.id, at)
            return put_thing(plan, replace(thing, position=at))

        return moved

    return (
        Field("Position x, y", "length", lambda _plan, thing: thing.position.x, put(0), name="Position x"),
        Field("", "length", lambda _plan, thing: thing.position.y, put(1), name="Position y"),
    )


def _choices(*pairs: tuple[Any, str]) -> Callable[[Plan, Shelf], Choices]:
    return lambda _plan, _shelf: [(value, tr(words)) for value, words in pairs]


def _kinds(_plan: Plan, shelf: Shelf) -> Choices:
    return [(kind.id, kind.name) for kind in {**shelf.kinds, **_plan.kinds}.values()]


def _conductors(plan: Plan, shelf: Shelf) -> Choices:
    return [(each.id, each.name) for each in {**shelf.conductors, **plan.conductors}.values()]


def _colours(plan: Plan, _shelf: Shelf) -> Choices:
    return [(name, name) for name in plan.rules.colours]


def _fasteners(plan: Plan, shelf: Shelf) -> Choices:
    return [("", tr("not chosen")), *((each.id, each.name) for each in {**shelf.fasteners, **plan.fasteners}.values())]


def _put_fastener(plan: Plan, fixing: BoardFixing, value: str) -> Plan:
    from boardplan.files.shelf_file import bundled_shelf  # noqa: PLC0415 - read only when a person chooses

    held = bundled_shelf().fasteners.get(value)
    if held is not None and value not in plan.fasteners:
        plan = replace(plan, fasteners={**plan.fasteners, value: held})
    return put_thing(plan, replace(fixing, fastener=value))


def _put_kind(plan: Plan, component: Component, value: str) -> Plan:
    from boardplan.files.shelf_file import bundled_shelf  # noqa: PLC0415

    shelf = bundled_shelf()
    kind = plan.kinds.get(value) or shelf.kinds[value]
    return replace_kind(plan, component.id, kind, shelf.fasteners)[0]


def _put_conductor(plan: Plan, cable: Cable, value: str) -> Plan:
    from boardplan.files.shelf_file import bundled_shelf  # noqa: PLC0415

    return set_cable(plan, cable.id, conductor=plan.conductors.get(value) or bundled_shelf().conductors[value])


def _cable(attribute: str, words: str, sort: Sort, **more: Any) -> Field:  # noqa: ANN401
    return Field(
        words,
        sort,
        lambda _plan, cable: getattr(cable, attribute),
        lambda plan, cable, value: set_cable(plan, cable.id, **{attribute: value}),
        **more,
    )


def _turn(plan: Plan, component: Component, value: float) -> Plan:
    return turn_components(plan, [component.id], value - component.turn)


_STAGES = _choices((None, "as its kind"), ("shop", "in the shop"), ("site", "on site"))
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


def _size_of(board: Board) -> tuple[float, float]:
    return board.box.width, board.box.height


_FABRIC = Fabric(2.0)


def _put_fabric(plan: Plan, board: Board, value: float | None) -> Plan:
    fabric = None if value is None else replace(board.fabric or _FABRIC, thickness=value)
    return put_thing(plan, replace(board, fabric=fabric))


def _put_material(plan: Plan, board: Board, value: str) -> Plan:
    return put_thing(plan, replace(board, material=replace(board.material, name=value)))


def _put_mass(plan: Plan, board: Board, value: float | None) -> Plan:
    return put_thing(plan, replace(board, material=replace(board.material, mass_per_area=value)))


def _margin(side: str, words: str, name: str) -> Field:
    return Field(
        words,
        "length",
        lambda _plan, board: getattr(board.edge_margins, side),
        lambda plan, board, value: put_thing(
            plan, replace(board, edge_margins=replace(board.edge_margins, **{side: value}))
        ),
        name=name,
    )


_NO_ROOM = Compartment(0.0, 0.0, 0.0, 0.0)


def _gap(side: str, words: str, name: str, *, may_be_empty: bool = True) -> Field:
    return Field(
        words,
        "length",
        lambda _plan, board: getattr(board.compartment, side) if board.compartment else None,
        lambda plan, board, value: _put_gap(plan, board, side, value),
        may_be_empty=may_be_empty,
        name=name,
    )


def _put_gap(plan: Plan, board: Board, side: str, value: Any) -> Plan:  # noqa: ANN401
    room = board.compartment or _NO_ROOM
    if side != "depth" and value is None:
        return set_compartment(plan, board.id, None)
    return set_compartment(plan, board.id, replace(room, **{side: value}))


def _datum(name: str, words: str, *pairs: tuple[Any, str]) -> Field:
    return Field(
        words,
        "choice",
        lambda _plan, board: getattr(board.datum, name),
        lambda plan, board, value: put_thing(plan, replace(board, datum=replace(board.datum, **{name: value}))),
        choices=_choices(*pairs),
    )


def _job(attribute: str, words: str, sort: Sort = "text", **more: Any) -> Field:  # noqa: ANN401
    return Field(
        words,
        sort,
        lambda plan, _job: getattr(plan.job, attribute),
        lambda plan, _job, value: set_job(plan, replace(plan.job, **{attribute: value})),
        **more,
    )


JOB_FIELDS: tuple[FieldRow, ...] = (
    (_job("title", "Title"),),
    (_job("number", "Number"), _job("revision", "Revision")),
    (_job("customer", "Customer"),),
    (_job("place", "Place"),),
    (_job("drawn_by", "Drawn by"),),
    (_job("date", "Date"),),
    (_job("units", "Units", "choice", choices=_choices(("mm", "millimetres"), ("inch", "inches"))),),
)

BOARD_FIELDS: tuple[FieldRow, ...] = (
    (_reference(),),
    (_plain("name", "Name"),),
    (
        Field(
            "Width, height",
            "length",
            lambda _plan, board: _size_of(board)[0],
            lambda plan, board, value: set_board_size(plan, board.id, value, _size_of(board)[1]),
            name="Width",
        ),
        Field(
            "",
            "length",
            lambda _plan, board: _size_of(board)[1],
            lambda plan, board, value: set_board_size(plan, board.id, _size_of(board)[0], value),
            name="Height",
        ),
    ),
    (_plain("thickness", "Thickness", "length"),),
    (Field("Material", "text", lambda _plan, board: board.material.name, _put_material),),
    (
        Field(
            "Mass per area",
            "number",
            lambda _plan, board: board.material.mass_per_area,
            _put_mass,
            may_be_empty=True,
            unit="kg/m²",
        ),
    ),
    (
        Field(
            "Fabric",
            "length",
            lambda _plan, board: board.fabric.thickness if board.fabric else None,
            _put_fabric,
            may_be_empty=True,
            name="Fabric thickness, empty for a bare board",
            empty="bare board",
        ),
    ),
    (
        _datum(
            "corner",
            "Datum",
            ("lower-left", "lower left"),
            ("lower-right", "lower right"),
            ("upper-left", "upper left"),
            ("upper-right", "upper right"),
        ),
    ),
    (_datum("edge", "Measured from", ("bare", "the bare edge"), ("covered", "the covered edge")),),
    (_margin("left", "Margin left, right", "Margin left"), _margin("right", "", "Margin right")),
    (_margin("bottom", "below, above", "Margin below"), _margin("top", "", "Margin above")),
)

ROOM_FIELDS: tuple[FieldRow, ...] = (
    (_gap("left", "Gap left, right", "Gap on the left"), _gap("right", "", "Gap on the right")),
    (_gap("bottom", "below, above", "Gap below"), _gap("top", "", "Gap above")),
    (_gap("depth", "Depth", "Depth in front of the board"),),
)

_BAND_FIELDS: FieldRow = (
    _plain("start", "From, to", "length", may_be_empty=True, name="Begins at", empty="runs past"),
    _plain("end", "", "length", may_be_empty=True, name="Ends at", empty="runs past"),
)

THING_FIELDS: Mapping[type, tuple[FieldRow, ...]] = {
    Component: (
        (_reference(),),
        (Field("Kind", "choice", lambda _plan, thing: thing.kind, _put_kind, _kinds),),
        _position(),
        (Field("Turn", "number", lambda _plan, thing: thing.turn, _turn, unit="degrees"),),
        (
            Field(
                "Label", "text", lambda _plan, thing: thing.label, lambda p, thing, value: set_label(p, thing.id, value)
            ),
        ),
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
    ),
    Channel: (
        (_reference(),),
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
            _plain("width", "Width, height", "length", name="Width outside"),
            _plain("height", "", "length", name="Height outside"),
        ),
        (
            _plain("inner_width", "inside", "length", name="Width inside"),
            _plain("inner_height", "", "length", name="Height inside"),
        ),
        (_plain("cover", "Has a cover", "check"),),
    ),
    Cable: (
        (_reference(),),
        (Field("Conductor", "choice", lambda _plan, cable: cable.conductor, _put_conductor, _conductors),),
        (_cable("colour", "Colour", "choice", choices=_colours),),
        (
            _cable(
                "cable_class",
                "Class",
                "choice",
                choices=_choices(("dc", "DC"), ("ac", "AC"), ("pv", "PV"), ("signal", "signal")),
            ),
        ),
        (
            _cable(
                "way",
                "Way",
                "choice",
                choices=_choices(
                    ("choose", "as the program finds it"), ("channel", "in channels"), ("outside", "outside")
                ),
            ),
        ),
        (
            _cable(
                "slack",
                "Slack",
                "choice",
                choices=_choices(
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
    ),
    Framing: (
        (_reference(),),
        (_plain("direction", "Runs", "choice", choices=_choices(("upright", "upright"), ("level", "level"))),),
        (_plain("centre", "Centre, width", "length", name="Centre line"), _plain("width", "", "length", name="Width")),
        _BAND_FIELDS,
        (_plain("material", "Material"),),
    ),
    NoGoBox: (
        (_reference(),),
        (_plain("name", "What it is"),),
        (_plain("x", "Position x, y", "length", name="Position x"), _plain("y", "", "length", name="Position y")),
        (_plain("width", "Width, height", "length", name="Width"), _plain("height", "", "length", name="Height")),
        (
            _plain("from_z", "Depth from, to", "length", name="Begins in front of the face"),
            _plain("to_z", "", "length", name="Ends in front of the face"),
        ),
    ),
    Exit: (
        (_reference(),),
        (_plain("name", "What it is"),),
        _position(),
        (
            _plain(
                "through", "Leaves", "choice", choices=_choices(("edge", "over an edge"), ("hole", "through a hole"))
            ),
        ),
        (_plain("diameter", "Hole", "length", may_be_empty=True, name="Diameter of the hole"),),
    ),
    BoardFixing: (
        (_reference(),),
        _position(),
        (_plain("diameter", "Hole", "length", name="Diameter of the through hole"),),
        (Field("Fastener", "choice", lambda _plan, thing: thing.fastener, _put_fastener, _fasteners),),
    ),
    BackPart: ((_reference(),), (_plain("name", "What it is"),)),
    Board: BOARD_FIELDS,
}


def title_of(plan: Plan, thing: Any) -> str:  # noqa: ANN401
    """Return what a sort of thing is called above its form."""
    names = {
        Component: tr("Component"),
        Channel: tr("Channel"),
        Cable: tr("Cable"),
        Framing: tr("Framing"),
        NoGoBox: tr("No-go box"),
        Exit: tr("Exit"),
        BoardFixing: tr("Board fixing"),
        BackPart: tr("Part on the back"),
        Board: tr("Board"),
        Job: tr("Job"),
    }
    del plan
    return names[type(thing)]


def all_fields() -> list[Field]:
    """Return every field of every form, for the test that the table is complete."""
    forms = (JOB_FIELDS, ROOM_FIELDS, *THING_FIELDS.values())
    return [field for form in forms for row in form for field in row]
