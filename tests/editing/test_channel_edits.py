import pytest
from boards import library_bus
from hypothesis import given
from strategies import square_lines

from boardplan.editing.channel_edits import (
    SECTIONS,
    draw_channel,
    insert_channel_corner,
    move_channel_corner,
    remove_channel_corner,
    section_of,
    set_channel_section,
    slide_channel_leg,
)
from boardplan.editing.refused import EditRefused
from boardplan.files.shelf_file import bundled_shelf
from boardplan.geometry.point import Point
from boardplan.model.channel_section import ChannelSection
from boardplan.model.joins import broken_joins

SHELF = bundled_shelf()
SQUARE = SECTIONS[3]


def line(*pairs):
    return tuple(Point(*pair) for pair in pairs)


def test_our_sections_are_those_of_the_shelf():
    assert sorted(SECTIONS, key=lambda each: each.id) == sorted(
        SHELF.channel_sections.values(), key=lambda each: each.id
    )
    assert SQUARE.words == "60 x 60"


def test_a_drawn_channel(bus_plan):
    fastener = SHELF.fasteners["#8x16 washer"]
    plan, reference = draw_channel(
        bus_plan, "A", line((40, 300), (90, 300), (200, 300), (200, 300), (200, 500)), SQUARE, fastener
    )
    assert reference == "RW2"
    channel = plan.channels["RW2"]
    assert channel.line == line((40, 300), (200, 300), (200, 500))
    assert (channel.width, channel.height, channel.inner_width, channel.inner_height) == (60, 60, 56, 56)
    assert channel.screws.fastener == "#8x16 washer"
    assert section_of(channel) == SQUARE
    assert not list(broken_joins(plan))


def test_a_fastener_the_job_lacks_comes_along(cabin_plan):
    fastener = SHELF.fasteners["#6x16"]
    plan, _ = draw_channel(cabin_plan, "B", line((0, 0), (50, 0)), SQUARE, fastener)
    assert plan.fasteners["#6x16"]
    assert not list(broken_joins(plan))


def test_a_channel_without_a_fastener_stays_a_question(bus_plan):
    plan, reference = draw_channel(bus_plan, "A", line((0, 0), (50, 0)), SQUARE)
    assert plan.channels[reference].screws.fastener == ""
    assert not list(broken_joins(plan))


REFUSED = {
    "one point": (lambda plan: draw_channel(plan, "A", line((0, 0)), SQUARE), "two different ends"),
    "no length": (lambda plan: draw_channel(plan, "A", line((0, 0), (0, 0)), SQUARE), "two different ends"),
    "back again": (lambda plan: draw_channel(plan, "A", line((0, 0), (90, 0), (30, 0)), SQUARE), "double back"),
    "no board": (lambda plan: draw_channel(plan, "Z", line((0, 0), (90, 0)), SQUARE), "no board Z"),
    "no channel": (lambda plan: move_channel_corner(plan, "RW9", 0, Point(0, 0)), "no channel RW9"),
    "no corner": (lambda plan: move_channel_corner(plan, "RW1", 2, Point(0, 0)), "no corner 3"),
    "on the other end": (lambda plan: move_channel_corner(plan, "RW1", 0, Point(580, 266)), "the same place"),
    "last leg": (lambda plan: remove_channel_corner(plan, "RW1", 0), "two different ends"),
    "no leg": (lambda plan: insert_channel_corner(plan, "RW1", 1, Point(0, 0)), "no corner 3"),
    "larger inside": (
        lambda plan: set_channel_section(plan, "RW1", ChannelSection("", "", 40, 40, 41, 40)),
        "larger inside",
    ),
    "no width": (
        lambda plan: set_channel_section(plan, "RW1", ChannelSection("", "", 0, 40, 0, 40)),
        "can't be nought",
    ),
}


@pytest.mark.parametrize("name", REFUSED)
def test_nonsense_is_refused_in_a_sentence(bus_plan, name):
    edit, words = REFUSED[name]
    with pytest.raises(EditRefused) as refused:
        edit(bus_plan)
    assert words in refused.value.sentence


RESHAPED = {
    "end": (lambda plan: move_channel_corner(plan, "RW1", 1, Point(700, 266)), line((40, 266), (700, 266))),
    "corner put in": (
        lambda plan: insert_channel_corner(plan, "RW1", 0, Point(300, 266)),
        line((40, 266), (300, 266), (580, 266)),
    ),
    "corner taken out": (
        lambda plan: remove_channel_corner(insert_channel_corner(plan, "RW1", 0, Point(300, 400)), "RW1", 1),
        line((40, 266), (580, 266)),
    ),
    "leg": (lambda plan: slide_channel_leg(plan, "RW1", 0, Point(0, 34)), line((40, 300), (580, 300))),
}


@pytest.mark.parametrize("name", RESHAPED)
def test_reshaped(bus_plan, name):
    edit, expected = RESHAPED[name]
    assert edit(bus_plan).channels["RW1"].line == expected


def test_nothing_changed_is_the_same_plan(bus_plan):
    assert move_channel_corner(bus_plan, "RW1", 0, Point(40, 266)) is bus_plan
    assert slide_channel_leg(bus_plan, "RW1", 0, Point(0, 0)) is bus_plan
    assert set_channel_section(bus_plan, "RW1", SQUARE) is bus_plan


@given(square_lines())
def test_a_corner_put_in_and_taken_out_again(points):
    plan, channel = draw_channel(library_bus(), "A", points, SQUARE)
    start, end = points[-2:]
    middle = Point((start.x + end.x) / 2, (start.y + end.y) / 2)
    between = insert_channel_corner(plan, channel, len(points) - 2, middle)
    assert between.channels[channel].line == (*points[:-1], middle, end)
    assert remove_channel_corner(between, channel, len(points) - 1) == plan
