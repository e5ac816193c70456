"""Where fuses and breakers sit, and what a job may say of them."""

from dataclasses import replace

import pytest
from boards import library_bus

from boardplan.files.shelf_file import bundled_shelf
from boardplan.model.fuse import Fuse
from boardplan.model.fuse_place import breaker_places, fuse_in, fuse_places, places_in, places_on
from boardplan.model.joins import broken_joins


@pytest.mark.parametrize(
    ("kind", "places"),
    [
        ("class-t-fuse-block", [["LINE", "LOAD"]]),
        ("strip-fuse-block-3-way", [["A1", "B1"], ["A2", "B2"], ["A3", "B3"]]),
        ("fused-busbar-4-way-double-fed", [["F1"], ["F2"], ["F3"], ["F4"]]),
        ("blade-fuse-holder-single", [["IN", "OUT"]]),
        ("busbar-5-stud", []),
        ("rail-breaker-2-pole", []),
    ],
)
def test_where_fuses_sit(kind, places):
    found = fuse_places(bundled_shelf().kinds[kind])
    assert [[terminal.id for terminal in each] for each in found] == places


@pytest.mark.parametrize(
    ("kind", "places"),
    [
        ("rail-breaker-2-pole", [["IN1", "IN2", "OUT1", "OUT2"]]),  # one lever for both poles
        ("panel-breakers-3-way", [["I1", "O1"], ["I2", "O2"], ["I3", "O3"]]),
        ("hydraulic-magnetic-breaker-250a", [["LINE", "LOAD"]]),
        ("class-t-fuse-block", []),
    ],
)
def test_where_breakers_sit(kind, places):
    found = breaker_places(bundled_shelf().kinds[kind])
    assert [[terminal.id for terminal in each] for each in found] == places


def test_every_place_of_a_job_has_a_name_of_its_own():
    names = [each.name for each in places_in(library_bus())]
    assert names == [
        *(f"LP1.O{n}" for n in range(1, 7)),
        "FT1",
        *(f"PB1.F{n}" for n in range(1, 6)),
    ]


def test_every_place_on_the_shelf_can_be_named_in_a_job():
    component = library_bus().components["FT1"]
    for kind in bundled_shelf().kinds.values():
        places = [each.place for each in places_on(component, kind)]
        assert len(set(places)) == len(places)


def with_fuses(*fuses, of="PB1"):
    plan = library_bus()
    return plan.with_things([replace(plan.components[of], fuses=fuses)])


def test_what_is_known_is_found_by_place_and_nothing_is_filled_in():
    known = Fuse("F2", "strip fuse ISO 8820-5", 40)
    plan = with_fuses(known)
    told = {each.name: fuse_in(plan, each) for each in places_in(plan)}
    assert told["PB1.F2"] == known
    assert told["PB1.F1"] == Fuse("F1")
    assert told["FT1"] == Fuse()


@pytest.mark.parametrize(
    ("plan", "field", "expected"),
    [
        (
            with_fuses(Fuse("F9")),
            "fuses[0].place",
            "a fuse place of PB1 ('F1', 'F2', 'F3', 'F4', 'F5'); there is no 'F9'",
        ),
        (with_fuses(Fuse("F1"), Fuse("F1")), "fuses[1].place", "a fuse place that is named once"),
        (with_fuses(Fuse(), of="NB1"), "fuses[0].place", "a fuse place of NB1 (it has none); there is no ''"),
    ],
)
def test_a_fuse_in_a_place_that_is_not_there_is_told(plan, field, expected):
    (broken,) = broken_joins(plan)
    assert (broken.collection, broken.field, broken.expected) == ("components", field, expected)
