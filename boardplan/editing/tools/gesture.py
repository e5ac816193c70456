"""Gesture: what a tool is - a generator over pointer events in board millimetres."""

from collections.abc import Generator, Iterable
from dataclasses import dataclass
from typing import Literal, TypeAlias

from boardplan.editing.selection import Selection
from boardplan.editing.tools.hand import Hand
from boardplan.geometry.point import Box, Point
from boardplan.model.cable import CableEnd
from boardplan.model.plan import Plan


@dataclass(frozen=True, slots=True)
class Pointer:
    """A pointer event on the wall, in mm.

    `over` is the id of the thing under it where the window knows; `reach` is how far a fingertip reaches,
    in mm, so that catching distances stay the same on screen at every zoom.
    """

    kind: Literal["press", "move", "release", "double", "key"]
    at: Point
    over: str | None = None
    reach: float = 1.0
    button: Literal["left", "right", "none"] = "none"
    shift: bool = False
    control: bool = False
    alt: bool = False
    key: str = ""


@dataclass(frozen=True, slots=True)
class Shown:
    """What a tool wants to be seen meanwhile: an unfinished plan, a hint in words, guide lines on the wall.

    `band` is the box being drawn up, lower left and upper right on the wall. `pushed` is the cable whose leg is
    being dragged; its length is written beside the pointer. `stuck` is where it can't lie like that.
    """

    plan: Plan | None = None
    hint: str = ""
    guides: tuple[tuple[Point, Point], ...] = ()
    selection: Selection | None = None
    band: tuple[Point, Point] | None = None
    pushed: str = ""
    stuck: Box | None = None


@dataclass(frozen=True, slots=True)
class Done:
    """What a finished gesture leaves: a plan to commit with its words, or only a selection.

    `again` keeps the tool, with `hand` as the next one if given. `asks` is a cable whose conductor a person
    must choose. `said` is what was measured, or why an edit was refused. `corner` is a pinned corner of a cable
    that was clicked, from 1 on: it can be removed next.
    """

    plan: Plan | None = None
    words: str = ""
    selection: Selection | None = None
    again: bool = False
    hand: Hand | None = None
    asks: tuple[CableEnd, CableEnd] | None = None
    said: str = ""
    corner: tuple[str, int] | None = None


Gesture: TypeAlias = Generator[Shown, Pointer, Done]
"""Yields what to show, is sent the next event, returns what to commit; closing it cancels."""


def run(gesture: Gesture, events: Iterable[Pointer]) -> tuple[list[Shown], Done | None]:
    """Send events through a gesture and return what it showed and left; none if it wants more events."""
    shown: list[Shown] = []
    try:
        shown.append(next(gesture))
        for event in events:
            shown.append(gesture.send(event))  # noqa: PERF401 - extend would swallow the end of the gesture
    except StopIteration as stop:
        return shown, stop.value
    return shown, None
