"""Art: a shape however often repeated is a few marks, and the place of the reference is none."""

from boardplan.drawing.art_picture import art_picture
from boardplan.drawing.picture import Area, Disc, Line, Words
from boardplan.geometry.point import Point, box_around
from boardplan.model.component_kind import ArtShape

FIN = ArtShape("rect", "graphite", (Point(5, 0),), Point(4, 50), relief="raised", count=12, step=Point(8, 0))


def test_a_row_of_fins_is_three_marks():
    picture = art_picture((FIN,), 0)
    assert [mark.fill for mark in picture] == ["graphite", "graphite-light", "graphite-dark"]
    assert [box_around(ring).left for ring in picture[0].rings] == [5 + 8 * index for index in range(12)]


def test_shapes_become_marks():
    shapes = (
        ArtShape("disc", "steel", (Point(1, 2),), radius=3),
        ArtShape("line", "copper", (Point(0, 0), Point(9, 9)), width=2),
        ArtShape("polygon", "bone", (Point(0, 0), Point(9, 0), Point(9, 9))),
        ArtShape("text", "ink", (Point(4, 4),), text="I", width=6),
        ArtShape("text", "bone", (Point(4, 4),), text="{ref}", width=6),
    )
    disc, line, polygon, words = art_picture(shapes, 0)
    assert disc == Disc(Point(1, 2), 3, "steel")
    assert line == Line((Point(0, 0), Point(9, 9)), "copper", 2)
    assert polygon == Area((shapes[2].points,), "bone")
    assert isinstance(words, Words)
    assert (words.text, words.height, words.ink) == ("I", 6, "body-ink")


def test_sunk_is_lit_from_the_other_side():
    sunk = ArtShape("rect", "stone", (Point(0, 0),), Point(20, 10), relief="sunk")
    lit = next(mark for mark in art_picture((sunk,), 0) if mark.fill == "stone-light")
    assert {box_around(ring).right for ring in lit.rings} == {20}
