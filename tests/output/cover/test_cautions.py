"""Cautions: each is there where the job asks for it, and not where it doesn't; what nobody weighed is no lift."""

from dataclasses import replace

import pytest
from boards import honey_trailer, library_bus, lookout_cabin

from boardplan.checks.review import review_of
from boardplan.model.tray import Battery, Tray
from boardplan.output.cover.cautions import ALONE, cautions_of

REVIEW = review_of(library_bus())


def told(plan, *, template=True):
    return [(each.key, each.words) for each in cautions_of(replace(REVIEW, plan=plan), template=template)]


def keys(plan):
    return {key for key, _ in told(plan)}


def without(plan, *classes):
    return plan.without([each.id for each in plan.cables.values() if each.cable_class in classes])


def test_what_a_bus_asks_for():
    assert keys(library_bus()) == {
        *("bars", "behind", "shut-off", "pv", "battery", "capacitors", "mains", "lift", "cooling", "trays"),
        *("torque", "estimated", "revision"),
    }


def test_pv_and_mains_only_where_there_are_any():
    bus = without(library_bus(), "pv", "ac")
    bus = bus.without([each.id for each in bus.components.values() if bus.kind_of(each).family == "PV disconnects"])
    assert {"pv", "mains"} & keys(bus) == set()
    assert "battery" not in keys(without(bus, "dc"))


def test_a_template_asks_for_its_bars():
    assert "bars" not in {key for key, _ in told(library_bus(), template=False)}


def test_matched_cables_are_named():
    assert ("matched", "Matched cables (M+, M-, MAC): do not trim one alone.") in told(lookout_cabin())
    assert "matched" not in keys(honey_trailer())


def test_a_pad_only_where_a_kind_asks():
    bus = library_bus()
    kinds = {key: replace(kind, non_combustible_backing=key == "class-t-fuse-block") for key, kind in bus.kinds.items()}
    assert ("pads", "Non-combustible pad behind FT1: no fabric there.") in told(replace(bus, kinds=kinds))
    assert "pads" not in keys(bus)


def test_a_lift_names_the_mass_and_nothing_that_nobody_weighed():
    """Board A of the bus is carried in with 26.7 kg (worked by hand with the sample); 23 kg: NIOSH 94-110."""
    assert ALONE == 23
    assert ("lift", "Two-person lift: board A, 26.7 kg without cables.") in told(library_bus())
    lifts = [words for key, words in told(lookout_cabin()) if key == "lift"]
    assert [words[:30] for words in lifts] == ["Two-person lift: INV1, 27.4 kg", "Two-person lift: INV2, 27.4 kg"]
    cabin = lookout_cabin()
    unknown = replace(cabin, kinds={key: replace(kind, mass=None) for key, kind in cabin.kinds.items()})
    assert "lift" not in keys(unknown)


@pytest.mark.parametrize(("mass", "named"), [(None, False), (23, False), (23.1, True)])
def test_a_heavy_battery_is_a_lift(mass, named):
    plan = replace(honey_trailer(), trays=(Tray("T9", battery=Battery(mass=mass)),))
    assert any("T9" in words for _, words in told(plan)) == named
    assert "trays" in keys(plan)


def test_an_estimated_way_is_named():
    assert ("estimated", "Estimated on the way of W32: measure on site before cutting.") in told(library_bus())
