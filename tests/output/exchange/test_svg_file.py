"""SVG read back as XML: true to size, each hole once (SVG 1.1, second edition: 7.7 viewBox, 7.10 units, 9.3 circle)."""

import xml.etree.ElementTree as ET
from collections import Counter

import pytest
from output.exchange.drilled_boards import NAMES

from boardplan.drawing.picture import Disc, Line, Strand, Words
from boardplan.geometry.bends import rounded
from boardplan.geometry.point import Box, Point
from boardplan.output.exchange.layer import BoardDrawing, Layer
from boardplan.output.exchange.svg_file import svg_bytes

SVG = "{http://www.w3.org/2000/svg}"
SQUARE = (Point(0, 0), Point(100, 0), Point(100, 60), Point(0, 60))


def read(data):
    return ET.fromstring(data)  # noqa: S314 - our own file


def origin(root):
    """Where the lower left of the sheet lies in the drawing, as the file says."""
    words = root.find(f"{SVG}desc").text
    x, y = words.rstrip(".").rsplit(" at ", 1)[1].split(", ")
    return float(x), float(y)


def drawing(*marks):
    cut = Layer("CUT-OUTLINE", "cut", (Line(SQUARE, "ink", closed=True),))
    return BoardDrawing("A <board> & more", (cut, Layer("REFERENCE-X", "reference", marks)), Box(-20, -40, 120, 80))


@pytest.mark.parametrize("name", NAMES)
def test_it_is_true_to_size(name, made):
    for _, data in made(name).boards("svg"):
        root = read(data)
        _, _, width, height = map(float, root.get("viewBox").split())
        assert root.get("width") == f"{width:g}mm" or float(root.get("width")[:-2]) == width
        assert root.get("height").endswith("mm")
        assert float(root.get("height")[:-2]) == height


@pytest.mark.parametrize("name", NAMES)
def test_each_hole_is_one_circle_of_its_bit_where_the_hole_list_says(name, made):
    for board, data in made(name).boards("svg"):
        root = read(data)
        left, low = origin(root)
        found = Counter(
            (
                round(float(each.get("cx")) - left, 2) + 0.0,
                round(low - float(each.get("cy")), 2) + 0.0,
                round(2 * float(each.get("r")), 2),
            )
            for each in root.iter(f"{SVG}circle")
        )
        known = [each for each in made(name).all_on(board) if each["bit"] is not None]
        assert found == Counter(
            (round(each["x"], 2) + 0.0, round(each["y"], 2) + 0.0, round(each["bit"], 2)) for each in known
        )


@pytest.mark.parametrize("name", NAMES)
def test_the_outline_is_closed_and_that_of_the_board(name, made):
    for board, data in made(name).boards("svg"):
        root = read(data)
        left, low = origin(root)
        (outline,) = root.find(f".//{SVG}g[@id='CUT-OUTLINE']")
        way = outline.get("d")
        assert way.endswith(" Z")
        places = [tuple(map(float, each.split())) for each in way[1:-2].split(" L")]
        corners = [(x - left, low - y) for x, y in places]
        assert corners == [
            pytest.approx(tuple(each), abs=0.001) for each in made(name).making.plan.boards[board].outline
        ]


def test_dxf_and_svg_have_the_same_layers(made):
    from output.exchange.dxf_groups import entities_of  # noqa: PLC0415

    for (_, svg), (_, dxf) in zip(
        made("lookout cabin").boards("svg"), made("lookout cabin").boards("dxf"), strict=True
    ):
        groups = {each.get("id") for each in read(svg).iter(f"{SVG}g")}
        assert groups == {each.layer for each in entities_of(dxf)}


def test_words_are_escaped_and_keep_their_height():
    root = read(svg_bytes(drawing(Words(Point(10, 10), "R&D <1> \x07", 6.68, "ink", turn=90.0))))
    (text,) = root.iter(f"{SVG}text")
    assert text.text == "R&D <1>  "
    assert float(text.get("font-size")) == pytest.approx(10)  # a capital is 0.668 of the size of our font
    assert text.get("transform") == "rotate(-90 30 70)"
    assert root.find(f"{SVG}title").text == "A <board> & more"


def test_a_left_turn_stays_one_with_y_down():
    pieces = rounded([Point(0, 0), Point(50, 0), Point(50, 50)], 20)
    root = read(svg_bytes(drawing(Strand(pieces, "ink", 1.0))))
    strand = root.find(f".//{SVG}g[@id='REFERENCE-X']")[0]
    assert strand.get("d") == "M20 80 L50 80 A20 20 0 0 0 70 60 L70 30"


def test_the_same_drawing_gives_the_same_bytes():
    marks = Line((Point(0, 0), Point(1 / 3, 2 / 3)), "quiet", dashes=(1.0, 2.0))
    assert svg_bytes(drawing(marks)) == svg_bytes(drawing(marks))
    assert b"M20 80 L20.3333 79.3333" in svg_bytes(drawing(marks))


def test_a_circle_that_is_no_hole_is_refused():
    from boardplan.output.exchange.geometry_audit import BadDrawing  # noqa: PLC0415

    with pytest.raises(BadDrawing, match="no hole"):
        svg_bytes(drawing(Disc(Point(5, 5), 3, None, "ink")))
