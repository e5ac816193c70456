"""Open questions: one for each kind in use that lacks something a check needs."""

from dataclasses import replace

import pytest
from checks.plans import NUT, SCREW, UNIT, named, plan_of, unit


@pytest.mark.parametrize(
    ("changes", "missing"),
    [
        ({}, None),
        ({"mass": None}, "mass"),
        ({"flange": None}, "flange thickness"),
        ({"fastener": ""}, "fastener"),
        ({"flange": None, "fastener": "nut"}, None),  # a machine screw is cut to suit
        ({"fastener": "", "holes": ()}, None),
        ({"mass": None, "flange": None}, "mass and its flange thickness"),
    ],
)
def test_question(changes, missing):
    plan = plan_of(unit("U1", 300, 300), unit("U2", 500, 300), kinds=[replace(UNIT, **changes)])
    found = named(replace(plan, fasteners={"screw": SCREW, "nut": NUT}), "kind-data-missing")
    assert [each.severity for each in found] == (["note"] if missing else [])
    assert all(f"what is its {missing}?" in each.sentence for each in found)
    assert all(each.things == ("U1", "U2") for each in found)


def test_screw_without_a_length():
    plan = plan_of(unit("U1", 300, 300))
    (found,) = named(replace(plan, fasteners={"screw": replace(SCREW, length=None)}), "kind-data-missing")
    assert "screw length" in found.sentence
