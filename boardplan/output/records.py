"""Records: every number the papers show, as plain values for JSON."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

from boardplan.bundled import data_dir
from boardplan.checks.review import Review
from boardplan.geometry.units import inches_text
from boardplan.model.plan import Plan
from boardplan.output.back.back_records import back_records
from boardplan.output.cables.cable_words import label_text
from boardplan.output.cables.stud_stacks import stack_records
from boardplan.output.customer.customer_records import customer_records
from boardplan.output.cutting.cutting_sheet import cutting_records
from boardplan.output.hand_over.hand_over_records import hand_over_records
from boardplan.output.holes.datum import datum_words
from boardplan.output.holes.drills import nearest_inch_drill
from boardplan.output.holes.hole_schedule import HoleRow, clamp_rows, hole_rows
from boardplan.output.holes.hole_words import SYMBOL_WORDS, nearest_drill
from boardplan.output.labels.label_list import label_records
from boardplan.output.labels.label_sheet import label_set, plain_stock
from boardplan.output.load_out.load_out_list import load_out_records
from boardplan.output.materials.materials_list import material_records
from boardplan.output.parts.parts_list import parts_list
from boardplan.output.printing.paper import PAPERS
from boardplan.output.printing.pdf import Fonts
from boardplan.output.records_of_job import job_record, number
from boardplan.output.shut_off.shut_off_papers import shut_off_records
from boardplan.output.survey.doubtful import doubtful_things
from boardplan.output.survey.re_measure_list import re_measure_records
from boardplan.routing.channels.channel_fill import ChannelFill
from boardplan.routing.lengths.end_work import EndWork
from boardplan.routing.lengths.length_sum import CutLength, explain
from boardplan.routing.lengths.reels import (
    clamp_needs,
    ferrule_needs,
    lug_needs,
    reel_needs,
    retainer_needs,
    stock_lead_needs,
    tube_needs,
)
from boardplan.routing.route import NoWay, Route, Way
from boardplan.routing.sharing.left import saving_left
from boardplan.routing.supports.clamp import Clamp
from boardplan.routing.supports.clamp_holes import Clamps
from boardplan.routing.supports.clamps import clamps_of
from boardplan.routing.supports.retainers import Retainer, retainers_of

Record = dict[str, Any]


def hole_records(plan: Plan, clamps: Clamps = MappingProxyType({})) -> Record:
    """Return all holes: `x` and `y` on the board from its lower left, `from_datum` the running dimensions.

    The screws of clamps stand by themselves: they are in no count of holes.
    """
    rows = hole_rows(plan)
    bits = sorted({row.hole.bit for row in rows if row.hole.bit is not None})
    return {
        **job_record(plan),
        "datum": {board.id: datum_words(board) for board in plan.boards.values()},
        "holes": [_hole(row) for row in rows],
        **back_records(plan),
        **customer_records(plan),
        "clamp_screws": [_hole(row) for row in clamp_rows(plan, clamps)],
        "by_bit": [{"bit": bit, "count": sum(row.hole.bit == bit for row in rows)} for bit in bits],
    }


def _hole(row: HoleRow) -> Record:
    hole = row.hole
    return {
        "id": hole.id,
        "board": hole.board,
        "owner": hole.owner,
        "x": number(hole.position.x),
        "y": number(hole.position.y),
        "from_datum": [number(row.place.x), number(row.place.y)],
        "from_datum_inch": [inches_text(row.place.x), inches_text(row.place.y)],
        "pitch": [number(row.pitch.x), number(row.pitch.y)] if row.pitch else None,
        "bit": hole.bit,
        "nearest_drill_inch": None if hole.bit is None else nearest_drill(hole.bit),
        "nearest_drill": None if hole.bit is None else _drill(hole.bit),
        "depth": hole.depth,
        "through": hole.bit is not None and hole.depth is None,
        "sort": hole.sort,
        "symbol": SYMBOL_WORDS[hole.sort],
        "fastener": hole.fastener,
        "words": hole.words,
        "stage": hole.stage,
        "note": row.note,
    }


def _drill(bit: float) -> Record:
    drill = nearest_inch_drill(bit)
    return {"name": drill.name, "mm": number(drill.width)}


def cable_records(
    plan: Plan,
    ways: Mapping[str, Way],
    lengths: Mapping[str, CutLength],
    fills: Mapping[str, ChannelFill],
) -> Record:
    """Return all cables with their ways, clamps and the sums of their lengths, the reels, the channels."""
    clamps, retainers, saving = clamps_of(plan, ways), retainers_of(plan, ways), saving_left(plan, ways)
    return {
        **job_record(plan),
        "cables": [
            {**_cable(plan, each, ways.get(each), lengths[each]), "clamps": [_clamp(plan, one) for one in clamps[each]]}
            for each in plan.cables
        ],
        "reels": [
            {
                "conductor": need.conductor,
                "colour": need.colour,
                "pieces": need.pieces,
                "sum": number(need.total),
                "reserve": number(need.reserve),
                "take_m": need.take,
                "open": list(need.open),
            }
            for need in reel_needs(plan, lengths)
        ],
        "lugs": {need.name: need.count for need in lug_needs(plan, lengths)},
        "tubes": {need.name: need.count for need in tube_needs(plan, lengths)},
        "ferrules": {need.name: need.count for need in ferrule_needs(plan, lengths)},
        "stock_leads": {need.name: need.count for need in stock_lead_needs(plan, lengths)},
        "clamps": {need.name: need.count for need in clamp_needs(clamps)},
        "retainers": {need.name: need.count for need in retainer_needs(retainers)},
        **stack_records(plan, lengths),
        **cutting_records(plan, lengths),
        "labels": _labels(plan, lengths),
        "re_measure": re_measure_records(plan, doubtful_things(plan, lengths)),
        **hand_over_records(plan, lengths, ways),
        "shut_off": shut_off_records(plan),
        "channels": [
            {**_channel(fill), "retainers": [_retainer(plan, each) for each in retainers.get(key, ())]}
            for key, fill in fills.items()
        ],
        "sharing": {"could_save": number(saving.at_most), "outside": list(saving.outside), "words": saving.sentence},
    }


def part_records(review: Review) -> Record:
    """Return what goes along by box, and what is bought; null under a rule set that says nothing of loading."""
    parts = parts_list(review)
    return {**job_record(review.plan), **load_out_records(parts), **material_records(parts)}


def _labels(plan: Plan, lengths: Mapping[str, CutLength]) -> Record:
    """Return the labels of a job as they come out on paper cut by hand; a pack says how they lie on other stock."""
    stock = plain_stock(PAPERS["letter" if plan.job.units == "inch" else "a4"])
    return label_records(label_set(plan, lengths, stock, Fonts(data_dir("assets") / "fonts").width))


def _clamp(plan: Plan, clamp: Clamp) -> Record:
    x, y = plan.off_wall(clamp.board, clamp.at) if clamp.board else clamp.at
    return {
        "board": clamp.board,
        "x": number(x),
        "y": number(y),
        "on_wall": [number(clamp.at.x), number(clamp.at.y)],
        "towards": number(clamp.towards),
        "cables": list(clamp.cables),
        "diameters": list(clamp.diameters),
    }


def _cable(plan: Plan, cable_id: str, way: Way | None, length: CutLength) -> Record:
    cable = plan.cables[cable_id]
    first, second = length.ends
    shift = length.evened_by
    return {
        "id": cable.id,
        "from": first.place,
        "to": second.place,
        "conductor": cable.conductor,
        "name": plan.conductors[cable.conductor].name,
        "colour": cable.colour,
        "class": cable.cable_class,
        "group": cable.group,
        "count": cable.count,
        "cut": number(length.cut),
        "own_cut": number(length.own_cut),
        "surplus": number(length.surplus),
        "evened_by": shift and {"component": shift.component, "by": number(shift.by), "towards": shift.towards},
        "net": number(length.net),
        "path": number(length.path),
        "off_board": number(length.off_board),
        "rise": number(length.rise),
        "rises": [{"words": words, "mm": number(value)} for words, value in length.rises],
        "flat": length.flat,
        "slopes_left_out": length.left_out,
        "loops": number(length.extra),
        "slack_class": length.slack_class,
        "slack": number(length.slack),
        "step": length.step,
        "plus": length.plus,
        "minus": length.minus,
        "stock_lead": length.stock,
        "final": length.final,
        "trust": length.trust,
        "reason": length.reason,
        "notes": list(length.notes),
        "mass": number(length.mass),
        "parts": [{"words": words, "mm": number(value)} for words, value in length.parts],
        "explained": list(explain(length)),
        "ends": [
            _end(first, label_text(cable, first, second)),
            _end(second, label_text(cable, second, first)),
        ],
        "way": _way(way),
    }


def _end(end: EndWork, label: str) -> Record:
    return {
        "place": end.place,
        "sort": end.sort,
        "stage": end.stage,
        "raw": end.raw,
        "lug": end.lug,
        "clocking": end.clocking if end.lug else None,
        "clock": end.clock,
        "deduction": end.deduction,
        "strip": end.strip,
        "tube": end.tube,
        "ferrule": end.ferrule,
        "label": label,
    }


def _way(way: Way | None) -> Record:
    if isinstance(way, Route):
        return {
            "points_on_wall": [[number(point.x), number(point.y)] for point in way.points],
            "radius": way.radius,
            "channels": [each.channel for each in way.in_channels],
            "source": way.source,
            "why": way.why,
        }
    reason = way.reason if isinstance(way, NoWay) else "no way was looked for"
    return {"points_on_wall": [], "radius": None, "channels": [], "source": "none", "why": reason}


def _channel(fill: ChannelFill) -> Record:
    return {
        "channel": fill.channel,
        "length": number(fill.length),
        "inner_area": number(fill.inner_area),
        "percent": number(fill.percent),
        "fullest_at": number(fill.position),
        "cables": list(fill.cables),
        "loaded": fill.most_loaded,
    }


def _retainer(plan: Plan, retainer: Retainer) -> Record:
    x, y = plan.off_wall(plan.channels[retainer.channel].board, retainer.at)
    return {
        "x": number(x),
        "y": number(y),
        "on_wall": [number(retainer.at.x), number(retainer.at.y)],
        "towards": number(retainer.towards),
        "width": number(retainer.width),
    }
