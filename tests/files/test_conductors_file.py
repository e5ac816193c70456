"""The conductors on the shelf: named gauges against the published formula, measures that hang together."""

import re

import pytest

from boardplan.files.shelf_file import bundled_shelf

CONDUCTORS = bundled_shelf().conductors
TRADE_GAUGES = {"6": 6, "4": 4, "2": 2, "1/0": 0, "2/0": -1, "3/0": -2, "4/0": -3}


def gauge_area(number):
    """Area in mm² of AWG: d = 0.005 in x 92^((36 - n) / 39) (ASTM B258, definition of gauge)."""
    diameter = 0.005 * 25.4 * 92 ** ((36 - number) / 39)
    return 3.141592653589793 / 4 * diameter**2


@pytest.mark.parametrize(
    ("number", "published"),
    # copper-wire table of an open textbook after ASTM B258, mm²
    [(6, 13.302), (4, 21.151), (2, 33.631), (0, 53.475), (-1, 67.431), (-2, 85.029), (-3, 107.219)],
)
def test_formula_gives_the_published_areas(number, published):
    assert gauge_area(number) == pytest.approx(published, abs=0.001)


@pytest.mark.parametrize("conductor", [each for each in CONDUCTORS.values() if "AWG" in each.name], ids=lambda c: c.id)
def test_the_gauge_named_is_the_nearest_of_the_trade(conductor):
    named = re.search(r"\(([\d/]+) AWG\)", conductor.name)[1]
    nearest = min(
        TRADE_GAUGES,
        key=lambda gauge: max(
            conductor.area / gauge_area(TRADE_GAUGES[gauge]), gauge_area(TRADE_GAUGES[gauge]) / conductor.area
        ),
    )
    assert named == nearest


@pytest.mark.parametrize("conductor", [each for each in CONDUCTORS.values() if each.lug], ids=lambda c: c.id)
def test_lugged_conductors_strip_a_little_more_than_the_barrel(conductor):
    # common practice, no source: barrel depth + 2 mm, so that copper just shows
    assert conductor.strip == conductor.lug.strip == conductor.lug.barrel + 2


@pytest.mark.parametrize("conductor", [each for each in CONDUCTORS.values() if each.mass_per_m], ids=lambda c: c.id)
def test_a_cable_weighs_more_than_its_copper(conductor):
    # copper 8.89 g/cm³ (IACS basis); jackets add to it
    if conductor.area:
        assert conductor.mass_per_m > conductor.area * conductor.cores * 8.89e-3 * 0.95
