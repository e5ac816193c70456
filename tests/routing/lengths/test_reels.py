"""What to take along, against two boards reckoned by hand (our own worked example)."""

from dataclasses import replace

import pytest
from boards import library_bus, lookout_cabin
from checks.plans import rules

from boardplan.routing.find_route import find_routes
from boardplan.routing.lengths.cut_length import cut_lengths
from boardplan.routing.lengths.reels import ferrule_needs, lug_needs, reel_needs, stock_lead_needs, tube_needs

REELS = [
    (
        library_bus,
        [
            ("70", "red", 4, 1856, 1500, 3.4),
            ("70", "black", 3, 2060, 1550, 3.7),
            ("16", "red", 4, 8370, 6000, 14.4),
            ("16", "black", 3, 1565, 645, 2.3),
            ("6 PV", "red", 2, 4605, 4300, 9.0),
            ("6 PV", "black", 2, 4640, 4300, 9.0),
            ("2x1.5", "red/black", 1, 485, 485, 1.0),
            ("2.5", "red/black", 10, 29000, 2900, 31.9),
            ("3x6", "grey", 2, 4925, 4450, 9.4),
            ("4x6", "grey", 1, 3200, 3200, 6.4),
        ],
    ),
    (
        lookout_cabin,
        [
            ("95", "red", 2, 1446, 1350, 2.8),
            ("95", "black", 2, 1446, 1350, 2.8),
            ("50", "red", 2, 1740, 870, 2.7),
            ("50", "black", 2, 2110, 1055, 3.2),
            ("16", "red", 2, 1350, 745, 2.1),
            ("16", "black", 2, 1255, 770, 2.1),
            ("6 PV", "red", 2, 640, 320, 1.0),
            ("6 PV", "black", 2, 710, 355, 1.1),
            ("6 PV", "red/black", 4, 27500, 7050, 34.6),
            ("2x1.5", "red/black", 1, 520, 520, 1.1),
            ("3x6", "grey", 2, 5400, 2700, 8.1),
        ],
    ),
]


def lengths_of(plan):
    return cut_lengths(plan, find_routes(plan))


@pytest.mark.parametrize(("board", "rows"), REELS)
def test_reels_are_as_reckoned_by_hand(board, rows):
    plan = board()
    needs = reel_needs(plan, lengths_of(plan))
    found = [(each.conductor, each.colour, each.pieces, each.total, each.reserve, each.take) for each in needs]
    assert sorted(found) == sorted(rows)
    assert not any(each.open for each in needs)


def test_lugs_ferrules_and_leads_of_the_library_bus(bus_plan):
    lengths = lengths_of(bus_plan)
    assert {each.name: each.count for each in lug_needs(bus_plan, lengths)} == {
        "16 mm² x M10 straight": 3,
        "16 mm² x M6 straight": 2,
        "16 mm² x M8 straight": 3,
        "70 mm² x M10 straight": 9,
        "70 mm² x M8 straight": 3,
    }
    ferrules = {each.name: each.count for each in ferrule_needs(bus_plan, lengths)}
    assert ferrules == {"1.5 mm²": 2, "16 mm²": 5, "6 mm²": 6}
    leads = {each.name: each.count for each in stock_lead_needs(bus_plan, lengths)}
    assert leads == {"data lead 0.3 m": 1, "data lead 1.5 m": 1, "data lead 1 m": 1}


def test_a_twin_with_a_lug_is_counted_though_its_lug_is_not_measured(cabin_plan):
    lengths = lengths_of(cabin_plan)
    lugs = {each.name: each.count for each in lug_needs(cabin_plan, lengths)}
    assert lugs["2 x 1.5 mm² x M8 straight"] == 1
    assert any("not measured" in note for note in lengths["W19"].notes)


def test_tubes_are_counted_by_size_colour_and_length(bus_plan):
    """All 70 mm² ends on the board: by hand, W01 to W07 have 3 black cables with 5 ends and 4 red ones with 7."""
    plan = replace(bus_plan, rules=rules())
    needs = {each.name: each.count for each in tube_needs(plan, lengths_of(plan))}
    assert (needs["70 mm², black, 52 mm"], needs["70 mm², red, 52 mm"]) == (5, 7)
    assert tube_needs(bus_plan, lengths_of(bus_plan)) == ()
