"""Running dimensions from the datum corner, bare or covered."""

from dataclasses import replace

import pytest

from boardplan.geometry.point import Point
from boardplan.model.board import Board, Datum, Fabric
from boardplan.output.holes.datum import datum_words, half_mm, pitch_text, running

BOARD = Board("A", "", (Point(0, 0), Point(800, 0), Point(800, 600), Point(0, 600)), fabric=Fabric(2))


@pytest.mark.parametrize(
    ("corner", "edge", "expected"),
    [
        ("lower-left", "bare", (100, 50)),
        ("lower-right", "bare", (700, 50)),
        ("upper-left", "bare", (100, 550)),
        ("upper-right", "bare", (700, 550)),
        ("lower-left", "covered", (102, 52)),
        ("upper-right", "covered", (702, 552)),
    ],
)
def test_running_dimensions(corner, edge, expected):
    assert running(replace(BOARD, datum=Datum(corner, edge)), Point(100, 50)) == expected


@pytest.mark.parametrize(
    ("length", "text"), [(46, "46.0"), (46.24, "46.0"), (46.25, "46.5"), (46.5, "46.5"), (0, "0.0"), (46.76, "47.0")]
)
def test_metric_to_half_a_millimetre(length, text):
    assert half_mm(length) == text


def test_pitches_are_finer_than_places():
    """168 mm is 6.6142 in, nearest 1/64: 6-39/64 = 6.6094; computed by hand."""
    assert pitch_text(168, "inch") == "6-39/64 in (168)"
    assert pitch_text(168.25, "mm") == "168.3"


@pytest.mark.parametrize(
    ("edge", "fabric", "words"),
    [
        ("bare", Fabric(2), "bare edges, upper right corner"),
        ("covered", Fabric(2), "covered edges, upper right corner, 2 mm of fabric counted in"),
        ("covered", None, "bare edges, upper right corner"),  # there is nothing on them
    ],
)
def test_words_of_the_datum(edge, fabric, words):
    assert datum_words(replace(BOARD, fabric=fabric, datum=Datum("upper-right", edge))) == words
