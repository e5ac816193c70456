"""Tool table: which tools each step of the job offers, each with its icon; what they do is in the toolbox."""

from collections.abc import Mapping
from dataclasses import dataclass

from boardplan.editing.tools.toolbox import TOOLS as TOOLBOX
from boardplan.editing.tools.toolbox import Tool
from boardplan.ui.desk import Step


@dataclass(frozen=True, slots=True)
class ToolRow:
    """A tool as a step offers it."""

    name: str
    step: Step
    icon: str
    words: str
    key: str
    tip: str


_ICONS: Mapping[str, str] = {
    "select": "select",
    "place": "component",
    "draw_channel": "channel",
    "reshape_channel": "corner",
    "join": "join",
    "pin_way": "pin",
    "measure": "measure",
    "add_exit": "exit",
    "add_fixing": "fixing",
    "add_no_go": "no-go-box",
}
_OFFERED: Mapping[Step, tuple[str, ...]] = {
    "survey": ("select", "add_exit", "add_fixing", "add_no_go", "measure"),
    "place": ("select", "place", "measure"),
    "wire": ("select", "join", "pin_way", "draw_channel", "reshape_channel", "measure"),
    "pack": (),
}
_BOX: Mapping[str, Tool] = {each.id: each for each in TOOLBOX}


def _row(step: Step, name: str) -> ToolRow:
    tool = _BOX[name]
    return ToolRow(name, step, _ICONS[name], tool.words, tool.key, tool.hint)


TOOLS: tuple[ToolRow, ...] = tuple(_row(step, name) for step, names in _OFFERED.items() for name in names)


def tool_for_key(step: Step, key: str) -> ToolRow | None:
    """Return the tool of a step that a key takes."""
    return next((each for each in TOOLS if each.step == step and each.key == key.upper()), None)


def unoffered() -> set[str]:
    """Return tools of the toolbox that no step offers; there should be none."""
    return set(_BOX) - {each.name for each in TOOLS}
