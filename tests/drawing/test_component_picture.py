"""Component pictures: lit from the upper left and lettered upright however they are turned, and quick to draw."""

import pytest
from inks import words_in

from boardplan.drawing.component_picture import component_picture, placed_component_picture
from boardplan.drawing.picture import Area, Words, placed_picture
from boardplan.files.shelf_file import bundled_shelf
from boardplan.geometry.placement import Placement
from boardplan.geometry.point import Point, box_around
from boardplan.model.component import Component
from boardplan.model.component_kind import ArtShape, ComponentKind, MountingHole, Terminal
from boardplan.model.placed import place

KINDS = list(bundled_shelf().kinds.values())
PLAIN = ComponentKind("plain", "Plain", "", "X", ((Point(0, 0), Point(120, 0), Point(120, 60), Point(0, 60))), 40)

each_kind = pytest.mark.parametrize("kind", [*KINDS, PLAIN], ids=lambda kind: kind.id)


@each_kind
def test_a_component_is_drawn_in_few_marks(kind):
    assert 4 < len(component_picture(kind, "AB12")) < 150


@each_kind
@pytest.mark.parametrize("turn", [0.0, 37.0, 90.0, 180.0, 270.0])
def test_words_are_never_upside_down(kind, turn):
    picture = placed_picture(component_picture(kind, "AB12", turn), Placement(turn, Point(0, 0)))
    for words in words_in(picture):
        assert words.turn % 360 <= 90 + 1e-9 or words.turn % 360 > 270, words


@each_kind
def test_the_picture_keeps_to_the_body_but_for_shadow_and_glands(kind):
    near = kind.box.grown(30)
    for mark in component_picture(kind, "AB12"):
        points = [point for ring in mark.rings for point in ring] if isinstance(mark, Area) else []
        assert all(near.holds(point) for point in points)


@pytest.mark.parametrize("turn", [0.0, 90.0, 180.0, 270.0])
def test_light_comes_from_the_upper_left_of_the_wall(turn):
    picture = placed_picture(component_picture(PLAIN, "", turn), Placement(turn, Point(0, 0)))
    lit = next(mark for mark in picture if isinstance(mark, Area) and mark.fill == "graphite-light")
    dark = next(mark for mark in picture if isinstance(mark, Area) and mark.fill == "graphite-dark")
    bright, dim = (box_around([middle(ring) for ring in mark.rings]).centre for mark in (lit, dark))
    assert bright.x < dim.x
    assert bright.y > dim.y


def middle(ring):
    return Point(sum(point.x for point in ring) / len(ring), sum(point.y for point in ring) / len(ring))


def test_the_reference_lies_level_on_a_body_lying_down():
    component = Component("FT1", "class-t-fuse-block", "A", Point(40, 46), 270)
    picture = placed_component_picture(place(bundled_shelf().kinds["class-t-fuse-block"], component))
    label = next(words for words in words_in(picture) if words.text == "FT1")
    assert label.turn == 0
    assert label.at == Point(40 + 168 / 2, 46 + 76 / 2)


def test_a_reference_longer_than_its_body_reads_from_the_right():
    tall = ComponentKind("tall", "Tall", "", "X", (Point(0, 0), Point(20, 0), Point(20, 200), Point(0, 200)), 40)
    label = next(words for words in words_in(component_picture(tall, "LONG-REFERENCE")))
    assert label.turn == 90


def test_a_component_that_nobody_has_drawn_shows_a_body_and_its_reference():
    marks = component_picture(PLAIN, "X1")
    assert [type(mark).__name__ for mark in marks].count("Words") == 1
    assert {"graphite", "stone-dark"} <= {mark.fill for mark in marks if isinstance(mark, Area)}
    assert isinstance(marks[-1], Words)


def test_a_shut_off_is_drawn_as_ever():
    """A golden in words: marks and inks in their order, so that a change of look is seen in review."""
    kind = ComponentKind(
        "s", "S", "", "SW", (Point(0, 0), Point(60, 0), Point(60, 60), Point(0, 60)), 50, fastener="#8x19",
        holes=(MountingHole(Point(8, 8)), MountingHole(Point(52, 52), "keyhole", drop=8)),
        terminals=(Terminal("IN", Point(30, 10), 20, "stud", "M8", 270.0, "+"),),
        art=(
            ArtShape("disc", "red", (Point(30, 34),), radius=14, relief="raised"),
            ArtShape("text", "bone", (Point(48, 34),), text="I", width=4),
            ArtShape("text", "bone", (Point(10, 34),), text="{ref}", width=4),
        ),
    )  # fmt: skip
    drawn = [
        f"{type(mark).__name__} {getattr(mark, 'fill', None) or mark.ink}" for mark in component_picture(kind, "SW1")
    ]
    assert drawn == [
        "Area shadow", "Area shadow",  # on the board
        "Area graphite", "Area graphite-light", "Area graphite-dark",  # plate
        "Area shadow", "Area red", "Area red-light", "Area red-dark",  # knob
        "Words bone",  # I
        "Area shadow", "Area shadow", "Area shadow",  # round hole, keyhole
        "Area steel", "Area steel-light", "Area steel-dark", "Area graphite", "Area graphite",  # screws
        "Area brass", "Area brass-light", "Area brass-dark",  # pad
        "Area steel", "Area steel-light", "Area steel-dark", "Area steel-light", "Area steel-dark",  # nut
        "Area graphite-dark", "Area graphite-light", "Area graphite-dark",  # label
        "Words bone-light",
    ]  # fmt: skip
