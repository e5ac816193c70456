import math

import pytest
from boards import library_bus

from boardplan.checks.review import review_of
from boardplan.drawing.fill_picture import FillLimits, fill_picture, stretch_of_line
from boardplan.drawing.picture import Area, Line, Words
from boardplan.geometry.bends import straight_length
from boardplan.geometry.point import Point, box_around
from boardplan.model.channel import Channel
from boardplan.routing.channels.channel_fill import ChannelFill, Section

CHANNEL = Channel("RW1", "A", (Point(0, 100), Point(400, 100)), 60, 60, 50, 50)
BENT = Channel("RW2", "A", (Point(0, 0), Point(300, 0), Point(300, 200)), 60, 60, 50, 50)
LIMITS = FillLimits(40, 45)


def filled(channel, *percents):
    length = straight_length(channel.line)
    step = length / len(percents)
    sections = tuple(
        Section(number * step, (number + 1) * step, ("W01",), 25.0 * percent, percent)
        for number, percent in enumerate(percents)
    )
    fullest = max(sections, key=lambda each: each.percent)
    return ChannelFill(channel.id, length, channel.inner_area, sections, fullest, Point(0, 0))


def levels(picture):
    return [mark for mark in picture if isinstance(mark, Area) and len(mark.rings[0]) >= 4 and mark.opacity < 1]


@pytest.mark.parametrize("percent", [5, 20, 39.9, 60, 100, 140])
def test_the_level_is_as_high_as_the_share_of_the_inner_width(percent):
    level = levels(fill_picture(CHANNEL, filled(CHANNEL, percent), LIMITS))[0]
    box = box_around(level.rings[0])
    assert box.height == pytest.approx(50 * min(percent, 100) / 100)
    assert box.bottom == pytest.approx(100 - 25), "it stands on the wall right of the line"


def test_each_section_has_its_own_level():
    heights = [
        box_around(each.rings[0]).height for each in levels(fill_picture(CHANNEL, filled(CHANNEL, 10, 30), LIMITS))
    ]
    assert heights == pytest.approx([5, 15])


def test_the_design_limit_is_a_line_at_its_height():
    marks = fill_picture(CHANNEL, filled(CHANNEL, 10), LIMITS)
    line = next(mark for mark in marks if isinstance(mark, Line) and mark.dashes)
    assert [point.y for point in line.points] == pytest.approx([75 + 0.40 * 50] * len(line.points))


@pytest.mark.parametrize(("percent", "word"), [(40, "40 %"), (41, "41 % over the design"), (46, "46 % too full")])
def test_too_much_is_said_in_words(percent, word):
    texts = [mark.text for mark in fill_picture(CHANNEL, filled(CHANNEL, percent), LIMITS) if isinstance(mark, Words)]
    assert word in texts


@pytest.mark.parametrize(("percent", "corners"), [(30, None), (42, 3), (50, 4)])
def test_and_shown_by_a_shape_that_is_not_colour_alone(percent, corners):
    marks = fill_picture(CHANNEL, filled(CHANNEL, percent), LIMITS)
    signs = [mark for mark in marks if isinstance(mark, Area) and mark.edge == "bone-light"]
    assert [len(each.rings[0]) for each in signs] == ([] if corners is None else [corners])
    hatching = [mark for mark in marks if isinstance(mark, Line) and mark.ink in {"warn", "stop"}]
    assert bool(hatching) == (corners is not None)
    assert all(
        mark.points[0].distance_to(mark.points[1]) == pytest.approx(math.sqrt(2) * 50 * percent / 100)
        for mark in hatching
    )


def test_an_empty_channel_shows_nothing():
    fill = ChannelFill("RW1", 400.0, 2500.0, (), None, Point(0, 0))
    assert fill_picture(CHANNEL, fill, LIMITS) == ()


def test_round_a_corner_it_stays_in_the_channel():
    for level in levels(fill_picture(BENT, filled(BENT, 30), LIMITS)):
        box = box_around(level.rings[0])
        assert box.right <= 325 + 1e-6
        assert box.bottom >= -25 - 1e-6


def test_without_a_rule_there_is_no_line_and_nothing_is_too_much():
    marks = fill_picture(CHANNEL, filled(CHANNEL, 90), FillLimits(None, None))
    assert not any(isinstance(mark, Line) and mark.dashes for mark in marks)
    assert [mark.text for mark in marks if isinstance(mark, Words)] == ["90 %"]


def test_of_a_real_job_the_figure_is_that_of_the_fullest_section():
    review = review_of(library_bus())
    fill = review.fills["RW1"]
    texts = [m.text for m in fill_picture(library_bus().channels["RW1"], fill, LIMITS) if isinstance(m, Words)]
    assert f"{math.floor(fill.percent + 0.5)} %" in texts


@pytest.mark.parametrize(("start", "end", "corners"), [(0, 300, 2), (10, 400, 3), (310, 500, 2), (0, 500, 3)])
def test_a_stretch_of_a_line_is_as_long_as_asked(start, end, corners):
    part = stretch_of_line(BENT.line, start, end)
    assert straight_length(part) == pytest.approx(end - start)
    assert len(part) == corners
