"""Battery trays in a job file: kept as they are, left out where there are none, slips told by their place."""

import json

import pytest
from boards import SAMPLES

from boardplan.files.faults import BadFile
from boardplan.files.plan_file import plan_of_data, plan_of_text, plan_text
from boardplan.geometry.point import Point
from boardplan.model.tray import Battery, Tray, TrayBuilt, TrayExit, TrayFixing, TrayGaps

TRAILER = json.loads((SAMPLES / "honey-trailer.json").read_text(encoding="utf-8"))


def with_trays(*trays):
    return plan_of_data({**TRAILER, "trays": list(trays)})


def test_a_tray_is_kept():
    plan = with_trays(
        {
            "id": "T1",
            "craft": "boat",
            "units": "inch",
            "battery": {"length": 390, "width": 190, "height": 240.5, "mass": 26, "terminals": "back"},
            "columns": 4,
            "rows": 1,
            "along": "width",
            "gaps": {"side": 10, "between": 20},
            "fixings": [{"at": [-15, 60], "bolt": "M10"}, {"into": "a bearer"}],
            "straps": [210, 630.5],
            "exits": [{"name": "plus", "wall": "left", "along": 120, "height": 200, "diameter": 40}],
            "built": {"length": 841, "date": "2026-11-01"},
        },
        {"id": "T2"},
    )
    assert plan.trays == (
        Tray(
            "T1",
            craft="boat",
            units="inch",
            battery=Battery(390, 190, 240.5, 26, "back"),
            columns=4,
            rows=1,
            along="width",
            gaps=TrayGaps(10, 20),
            fixings=(TrayFixing(Point(-15, 60), "M10"), TrayFixing(into="a bearer")),
            straps=(210, 630.5),
            exits=(TrayExit("plus", "left", 120, 200, 40),),
            built=TrayBuilt(length=841, date="2026-11-01"),
        ),
        Tray("T2"),
    )
    assert [tray.count for tray in plan.trays] == [4, None]
    text = plan_text(plan)
    assert plan_of_text(text) == plan
    assert plan_text(plan_of_text(text)) == text
    assert json.loads(text)["trays"][1] == {"id": "T2"}


def test_a_job_without_trays_says_nothing_of_them():
    plan = plan_of_data(TRAILER)
    assert plan.trays == ()
    assert "trays" not in json.loads(plan_text(plan))


@pytest.mark.parametrize(
    ("tray", "place"),
    [
        ({}, "trays[0].id"),
        ({"id": "T1", "columns": 0}, "trays[0] 'T1'.columns"),
        ({"id": "T1", "battery": {"length": -1}}, "trays[0] 'T1'.battery.length"),
        ({"id": "T1", "battery": {"plus": "left"}}, "trays[0] 'T1'.battery.plus"),
        ({"id": "T1", "gaps": {"side": -0.1}}, "trays[0] 'T1'.gaps.side"),
        ({"id": "T1", "exits": [{"wall": "left"}]}, "trays[0] 'T1'.exits[0].name"),
        ({"id": "T1", "fixings": [{"at": [1]}]}, "trays[0] 'T1'.fixings[0].at"),
        ({"id": "T1", "finished_by": "Friday"}, "trays[0] 'T1'.finished_by"),
        ({"id": "T1", "colour": "red"}, "trays[0] 'T1'.colour"),
    ],
)
def test_a_slip_is_told_by_its_place(tray, place):
    with pytest.raises(BadFile) as told:
        with_trays(tray)
    assert place in str(told.value)


def test_an_id_is_used_once():
    with pytest.raises(BadFile, match="an id that is used once"):
        with_trays({"id": "T1"}, {"id": "T1"})
