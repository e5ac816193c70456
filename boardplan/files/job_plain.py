"""Job plain: a plan as the plain groups of fields that its file holds, defaults left out."""

from dataclasses import asdict
from typing import Any

from pydantic import BaseModel

from boardplan.files.job_records import FORMAT, VERSION, JobFileRecord
from boardplan.files.shelf_build import conductor_plain, fastener_plain, kind_plain, ring_fields
from boardplan.files.tray_records import tray_plain
from boardplan.model.board import Board, Sides
from boardplan.model.cable import Cable, CableEnd, Lug, OffBoardEnd, TerminalEnd
from boardplan.model.channel import Channel
from boardplan.model.component import Component
from boardplan.model.plan import Plan
from boardplan.model.stock import Stock
from boardplan.model.supply import Supply


def job_plain(plan: Plan) -> dict[str, Any]:
    """Return the job file's content: the order of the format, every default left out."""
    job = plan.job
    full = {
        "format": FORMAT,
        "version": VERSION,
        "job": {
            "title": job.title,
            "number": job.number,
            "customer": job.customer,
            "place": job.place,
            "units": job.units,
            "revision": job.revision,
            "date": job.date,
            "drawn_by": job.drawn_by,
            "rule_set": {"id": plan.rules.id, "edition": plan.rules.edition},
        },
        "boards": [_board_plain(each) for each in plan.boards.values()],
        "framing": [
            {
                "id": each.id,
                "board": each.board,
                "direction": each.direction,
                "centre": each.centre,
                "width": each.width,
                "start": each.start,
                "end": each.end,
                "material": each.material,
                "trust": each.trust,
            }
            for each in plan.framing.values()
        ],
        "back_parts": [
            {"id": each.id, "board": each.board, "name": each.name, "outline": [list(p) for p in each.outline]}
            for each in plan.back_parts.values()
        ],
        "no_go_boxes": [
            {
                "id": each.id,
                "board": each.board,
                "name": each.name,
                "x": each.x,
                "y": each.y,
                "width": each.width,
                "height": each.height,
                "from_z": each.from_z,
                "to_z": each.to_z,
                "trust": each.trust,
            }
            for each in plan.no_go_boxes.values()
        ],
        "exits": [
            {
                "id": each.id,
                "board": each.board,
                "name": each.name,
                "at": list(each.position),
                "through": each.through,
                "diameter": each.diameter,
                "trust": each.trust,
            }
            for each in plan.exits.values()
        ],
        "fixings": [
            {
                "id": each.id,
                "board": each.board,
                "at": list(each.position),
                "diameter": each.diameter,
                "fastener": each.fastener,
            }
            for each in plan.fixings.values()
        ],
        "kinds": [kind_plain(each) for each in plan.kinds.values()],
        "conductors": [conductor_plain(each) for each in plan.conductors.values()],
        "fasteners": [fastener_plain(each) for each in plan.fasteners.values()],
        "components": [_component_plain(each) for each in plan.components.values()],
        "channels": [_channel_plain(each) for each in plan.channels.values()],
        "cables": [_cable_plain(each) for each in plan.cables.values()],
        "accepted": [
            {
                "finding": each.finding,
                "things": list(each.things),
                "name": each.name,
                "reason": each.reason,
                "date": each.date,
                "measured": each.measured,
            }
            for each in plan.accepted
        ],
        "stock": _stock_plain(plan.stock),
        "supply": [_supply_plain(each) for each in plan.supply.values()],
        "trays": [tray_plain(each) for each in plan.trays],
    }
    kept = without_defaults(full, JobFileRecord)
    return {"format": FORMAT, "version": VERSION, **kept}


def _board_plain(board: Board) -> dict[str, Any]:
    fabric, room = board.fabric, board.compartment
    return {
        "id": board.id,
        "name": board.name,
        **ring_fields(board.outline),
        "cutouts": [[list(point) for point in ring] for ring in board.cutouts],
        "position": list(board.position),
        "thickness": board.thickness,
        "material": {"name": board.material.name, "mass_per_area": board.material.mass_per_area},
        "fabric": fabric
        and {"thickness": fabric.thickness, "wrap": fabric.wrap, "mass_per_area": fabric.mass_per_area},
        "edge_margins": _sides_plain(board.edge_margins),
        "lip": _sides_plain(board.lip),
        "stand_off": board.stand_off,
        "datum": {"corner": board.datum.corner, "edge": board.datum.edge},
        "compartment": room
        and {
            **_sides_plain(Sides(room.left, room.bottom, room.right, room.top)),
            "depth": room.depth,
            "trust": room.trust,
        },
        "trust": board.trust,
    }


def _sides_plain(sides: Sides) -> dict[str, Any]:
    return {"left": sides.left, "bottom": sides.bottom, "right": sides.right, "top": sides.top}


def _component_plain(component: Component) -> dict[str, Any]:
    return {
        "id": component.id,
        "kind": component.kind,
        "board": component.board,
        "at": list(component.position),
        "turn": component.turn,
        "label": component.label,
        "stage": component.stage,
        "locked": component.locked,
        "fuses": [asdict(each) for each in component.fuses],
    }


def _channel_plain(channel: Channel) -> dict[str, Any]:
    screws = channel.screws
    return {
        "id": channel.id,
        "board": channel.board,
        "line": [list(point) for point in channel.line],
        "outside": [channel.width, channel.height],
        "inside": [channel.inner_width, channel.inner_height],
        "cover": channel.cover,
        "screws": {"first": screws.first, "pitch": screws.pitch, "fastener": screws.fastener},
        "dividers": list(channel.dividers),
    }


def _cable_plain(cable: Cable) -> dict[str, Any]:
    return {
        "id": cable.id,
        "from": _end_plain(cable.start),
        "to": _end_plain(cable.end),
        "conductor": cable.conductor,
        "colour": cable.colour,
        "class": cable.cable_class,
        "way": cable.way,
        "pins": [list(point) for point in cable.pins],
        "count": cable.count,
        "slack": cable.slack,
        "group": cable.group,
        "label": cable.label,
    }


def _end_plain(end: CableEnd) -> dict[str, Any]:
    loop = {"loop": end.loop.sort, "loop_length": end.loop.length} if end.loop else {}
    if isinstance(end, TerminalEnd):
        return {
            "component": end.component,
            "terminal": end.terminal,
            "lug": _lug_plain(end.lug),
            "stage": end.stage,
            **loop,
        }
    if isinstance(end, OffBoardEnd):
        legs = [{"length": leg.length, "trust": leg.trust, "note": leg.note} for leg in end.legs]
        far = {"rope": end.rope, "lug": _lug_plain(end.lug)}
        return {"off_board": end.name, "exit": end.exit, "legs": legs, **far, **loop}
    return {"exit": end.exit, **loop}


def _lug_plain(lug: Lug | None) -> dict[str, Any] | None:
    return {"stud": lug.stud, "form": lug.form, "clocking": lug.clocking} if lug else None


def _supply_plain(mark: Supply) -> dict[str, Any]:
    return {
        "part": mark.part,
        "source": mark.state,
        "count": mark.count,
        "date": mark.date,
        "note": mark.note,
        "substitute": mark.substitute,
    }


def _stock_plain(stock: Stock) -> dict[str, Any]:
    return {
        "cables": [
            {
                "conductor": each.conductor,
                "colour": each.colour,
                "length": each.length,
                "count": each.count,
                "name": each.name,
            }
            for each in stock.cables
        ],
        "channels": [
            {"outside": [each.width, each.height], "length": each.length, "count": each.count, "name": each.name}
            for each in stock.channels
        ],
        "cable_cut": stock.cable_cut,
        "channel_cut": stock.channel_cut,
        "corners": stock.corners,
    }


def without_defaults(plain: dict[str, Any], record: type[BaseModel]) -> dict[str, Any]:
    """Return fields without those that the record would fill in by itself; whole numbers without '.0'."""
    kept: dict[str, Any] = {}
    for name, info in record.model_fields.items():
        key = info.alias or name
        if key not in plain:
            continue
        value = plain[key]
        inner = _record_within(info.annotation)
        if inner is not None and value is not None:
            default = info.get_default()
            if isinstance(default, BaseModel) and value == default.model_dump(by_alias=True):
                continue
            if isinstance(value, list):
                value = [without_defaults(each, inner) for each in value]
            else:
                value = without_defaults(value, inner)
        if info.is_required() or value != info.get_default():
            kept[key] = tidy(value)
    return kept


def _record_within(annotation: Any) -> type[BaseModel] | None:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    for inner in getattr(annotation, "__args__", ()):
        found = _record_within(inner)
        if found is not None:
            return found
    return None


def tidy(value: Any) -> Any:
    """Return a value with whole floats as whole numbers, all the way down."""
    if isinstance(value, float) and value.is_integer():
        return int(value)
    if isinstance(value, list):
        return [tidy(each) for each in value]
    if isinstance(value, dict):
        return {key: tidy(each) for key, each in value.items()}
    return value
