"""The palette: every ink has a colour in every theme, and what is read can be read."""

import pytest
from boards import library_bus, lookout_cabin
from inks import inks_in

from boardplan.drawing.board_picture import board_picture
from boardplan.drawing.component_picture import component_picture
from boardplan.drawing.palette import PALETTES, colour
from boardplan.drawing.zone_picture import zone_picture
from boardplan.files.shelf_file import bundled_shelf
from boardplan.model.placed import placed
from boardplan.routing.find_route import find_routes


def luminance(value):
    """Relative luminance, WCAG 2.1 (W3C)."""
    parts = [int(value[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (part / 12.92 if part <= 0.03928 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one, other):
    """Contrast ratio, WCAG 2.1 (W3C)."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_the_measure_of_contrast_is_that_of_the_standard():
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.01)  # just short of 4.5, as often shown


@pytest.mark.parametrize("theme", list(PALETTES))
def test_every_ink_of_every_picture_has_a_colour(theme):
    inks = set().union(*(inks_in(component_picture(kind, "AB1")) for kind in bundled_shelf().kinds.values()))
    for plan in (library_bus(), lookout_cabin()):
        inks |= inks_in(board_picture(plan, find_routes(plan)))
        inks |= set().union(*(inks_in(zone_picture(placed(plan, each))) for each in plan.components.values()))
    for ink in inks:
        assert colour(ink, theme).startswith("#")


@pytest.mark.parametrize("theme", ["light", "dark"])
@pytest.mark.parametrize(
    ("ink", "ground", "least"),
    [("ink", "ground", 7), ("ink", "panel", 7), ("bone-light", "graphite-dark", 7)]
    + [(sign, ground, 3) for sign in ("accent", "stop", "warn", "note") for ground in ("ground", "panel")],
)
def test_words_and_signs_stand_out(theme, ink, ground, least):
    assert contrast(colour(ink, theme), colour(ground, theme)) >= least


def test_all_themes_know_the_same_inks():
    assert set(PALETTES["light"]) == set(PALETTES["dark"])
    assert set(PALETTES["light"]) <= set(PALETTES["paper"])


def test_a_real_colour_stays_as_it_is():
    assert colour("#B3312C", "dark") == "#B3312C"
