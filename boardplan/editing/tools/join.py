"""Join: from a terminal to another terminal or an exit, by two clicks or by dragging."""

from dataclasses import replace

from boardplan.editing.cable_edits import connect, end_words
from boardplan.editing.cable_suggestion import CableSuggestion, suggest_cable
from boardplan.editing.refused import EditRefused
from boardplan.editing.selection import Selection
from boardplan.editing.tools.gesture import Done, Gesture, Pointer, Shown
from boardplan.editing.tools.grip import CATCHING
from boardplan.editing.tools.hand import Hand
from boardplan.editing.tools.hits import end_place, nearest_end
from boardplan.model.cable import CableEnd

_LEAST_REACH = 8.0
"""A terminal catches from at least this far, in mm: half a lug's palm."""


def join(hand: Hand) -> Gesture:
    """Wait for the first end, then for the second; the cable is shown on its way meanwhile."""
    event = yield Shown(hint="Click a terminal or an exit")
    while True:
        start = end_at(hand, event)
        if event.kind == "key" and event.key == "escape":
            return Done()
        if start is not None and event.kind in {"press", "double"} and event.button == "left":
            return (yield from _second_end(hand, start))
        event = yield Shown(hint=_first_hint(start))


def _first_hint(start: CableEnd | None) -> str:
    return f"From {end_words(start)}" if start else "Click a terminal or an exit"


def end_at(hand: Hand, event: Pointer) -> CableEnd | None:
    """Return the terminal or exit that the pointer catches."""
    return nearest_end(hand.plan, event.at, max(CATCHING * event.reach, _LEAST_REACH))


def _second_end(hand: Hand, start: CableEnd) -> Gesture:
    event = yield Shown(hint=f"From {end_words(start)} to ...")
    while not (event.kind == "key" and event.key == "escape"):
        end = end_at(hand, event)
        if end is None or end == start:
            line = (end_place(hand.plan, start), event.at)
            event = yield Shown(hint=f"From {end_words(start)} to ...", guides=(line,))
            continue
        suggestion = suggest_cable(hand.plan, start, end, hand.shelf, hand.conductor)
        if event.kind in {"press", "release", "double"} and event.button != "right":
            return _joined(hand, start, end, suggestion)
        event = yield _shown(hand, start, end, suggestion)
    return Done(again=True)


def _joined(hand: Hand, start: CableEnd, end: CableEnd, suggestion: CableSuggestion) -> Done:
    if suggestion.conductor is None:
        return Done(again=True, asks=(start, end))
    try:
        plan, reference = connect(
            hand.plan, start, end, suggestion.conductor, suggestion.colour, suggestion.cable_class
        )
    except EditRefused as refused:
        return Done(again=True, said=refused.sentence)
    words = f"Join {end_words(start)} to {end_words(end)}"
    hand = replace(hand, conductor=suggestion.conductor)
    return Done(plan, words, Selection((reference,)), again=True, hand=hand)


def _shown(hand: Hand, start: CableEnd, end: CableEnd, suggestion: CableSuggestion) -> Shown:
    ways = f"{end_words(start)} to {end_words(end)}"
    done = _joined(hand, start, end, suggestion)
    if suggestion.conductor is None:
        line = (end_place(hand.plan, start), end_place(hand.plan, end))
        return Shown(hint=f"{ways}: which conductor?", guides=(line,))
    words = f"{ways}: {suggestion.conductor.name}, {suggestion.colour} ({suggestion.why})"
    return Shown(done.plan, done.said or words)
