"""Channel load: fill at its two limits, cables too thick or too large, classes that share a channel."""

from dataclasses import replace
from math import pi

import pytest
from checks.plans import WIRE, cable, channel, named, plan_of, unit

CABLE_AREA = pi / 4 * 6**2


def laid(*cables, conductor=WIRE, **fields):
    """Return a plan with a channel between two units, at the height of their terminals R and L."""
    runs = replace(channel("RW", (250, 350), (650, 350)), **fields)
    plan = plan_of(unit("U1", 100, 300), unit("U2", 700, 300), runs, *cables)
    return replace(plan, conductors={**plan.conductors, "wire": conductor})


def through(name, **fields):
    return cable(name, ("U1", "R"), ("U2", "L"), (260, 350), (640, 350), **fields)


@pytest.mark.parametrize(
    ("share", "name", "severity"),
    [
        (40.01, "channel-fuller-than-planned", "warn"),
        (39.99, None, None),
        (45.01, "channel-too-full", "stop"),
        (44.99, "channel-fuller-than-planned", "warn"),
    ],
)
def test_fill(share, name, severity):
    # Three cables in all: pi/4 d² each over their jackets.
    width = 3 * CABLE_AREA / (share / 100) / 30
    plan = laid(through("W1", count=2), through("W2"), inner_width=width, inner_height=30)
    found = [*named(plan, "channel-fuller-than-planned"), *named(plan, "channel-too-full")]
    expected = [(name, severity, pytest.approx(share), "%")] if name else []
    assert [(each.name, each.severity, each.measured, each.unit) for each in found] == expected
    assert all("W1, W2" in each.sentence for each in found)


@pytest.mark.parametrize(("diameter", "thick"), [(18.7, False), (18.8, True)])
def test_thickest_cable_in_a_channel_56_deep(diameter, thick):
    plan = laid(through("W1"), conductor=replace(WIRE, outside_diameter=diameter))
    assert len(named(plan, "cable-too-thick-for-channel")) == thick


@pytest.mark.parametrize(("area", "large"), [(16, False), (16.1, True), (None, False)])
def test_largest_conductor(area, large):
    plan = laid(through("W1"), conductor=replace(WIRE, area=area))
    found = named(plan, "conductor-too-large-for-channel")
    assert [each.things for each in found] == ([("W1", "RW")] if large else [])


@pytest.mark.parametrize(
    ("classes", "dividers", "severity"),
    [
        (("dc", "dc"), (), None),
        (("dc", "signal"), (), None),
        (("dc", "ac"), (), "stop"),
        (("pv", "dc"), (), "stop"),
        (("pv", "ac"), (), "stop"),
        (("ac", "ac"), (), None),
        (("dc", "ac"), (28.0,), "warn"),
    ],
)
def test_classes(classes, dividers, severity):
    cables = [through(f"W{number}", cable_class=each) for number, each in enumerate(classes)]
    found = named(laid(*cables, dividers=dividers), "classes-share-channel")
    assert [each.severity for each in found] == ([severity] if severity else [])


def test_classes_in_different_sections_do_not_share():
    up = [cable("W1", ("U1", "R"), ("U1", "T"), (300, 350), (300, 500), (150, 500), cable_class="ac")]
    up += [cable("W2", ("U2", "L"), ("U2", "T"), (600, 350), (600, 500), (750, 500), cable_class="dc")]
    assert named(laid(*up), "classes-share-channel") == []


@pytest.mark.parametrize("share", [40.01, 45.01])
def test_a_fill_just_over_its_limit_does_not_read_like_it(share):
    plan = laid(through("W1"), inner_width=CABLE_AREA / (share / 100) / 30, inner_height=30)
    (found,) = [*named(plan, "channel-fuller-than-planned"), *named(plan, "channel-too-full")]
    assert f"{share} % full" in found.sentence
