"""The table of actions is complete: words, keys that are used once, icons that exist, menus that are there."""

import re
from collections import Counter

import pytest
from PySide6.QtGui import QKeySequence

from boardplan.ui.actions import ACTIONS, MENUS
from boardplan.ui.icons import icon_names
from boardplan.ui.tool_table import TOOLS, unoffered


@pytest.mark.parametrize("row", ACTIONS, ids=lambda row: row.name)
def test_row_is_complete(row):
    assert row.words.strip()
    assert row.menu in MENUS
    assert row.when in {"always", "open", "undo", "redo", "selected", "several"}
    assert not row.icon or row.icon in icon_names()
    assert not row.keys or not QKeySequence(row.keys).isEmpty()


def test_names_and_keys_are_used_once():
    for values in ([row.name for row in ACTIONS], [row.keys for row in ACTIONS if row.keys]):
        doubled = [value for value, count in Counter(values).items() if count > 1]
        assert not doubled


def test_every_tool_is_offered_once_a_step_with_its_own_key():
    assert unoffered() == set()
    for step in {tool.step for tool in TOOLS}:
        keys = [tool.key for tool in TOOLS if tool.step == step]
        assert len(keys) == len(set(keys))
        assert "R" not in keys, "R turns"


def test_menus_hold_every_action(window):
    held = {action for menu in window.menuBar().actions() for action in menu.menu().actions()}
    assert held >= set(window.actions_by_name.values())


def test_a_mark_for_the_keyboard_is_used_once_a_menu():
    for menu in MENUS:
        marks = [m[1].lower() for row in ACTIONS if row.menu == menu and (m := re.search(r"&(\w)", row.words))]
        assert len(marks) == len(set(marks)), menu
