"""Stud stacks: the tables for the bench of what lies on each stud in which order, and of the link bars to make."""

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from boardplan.geometry.units import tidy_number
from boardplan.model.plan import Plan
from boardplan.output.tables.listing import Listing
from boardplan.output.tables.table import Cell, Column, Table
from boardplan.routing.lengths.length_sum import CutLength
from boardplan.routing.lugs.link_bar import BarEnd, LinkBar, link_bar_offers
from boardplan.routing.lugs.lug_stack import Fan, Stack, StackedLug, fan_of, stacks_of

ORDER = (
    "The first lug lies on the contact face, the largest conductor first. Clean, flat faces; no washer between lug and "
    "pad; then flat washer, lock washer, nut. Palms fanned, not crossed."
)
BARS = "Link bars to make: the cross-section is the designer's. Holes medium fit, ISO 273; measure the studs first."


def stack_tables(plan: Plan, lengths: Mapping[str, CutLength]) -> tuple[Table, ...]:
    """Return the tables of stud stacks and of link bars; those without a row are left out."""
    tables = _stacks(plan), _bars(link_bar_offers(plan, lengths))
    return tuple(each for each in tables if each.rows)


def several_on_a_stud(plan: Plan) -> tuple[Stack, ...]:
    """Return the stacks of more than one lug."""
    return tuple(each for each in stacks_of(plan) if each.count > 1)


def _stacks(plan: Plan) -> Table:
    columns = (
        Column("stud"),
        Column("thread"),
        Column("from the contact face outwards", grows=True),
        Column("palms mm", "end"),
        Column("thread mm", "end"),
        Column("fan"),
    )
    rows = tuple(_stack_row(each, fan_of(plan, each)) for each in several_on_a_stud(plan))
    return Table(columns, rows, title="Stud stacks", notes=(ORDER,))


def _stack_row(stack: Stack, fan: Fan | None) -> tuple[Cell, ...]:
    order = ", ".join(f"{index}. {_lug_words(each)}" for index, each in enumerate(stack.lugs, start=1))
    need = "?" if stack.asked is None else tidy_number(stack.asked)
    has = "?" if stack.thread is None else tidy_number(stack.thread)
    return (
        Cell(stack.place, bold=True),
        Cell(stack.size or "?"),
        Cell(order),
        Cell("?" if stack.palms is None else tidy_number(stack.palms)),
        Cell(need, small=f"the stud has {has}", alert="TOO SHORT" if stack.short > 0 else ""),
        Cell("" if fan is None else f"at least {tidy_number(fan.least, 0)}°"),
    )


def _lug_words(lug: StackedLug) -> str:
    count = f" ({lug.count} of them)" if lug.count > 1 else ""
    return f"{lug.cable}{count}" + ("" if lug.area is None else f" {lug.area:g} mm²")


def _bars(bars: Iterable[LinkBar]) -> Table:
    columns = (
        Column("in place of"),
        Column("pieces", "end"),
        Column("centres mm", "end"),
        Column("hole 1", grows=True),
        Column("hole 2", grows=True),
        Column("step mm", "end"),
        Column("to be asked", grows=True),
    )
    return Table(columns, tuple(_bar_row(each) for each in bars), title="Link bars", notes=(BARS,))


def _bar_row(bar: LinkBar) -> tuple[Cell, ...]:
    return (
        Cell(bar.cable, bold=True),
        Cell(str(bar.count)),
        Cell(tidy_number(bar.centres), bold=True),
        *(_hole_cell(each) for each in bar.ends),
        Cell(tidy_number(bar.step)),
        Cell(bar.question),
    )


def _hole_cell(end: BarEnd) -> Cell:
    width = "?" if end.hole is None else f"{end.hole:g} mm"
    return Cell(width, small=f"{end.place}, {end.stud or 'size unknown'}")


def stack_records(plan: Plan, lengths: Mapping[str, CutLength]) -> dict[str, list[dict[str, Any]]]:
    """Return what the tables say as plain data: lengths in mm, none where somebody has to measure or to ask."""
    return {
        "stud_stacks": [_stack_record(plan, each) for each in several_on_a_stud(plan)],
        "link_bars": [_bar_record(each) for each in link_bar_offers(plan, lengths)],
    }


def _number(value: float | None) -> float | None:
    return None if value is None else round(value, 6)


def _stack_record(plan: Plan, stack: Stack) -> dict[str, Any]:
    fan = fan_of(plan, stack)
    return {
        "stud": stack.place,
        "thread": stack.size,
        "lugs": [{"cable": each.cable, "count": each.count, "area": each.area} for each in stack.lugs],
        "palms": _number(stack.palms),
        "thread_asked": _number(stack.asked),
        "thread_usable": stack.thread,
        "fan_degrees": None if fan is None else _number(fan.least),
    }


def _bar_record(bar: LinkBar) -> dict[str, Any]:
    return {
        "cable": bar.cable,
        "count": bar.count,
        "centres": _number(bar.centres),
        "step": _number(bar.step),
        "holes": [{"stud": each.place, "thread": each.stud, "diameter": each.hole} for each in bar.ends],
        "question": bar.question,
    }


def stack_listings(plan: Plan, lengths: Mapping[str, CutLength]) -> tuple[Listing, ...]:
    """Return the lists of stud stacks, a row for each lug from the contact face outwards, and of link bars.

    A list without a row is left out.
    """
    stacks = tuple(row for each in several_on_a_stud(plan) for row in _stack_listed(plan, each))
    bars = tuple(_bar_listed(each) for each in link_bar_offers(plan, lengths))
    listings = (
        Listing(
            "Stud stacks",
            (
                "stud",
                "thread",
                "place",
                "cable",
                "lugs",
                "area_mm2",
                "palms_mm",
                "asked_mm",
                "usable_mm",
                "fan_degrees",
            ),
            stacks,
        ),
        Listing(
            "Link bars",
            (
                "in_place_of",
                "pieces",
                "centres_mm",
                "step_mm",
                "stud_1",
                "hole_1_mm",
                "stud_2",
                "hole_2_mm",
                "question",
            ),
            bars,
        ),
    )
    return tuple(each for each in listings if each.rows)


def _stack_listed(plan: Plan, stack: Stack) -> Iterator[tuple[str | float | None, ...]]:
    fan = fan_of(plan, stack)
    whole = (stack.palms, stack.asked, stack.thread, None if fan is None else fan.least)
    for place, lug in enumerate(stack.lugs, start=1):
        yield stack.place, stack.size or "", place, lug.cable, lug.count, lug.area, *whole


def _bar_listed(bar: LinkBar) -> tuple[str | float | None, ...]:
    first, second = bar.ends
    holes = (first.place, first.hole, second.place, second.hole)
    return bar.cable, bar.count, bar.centres, bar.step, *holes, bar.question
