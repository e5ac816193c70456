"""Contrast of the themes, by the formula of the W3C's Web Content Accessibility Guidelines 2.2.

Relative luminance and contrast ratio as defined there (WCAG 2.2, section 6, terms "relative luminance" and
"contrast ratio"); 7:1 is criterion 1.4.6 for text, 3:1 criterion 1.4.11 for signs and edges of controls.
"""

import pytest

from boardplan.drawing.palette import colour
from boardplan.ui.style_sheet import interface_colours, style_sheet

THEMES = ("light", "dark")


def luminance(text):
    parts = [int(text[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one, other):
    high, low = sorted((luminance(one), luminance(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def test_formula_on_the_guidelines_own_extremes():
    assert contrast("#000000", "#FFFFFF") == pytest.approx(21)
    assert contrast("#FFFFFF", "#FFFFFF") == pytest.approx(1)


@pytest.mark.parametrize("theme", THEMES)
@pytest.mark.parametrize("ground", ["ground", "panel", "field", "wash", "hover"])
def test_text_is_legible(theme, ground):
    inks = interface_colours(theme)
    assert contrast(inks["ink"], inks[ground]) >= 7


@pytest.mark.parametrize("theme", THEMES)
@pytest.mark.parametrize("ground", ["ground", "panel"])
def test_quiet_text_is_legible(theme, ground):
    inks = interface_colours(theme)
    assert contrast(inks["quiet"], inks[ground]) >= 4.5, "criterion 1.4.3: details and units"


@pytest.mark.parametrize("theme", THEMES)
@pytest.mark.parametrize("sign", ["stop", "warn", "note", "accent"])
@pytest.mark.parametrize("ground", ["ground", "panel", "wall"])
def test_signs_stand_out(theme, sign, ground):
    assert contrast(colour(sign, theme), colour(ground, theme)) >= 3


@pytest.mark.parametrize("theme", THEMES)
def test_main_buttons_are_legible(theme):
    inks = interface_colours(theme)
    assert contrast(inks["panel"], inks["accent"]) >= 4.5


@pytest.mark.parametrize("theme", THEMES)
def test_style_sheet_leaves_no_name_unfilled(theme):
    assert "@" not in style_sheet(theme)


@pytest.mark.parametrize("theme", THEMES)
def test_the_frame_of_a_room_stands_out_from_its_rim_and_from_a_covered_board(theme):
    assert contrast(colour("room", theme), colour("fabric", theme)) >= 3
    assert contrast(colour("room", theme), colour("panel", theme)) >= 7
