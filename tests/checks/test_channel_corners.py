"""Channel corners: a cable at the radii it should and must have, in a square corner just wide enough and just not."""

from dataclasses import replace
from math import sqrt

import pytest
from checks.plans import WIRE, cable, channel, named, plan_of, unit

from boardplan.files.rule_set_file import find_rule_set

PREFER, LEAST = 4 * 6, 3 * 6
"""Radii of fine-strand cable 6 thick: 4 and 3 times its diameter, common practice, no source."""
NAMES = "channel-corner-too-tight", "channel-corner-tighter-than-preferred"
RUN = (250, 350), (500, 350), (500, 700)
ROUND = (260, 350), (500, 350), (500, 690), (850, 690)


def width_for(radius, diameter=6.0):
    """Return how wide a square corner is from whose outer walls a cable just bends past the inside corner.

    The bend is about (R + d/2, R + d/2) from the outer corner, the inside corner (w, w) on its inner edge.
    """
    return radius + diameter / 2 - (radius - diameter / 2) / sqrt(2)


def laid(width, *pins, line=RUN, **fields):
    """Return a plan with a cable in a bent channel of an inside width."""
    run = replace(channel("RW", *line), inner_width=width, **fields)
    w1 = cable("W1", ("U1", "R"), ("U2", "T"), *(pins or ROUND))
    return plan_of(unit("U1", 100, 300), unit("U2", 800, 500), run, w1)


def found(plan):
    return [(each.name, each.severity) for name in NAMES for each in named(plan, name)]


@pytest.mark.parametrize(
    ("width", "expected"),
    [
        (width_for(PREFER) + 0.01, []),
        (width_for(PREFER) - 0.01, [("channel-corner-tighter-than-preferred", "warn")]),
        (width_for(LEAST) + 0.01, [("channel-corner-tighter-than-preferred", "warn")]),
        (width_for(LEAST) - 0.01, [("channel-corner-too-tight", "stop")]),
        (6, [("channel-corner-too-tight", "stop")]),
        (5.9, [("channel-corner-too-tight", "stop")]),
    ],
)
def test_square_corner(width, expected):
    assert found(laid(width)) == expected


def test_the_finding_names_channel_corner_cable_and_what_fits():
    plan = laid(width_for(LEAST, 6) - 0.5)
    (tight,) = named(plan, "channel-corner-too-tight")
    assert tight.things == ("W1", "RW")
    assert tight.place == (500, 350)
    assert tight.limit == LEAST
    # As in `width_for`, the other way round: R (1 - 1/sqrt 2) = w - d/2 (1 + 1/sqrt 2).
    width = width_for(LEAST) - 0.5
    assert tight.measured == pytest.approx((width - 3 * (1 + 1 / sqrt(2))) / (1 - 1 / sqrt(2)))
    for words in ("Cable W1", "corner 1 of channel RW", "radius 16.3 mm", "18 mm is asked", "mm wide inside"):
        assert words in tight.sentence


def test_a_cable_thicker_than_the_channel_is_wide_does_not_fit_at_all():
    (tight,) = named(laid(5.9), "channel-corner-too-tight")
    assert "does not fit at all round corner 1 of channel RW" in tight.sentence
    assert (tight.measured, tight.limit) == (5.9, 6)


def test_a_cable_that_leaves_before_the_corner_is_not_asked():
    before = (260, 350), (450, 350), (450, 690), (850, 690)
    assert found(laid(5.9, *before)) == []
    straight_out = (260, 350), (700, 350), (700, 690), (850, 690)
    assert found(laid(5.9, *straight_out)) == []


def test_only_the_corner_it_goes_round_and_the_sharper_one_of_two():
    line = (250, 350), (500, 350), (500, 500), (700, 700)
    pins = (260, 350), (500, 350), (500, 500), (690, 690), (850, 690)
    (tight,) = named(laid(width_for(LEAST) - 0.1, *pins, line=line), "channel-corner-too-tight")
    assert "corner 1" in tight.sentence
    second = [(700, 700), (500, 500), (500, 350), (250, 350)]
    (tight,) = named(laid(width_for(LEAST) - 0.1, *pins, line=second), "channel-corner-too-tight")
    assert "corner 2" in tight.sentence


def test_a_point_in_the_middle_of_a_leg_is_no_corner():
    line = (250, 350), (400, 350), (400, 350), (500, 350), (500, 700)
    (tight,) = named(laid(width_for(LEAST) - 0.01, line=line), "channel-corner-too-tight")
    assert "corner 1 of" in tight.sentence
    assert tight.place == (500, 350)


def test_a_divided_channel_is_as_wide_as_its_widest_part():
    wide = width_for(PREFER) + 0.01
    assert found(laid(wide + 5, dividers=(5.0,))) == []
    assert found(laid(wide + 5, dividers=(5.1,))) == [("channel-corner-tighter-than-preferred", "warn")]


def test_a_stiff_cable_wants_six_times_its_diameter():
    plan = laid(width_for(36) - 0.01)
    stiff = replace(plan, conductors={**plan.conductors, "wire": replace(WIRE, construction="stiff")})
    assert found(stiff) == [("channel-corner-too-tight", "stop")]


def test_an_earlier_edition_does_not_ask():
    rules = find_rule_set("trade-practice", "2026.1")
    assert rules is not None
    assert found(replace(laid(5.9), rules=rules)) == []
