"""Stock at hand in a job file: kept as it is, left out where there is none, slips told by their place."""

import json

import pytest
from boards import SAMPLES

from boardplan.files.faults import BadFile
from boardplan.files.plan_file import plan_of_data, plan_of_text, plan_text
from boardplan.model.stock import CableStock, ChannelStock, Stock

BUS = json.loads((SAMPLES / "library-bus.json").read_text(encoding="utf-8"))


def with_stock(**stock):
    return plan_of_data({**BUS, "stock": stock})


def test_stock_is_kept():
    plan = with_stock(
        cables=[
            {"conductor": "70", "colour": "red", "length": 25000, "name": "reel A"},
            {"conductor": "70", "colour": "red", "length": 1160.5, "count": 2},
            {"conductor": "16", "colour": "black", "length": 50000, "count": None},
        ],
        channels=[{"outside": [60, 60], "length": 2000}, {"outside": [60, 60], "length": 830, "count": 1}],
        channel_cut=2.2,
        corners="square",
    )
    assert plan.stock == Stock(
        (
            CableStock("70", "red", 25000, 1, "reel A"),
            CableStock("70", "red", 1160.5, 2),
            CableStock("16", "black", 50000, None),
        ),
        (ChannelStock(60, 60, 2000), ChannelStock(60, 60, 830, 1)),
        channel_cut=2.2,
        corners="square",
    )
    text = plan_text(plan)
    assert plan_of_text(text) == plan
    assert plan_text(plan_of_text(text)) == text


def test_a_job_without_stock_says_nothing_of_it():
    plan = plan_of_data(BUS)
    assert plan.stock == Stock()
    assert "stock" not in json.loads(plan_text(plan))


@pytest.mark.parametrize(
    ("stock", "place"),
    [
        ({"cables": [{"conductor": "70", "colour": "red", "length": 0}]}, "stock.cables[0].length"),
        ({"cables": [{"conductor": "70", "colour": "red", "length": 10, "count": 0}]}, "stock.cables[0].count"),
        ({"cables": [{"conductor": "70", "length": 10}]}, "stock.cables[0].colour"),
        ({"channels": [{"outside": [60], "length": 2000}]}, "stock.channels[0].outside"),
        ({"cable_cut": -1}, "stock.cable_cut"),
        ({"corners": "round"}, "stock.corners"),
        ({"reels": []}, "stock.reels"),
    ],
)
def test_a_slip_is_told_by_its_place(stock, place):
    with pytest.raises(BadFile) as told:
        with_stock(**stock)
    assert place in str(told.value)
