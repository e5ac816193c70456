"""Job build: from the records of a job file to a plan, and everything that stands in the way."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Any, TypeVar

from boardplan.files.faults import Fault
from boardplan.files.job_records import (
    AcceptanceRecord,
    BoardRecord,
    CableRecord,
    ChannelRecord,
    EndRecord,
    JobFileRecord,
    JobRecord,
    StockRecord,
)
from boardplan.files.rings import ring_fault
from boardplan.files.shelf_build import (
    conductor_from,
    fastener_from,
    kind_faults,
    kind_from,
    points_from,
    ring_from,
)
from boardplan.files.tray_records import tray_from
from boardplan.geometry.point import Point
from boardplan.model.board import (
    BackPart,
    Board,
    BoardFixing,
    Compartment,
    Datum,
    Exit,
    Fabric,
    Framing,
    Material,
    NoGoBox,
    Sides,
)
from boardplan.model.cable import Cable, CableEnd, ExitEnd, Leg, Loop, Lug, OffBoardEnd, TerminalEnd
from boardplan.model.channel import Channel, ChannelScrews
from boardplan.model.component import Component
from boardplan.model.fuse import Fuse
from boardplan.model.job import Acceptance, Job
from boardplan.model.joins import broken_joins
from boardplan.model.plan import Plan
from boardplan.model.rule_set import RuleSet
from boardplan.model.stock import CableStock, ChannelStock, Stock
from boardplan.model.supply import Supply

T = TypeVar("T")


def record_faults(record: JobFileRecord) -> Iterator[Fault]:
    """Yield doubled ids and outlines that can't be cut: what the shape of a record doesn't say."""
    for name in _WITH_IDS:
        yield from _doubled(name, getattr(record, name))
    yield from _marked_twice(record)
    yield from _shape_faults(record)


_WITH_IDS = (
    *("boards", "kinds", "conductors", "fasteners", "framing", "back_parts", "no_go_boxes"),
    *("exits", "fixings", "components", "channels", "cables", "trays"),
)


def _shape_faults(record: JobFileRecord) -> Iterator[Fault]:
    for index, board in enumerate(record.boards):
        yield from _ring_faults(f"boards[{index}] '{board.id}'", board)
    for index, part in enumerate(record.back_parts):
        fault = ring_fault(points_from(part.outline))
        if fault:
            yield Fault(f"back_parts[{index}] '{part.id}'.outline", fault)
    for index, kind in enumerate(record.kinds):
        for field, fault in kind_faults(kind):
            yield Fault(f"kinds[{index}] '{kind.id}'.{field}", fault)
    for index, channel in enumerate(record.channels):
        if any(a == b for a, b in zip(channel.line, channel.line[1:], strict=False)):
            yield Fault(f"channels[{index}] '{channel.id}'.line", "expected a line that doesn't repeat a point")


def _doubled(name: str, records: Sequence[Any]) -> Iterator[Fault]:
    seen: dict[str, int] = {}
    for index, record in enumerate(records):
        if record.id in seen:
            words = f"an id that is used once; {name}[{seen[record.id]}] has it"
            yield Fault(f"{name}[{index}] '{record.id}'.id", words)
        seen.setdefault(record.id, index)


def _marked_twice(record: JobFileRecord) -> Iterator[Fault]:
    seen: dict[str, int] = {}
    for index, mark in enumerate(record.supply):
        if mark.part in seen:
            yield Fault(f"supply[{index}].part", f"a part that is marked once; supply[{seen[mark.part]}] marks it")
        seen.setdefault(mark.part, index)


def _ring_faults(path: str, board: BoardRecord) -> Iterator[Fault]:
    rings = [("outline", board.outline)] if board.outline else []
    rings += [(f"cutouts[{i}]", ring) for i, ring in enumerate(board.cutouts)]
    for field, ring in rings:
        fault = ring_fault(points_from(ring or []))
        if fault:
            yield Fault(f"{path}.{field}", fault)


def join_faults(plan: Plan, record: JobFileRecord) -> Iterator[Fault]:
    """Yield every name in a plan that leads nowhere, with its place in the file."""
    for broken in broken_joins(plan):
        ids = [each.id for each in getattr(record, broken.collection)]
        place = f"{broken.collection}[{ids.index(broken.thing)}] '{broken.thing}'"
        yield Fault(f"{place}.{broken.field}", f"expected {broken.expected}")


def plan_from(record: JobFileRecord, rules: RuleSet) -> Plan:
    """Return the plan of a record; its joins are not checked here."""
    return Plan(
        job=_job_from(record.job),
        rules=rules,
        kinds=_by_id(record.kinds, kind_from),
        conductors=_by_id(record.conductors, conductor_from),
        fasteners=_by_id(record.fasteners, fastener_from),
        boards=_by_id(record.boards, _board_from),
        framing=_by_id(record.framing, lambda each: Framing(**each.model_dump())),
        back_parts=_by_id(
            record.back_parts, lambda each: BackPart(each.id, each.board, each.name, ring_from(None, each.outline))
        ),
        no_go_boxes=_by_id(record.no_go_boxes, lambda each: NoGoBox(**each.model_dump())),
        exits=_by_id(
            record.exits,
            lambda each: Exit(each.id, each.board, each.name, Point(*each.at), each.through, each.diameter, each.trust),
        ),
        fixings=_by_id(
            record.fixings,
            lambda each: BoardFixing(each.id, each.board, Point(*each.at), each.diameter, each.fastener),
        ),
        components=_by_id(
            record.components,
            lambda each: Component(
                each.id,
                each.kind,
                each.board,
                Point(*each.at),
                each.turn,
                each.label,
                each.stage,
                each.locked,
                tuple(Fuse(**fuse.model_dump()) for fuse in each.fuses),
            ),
        ),
        channels=_by_id(record.channels, _channel_from),
        cables=_by_id(record.cables, _cable_from),
        accepted=tuple(_acceptance_from(each) for each in record.accepted),
        stock=_stock_from(record.stock),
        supply={
            each.part: Supply(each.part, each.source, each.count, each.date, each.note, each.substitute)
            for each in record.supply
        },
        trays=tuple(tray_from(each) for each in record.trays),
    )


def _by_id(records: Sequence[Any], build: Callable[[Any], T]) -> Mapping[str, T]:
    return {record.id: build(record) for record in records}


def _job_from(record: JobRecord) -> Job:
    return Job(**record.model_dump(exclude={"rule_set"}))


def _board_from(record: BoardRecord) -> Board:
    material, fabric, room = record.material, record.fabric, record.compartment
    return Board(
        id=record.id,
        name=record.name,
        outline=ring_from(record.size, record.outline),
        cutouts=tuple(ring_from(None, ring) for ring in record.cutouts),
        position=Point(*record.position),
        thickness=record.thickness,
        material=Material(material.name, material.mass_per_area),
        fabric=Fabric(**fabric.model_dump()) if fabric else None,
        edge_margins=Sides(**record.edge_margins.model_dump()),
        lip=Sides(**record.lip.model_dump()),
        stand_off=record.stand_off,
        datum=Datum(record.datum.corner, record.datum.edge),
        compartment=Compartment(**room.model_dump()) if room else None,
        trust=record.trust,
    )


def _channel_from(record: ChannelRecord) -> Channel:
    return Channel(
        id=record.id,
        board=record.board,
        line=points_from(record.line),
        width=record.outside[0],
        height=record.outside[1],
        inner_width=record.inside[0],
        inner_height=record.inside[1],
        cover=record.cover,
        screws=ChannelScrews(record.screws.first, record.screws.pitch, record.screws.fastener),
        dividers=tuple(record.dividers),
    )


def _cable_from(record: CableRecord) -> Cable:
    return Cable(
        id=record.id,
        start=_end_from(record.start),
        end=_end_from(record.end),
        conductor=record.conductor,
        colour=record.colour,
        cable_class=record.cable_class,
        way=record.way,
        pins=points_from(record.pins),
        count=record.count,
        slack=record.slack,
        group=record.group,
        label=record.label,
    )


def _end_from(record: EndRecord) -> CableEnd:
    loop = Loop(record.loop, record.loop_length) if record.loop else None
    lug = Lug(record.lug.stud, record.lug.form, record.lug.clocking) if record.lug else None
    if record.component is not None and record.terminal is not None:
        return TerminalEnd(record.component, record.terminal, lug, record.stage, loop)
    if record.off_board is not None:
        legs = tuple(Leg(each.length, each.trust, each.note) for each in record.legs or ())
        return OffBoardEnd(record.exit or "", record.off_board, legs, loop, record.rope, lug)
    return ExitEnd(record.exit or "", loop)


def _acceptance_from(record: AcceptanceRecord) -> Acceptance:
    return Acceptance(record.finding, tuple(record.things), record.name, record.reason, record.date, record.measured)


def _stock_from(record: StockRecord) -> Stock:
    return Stock(
        cables=tuple(CableStock(**each.model_dump()) for each in record.cables),
        channels=tuple(
            ChannelStock(each.outside[0], each.outside[1], each.length, each.count, each.name)
            for each in record.channels
        ),
        cable_cut=record.cable_cut,
        channel_cut=record.channel_cut,
        corners=record.corners,
    )
