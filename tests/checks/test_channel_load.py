"""Channel load: fill at its two limits, cables too thick or too large, classes that share a channel."""

from dataclasses import replace
from math import pi

import pytest
from checks.plans import WIRE, cable, channel, named, plan_of, unit

from boardplan.files.rule_set_file import find_rule_set

CABLE_AREA = pi / 4 * 6**2


def laid(*cables, conductor=WIRE, **fields):
    """Return a plan with a channel between two units, at the height of their terminals R and L."""
    runs = replace(channel("RW", (250, 350), (650, 350)), **fields)
    plan = plan_of(unit("U1", 100, 300), unit("U2", 700, 300), runs, *cables)
    return replace(plan, conductors={**plan.conductors, "wire": conductor})


def under_the_earlier(plan):
    rules = find_rule_set("trade-practice", "2026.1")
    assert rules is not None
    return replace(plan, rules=rules)


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
        (("pv", "ac"), (28.0,), "warn"),
        (("pv", "dc"), (28.0,), "stop"),
        (("pv", "signal"), (28.0,), "stop"),
        (("pv", "pv"), (), None),
    ],
)
def test_classes(classes, dividers, severity):
    cables = [through(f"W{number}", cable_class=each) for number, each in enumerate(classes)]
    found = named(laid(*cables, dividers=dividers), "classes-share-channel")
    assert [each.severity for each in found] == ([severity] if severity else [])


def test_pv_among_extra_low_voltage_asks_for_its_voltage():
    # Above 60 V never in the extra-low-voltage duct: common practice, no source. No job says the voltage.
    pair = through("W1", cable_class="pv"), through("W2")
    for dividers, even in (((), False), ((28.0,), True)):
        (found,) = named(laid(*pair, dividers=dividers), "classes-share-channel")
        assert "What is the highest voltage of the PV strings? Above 60 V" in found.sentence
        assert ("divided or not" in found.sentence) == even
        assert found.measured is None
    (found,) = named(laid(through("W1", cable_class="pv"), through("W2", cable_class="ac")), "classes-share-channel")
    assert "?" not in found.sentence


def test_pv_and_others_in_different_sections_ask_nothing():
    up = [cable("W1", ("U1", "R"), ("U1", "T"), (300, 350), (300, 500), (150, 500), cable_class="pv")]
    up += [cable("W2", ("U2", "L"), ("U2", "T"), (600, 350), (600, 500), (750, 500), cable_class="dc")]
    assert named(laid(*up), "classes-share-channel") == []


def test_an_earlier_edition_lets_a_divider_do():
    plan = laid(through("W1", cable_class="pv"), through("W2"), dividers=(28.0,))
    (found,) = named(under_the_earlier(plan), "classes-share-channel")
    assert (found.severity, "?" in found.sentence) == ("warn", False)


@pytest.mark.parametrize(
    ("counts", "loaded"),
    [
        ((30,), None),  # 30 current-carrying conductors at a cross-section: NEC 376.22(B)
        ((31,), 31),
        ((15, 15), None),
        ((15, 16), 31),
    ],
)
def test_loaded_conductors(counts, loaded):
    cables = [through(f"W{number}", count=each) for number, each in enumerate(counts)]
    found = named(laid(*cables), "many-loaded-conductors")
    assert [(each.measured, each.severity, each.unit) for each in found] == (
        [(loaded, "note", "conductors")] if loaded else []
    )
    assert all("376.22(B)" in each.sentence and "ask the designer" in each.sentence for each in found)


def test_every_core_counts_and_no_signal_lead():
    # 16 two-core cables are 32 conductors; signal conductors are not current-carrying ones: NEC 376.22(B).
    cores = [through("W1", count=16), through("S1", count=40, cable_class="signal")]
    (found,) = named(laid(*cores, conductor=replace(WIRE, cores=2)), "many-loaded-conductors")
    assert found.measured == 32
    assert named(laid(*cores), "many-loaded-conductors") == []


def test_loaded_conductors_are_counted_in_each_section():
    up = [cable("W1", ("U1", "R"), ("U1", "T"), (300, 350), (300, 500), (150, 500), count=30)]
    up += [cable("W2", ("U2", "L"), ("U2", "T"), (600, 350), (600, 500), (750, 500), count=30)]
    assert named(laid(*up), "many-loaded-conductors") == []


def test_an_earlier_edition_counts_no_loaded_conductors():
    assert named(under_the_earlier(laid(through("W1", count=31))), "many-loaded-conductors") == []


def test_classes_in_different_sections_do_not_share():
    up = [cable("W1", ("U1", "R"), ("U1", "T"), (300, 350), (300, 500), (150, 500), cable_class="ac")]
    up += [cable("W2", ("U2", "L"), ("U2", "T"), (600, 350), (600, 500), (750, 500), cable_class="dc")]
    assert named(laid(*up), "classes-share-channel") == []


@pytest.mark.parametrize("share", [40.01, 45.01])
def test_a_fill_just_over_its_limit_does_not_read_like_it(share):
    plan = laid(through("W1"), inner_width=CABLE_AREA / (share / 100) / 30, inner_height=30)
    (found,) = [*named(plan, "channel-fuller-than-planned"), *named(plan, "channel-too-full")]
    assert f"{share} % full" in found.sentence
