"""Cable words: what the lists of cables say of an end, a way, a length that is not final."""

from collections import Counter

from boardplan.model.cable import Cable
from boardplan.model.plan import Plan
from boardplan.routing.lengths.clocking import twist_words
from boardplan.routing.lengths.end_work import EndWork
from boardplan.routing.lengths.length_sum import CutLength
from boardplan.routing.supports.clamp import Clamp


def label_text(cable: Cable, here: EndWork, there: EndWork) -> str:
    """Return what the label of an end says: the cable, this end, the far end."""
    return f"{cable.label or cable.id}  {here.place} > {there.place}"


def clock_words(end: EndWork) -> str:
    """Return how a lug is turned, seen from end 1: as on a clock, or by what a person gave; nothing where none is."""
    if end.clock:
        return f"{end.clock} ({end.clocking:g}°)" if end.clocking else end.clock
    return f"{end.clocking:g}° to end 1" if end.clocking else ""


def turned_words(plan: Plan, cable: Cable, length: CutLength) -> str:
    """Return how the second lug is turned, and how far a long cable may be out there."""
    second = length.ends[1]
    twist = twist_words(plan, cable, length.cut) if second.clock and second.clocking else ""
    return ", ".join(each for each in (clock_words(second), twist) if each)


def clamp_words(cable: str, clamps: tuple[Clamp, ...]) -> str:
    """Return how many clamps hold a cable, and which of them hold another one too; nothing for none."""
    if not clamps:
        return ""
    shared = Counter(other for each in clamps for other in each.cables if other != cable)
    with_others = "".join(f", {count} with {other}" for other, count in sorted(shared.items()))
    return f"{len(clamps)} {'clamp' if len(clamps) == 1 else 'clamps'}{with_others}"


def mass_words(length: CutLength) -> str:
    """Return what a heavy cable weighs; nothing for those under a kilogram."""
    return f"{length.mass:.1f} kg" if length.mass is not None and length.mass >= 1 else ""


def why_not_final(length: CutLength) -> list[str]:
    """Return why a length must not be cut yet; nothing where it may be."""
    if length.path is None:
        return [f"not final: {length.reason}", *length.notes[:1]]
    if length.final and length.cut is not None:
        return []
    first = length.notes[0] if length.notes else f"off-board legs are {length.trust}"
    return [f"not final: {first}"]


def other_notes(length: CutLength) -> tuple[str, ...]:
    """Return the notes that `why_not_final` leaves."""
    return length.notes if length.final else length.notes[1:]


def remarks(length: CutLength) -> list[str]:
    """Return all there is to say of a length: why it is not final, then its other notes."""
    return [*why_not_final(length), *other_notes(length)]


def way_words(cable: Cable) -> str:
    """Return where somebody wants a cable to run; nothing where the program chooses."""
    return {"channel": "in channel", "outside": "outside channels", "choose": ""}[cable.way]


def end_name(cable: Cable, end: int) -> str:
    """Return what an end is called on the bench, `end` 1 or 2."""
    return f"{cable.label or cable.id} end {end}"
