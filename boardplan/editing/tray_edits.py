"""Tray edits: the battery trays that a customer builds, held to what a job file may say of them."""

import re
from collections.abc import Sequence
from dataclasses import replace

from pydantic import ValidationError

from boardplan.editing.references import next_reference
from boardplan.editing.refused import EditRefused
from boardplan.files.record_faults import faults_of
from boardplan.files.tray_records import TrayRecord, tray_plain
from boardplan.model.plan import Plan
from boardplan.model.tray import Tray

_NUMBER = re.compile(r"\[(\d+)\]")
"""How a path into a file numbers a thing in a row: from nought."""


def with_trays(plan: Plan, trays: Sequence[Tray]) -> Plan:
    """Return the plan with other battery trays. Raises EditRefused where one can't be."""
    names = [each.id for each in trays]
    for tray in trays:
        if names.count(tray.id) > 1:
            raise EditRefused(f"Two trays are called {tray.id}. Give one of them another reference.")
        refuse_unsound(tray)
    return plan if tuple(trays) == plan.trays else replace(plan, trays=tuple(trays))


def new_tray(plan: Plan, trays: Sequence[Tray]) -> Tray:
    """Return a tray of which nothing is known yet, under the next free reference after those of other trays."""
    return Tray(next_reference(plan, "T", taken=[each.id for each in trays]))


def refuse_unsound(tray: Tray) -> None:
    """Raise EditRefused where a job file could not hold a tray, with the first thing that is wrong with it."""
    for number, way_out in enumerate(tray.exits, start=1):
        if not way_out.name:
            raise EditRefused(f"Tray {tray.id}: what is cable exit {number} called, such as plus? A name is needed.")
    plain = tray_plain(tray)
    try:
        TrayRecord.model_validate(plain)
    except ValidationError as error:
        fault = faults_of(error, plain)[0]
        place = _NUMBER.sub(lambda found: f" {int(found[1]) + 1}", fault.path).replace(".", " ").replace("_", " ")
        raise EditRefused(f"Tray {tray.id or 'without a reference'}, {place}: {fault.expected}.") from None
