"""Plan difference: what a plan has other than the one before, so that only that has to be carried elsewhere."""

from collections.abc import Mapping
from dataclasses import dataclass, fields, replace
from typing import Any

from boardplan.model.plan import Plan


@dataclass(frozen=True, slots=True)
class Difference:
    """`whole` are fields that are replaced; `groups` the keys of a mapping in their order, and what is new in it."""

    whole: Mapping[str, Any]
    groups: Mapping[str, tuple[tuple[str, ...], Mapping[str, Any]]]


def difference(old: Plan, new: Plan) -> Difference:
    """Return what a plan has other than an older one, by which object it is."""
    whole: dict[str, Any] = {}
    groups: dict[str, tuple[tuple[str, ...], Mapping[str, Any]]] = {}
    for each in fields(Plan):
        was, now = getattr(old, each.name), getattr(new, each.name)
        if was is now:
            continue
        if isinstance(now, Mapping):
            groups[each.name] = tuple(now), {key: thing for key, thing in now.items() if was.get(key) is not thing}
        else:
            whole[each.name] = now
    return Difference(whole, groups)


def with_difference(old: Plan, apart: Difference) -> Plan:
    """Return the newer plan from the older one; what did not change stays the same object."""
    changed = dict(apart.whole)
    for name, (keys, new) in apart.groups.items():
        held = getattr(old, name)
        changed[name] = {key: new[key] if key in new else held[key] for key in keys}
    return replace(old, **changed) if changed else old
