"""Actions: the table of all that can be done; menus, keys, tooltips and the list of commands are made from it."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from typing import Any, TypeAlias

from PySide6.QtGui import QAction, QKeySequence

from boardplan.ui import edit_commands
from boardplan.ui.desk import STEPS, Step
from boardplan.ui.icons import put_icon
from boardplan.ui.tool_table import TOOLS, ToolRow
from boardplan.ui.words import tr

Act: TypeAlias = Callable[[Any], object]
"""What an action asks of the window; which is not named here, because it is made from this table."""


@dataclass(frozen=True, slots=True)
class ActionRow:
    """An action: its menu, words, keys, icon ("" on purpose where none helps), what it does, when it can be done.

    `canvas_key` is a key that works while the canvas is in focus; it is heard there, and only shown here.
    """

    name: str
    menu: str
    words: str
    act: Act
    keys: str = ""
    icon: str = ""
    tip: str = ""
    when: str = "open"
    canvas_key: str = ""
    begins_group: bool = False


MENUS = ("&Job", "&Edit", "&See", "&Steps", "&Tools", "&Help")


def _go(step: Step) -> Act:
    return lambda window: window.go_to(step)


def _take(tool: str, step: Step) -> Act:
    return lambda window: window.take_tool(tool, step)


_STEP_WORDS: dict[Step, str] = {"survey": "Survey", "place": "Place", "wire": "Wire", "pack": "Pack"}
_FIRST_STEP: dict[str, ToolRow] = {}
for _tool in TOOLS:
    _FIRST_STEP.setdefault(_tool.name, _tool)
"""Each tool once, with the first step that offers it."""

ACTIONS: tuple[ActionRow, ...] = (
    ActionRow("new", "&Job", "&New board...", lambda w: w.files.new_board(), "Ctrl+N", "new", when="always"),
    ActionRow("open", "&Job", "&Open...", lambda w: w.files.ask_and_open(), "Ctrl+O", "open", when="always"),
    ActionRow("save", "&Job", "&Save", lambda w: w.files.save(), "Ctrl+S", "save", begins_group=True),
    ActionRow("save-as", "&Job", "Save &as...", lambda w: w.files.save_as(), "Ctrl+Shift+S"),
    ActionRow("write-pack", "&Job", "&Write the job pack...", lambda w: w.write_pack(), "Ctrl+P", "pack"),
    ActionRow("stock", "&Job", "What is at &hand...", lambda w: w.ask_stock(), tip="Reels, offcuts, channel"),
    ActionRow(
        "supply",
        "&Job",
        "Where pa&rts come from...",
        lambda w: w.ask_supply(),
        tip="In stock, bought, ordered, from the customer",
    ),
    ActionRow(
        "trays",
        "&Job",
        "Battery tra&ys...",
        lambda w: w.ask_trays(),
        tip="What a customer builds before the crew comes",
    ),
    ActionRow("close", "&Job", "&Close the job", lambda w: w.files.close_job(), "Ctrl+W", begins_group=True),
    ActionRow("quit", "&Job", "&Quit", lambda w: w.close(), "Ctrl+Q", when="always"),
    ActionRow("undo", "&Edit", "&Undo", lambda w: w.undo(), "Ctrl+Z", "undo", when="undo"),
    ActionRow("redo", "&Edit", "&Redo", lambda w: w.redo(), "Ctrl+Shift+Z", "redo", when="redo"),
    ActionRow(
        "copy",
        "&Edit",
        "&Copy",
        lambda w: edit_commands.copy(w.open_desk()),
        "Ctrl+C",
        "copy",
        when="selected",
        begins_group=True,
    ),
    ActionRow("paste", "&Edit", "&Paste", lambda w: edit_commands.paste(w.open_desk()), "Ctrl+V", "paste"),
    ActionRow(
        "duplicate", "&Edit", "&Duplicate", lambda w: edit_commands.duplicate(w.open_desk()), "Ctrl+D", when="selected"
    ),
    ActionRow("select-all", "&Edit", "Select all components", lambda w: w.select_all(), "Ctrl+A"),
    ActionRow(
        "turn",
        "&Edit",
        "&Turn by a quarter",
        lambda w: w.turn(),
        "Ctrl+R",
        "turn",
        when="selected",
        canvas_key="R",
        begins_group=True,
    ),
    ActionRow(
        "align-left",
        "&Edit",
        "Line up the left edges",
        lambda w: edit_commands.align(w.open_desk(), "left"),
        "",
        "align-left",
        when="several",
    ),
    ActionRow(
        "align-bottom",
        "&Edit",
        "Line up the lower edges",
        lambda w: edit_commands.align(w.open_desk(), "bottom"),
        "",
        "align-bottom",
        when="several",
    ),
    ActionRow(
        "space-across",
        "&Edit",
        "Space evenly across",
        lambda w: edit_commands.space(w.open_desk(), "x"),
        "",
        "space-across",
        when="several",
    ),
    ActionRow(
        "space-up",
        "&Edit",
        "Space evenly upwards",
        lambda w: edit_commands.space(w.open_desk(), "y"),
        "",
        "space-up",
        when="several",
    ),
    ActionRow(
        "properties",
        "&Edit",
        "&Fields of what is selected",
        lambda w: w.focus_properties(),
        "F4",
        when="selected",
        begins_group=True,
    ),
    ActionRow(
        "fuses",
        "&Edit",
        "Fus&es and breakers of what is selected...",
        lambda w: w.ask_fuses(),
        tip="Type, rating, voltage, breaking capacity, spares",
        when="selected",
    ),
    ActionRow(
        "remove",
        "&Edit",
        "Re&move",
        lambda w: w.remove(),
        "Ctrl+Backspace",
        "delete",
        when="selected",
        canvas_key="Del",
    ),
    ActionRow("fit", "&See", "Show &all", lambda w: w.fit(), "Ctrl+0", "fit"),
    ActionRow("fit-selected", "&See", "Show what is &selected", lambda w: w.fit_selected(), "Ctrl+9", when="selected"),
    ActionRow("larger", "&See", "&Larger", lambda w: w.zoom(1), "Ctrl++", "zoom-in"),
    ActionRow("smaller", "&See", "S&maller", lambda w: w.zoom(-1), "Ctrl+-", "zoom-out"),
    ActionRow(
        "keep-clear",
        "&See",
        "All &keep-clear room",
        lambda w: w.show_zones(),
        "Ctrl+K",
        "keep-clear",
        begins_group=True,
    ),
    ActionRow(
        "room",
        "&See",
        "&Room for the piece in hand",
        lambda w: w.show_room(),
        "Ctrl+Shift+K",
        tip="While a piece is carried, hatch where its middle may come to lie",
    ),
    ActionRow("findings", "&See", "Go to the &findings", lambda w: w.focus_findings(), "F8", "warn"),
    ActionRow("placed", "&See", "Go to the &components on the board", lambda w: w.focus_placed(), "F7", "component"),
    ActionRow("next-part", "&See", "Go to the &next part of the window", lambda w: w.focus_next_part(), "F6"),
    ActionRow(
        "theme-system",
        "&See",
        "Colours as the system has them",
        lambda w: w.choose_theme("system"),
        "",
        when="always",
        begins_group=True,
    ),
    ActionRow("theme-light", "&See", "Light", lambda w: w.choose_theme("light"), "", "light", when="always"),
    ActionRow("theme-dark", "&See", "Dark", lambda w: w.choose_theme("dark"), "", "dark", when="always"),
    *(
        ActionRow(f"step-{step}", "&Steps", _STEP_WORDS[step], _go(step), f"Ctrl+{number}", step)
        for number, step in enumerate(STEPS, start=1)
    ),
    *(
        ActionRow(
            f"tool-{tool.name}",
            "&Tools",
            tool.words,
            _take(tool.name, tool.step),
            "",
            tool.icon,
            tool.tip,
            canvas_key=tool.key,
        )
        for tool in _FIRST_STEP.values()
    ),
    ActionRow(
        "join-by-name", "&Tools", "Join by &name...", lambda w: w.join_by_name(), "Ctrl+J", "cable", begins_group=True
    ),
    ActionRow("pin", "&Tools", "&Pin the way as it lies", lambda w: edit_commands.pin(w.open_desk()), when="selected"),
    ActionRow(
        "unpin",
        "&Tools",
        "As the program wo&uld",
        lambda w: edit_commands.leave(w.open_desk()),
        "Ctrl+U",
        tip="Take the pins from the selected cables and lay them as the program would",
        when="selected",
        canvas_key="U",
    ),
    ActionRow(
        "accept", "&Tools", "&Accept the finding picked...", lambda w: w.accept_finding(), "Ctrl+Shift+A", "accept"
    ),
    ActionRow("commands", "&Help", "&Find a command...", lambda w: w.find_command(), "F2", "search", when="always"),
    ActionRow("keys", "&Help", "&Keys", lambda w: w.show_keys(), "F1", when="always"),
)


def made_actions(window: Any) -> dict[str, QAction]:  # noqa: ANN401 - see Act
    """Return a QAction for each row, wired to a window."""
    made = {}
    for row in ACTIONS:
        action = QAction(tr(row.words), window)
        if row.keys:
            action.setShortcut(QKeySequence(row.keys))
        if row.icon:
            put_icon(action, row.icon, window.themes.theme)
        action.setStatusTip(tr(row.tip))
        action.setToolTip(tr(row.tip) or tr(row.words).replace("&", ""))
        action.triggered.connect(partial(_run, row, window))
        window.addAction(action)
        made[row.name] = action
    return made


def _run(row: ActionRow, window: Any, _checked: bool = False) -> None:  # noqa: ANN401, FBT001, FBT002 - Qt's
    row.act(window)


def fill_menus(window: Any, actions: dict[str, QAction]) -> None:  # noqa: ANN401 - see Act
    """Put the actions into the menus of a window."""
    bar = window.menuBar()
    menus = {title: bar.addMenu(tr(title)) for title in MENUS}
    for row in ACTIONS:
        if row.begins_group:
            menus[row.menu].addSeparator()
        action = actions[row.name]
        if row.canvas_key and not row.keys:
            action.setText(f"{tr(row.words)}\t{row.canvas_key}")
        menus[row.menu].addAction(action)
        if row.name == "open":
            window.samples_menu = menus[row.menu].addMenu(tr("Sa&mples"))
            window.recent_menu = menus[row.menu].addMenu(tr("Opened &last"))
