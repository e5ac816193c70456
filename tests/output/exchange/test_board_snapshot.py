"""The picture of a board, opened by another library: its size, and a few places where the colour is known."""

import io
from dataclasses import replace

import pytest
from output.exchange.drilled_boards import NAMES
from PIL import Image

from boardplan.checks.finding import Finding
from boardplan.drawing.palette import colour
from boardplan.drawing.picture import Words
from boardplan.geometry.point import Point
from boardplan.output.exchange.board_snapshot import snapshot_bytes, snapshot_sheet
from boardplan.output.making import Making


@pytest.mark.parametrize("name", NAMES)
def test_it_opens_and_its_longer_side_is_2400(name, made):
    for board, data in made(name).boards("picture"):
        image = Image.open(io.BytesIO(data))
        image.load()
        box = made(name).making.plan.boards[board].box
        sheet = snapshot_sheet(made(name).making, made(name).making.plan.boards[board])
        assert image.format == "PNG"
        assert image.mode == "RGB"
        assert max(image.size) == 2400
        assert image.width / image.height == pytest.approx(sheet.width / sheet.height, abs=0.002)
        assert sheet.width == box.width + 90
        assert image.info["dpi"] == pytest.approx((150, 150), abs=0.05)


def test_wall_and_caption_are_where_they_belong(made):
    ((_, data),) = made("library bus").boards("picture")
    image = Image.open(io.BytesIO(data))
    wanted = {(image.width - 4, image.height // 2): "wall", (image.width - 4, image.height - 4): "panel"}
    for place, ink in wanted.items():
        assert "#{:02X}{:02X}{:02X}".format(*image.getpixel(place)) == colour(ink, "light").upper()
    assert len(image.resize((300, 200)).getcolors(60_000)) > 500


def test_it_says_what_it_is_and_what_stops_it(made):
    making = made("library bus").making
    board = making.plan.boards["A"]
    stop = Finding("edge margin", "stop", "PV1 is too near the edge.", ("PV1",), "A", Point(0, 0))
    stopped = Making(replace(making.review, findings=(stop,)), making.printing)
    told = {
        mark.text for part in snapshot_sheet(stopped, board).parts for mark in part.picture if isinstance(mark, Words)
    }
    assert "NOT TO BE ISSUED: 1 finding stops" in told
    assert any(each.endswith("A picture: measure nothing by it.") for each in told)


def test_the_same_board_gives_the_same_bytes(made):
    making = made("library bus").making
    ((_, data),) = made("library bus").boards("picture")
    assert snapshot_bytes(making, making.plan.boards["A"]) == data
