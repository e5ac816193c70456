"""Fuse edits: what is known of the fuses and breakers of a component, as the designer of the system gave it."""

import math
from collections.abc import Iterable
from dataclasses import replace

from boardplan.editing.lookup import component_of
from boardplan.editing.refused import EditRefused
from boardplan.editing.soundness import with_changed
from boardplan.model.fuse import Fuse
from boardplan.model.fuse_place import places_on
from boardplan.model.plan import Plan

_MOST = (("rating_a", "rating", "A", 10_000), ("voltage_v", "voltage", "V", 10_000),
         ("breaking_capacity_ka", "breaking capacity", "kA", 1_000))  # fmt: skip
"""What no fuse of a job exceeds, so that more is a slip of the hand."""


def set_fuses(plan: Plan, component_id: str, fuses: Iterable[Fuse]) -> Plan:
    """Return the plan with what is known of a component's fuses; one of which nothing is known is left out.

    Raises EditRefused for a place that the component has not, or that is named twice, and for a number no fuse has.
    """
    component = component_of(plan, component_id)
    known = tuple(each for each in fuses if each != Fuse(each.place))
    places = [each.place for each in places_on(component, plan.kind_of(component))]
    named = [each.place for each in known]
    for fuse in known:
        if fuse.place not in places:
            raise EditRefused(f"{component_id} has no fuse place {fuse.place or 'without a name'}.")
        if named.count(fuse.place) > 1:
            raise EditRefused(f"{component_id}: fuse place {fuse.place} is named twice.")
        _refuse_numbers(f"{component_id}.{fuse.place}" if fuse.place else component_id, fuse)
    if {each.place: each for each in known} == {each.place: each for each in component.fuses}:
        return plan
    return with_changed(plan, [replace(component, fuses=known)])


def _refuse_numbers(name: str, fuse: Fuse) -> None:
    for attribute, words, unit, most in _MOST:
        value = getattr(fuse, attribute)
        if value is not None and not (math.isfinite(value) and 0 < value <= most):
            raise EditRefused(
                f"{name}: no {words} is {value:g} {unit}. Expected above 0, up to {most:g}, or a blank if not known."
            )
