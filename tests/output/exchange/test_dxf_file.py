"""DXF read back twice: by its group codes, with nothing of the library, and by the library with its own audit.

Group codes, $INSUNITS 4 (millimetres), $MEASUREMENT 1 (metric), $ACADVER AC1024 (R2010): the DXF reference for R2010.
"""

import io
import math
from collections import Counter

import ezdxf
import pytest
from output.exchange.drilled_boards import NAMES
from output.exchange.dxf_groups import entities_of, header_value
from output.expected_holes import LIBRARY_BUS

from boardplan.drawing.picture import Disc, Line, Strand, Words
from boardplan.geometry.bends import rounded
from boardplan.geometry.point import Box, Point
from boardplan.output.exchange.dxf_file import dxf_bytes, plain_words
from boardplan.output.exchange.geometry_audit import BadDrawing
from boardplan.output.exchange.layer import BoardDrawing, Layer

SQUARE = (Point(0, 0), Point(100, 0), Point(100, 60), Point(0, 60))


def drawing(*layers):
    cut = Layer("CUT-OUTLINE", "cut", (Line(SQUARE, "ink", closed=True),))
    return BoardDrawing("A board", (cut, *layers), Box(-20, -40, 120, 80))


def as_set(holes):
    return Counter((round(x, 2) + 0.0, round(y, 2) + 0.0, round(bit, 2)) for x, y, bit in holes)


def circles(data):
    found = [each for each in entities_of(data) if each.sort == "CIRCLE"]
    return as_set((each.number(10), each.number(20), 2 * each.number(40)) for each in found)


@pytest.mark.parametrize("name", NAMES)
def test_it_opens_without_a_fault_in_millimetres(name, made):
    for _, data in made(name).boards("dxf"):
        assert header_value(data, "$INSUNITS").strip() == "4"
        assert header_value(data, "$MEASUREMENT").strip() == "1"
        assert header_value(data, "$ACADVER") == "AC1024"
        document = ezdxf.read(io.StringIO(data.decode("utf-8").replace("\r\n", "\n")))
        found = document.audit()
        assert not found.errors
        assert not found.fixes


@pytest.mark.parametrize("name", NAMES)
def test_each_hole_is_one_circle_of_its_bit_where_the_hole_list_says(name, made):
    for board, data in made(name).boards("dxf"):
        known = [each for each in made(name).all_on(board) if each["bit"] is not None]
        assert known
        assert circles(data) == as_set((each["x"], each["y"], each["bit"]) for each in known)


def test_the_holes_worked_out_by_hand_are_all_there_and_no_other(made):
    ((_, data),) = made("library bus").boards("dxf")
    assert circles(data) == as_set((x, y, bit) for _, _, x, y, bit, _ in LIBRARY_BUS)


@pytest.mark.parametrize("name", NAMES)
def test_a_hole_whose_bit_nobody_knows_is_a_cross_and_a_question(name, made):
    for board, data in made(name).boards("dxf"):
        unknown = Counter((each["x"], each["y"]) for each in made(name).holes_on(board) if each["bit"] is None)
        marks = [each for each in entities_of(data) if each.layer == "DRILL-UNKNOWN"]
        assert sum(unknown.values()) == sum(each.sort == "TEXT" and each.of(1) == ["?"] for each in marks)
        crossing = Counter()
        for each in marks:
            if each.sort == "LWPOLYLINE":
                (x0, y0), (x1, y1) = each.corners
                crossing[round((x0 + x1) / 2, 6), round((y0 + y1) / 2, 6)] += 1
        assert crossing == Counter({place: 2 * count for place, count in unknown.items()})


def test_some_random_board_has_holes_of_each_sort(made):
    layers = {each.layer for name in NAMES for _, data in made(name).boards("dxf") for each in entities_of(data)}
    assert "DRILL-UNKNOWN" in layers
    for start in ("DRILL-PILOT-", "DRILL-THROUGH-", "SITE-", "CLAMP-"):
        assert any(each.startswith(start) for each in layers), start


@pytest.mark.parametrize("name", NAMES)
def test_outlines_are_closed_and_those_of_the_board(name, made):
    for board, data in made(name).boards("dxf"):
        own = made(name).making.plan.boards[board]
        cut = [each for each in entities_of(data) if each.layer.startswith("CUT-")]
        assert all(each.sort == "LWPOLYLINE" and each.closed for each in cut)
        outline = [each for each in cut if each.layer == "CUT-OUTLINE"]
        assert [each.corners for each in outline] == [[tuple(point) for point in own.outline]]
        openings = [each.corners for each in cut if each.layer == "CUT-OPENINGS"]
        assert openings == [[tuple(point) for point in ring] for ring in own.cutouts]


@pytest.mark.parametrize("name", NAMES)
def test_layers_say_how_wide_and_how_deep_to_drill(name, made):
    for board, data in made(name).boards("dxf"):
        told = {
            (round(e.number(10), 2), round(e.number(20), 2)): e.layer for e in entities_of(data) if e.sort == "CIRCLE"
        }
        for hole in made(name).holes_on(board):
            if hole["bit"] is None:
                continue
            layer = told[round(hole["x"], 2), round(hole["y"], 2)]
            if layer.startswith("ASK-"):
                continue
            start = "SITE" if hole["stage"] == "site" else "DRILL"
            deep = "THROUGH" if hole["through"] else "PILOT"
            end = "" if hole["through"] else f"-DEEP-{hole['depth']:g}"
            assert layer == f"{start}-{deep}-{hole['bit']:g}{end}"


def test_the_same_drawing_gives_the_same_bytes_and_no_date_of_today():
    hole = Layer("DRILL-THROUGH-8", "drill", (Disc(Point(30, 30), 4, None, "ink"),))
    first = dxf_bytes(drawing(hole))
    assert first == dxf_bytes(drawing(hole))
    assert header_value(first, "$VERSIONGUID") == "{00000000-0000-0000-0000-000000000000}"


def test_bends_are_true_arcs():
    pieces = rounded([Point(0, 0), Point(50, 0), Point(50, 50)], 20)
    data = dxf_bytes(drawing(Layer("REFERENCE-CABLES", "reference", (Strand(pieces, "ink", 1.0),))))
    document = ezdxf.read(io.StringIO(data.decode("utf-8").replace("\r\n", "\n")))
    (line,) = document.modelspace().query('*[layer=="REFERENCE-CABLES"]')
    sorts = [each.dxftype() for each in line.virtual_entities()]
    assert sorts == ["LINE", "ARC", "LINE"]
    arc = list(line.virtual_entities())[1]
    assert arc.dxf.radius == pytest.approx(20)
    assert tuple(arc.dxf.center)[:2] == pytest.approx((30, 20))
    assert math.isclose((arc.dxf.end_angle - arc.dxf.start_angle) % 360, 90)


def test_a_drawing_at_fault_is_not_written():
    with pytest.raises(BadDrawing, match="radius 0"):
        dxf_bytes(drawing(Layer("DRILL-THROUGH-0", "drill", (Disc(Point(30, 30), 0, None, "ink"),))))


@pytest.mark.parametrize("words", ["20 %", "50%% d", "a^J b", "\\U+00B0", "line\nbreak", "Ø 8 ± ²"])
def test_words_are_read_back_as_they_were_meant(words):
    assert "\n" not in plain_words(words)
    text = Words(Point(5, 5), words, 3.0, "ink")
    data = dxf_bytes(drawing(Layer("REFERENCE-WORDS", "reference", (text,))))
    document = ezdxf.read(io.StringIO(data.decode("utf-8").replace("\r\n", "\n")))
    (found,) = document.modelspace().query("TEXT")
    meant = words.replace("\n", " ").replace("\\U+", "/U+")
    assert found.plain_text() == meant
    assert found.dxf.height == pytest.approx(3.0)
