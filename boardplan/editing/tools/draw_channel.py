"""Draw a channel: click its corners, end it with a double click or the enter key."""

from boardplan.editing.channel_edits import draw_channel as with_channel
from boardplan.editing.refused import EditRefused
from boardplan.editing.selection import Selection
from boardplan.editing.tools.gesture import Done, Gesture, Pointer, Shown
from boardplan.editing.tools.hand import Hand
from boardplan.editing.tools.hits import nearest_board
from boardplan.editing.tools.squared import next_corner
from boardplan.geometry.point import Point
from boardplan.geometry.units import length_text
from boardplan.model.fastener import Fastener
from boardplan.model.plan import Plan


def draw_channel(hand: Hand) -> Gesture:
    """Collect corners, square to each other unless alt is held; backspace takes back the last one."""
    corners: list[Point] = []
    board = ""
    event = yield Shown(hint=f"Channel {hand.section.words}: click where it begins")
    while True:
        if event.kind == "key" and event.key == "escape":
            return Done(again=bool(corners))
        if event.kind == "key" and event.key == "backspace" and corners:
            corners.pop()
        board = board if corners else nearest_board(hand.plan, event.at)
        at, snap = next_corner(hand, board, corners[-1] if corners else None, event, hand.section.width)
        if _ends(event) and corners:
            return _finished(hand, board, corners)
        if event.kind == "press" and event.button == "left" and at not in corners[-1:]:
            corners.append(at)
        guides = tuple((guide.start, guide.end) for guide in snap.guides)
        event = yield _shown(hand, board, [*corners, at], guides)


def _ends(event: Pointer) -> bool:
    return event.kind == "double" or (event.kind == "key" and event.key == "enter")


def _drawn(hand: Hand, board: str, corners: list[Point]) -> tuple[Plan, str]:
    line = [hand.plan.off_wall(board, each) for each in corners]
    return with_channel(hand.plan, board, line, hand.section, _fastener(hand))


def _fastener(hand: Hand) -> Fastener | None:
    """Return the fastener in hand, or else that of the channel drawn last."""
    if hand.fastener is not None:
        return hand.fastener
    used = [each.screws.fastener for each in hand.plan.channels.values()]
    return hand.plan.fasteners.get(used[-1]) if used else None


def _finished(hand: Hand, board: str, corners: list[Point]) -> Done:
    try:
        plan, reference = _drawn(hand, board, corners)
    except EditRefused as refused:
        return Done(again=True, said=refused.sentence)
    return Done(plan, f"Draw channel {reference}", Selection((reference,)), again=True)


def _shown(hand: Hand, board: str, corners: list[Point], guides: tuple[tuple[Point, Point], ...]) -> Shown:
    if len(corners) < 2 or corners[-1] == corners[-2]:  # noqa: PLR2004 - a line has two ends
        corners = corners[:-1]
    try:
        plan, reference = _drawn(hand, board, corners)
    except EditRefused as refused:
        begun = len(corners) > 1
        return Shown(hint=refused.sentence if begun else f"Channel {hand.section.words}", guides=guides)
    leg = length_text(corners[-2].distance_to(corners[-1]), hand.plan.job.units)
    return Shown(plan, f"{reference}: {leg}. Double click or enter ends it, backspace takes a corner back", guides)
