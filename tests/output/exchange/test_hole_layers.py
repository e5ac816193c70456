"""Each hole is on the layer that says how it is drilled; what a machine must not drill unasked is on others."""

import pytest

from boardplan.geometry.point import Box, Point
from boardplan.model.board import Board
from boardplan.model.holes import Hole
from boardplan.output.exchange.hole_layers import NO_BIT, NO_DEPTH, OFF_BOARD, SAME_PLACE, drilled_layers

CUTOUT = (Point(200, 100), Point(300, 100), Point(300, 200), Point(200, 200))
BOARD = Board("A", "", Box(0, 0, 600, 400).corners(), (CUTOUT,))


def hole(name, x, y, bit=8.0, depth=None, stage="shop"):
    return Hole(name, "A", name, Point(x, y), bit, depth, "through", "", "", stage)


def named(*holes, screws=()):
    return {each.name: [one.id for one in each.holes] for each in drilled_layers(BOARD, holes, screws)}


@pytest.mark.parametrize(
    ("one", "layer"),
    [
        (hole("h", 50, 50), "DRILL-THROUGH-8"),
        (hole("h", 50, 50, 2.8, 15.0), "DRILL-PILOT-2.8-DEEP-15"),
        (hole("h", 50, 50, 2.75, 14.5, "site"), "SITE-PILOT-2.75-DEEP-14.5"),
        (hole("h", 50, 50, None), NO_BIT),
        (hole("h", -50, 50, None), NO_BIT),
        (hole("h", 50, 50, 2.8, -1.0), NO_DEPTH),
        (hole("h", 3.98, 50), OFF_BOARD),
        (hole("h", 4.0, 50), "DRILL-THROUGH-8"),
        (hole("h", 250, 150), OFF_BOARD),
        (hole("h", 302, 150), OFF_BOARD),
        (hole("h", 304, 150), "DRILL-THROUGH-8"),
        (hole("h", -400, 30, stage="site"), OFF_BOARD),
    ],
)
def test_a_hole_is_on_the_layer_that_says_how_it_is_drilled(one, layer):
    assert named(one) == {layer: ["h"]}


def test_holes_over_each_other_are_asked_about_whatever_they_are():
    found = named(hole("a", 50, 50), hole("b", 57.9, 50), hole("c", 65.9, 50), hole("d", 80, 50, None))
    assert found == {SAME_PLACE: ["a", "b"], "DRILL-THROUGH-8": ["c"], NO_BIT: ["d"]}


def test_the_screw_of_a_clamp_keeps_off_the_layers_of_the_shop():
    screw = hole("W07-C1", 100, 50, 2.4, 15.0)
    assert named(hole("a", 50, 50), screws=[screw]) == {"DRILL-THROUGH-8": ["a"], "CLAMP-PILOT-2.4-DEEP-15": ["W07-C1"]}
    assert named(hole("a", 101, 50), screws=[screw]) == {SAME_PLACE: ["a", "W07-C1"]}
