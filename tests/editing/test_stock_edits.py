"""What is at hand, as a person says it: taken as it is, or refused with what was expected."""

from dataclasses import replace

import pytest

from boardplan.editing.refused import EditRefused
from boardplan.editing.stock_edits import with_stock
from boardplan.model.stock import CableStock, ChannelStock, Stock


def reel(plan, **changed):
    return replace(CableStock(plan.cables["W07"].conductor, "black", 25_000.0, 1, "new reel"), **changed)


def test_stock_is_taken_and_the_same_again_changes_nothing(bus_plan):
    stock = Stock((reel(bus_plan),), (ChannelStock(60, 60, 2000.0),))
    changed = with_stock(bus_plan, stock)
    assert changed.stock == stock
    assert with_stock(changed, stock) is changed


@pytest.mark.parametrize(
    ("changed", "words"),
    [
        ({"length": 0.0}, "How long is new reel"),
        ({"length": -1.0, "name": ""}, "How long is a reel"),
        ({"count": 0}, "How many of new reel"),
        ({"count": 1001}, "Expected 1 to 1000"),
        ({"conductor": "none such"}, "no conductor none such"),
    ],
)
def test_a_reel_that_cannot_be_is_refused(bus_plan, changed, words):
    with pytest.raises(EditRefused, match=words):
        with_stock(bus_plan, Stock((reel(bus_plan, **changed),)))


def test_a_cut_wider_than_any_blade_is_refused(bus_plan):
    with pytest.raises(EditRefused, match="Expected 0 to 100"):
        with_stock(bus_plan, Stock(channel_cut=101.0))
