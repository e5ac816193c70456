"""Length changes: which cables an unfinished edit makes longer or shorter, and what that comes to."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass

from boardplan.editing.known import Known
from boardplan.geometry.units import length_text
from boardplan.model.plan import Plan

_LEAST = 0.05
"""mm below which nobody speaks of a change."""
_MOST_SORTS = 2


@dataclass(frozen=True, slots=True)
class LengthChange:
    """A cable whose cut changes: its new cut, by how much it differs (mm), none of either where it has no way.

    `certain` says that its way was worked out, not only drawn along.
    """

    cable: str
    cut: float | None
    by: float | None
    certain: bool = True


def length_changes(before: Known, now: Known) -> tuple[LengthChange, ...]:
    """Return the cables of both plans whose cut changes or whose way is lost or found, in the plan's order."""
    found = []
    for name, length in now.lengths.items():
        was = before.lengths.get(name)
        if was is None or was is length or name not in before.plan.cables:
            continue
        by = None if length.cut is None or was.cut is None else length.cut - was.cut
        if (by is None and length.cut != was.cut) or (by is not None and abs(by) > _LEAST):
            found.append(LengthChange(name, length.cut, by, name not in now.stretched))
    return tuple(found)


def with_pushed(changes: Sequence[LengthChange], now: Known, pushed: Collection[str]) -> tuple[LengthChange, ...]:
    """Return changes with the cables that are being pushed, also where their length stays as it was."""
    named = {each.cable for each in changes}
    still = (now.lengths[name] for name in pushed if name not in named and name in now.lengths)
    return (*changes, *(LengthChange(each.cable, each.cut, 0.0, each.cable not in now.stretched) for each in still))


def change_words(change: LengthChange, units: str) -> str:
    """Return a change as it stands beside its cable.

    >>> change_words(LengthChange("W12", 1240.0, -12.0), "mm")
    'W12  1240 mm  −12'
    """
    if change.cut is None:
        return f"{change.cable}  no length"
    about = "" if change.certain else "≈ "
    by = "" if not change.by else f"  {signed_text(change.by, units, unit=False)}"
    return f"{change.cable}  {about}{length_text(change.cut, units, 0)}{by}"


def signed_text(value: float, units: str, *, unit: bool = True) -> str:
    """Return a length with its sign."""
    text = length_text(abs(value), units, 0)
    return f"{'+' if value >= 0 else '−'}{text if unit else text.removesuffix(' mm')}"


def total_words(plan: Plan, changes: Sequence[LengthChange]) -> str:
    """Return what changes come to, by conductor and colour, the greatest first; nothing where nothing changes."""
    if not changes:
        return ""
    names = "1 cable changes" if len(changes) == 1 else f"{len(changes)} cables change"
    sums = sorted(_sums(plan, changes).items(), key=lambda each: -abs(each[1]))
    parts = [f"{signed_text(by, plan.job.units)} of {sort}" for sort, by in sums[:_MOST_SORTS]]
    if len(sums) > _MOST_SORTS:
        rest = sum(by for _, by in sums[_MOST_SORTS:])
        parts.append(f"{signed_text(rest, plan.job.units)} of others")
    lost = [each.cable for each in changes if each.cut is None]
    if lost:
        parts.append(f"no length for {', '.join(lost[:3])}{' ...' if len(lost) > 3 else ''}")  # noqa: PLR2004
    return f"{names}: {', '.join(parts)}" if parts else names


def _sums(plan: Plan, changes: Sequence[LengthChange]) -> Mapping[str, float]:
    """Return the sum of the changes for each sort of cable, all alike ones counted."""
    found: dict[str, float] = {}
    for each in changes:
        if each.by is not None:
            cable = plan.cables[each.cable]
            sort = f"{plan.conductors[cable.conductor].name} {cable.colour}"
            found[sort] = found.get(sort, 0.0) + each.by * cable.count
    return found
