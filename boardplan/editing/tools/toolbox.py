"""Toolbox: the table of tools."""

from collections.abc import Callable
from dataclasses import dataclass

from boardplan.editing.tools.draw_channel import draw_channel
from boardplan.editing.tools.gesture import Gesture
from boardplan.editing.tools.hand import Hand
from boardplan.editing.tools.join import join
from boardplan.editing.tools.measure import measure
from boardplan.editing.tools.pin_way import pin_way
from boardplan.editing.tools.place import place
from boardplan.editing.tools.reshape_channel import reshape_channel
from boardplan.editing.tools.select import select
from boardplan.editing.tools.survey_tools import add_exit, add_fixing, add_no_go


@dataclass(frozen=True, slots=True)
class Tool:
    """A tool: what it is called, the key that takes it, what to do with it, and its gesture."""

    id: str
    words: str
    key: str
    hint: str
    factory: Callable[[Hand], Gesture]


TOOLS = (
    Tool("select", "Select and move", "S", "Click, drag, or draw up a band; shift adds, alt moves freely", select),
    Tool("place", "Place a component", "P", "Click where it goes; R turns it, shift keeps it in hand", place),
    Tool("draw_channel", "Draw a channel", "C", "Click its corners; double click or enter ends it", draw_channel),
    Tool("join", "Join with a cable", "J", "From a terminal to a terminal or an exit", join),
    Tool("pin_way", "Pin a cable's way", "W", "Drag a leg of a cable aside; double click unpins", pin_way),
    Tool("reshape_channel", "Reshape a channel", "H", "Drag its corners, ends and legs", reshape_channel),
    Tool("measure", "Measure", "M", "From one place to another", measure),
    Tool("add_exit", "Add an exit", "X", "Click an edge, or the board for a hole", add_exit),
    Tool("add_fixing", "Add a board fixing", "F", "Click on the framing", add_fixing),
    Tool("add_no_go", "Add a no-go box", "N", "Drag a box over what must stay empty", add_no_go),
)
"""All tools in the order of the tool bar; the first is the one to fall back to."""


def tool(tool_id: str) -> Tool:
    """Return a tool by its id."""
    return next(each for each in TOOLS if each.id == tool_id)
