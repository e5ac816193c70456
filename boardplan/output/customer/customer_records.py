"""Customer records: what the sheets for the customer show, as plain values for JSON; all in mm and kg."""

from typing import Any

from boardplan.model.plan import Plan
from boardplan.model.tray import Tray, TrayBuilt
from boardplan.output.customer.blocking import blocking_records
from boardplan.output.customer.tray_size import (
    InsideSum,
    between_gap,
    built_over,
    inside_of,
    lid_gap,
    over_of,
    pull_newton,
    side_gap,
)


def customer_records(plan: Plan) -> dict[str, Any]:
    """Return the trays with their inside sizes, and how each board fixing is held."""
    return {"trays": [_tray(plan, each) for each in plan.trays], "blocking": list(blocking_records(plan))}


def _tray(plan: Plan, tray: Tray) -> dict[str, Any]:
    units = tray.units or plan.job.units
    inside, count, mass = inside_of(tray, plan.rules), tray.count, tray.battery.mass
    gaps = {"side": side_gap(tray, plan.rules), "between": between_gap(tray, plan.rules), "lid": lid_gap(tray)}
    sums = {"length": inside.length, "width": inside.width, "height": inside.height}
    return {
        "id": tray.id,
        "batteries": count,
        "inside": {name: each.total for name, each in sums.items()},
        "over": over_of(units),
        "not_known": sorted({words for each in sums.values() for words in each.missing}),
        "gaps": {name: {"mm": gap.value, "source": gap.source} for name, gap in gaps.items() if gap.value is not None},
        "mass_of_batteries": None if count is None or mass is None else round(count * mass, 6),
        "mass": tray.mass,
        "pull_newton": pull_newton(tray),
        "finished_by": tray.finished_by,
        "built": None if tray.built is None else _built(tray.built, sums),
    }


def _built(built: TrayBuilt, sums: dict[str, InsideSum]) -> dict[str, Any]:
    found: dict[str, Any] = {"date": built.date, "by": built.by}
    for name, needed in sums.items():
        has = {"length": built.length, "width": built.width, "height": built.height}[name]
        found[name] = {"mm": has, "over_needed": None if has is None else built_over(needed.total, has)}
    return found
