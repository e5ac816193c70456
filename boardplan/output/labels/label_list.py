"""Label list: what the label sheet says beside the labels, as tables, as CSV and as plain data."""

import math
from collections.abc import Sequence
from typing import Any

from boardplan.geometry.units import tidy_number
from boardplan.model.label_stock import LabelGrid
from boardplan.output.labels.label_sheet import LabelSet
from boardplan.output.labels.label_words import SPARE, CableLabel
from boardplan.output.labels.label_wrap import largest_diameter, wrap_needed
from boardplan.output.tables.csv_table import Value
from boardplan.output.tables.listing import Listing
from boardplan.output.tables.table import Cell, Column, Table

FOOTER = (
    "Words only: no label says that a fuse or a cable is sized rightly. Read each label against the terminal before "
    "sticking it on."
)
_HOW = (
    "Stick on both ends, 30 to 50 mm behind the lug's tube, so that it can be read without turning the cable (common "
    "practice, no source); the end marked 'stick this end first' goes under. This list goes on plain paper, the label "
    "sheets after it on the stock. Print at 100 %."
)


def label_tables(labels: LabelSet) -> tuple[Table, ...]:
    """Return the stock by its measures, what needs a decision, and the labels of cables in sticking order."""
    return (_stock(labels), *_questions(labels), _cables(labels))


def _stock(labels: LabelSet) -> Table:
    stock = labels.stock
    heads = (Column("for"), Column("label mm"), Column("goes round to mm"), Column("page", grows=True))
    columns = (*heads, Column("labels", "end"))
    grids = dict.fromkeys((*stock.cables, stock.plates))
    rows = tuple(
        (
            Cell(" and ".join(_uses(labels, grid))),
            Cell(f"{tidy_number(grid.width)} x {tidy_number(grid.height)}", bold=True),
            Cell(_reach(labels, grid)),
            Cell(measures_words(grid)),
            Cell(str(sum(each.grid == grid for each in labels.placed))),
        )
        for grid in grids
    )
    overlap = f"A label goes round where its length is at least pi x diameter + {tidy_number(stock.overlap)} mm."
    return Table(columns, rows, f"Stock: {stock.name}", notes=(_HOW, overlap))


def _uses(labels: LabelSet, grid: LabelGrid) -> list[str]:
    uses = ["cable ends"] if grid in labels.stock.cables else []
    return [*uses, "plates"] if grid == labels.stock.plates else uses


def _reach(labels: LabelSet, grid: LabelGrid) -> str:
    if grid not in labels.stock.cables:
        return ""
    return f"diameter {_rounded_down(largest_diameter((grid,), labels.stock.overlap))}"


def _rounded_down(length: float) -> str:
    return f"{math.floor(length * 10) / 10:g}"


def measures_words(grid: LabelGrid) -> str:
    """Return a page of labels by its measures alone."""
    page = f"{tidy_number(grid.page_width)} x {tidy_number(grid.page_height)}"
    pitch = f"{tidy_number(grid.column_pitch)} x {tidy_number(grid.row_pitch)}"
    cut = ", cut by hand" if grid.cut else ""
    return (
        f"{page}, {grid.columns} x {grid.rows} labels, left {tidy_number(grid.left)}, top {tidy_number(grid.top)}, "
        f"pitch {pitch}{cut}"
    )


def _questions(labels: LabelSet) -> list[Table]:
    rows = [(Cell(what, bold=True), Cell(asked)) for what, asked in _asked(labels)]
    return (
        [Table((Column("what", grows=True), Column("question", grows=True)), tuple(rows), "To decide")] if rows else []
    )


def _asked(labels: LabelSet) -> list[tuple[str, str]]:
    rows: list[tuple[str, str]] = []
    if small := too_small_for(labels):
        longest = tidy_number(max(each.wrap for each in labels.stock.cables))
        most = _rounded_down(largest_diameter(labels.stock.cables, labels.stock.overlap))
        words = f"the longest label, {longest} mm, goes round {most} mm at most: which longer label?"
        rows.append((", ".join(small), words))
    if flags := _names(labels, [placed.look.flag for _, placed in labels.cables]):
        rows.append((", ".join(flags), "thinner than the words are high: folded round as a flag?"))
    rows += [
        (name, f"cut short on the label: {'; '.join(words)}: which shorter words?") for name, words in _cut(labels)
    ]
    fuses = [label.name for label, _ in labels.plates if label.fuse and label.rating is None and label.words != SPARE]
    if fuses:
        rows.append((", ".join(fuses), "which rating? This job says none; write it on by hand when it is decided"))
    return rows


def _cut(labels: LabelSet) -> list[tuple[str, list[str]]]:
    """Return what has words cut short on its label, and which words."""
    found: dict[str, dict[str, None]] = {}
    for each in labels.placed:
        name = each.label.cable if isinstance(each.label, CableLabel) else each.label.name
        if each.look.shortened:
            found.setdefault(name, {}).update(dict.fromkeys(each.look.shortened))
    return [(name, list(words)) for name, words in found.items()]


def _names(labels: LabelSet, chosen: Sequence[bool]) -> list[str]:
    return list(dict.fromkeys(label.cable for (label, _), is_one in zip(labels.cables, chosen, strict=True) if is_one))


def too_small_for(labels: LabelSet) -> list[str]:
    """Return the cables that no label of the stock goes round."""
    return _names(labels, [placed.too_small for _, placed in labels.cables])


def _cables(labels: LabelSet) -> Table:
    columns = (
        Column("end 1", "middle"), Column("end 2", "middle"), Column("cable"), Column("end 1 > end 2", grows=True),
        Column("diameter mm", "end"), Column("length needed mm", "end"), Column("label", "end"),
    )  # fmt: skip
    rows = tuple(
        (
            Cell(tick=True),
            Cell(tick=True),
            Cell(label.name, bold=True, small=f"{label.copies} alike" if label.copies > 1 else ""),
            Cell(f"{label.here} > {label.there}", small=label.conductor),
            Cell(tidy_number(label.diameter)),
            Cell(tidy_number(_needed(label, labels)), alert="TOO LONG FOR THE STOCK" if placed.too_small else ""),
            Cell(f"{tidy_number(placed.grid.width)} x {tidy_number(placed.grid.height)}"),
        )
        for label, placed in labels.cables
        if (label.end, label.copy) == (1, 1)
    )
    return Table(columns, rows, "Cable ends, in the order of cutting")


def _needed(label: CableLabel, labels: LabelSet) -> float:
    return round(wrap_needed(label.diameter, labels.stock.overlap), 1)


_HEADS = (
    "sort", "name", "end", "copy", "copies", "here", "there", "words", "diameter_mm", "length_needed_mm",
    "label_width_mm", "label_height_mm", "goes_round", "rating_a", "cut_short",
)  # fmt: skip


def label_listing(labels: LabelSet) -> Listing:
    """Return all labels, a row each; a rating that nobody gave is an empty cell."""
    rows: list[tuple[Value, ...]] = []
    for label, placed in labels.cables:
        rows.append(
            (
                "cable end", label.name, label.end, label.copy, label.copies, label.here, label.there, label.conductor,
                label.diameter, _needed(label, labels), placed.grid.width, placed.grid.height,
                "no" if placed.too_small else "yes", None, "; ".join(placed.look.shortened),
            )
        )  # fmt: skip
    for plate, placed in labels.plates:
        size = (placed.grid.width, placed.grid.height)
        sort = "fuse" if plate.fuse else "component"
        blank = (None,) * 5
        cut = "; ".join(placed.look.shortened)
        rows.append((sort, plate.name, *blank, plate.words, None, None, *size, None, plate.rating, cut))
    return Listing("Labels", _HEADS, rows)


def label_records(labels: LabelSet) -> dict[str, Any]:
    """Return the stock by its measures and all labels, as plain values for JSON; a rating that nobody gave is null."""
    stock = labels.stock
    return {
        "stock": {
            "id": stock.id, "name": stock.name, "overlap": stock.overlap,
            "cables": [_grid(each) for each in stock.cables], "plates": _grid(stock.plates),
        },
        "cable_ends": [
            {
                "cable": label.cable, "name": label.name, "end": label.end, "copy": label.copy, "copies": label.copies,
                "here": label.here, "there": label.there, "conductor": label.conductor, "diameter": label.diameter,
                "length_needed": _needed(label, labels), "length": placed.grid.wrap,
                "goes_round": not placed.too_small, "flag": placed.look.flag, "cut_short": list(placed.look.shortened),
            }
            for label, placed in labels.cables
        ],
        "plates": [
            {
                "sort": "fuse" if label.fuse else "component", "name": label.name, "words": label.words,
                "rating": label.rating, "cut_short": list(placed.look.shortened),
            }
            for label, placed in labels.plates
        ],
        "too_small_for": too_small_for(labels),
        "questions": [{"what": what, "question": asked} for what, asked in _asked(labels)],
    }  # fmt: skip


def _grid(grid: LabelGrid) -> dict[str, Any]:
    return {
        "page": [grid.page_width, grid.page_height], "columns": grid.columns, "rows": grid.rows,
        "size": [grid.width, grid.height], "left": grid.left, "top": grid.top,
        "pitch": [grid.column_pitch, grid.row_pitch], "round": grid.round, "cut": grid.cut,
    }  # fmt: skip
