"""Every icon that is used exists, is drawn on our grid in one colour, and comes out tinted."""

import re
from pathlib import Path

import pytest
from PySide6.QtGui import QColor

import boardplan.ui
from boardplan.bundled import data_dir
from boardplan.ui.actions import ACTIONS
from boardplan.ui.icons import icon_names, tinted
from boardplan.ui.tool_table import TOOLS

CODE = "\n".join(path.read_text() for path in Path(boardplan.ui.__file__).parent.rglob("*.py"))
TINTED = [name for name in icon_names() if not name.startswith("choice-")]


def test_every_icon_used_exists():
    used = {row.icon for row in ACTIONS if row.icon} | {tool.icon for tool in TOOLS}
    used |= set(re.findall(r'(?:small_button\(\s*(?:self\._)?desk|put_icon\([^,]+), "([a-z-]+)"', CODE))
    assert used <= set(icon_names())


@pytest.mark.parametrize("name", TINTED)
def test_icon_is_on_our_grid_in_one_colour(name):
    text = (data_dir("assets") / "icons" / f"{name}.svg").read_text()
    assert 'viewBox="0 0 20 20"' in text
    assert 'stroke-width="1.5"' in text
    assert not re.search(r"#[0-9A-Fa-f]{3,6}", text), "the colour comes from the theme"


@pytest.mark.usefixtures("qapp")
@pytest.mark.parametrize("name", TINTED)
def test_icon_comes_out_in_its_tint(name):
    image = tinted(name, "#0E7A6F").toImage()
    seen = [
        image.pixelColor(x, y)
        for x in range(image.width())
        for y in range(image.height())
        if image.pixelColor(x, y).alpha() > 120
    ]
    assert seen, "something is drawn"
    wanted = QColor("#0E7A6F")
    assert all(abs(each.red() - wanted.red()) <= 3 and abs(each.green() - wanted.green()) <= 3 for each in seen)
