"""Sum table: how each cable's length comes about, one line a cable, each number of the sum in its own column."""

from collections.abc import Iterator, Mapping, Sequence

from boardplan.geometry.units import tidy_number
from boardplan.model.plan import Plan
from boardplan.output.tables.table import Cell, Column, Table
from boardplan.routing.lengths.length_sum import CutLength

_FLAT = "No rise off the board is added: lengths are flat."


def sum_table(plan: Plan, lengths: Mapping[str, CutLength]) -> Table:
    """Return the table of sums; heights and loops have columns where they are known and there are any."""
    rows = tuple(lengths[cable] for cable in plan.cables)
    columns = [each for each in _COLUMNS if _needed(each, rows)]
    note = (
        "All in mm. Net runs from wire end to wire end; lug = from the stud's centre to the wire stop. "
        f"{_height_words(plan, rows)}"
    )
    return Table(
        tuple(columns),
        tuple(_row(length, [each.head for each in columns]) for length in rows),
        "How each length comes about",
        (note, *_slack_sources(plan, lengths)),
    )


_COLUMNS = (
    Column("cable"),
    Column("from > to", grows=True),
    Column("legs on the board", "end"),
    Column("corners save", "end"),
    Column("rises", grows=True),
    Column("off the board", "end"),
    Column("= path", "end"),
    Column("lug 1", "end"),
    Column("lug 2", "end"),
    Column("= net", "end"),
    Column("loops, tails", "end"),
    Column("slack", "end"),
    Column("rounded up by", "end"),
    Column("group adds", "end"),
    Column("= cut", "end"),
)


def _needed(column: Column, rows: Sequence[CutLength]) -> bool:
    if column.head == "rises":
        return any(not length.flat for length in rows)
    return column.head != "loops, tails" or any(length.extra for length in rows)


def _height_words(plan: Plan, rows: Sequence[CutLength]) -> str:
    if all(length.flat for length in rows):
        return _FLAT
    limit = plan.rules.limits["slope-counts-from"]
    return (
        "Rises: what it takes to get up and down with the cable's own bend radius; outside of stiff jumpers, slopes of "
        f"1 in {tidy_number(limit.value)} and less are left out ({limit.source})."
    )


def _slack_sources(plan: Plan, lengths: Mapping[str, CutLength]) -> Iterator[str]:
    """Yield where slack, steps and tolerances come from, for the classes in use."""
    used = dict.fromkeys(length.slack_class for length in lengths.values() if length.path is not None)
    sources = dict.fromkeys(plan.rules.slack[each].source for each in used)
    if sources:
        rules = f"rule set {plan.rules.id}, edition {plan.rules.edition}"
        yield f"Slack, steps and tolerances: {'; '.join(sources)} ({rules})."


def _row(length: CutLength, heads: Sequence[str]) -> tuple[Cell, ...]:
    names = {
        "cable": Cell(length.cable, bold=True),
        "from > to": Cell(small=f"{length.ends[0].place} > {length.ends[1].place}"),
    }
    cells = names | ({"legs on the board": Cell(alert="?")} if length.path is None else _sum_cells(length, length.path))
    return tuple(cells.get(head, Cell()) for head in heads)


def _sum_cells(length: CutLength, path: float) -> dict[str, Cell]:
    saved = sum(bend.saving for bend in length.bends)
    before = (path if length.stock else length.net or 0.0) + length.extra
    up = None if length.own_cut is None else length.own_cut - before - length.slack
    corners = f"{len(length.bends)} of radius {tidy_number(length.radius)}" if length.bends else ""
    return {
        "legs on the board": Cell(tidy_number(sum(length.legs)), small=_added(length.legs)),
        "corners save": Cell(_number(-saved), small=corners),
        "rises": Cell(_number(length.rise), small=_rise_words(length)),
        "off the board": Cell(_number(length.off_board), small=length.trust if length.off_board else ""),
        "= path": Cell(tidy_number(path), bold=True),
        "lug 1": Cell(_number(-length.ends[0].deduction)),
        "lug 2": Cell(_number(-length.ends[1].deduction)),
        "= net": Cell(tidy_number(length.net or 0.0), bold=True),
        "loops, tails": Cell(_number(length.extra)),
        "slack": Cell(_number(length.slack), small=length.slack_class),
        "rounded up by": Cell(
            "?" if up is None else _number(up), small="stock" if length.stock else f"to {tidy_number(length.step)}"
        ),
        "group adds": Cell(_number(length.surplus)),
        "= cut": Cell("?" if length.cut is None else tidy_number(length.cut), bold=True),
    }


def _rise_words(length: CutLength) -> str:
    if len(length.rises) == 1:
        return length.rises[0][0]
    return "\n".join(f"{tidy_number(value)} {words}" for words, value in length.rises)


def _added(legs: Sequence[float]) -> str:
    return " + ".join(tidy_number(each) for each in legs) if len(legs) > 1 else ""


def _number(value: float) -> str:
    """Return a number, nothing for nought."""
    text = tidy_number(value)
    return "" if text == "0" else text
