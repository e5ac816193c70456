"""What a cable clears with its bends: not at its corners, which lie outside of them, but inside of them."""

import math

import pytest
from checks.plans import cable, fixing, named, plan_of, unit

PINS = ((500, 150), (500, 550))
"""A way of 10 mm², 6 mm thick, level, up and level again; its bends have a radius of 24 mm."""
RADIUS, HALF, SQUARE = 24.0, 3.0, 20.0


def pinned(*things):
    ends = unit("U1", 100, 100), unit("U2", 800, 500)
    return plan_of(*ends, cable("W1", ("U1", "R"), ("U2", "L"), *PINS, way="outside"), *things)


def test_a_fixing_at_a_corner_is_clear_of_the_bend():
    """Its square begins at the corner, on its outer side; the bend passes 0.41 R inside of that."""
    assert named(pinned(fixing("BF1", 500 + SQUARE / 2, 150 - SQUARE / 2)), "fixing-under-cable") == []


@pytest.mark.parametrize(("off", "found"), [(0.1, False), (-0.1, True)])
def test_a_fixing_inside_of_a_bend_is_as_near_as_the_bend_comes(off, found):
    """The square's lower right corner lies on the line from the bend's centre to the way's corner."""
    inside = (RADIUS - HALF - off) * math.sqrt(0.5)
    x, y = 500 - RADIUS + inside, 150 + RADIUS - inside
    plan = pinned(fixing("BF1", x - SQUARE / 2, y + SQUARE / 2))
    assert bool(named(plan, "fixing-under-cable")) is found
