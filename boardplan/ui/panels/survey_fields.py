"""Survey fields: the job, its boards, the room round them, and all that is behind and in front of them."""

from dataclasses import replace
from typing import Any

from boardplan.editing.refused import EditRefused
from boardplan.editing.survey_edits import set_board_size, set_compartment, set_job
from boardplan.editing.thing_edits import put_thing
from boardplan.files.shelf_file import bundled_shelf
from boardplan.model.board import Board, BoardFixing, Compartment, Fabric
from boardplan.model.plan import Plan
from boardplan.model.shelf import Shelf
from boardplan.model.trust import Trust
from boardplan.ui.panels.fields import (
    Choices,
    Field,
    FieldRow,
    Sort,
    choices,
    measured,
    plain,
    position,
    reference,
    trust,
    trust_choices,
    trust_of,
)
from boardplan.ui.words import tr


def fasteners(plan: Plan, shelf: Shelf) -> Choices:
    """Return the fasteners within reach, and none."""
    return [("", tr("not chosen")), *((each.id, each.name) for each in {**shelf.fasteners, **plan.fasteners}.values())]


def with_fastener(plan: Plan, fastener_id: str) -> Plan:
    """Return the plan with a fastener of the shelf among its own."""
    held = bundled_shelf().fasteners.get(fastener_id)
    if held is None or fastener_id in plan.fasteners:
        return plan
    return replace(plan, fasteners={**plan.fasteners, fastener_id: held})


def _put_fastener(plan: Plan, fixing: BoardFixing, value: str) -> Plan:
    return put_thing(with_fastener(plan, value), replace(fixing, fastener=value))


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


def _lip(side: str, words: str, name: str) -> Field:
    return Field(
        words,
        "length",
        lambda _plan, board: getattr(board.lip, side),
        lambda plan, board, value: put_thing(plan, replace(board, lip=replace(board.lip, **{side: value}))),
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
        measures=_room_trust,
    )


def _room_trust(board: Board) -> Trust | None:
    return board.compartment.trust if board.compartment else None


def _put_room_trust(plan: Plan, board: Board, value: Trust | None) -> Plan:
    if board.compartment is None:
        if value is None:
            return plan
        raise EditRefused("Nothing is known of the room round the board yet. Fill in a gap or the depth first.")
    return set_compartment(plan, board.id, replace(board.compartment, trust=value))


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
        choices=choices(*pairs),
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
    (_job("number", "Number, rev.", name="Number"), _job("revision", "Revision")),
    (_job("customer", "Customer"),),
    (_job("place", "Place"),),
    (_job("drawn_by", "Drawn by"),),
    (_job("date", "Date"),),
    (_job("units", "Units", "choice", choices=choices(("mm", "millimetres"), ("inch", "inches"))),),
)

BOARD_FIELDS: tuple[FieldRow, ...] = (
    (reference(),),
    (plain("name", "Name"),),
    (
        Field(
            "Width, height",
            "length",
            lambda _plan, board: _size_of(board)[0],
            lambda plan, board, value: set_board_size(plan, board.id, value, _size_of(board)[1]),
            name="Width",
            measures=trust_of,
        ),
        Field(
            "",
            "length",
            lambda _plan, board: _size_of(board)[1],
            lambda plan, board, value: set_board_size(plan, board.id, _size_of(board)[0], value),
            name="Height",
            measures=trust_of,
        ),
    ),
    trust("How the size is known"),
    (plain("thickness", "Thickness", "length"),),
    (plain("stand_off", "Stands off", "length", may_be_empty=True, name="Gap to the framing behind", empty="unknown"),),
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
    (_lip("left", "Lip left, right", "Raised edge on the left"), _lip("right", "", "Raised edge on the right")),
    (_lip("bottom", "below, above", "Raised edge below"), _lip("top", "", "Raised edge above")),
)

ROOM_FIELDS: tuple[FieldRow, ...] = (
    (_gap("left", "Gap left, right", "Gap on the left"), _gap("right", "", "Gap on the right")),
    (_gap("bottom", "below, above", "Gap below"), _gap("top", "", "Gap above")),
    (_gap("depth", "Depth", "Depth in front of the board"),),
    (
        Field(
            "How known",
            "choice",
            lambda _plan, board: _room_trust(board),
            _put_room_trust,
            trust_choices(),
            name="How the room is known",
        ),
    ),
)

_BAND_FIELDS: FieldRow = (
    measured("start", "From, to", may_be_empty=True, name="Begins at", empty="runs past"),
    measured("end", "", may_be_empty=True, name="Ends at", empty="runs past"),
)

FRAMING_FIELDS: tuple[FieldRow, ...] = (
    (reference(),),
    (plain("direction", "Runs", "choice", choices=choices(("upright", "upright"), ("level", "level"))),),
    (measured("centre", "Centre, width", name="Centre line"), measured("width", "", name="Width")),
    _BAND_FIELDS,
    trust("How the member is known"),
    (plain("material", "Material"),),
)

NO_GO_FIELDS: tuple[FieldRow, ...] = (
    (reference(),),
    (plain("name", "What it is"),),
    (measured("x", "Position x, y", name="Position x"), measured("y", "", name="Position y")),
    (measured("width", "Width, height", name="Width"), measured("height", "", name="Height")),
    (
        measured("from_z", "Depth from, to", name="Begins in front of the face"),
        measured("to_z", "", name="Ends in front of the face"),
    ),
    trust("How the box is known"),
)

EXIT_FIELDS: tuple[FieldRow, ...] = (
    (reference(),),
    (plain("name", "What it is"),),
    position(trust_of),
    (plain("through", "Leaves", "choice", choices=choices(("edge", "over an edge"), ("hole", "through a hole"))),),
    (measured("diameter", "Hole", may_be_empty=True, name="Diameter of the hole"),),
    trust("How the exit is known"),
)

FIXING_FIELDS: tuple[FieldRow, ...] = (
    (reference(),),
    position(),
    (plain("diameter", "Hole", "length", name="Diameter of the through hole"),),
    (Field("Fastener", "choice", lambda _plan, thing: thing.fastener, _put_fastener, fasteners),),
)

BACK_PART_FIELDS: tuple[FieldRow, ...] = ((reference(),), (plain("name", "What it is"),))
