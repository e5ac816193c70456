"""Command line text: findings, cables, holes and packs as plain columns."""

import re
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from boardplan.checks.finding import Finding
from boardplan.checks.review import Review
from boardplan.files.shelf_file import bundled_shelf
from boardplan.geometry.units import inches_text, tidy_number
from boardplan.model.plan import Plan
from boardplan.output.cables.cable_words import clock_words, remarks
from boardplan.output.holes.datum import datum_words
from boardplan.output.holes.hole_schedule import clamp_rows, hole_rows
from boardplan.output.verdict import verdict_words
from boardplan.routing.lengths.end_work import EndWork
from boardplan.routing.lengths.length_sum import CutLength, explain
from boardplan.routing.route import NoWay, Way
from boardplan.routing.supports.clamp_holes import Clamps
from boardplan.routing.what_frees import what_frees

_NUMBER = re.compile(r"-?[\d.]*|\?")


def columns(heads: Sequence[str], rows: Sequence[Sequence[str]]) -> list[str]:
    """Return rows as lines with aligned columns under their heads, numbers to the right."""
    places = range(len(heads))
    widths = [max(len(row[i]) for row in (heads, *rows)) for i in places]
    numbers = [all(_NUMBER.fullmatch(row[i]) for row in rows) for i in places]
    return ["  ".join(_padded(row[i], widths[i], numbers[i]) for i in places).rstrip() for row in (heads, *rows)]


def _padded(cell: str, width: int, number: bool) -> str:  # noqa: FBT001 - one of two sides
    return cell.rjust(width) if number else cell.ljust(width)


def finding_lines(findings: Sequence[Finding]) -> list[str]:
    """Return findings as lines, accepted ones with the name and reason."""
    lines = []
    for each in findings:
        lines.append(f"{each.severity:<4}  {each.name}: {each.sentence}")
        if each.accepted:
            lines.append(f"      accepted by {each.accepted.name}: {each.accepted.reason}")
    return lines


def verdict(review: Review) -> str:
    """Return what the review comes to, and under which rules, as a sentence."""
    words = verdict_words(review)
    return f"{words[0].upper()}{words[1:]}."


def cable_lines(plan: Plan, lengths: dict[str, CutLength]) -> list[str]:
    """Return cables with their cut lengths as columns."""
    rows = []
    for cable in plan.cables.values():
        length = lengths[cable.id]
        rows.append(
            (
                cable.id,
                length.ends[0].place,
                length.ends[1].place,
                f"{plan.conductors[cable.conductor].name}, {cable.colour}",
                str(cable.count),
                _mm(length.path),
                _mm(length.net),
                "?" if length.cut is None else f"{length.cut:g}",
                "; ".join(remarks(length)),
            )
        )
    return columns(("cable", "from", "to", "conductor", "n", "path mm", "net mm", "cut mm", ""), rows)


def sum_lines(length: CutLength) -> list[str]:
    """Return how a cable's length comes about, a line for each number, then what goes on its ends."""
    first, second = length.ends
    heading = f"{length.cable}: {first.place} > {second.place}"
    return [
        heading,
        *explain(length),
        *(f"end {number}: {_end_words(end)}" for number, end in enumerate(length.ends, 1)),
    ]


def _end_words(end: EndWork) -> str:
    clock = clock_words(end)
    words = (
        end.place,
        f"lug {end.lug}{f', {clock}' if clock else ''}" if end.lug else "",
        "ferrule" if end.ferrule else "",
        f"strip {tidy_number(end.strip)}" if end.strip is not None and not end.raw else "",
        f"tube {tidy_number(end.tube)}" if end.tube is not None else "",
        end.stage_words,
    )
    return ", ".join(each for each in words if each)


def _mm(value: float | None) -> str:
    return "" if value is None else tidy_number(value)


def freed_lines(plan: Plan, cable: str, way: Way) -> list[str]:
    """Return why a cable has no way and what would give it one, smallest move first; or what it could do with."""
    words = [each.words for each in what_frees(plan, cable, tuple(bundled_shelf().channel_sections.values()))]
    if not isinstance(way, NoWay):
        return [f"{cable} has a way.", *words]
    return [f"{cable}: {way.reason}.", *(words or ["Nothing that was tried gives it one."])]


def hole_lines(plan: Plan, clamps: Clamps) -> list[str]:
    """Return holes as columns, clamps' screws last: running dimensions from the datum, also as an inch tape reads."""
    inches = plan.job.units == "inch"
    rows = []
    for row in (*hole_rows(plan), *clamp_rows(plan, clamps)):
        hole, (x, y) = row.hole, row.place
        tape = (inches_text(x), inches_text(y)) if inches else ()
        bit = "?" if hole.bit is None else f"{hole.bit:g}"
        rows.append((hole.id, hole.board, tidy_number(x), tidy_number(y), *tape, bit, hole.words, hole.stage))
    heads = ("hole", "board", "x mm", "y mm", *(("x in", "y in") if inches else ()), "bit mm", "", "stage")
    froms = [f"board {each.id}: x and y from the {datum_words(each)}" for each in plan.boards.values()]
    return [*columns(heads, rows), *froms]


def pack_lines(written: dict[str, Any], folder: Path) -> list[str]:
    """Return what a pack holds: a file a line, with its sheets."""
    rows = [(each["file"], f"{each['sheets']} sheets" if each.get("sheets") else "") for each in written["files"]]
    return [f"{folder}:", *columns(("file", ""), rows)[1:]]
