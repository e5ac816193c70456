"""Pin a way: drag a leg of a cable aside; its corners stay where a person put them from then on."""

from boardplan.editing.cable_edits import unpin
from boardplan.editing.selection import Selection
from boardplan.editing.tools.gesture import Done, Gesture, Shown
from boardplan.editing.tools.grip import CATCHING
from boardplan.editing.tools.hand import Hand
from boardplan.editing.tools.hits import cable_at
from boardplan.editing.tools.push_way import corner_at, push_corner, push_leg


def pin_way(hand: Hand) -> Gesture:
    """Wait for a cable, then drag the leg or corner under the pointer; a double click gives a way back."""
    event = yield Shown(hint="Drag a leg of a cable aside")
    while True:
        if event.kind == "key" and event.key == "escape":
            return Done()
        corner = corner_at(hand, event)
        if corner is not None and event.kind == "press" and event.button == "left":
            start, event = event, (yield Shown(selection=hand.selection))
            return (yield from push_corner(hand, *corner, start, event))
        cable = cable_at(hand.plan, hand.ways, event.at, CATCHING * event.reach)
        if cable is not None and event.kind == "double":
            return Done(unpin(hand.plan, cable), f"Unpin {cable}", Selection((cable,)), again=True)
        if cable is not None and event.kind == "press" and event.button == "left":
            start, event = event, (yield Shown(selection=Selection((cable,))))
            return (yield from push_leg(hand, cable, start, event))
        pinned = cable is not None and hand.plan.cables[cable].pins
        words = "double click leaves its way to the program" if pinned else "drag a leg aside to pin its way"
        event = yield Shown(hint=f"{cable}: {words}" if cable else "Drag a leg of a cable aside")
