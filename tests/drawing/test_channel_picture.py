"""Channels: base and cover to scale, slots along the walls and none in the corners."""

import pytest

from boardplan.drawing.channel_picture import channel_base_picture, channel_cover_picture, channel_picture
from boardplan.drawing.picture import Area, Words
from boardplan.geometry.point import Point, box_around, signed_area
from boardplan.model.channel import Channel

STRAIGHT = Channel("RW1", "A", (Point(40, 266), Point(580, 266)), 60, 60, 56, 56)
BENT = Channel("RW2", "A", (Point(40, 266), Point(580, 266), Point(580, 600)), 60, 60, 56, 56)
OPEN = Channel("RW3", "A", (Point(0, 0), Point(0, 500)), 40, 60, 36, 57, cover=False, dividers=(18,))


def slots_of(channel):
    marks = [mark for mark in channel_base_picture(channel) if mark.fill == "channel-line"]
    return max(marks, key=lambda mark: len(mark.rings)).rings


@pytest.mark.parametrize("channel", [STRAIGHT, BENT, OPEN], ids=lambda channel: channel.id)
def test_the_base_is_as_large_as_the_channel(channel):
    outer = next(mark for mark in channel_base_picture(channel) if mark.fill == "channel")
    length = sum(a.distance_to(b) for a, b in zip(channel.line, channel.line[1:], strict=False))
    assert abs(signed_area(outer.rings[0])) == pytest.approx(length * channel.width)


def test_slots_lie_in_the_walls_and_out_of_the_corner():
    assert len(slots_of(BENT)) > 100
    for ring in slots_of(BENT):
        x, y = box_around(ring).centre
        assert not (549 < x < 611 and 236 < y < 296)
        assert min(abs(abs(y - 266) - 29), abs(abs(x - 580) - 29)) < 1e-6


@pytest.mark.parametrize(("channel", "words"), [(STRAIGHT, ["RW1"]), (BENT, ["RW2"]), (OPEN, [])])
def test_a_cover_carries_the_name_and_an_open_channel_has_none(channel, words):
    assert [mark.text for mark in channel_picture(channel) if isinstance(mark, Words)] == words


def test_the_cover_lets_the_cables_be_guessed():
    lid = next(mark for mark in channel_cover_picture(STRAIGHT) if isinstance(mark, Area))
    assert 0.5 < lid.opacity < 0.9


def test_a_long_channel_is_not_slower_to_draw():
    long = Channel("RW9", "A", (Point(0, 0), Point(9000, 0)), 60, 60, 56, 56)
    assert len(slots_of(long)) <= 400
