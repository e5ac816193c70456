"""Tints: mixing and lightness at points anyone can reckon."""

import pytest

from boardplan.drawing.tint import lightness, mixed


@pytest.mark.parametrize(
    ("colour", "other", "share", "result"),
    [
        ("#000000", "#ffffff", 0.5, "#808080"),
        ("#102030", "#ffffff", 0, "#102030"),
        ("#102030", "#ffffff", 1, "#ffffff"),
    ],
)
def test_mixed(colour, other, share, result):
    assert mixed(colour, other, share) == result


@pytest.mark.parametrize(("colour", "light"), [("#000000", 0), ("#ffffff", 1), ("#00ff00", 0.587)])
def test_lightness_is_the_luma_of_bt_601(colour, light):
    assert lightness(colour) == pytest.approx(light)
