"""Matched group: cables that must come out alike are all cut as long as the longest of them needs."""

from collections.abc import Sequence
from dataclasses import replace

from boardplan.geometry.units import tidy_number
from boardplan.model.plan import Plan
from boardplan.routing.lengths.evening import evening_shift
from boardplan.routing.lengths.length_sum import CutLength

_METRE = 1000.0  # mm: longer cables of a group may differ by a share of their cut


def matched(members: list[CutLength], plan: Plan) -> list[CutLength]:
    """Return a group's members all cut to the longest of their own cuts, and alike within the rule set's limit."""
    rules = plan.rules
    cuts = [each.own_cut for each in members if each.own_cut is not None]
    if not cuts:
        return members
    longest = max(cuts)
    governing = min(each.cable for each in members if each.own_cut == longest)
    open_members = [each for each in members if not each.final]
    share = rules.value("matched-within-share") / 100 * longest
    alike = share if longest > _METRE else rules.value("matched-within")
    limit = rules.value("matched-surplus")
    found = []
    for each in members:
        if each.own_cut is None:
            found.append(each)
            continue
        cut = _cut_with_group(each, longest, governing, _unsettled(each, open_members))
        found.append(_alike(_with_surplus_named(plan, cut, governing, limit), members, alike))
    return found


def _alike(each: CutLength, members: Sequence[CutLength], within: float) -> CutLength:
    """Return a member of a group of several with a tolerance that leaves no two of them further apart."""
    return each if len(members) == 1 else replace(each, plus=min(each.plus, within), minus=0.0)


def _unsettled(each: CutLength, open_members: Sequence[CutLength]) -> str:
    """Return why the other members keep a group from being cut, "" where they don't: any may yet come out longer."""
    others = [other for other in open_members if other.cable != each.cable]
    words = [
        f"{', '.join(sorted(names))} {what}"
        for names, what in (
            ([other.cable for other in others if other.own_cut is None], "has no length yet"),
            ([other.cable for other in others if other.own_cut is not None], "is not final"),
        )
        if names
    ]
    return f"matched group {each.group} is not settled: {'; '.join(words)}" if words else ""


def _with_surplus_named(plan: Plan, each: CutLength, governing: str, limit: float) -> CutLength:
    """Return a member with a note of what to move, where its surplus is more than a share of its cut."""
    if each.surplus_percent <= limit:
        return each
    shift = evening_shift(plan, governing, each.cable, each.surplus)
    advice = shift.words(f"{tidy_number(shift.by, 0)} mm") if shift else "move or turn what it connects"
    note = (
        f"matched group {each.group}: {tidy_number(each.surplus)} mm to lay in a bow, "
        f"{tidy_number(each.surplus_percent, 0)} % of the cut; {advice}"
    )
    return replace(each, evened_by=shift, notes=(*each.notes, note))


def _cut_with_group(each: CutLength, longest: float, governing: str, unsettled: str) -> CutLength:
    surplus = longest - (each.own_cut or 0.0)
    percent = 100 * surplus / longest if longest else 0.0
    notes, parts = list(each.notes), list(each.parts)
    if surplus:
        parts.append((f"as long as {governing}, matched group {each.group}", surplus))
    if unsettled:
        notes.insert(0 if each.final else 1, unsettled)  # why it isn't final comes first
    return replace(
        each,
        cut=longest,
        surplus=surplus,
        surplus_percent=percent,
        final=each.final and not unsettled,
        parts=tuple(parts),
        notes=tuple(notes),
    )
