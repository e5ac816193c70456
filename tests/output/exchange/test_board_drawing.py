"""What a drawing for machines says besides its holes: whose it is, what stops it, what has to be asked."""

from dataclasses import replace

import pytest
from output.exchange.conftest import make

from boardplan.checks.finding import Finding
from boardplan.drawing.picture import Disc, Words
from boardplan.geometry.point import Point
from boardplan.output.exchange.board_drawing import board_drawing
from boardplan.output.exchange.geometry_audit import drawing_faults
from boardplan.output.making import Making
from boardplan.output.pack import PackRefused, write_pack


def words(drawing):
    return [mark.text for layer in drawing.layers for mark in layer.picture if isinstance(mark, Words)]


def first_drawing(making):
    return board_drawing(making, next(iter(making.plan.boards.values())))


@pytest.fixture(scope="module")
def odd(made):
    """A board with a fixing far off, one over another, and a cut-out through its edge."""
    plan = made("library bus").making.plan
    board = plan.boards["A"]
    notch = (Point(-5, 300), Point(15, 300), Point(15, 320), Point(-5, 320))
    window = (Point(1000, 500), Point(1040, 500), Point(1040, 520), Point(1000, 520))
    things = [
        replace(board, cutouts=(notch, window)),
        replace(plan.fixings["BF-1"], position=Point(-400, 30)),
        replace(plan.fixings["BF-2"], position=plan.fixings["BF-3"].position),
    ]
    return make(plan.with_things(things)).making


def test_it_names_job_board_revision_and_size(made):
    found = words(first_drawing(made("library bus").making))
    assert "LB-01 Library bus, board A Service locker board" in found
    assert any(each.startswith("revision A, ") for each in found)
    assert "Front side, true size: the bare sheet measures 1300 x 880 x 18 mm overall." in found
    assert any("what is behind?" in each for each in found)


def test_it_counts_the_holes_of_each_layer(made):
    drawing = first_drawing(made("library bus").making)
    found = words(drawing)
    for layer in drawing.layers:
        count = sum(isinstance(mark, Disc) for mark in layer.picture)
        if count:
            assert f"{layer.name}: {count} hole{'' if count == 1 else 's'}" in found


def test_all_words_stay_within_the_drawing(made, odd):
    for making in (made("library bus").making, made("honey trailer").making, odd):
        drawing = first_drawing(making)
        for layer in drawing.layers:
            for mark in layer.picture:
                if isinstance(mark, Words):
                    assert drawing.box.holds(mark.at), mark.text


def test_cables_of_the_board_beside_it_are_left_out(made):
    making = made("lookout cabin").making
    cables = {}
    for board in making.plan.boards.values():
        layers = {layer.name: layer for layer in board_drawing(making, board).layers}
        cables[board.id] = len(layers["REFERENCE-CABLES"].picture)
    assert all(count < len(making.plan.cables) for count in cables.values())
    assert sum(cables.values()) > len(making.plan.cables)  # those that cross from one to the other are on both


def test_findings_that_stop_are_on_it(made):
    making = made("library bus").making
    stop = Finding("edge margin", "stop", "PV1 is too near the edge.", ("PV1",), "A", Point(0, 0))
    stopped = Making(replace(making.review, findings=(stop,)), making.printing)
    assert "NOT TO BE ISSUED: 1 finding stops" in words(first_drawing(stopped))
    assert not any("NOT TO BE ISSUED" in each for each in words(first_drawing(making)))


def test_what_has_to_be_asked_is_asked(odd):
    drawing = first_drawing(odd)
    found = words(drawing)
    assert "? BF-1: over the edge of the board: where does it belong?" in found
    assert "? BF-2, BF-3: over another hole: which of them?" in found
    assert any(each.startswith("? ASK-OPENINGS: ") for each in found)
    layers = {layer.name: layer for layer in drawing.layers}
    assert len(layers["ASK-OPENINGS"].picture) == len(layers["CUT-OPENINGS"].picture) == 1
    assert list(drawing_faults(drawing)) == []


def test_a_pack_says_which_drawing_is_not_fit_and_leaves_nothing(made, tmp_path):
    making = made("library bus").making
    board = making.plan.boards["A"]
    bow_tie = replace(board, outline=(Point(0, 0), Point(1300, 880), Point(1300, 0), Point(0, 880)))
    bad = Making(replace(making.review, plan=making.plan.with_things([bow_tie])), making.printing)
    with pytest.raises(PackRefused, match=r"board-A\.dxf is not fit to work from: CUT-OUTLINE: .*crosses itself"):
        write_pack(bad, tmp_path / "p", chosen=("dxf",))
    assert list(tmp_path.iterdir()) == []
