"""The canvas: zoom keeps what is under the pointer, rulers, gaps, and a new plan touches only what has changed."""

from dataclasses import replace

import pytest
from boards import honey_trailer, library_bus
from checks.plans import rules
from PySide6.QtCore import QPointF

from boardplan.checks.review import review_of
from boardplan.drawing.picture import Strand, Words
from boardplan.editing.component_edits import place_component
from boardplan.editing.thing_edits import move_things
from boardplan.geometry.bends import rounded
from boardplan.geometry.point import Point
from boardplan.ui.canvas.gaps import gaps_of
from boardplan.ui.canvas.items import ThingItem, route_shape
from boardplan.ui.canvas.painter import strand_path, words_path
from boardplan.ui.canvas.rulers import ruler_steps
from boardplan.ui.canvas.sights import SIGHTS
from boardplan.ui.first_place import first_place


def test_zoom_keeps_what_is_under_the_pointer(open_plan):
    view = open_plan(library_bus()).bench.canvas.view
    under = QPointF(333, 222)
    before = view.wall_at(under)
    for factor in [1.25] * 12 + [0.8] * 12:
        view.zoom(factor, under)
    after = view.wall_at(under)
    assert before.distance_to(after) * view.scale_now < 2


def test_y_is_up(open_plan):
    view = open_plan(library_bus()).bench.canvas.view
    assert view.px_at(Point(0, 100)).y() < view.px_at(Point(0, 0)).y()


def test_only_what_changed_is_drawn_anew(open_plan, monkeypatch):
    hands = open_plan(library_bus())
    touched = []
    original = ThingItem.show_source
    monkeypatch.setattr(ThingItem, "show_source", lambda self, *a: (touched.append(self.thing_id), original(self, *a)))
    hands.session.preview(move_things(hands.plan, ["EB1"], Point(3, 0)))
    assert "EB1" in touched
    assert set(touched) <= {"EB1", *hands.plan.cables}
    touched.clear()
    hands.session.preview(None)
    assert "EB1" in touched
    assert "INV1" not in touched


@pytest.mark.parametrize(
    ("plan", "lacking"),
    [(library_bus(), {"retainers"}), (replace(honey_trailer(), rules=rules()), set())],
    ids=["channel that runs level", "channel that runs up"],
)
def test_every_sight_is_seen_on_a_sample(open_plan, plan, lacking):
    hands = open_plan(plan)
    scene = hands.bench.canvas.scene
    for sight in SIGHTS:
        things = getattr(hands.plan, sight.collection)
        if things and sight.name not in {"cable", "cable inside"} | lacking:
            assert scene.seen(sight.name), sight.name
    shown = scene.seen("cable") | scene.seen("cable inside")
    assert shown == hands.plan.cables.keys()


def test_retainers_that_stay_are_not_drawn_anew(open_plan, monkeypatch):
    hands = open_plan(replace(honey_trailer(), rules=rules()))
    drawn = []
    original = ThingItem.show_source
    monkeypatch.setattr(
        ThingItem, "show_source", lambda self, *a: (drawn.append((self.sight.name, self.thing_id)), original(self, *a))
    )
    hands.session.preview(move_things(hands.plan, ["EB1"], Point(3, 0)))
    assert ("component", "EB1") in drawn
    assert "retainers" not in {name for name, _ in drawn}


@pytest.mark.parametrize(
    ("scale", "units", "figures"), [(0.5, "mm", 200), (1, "mm", 100), (4, "mm", 20), (1, "inch", 4 * 25.4)]
)
def test_ruler_figures_stand_apart(scale, units, figures):
    large, small = ruler_steps(scale, units)
    assert large == pytest.approx(figures)
    assert large * scale >= 64
    assert small <= large


def test_a_cable_is_not_caught_inside_its_bend():
    class Route:
        pieces = rounded((Point(0, 0), Point(200, 0), Point(200, 200)), 20)

    shape = route_shape(Route(), 8)
    assert shape.contains(QPointF(100, 0))
    assert not shape.contains(QPointF(100, 100))


@pytest.mark.usefixtures("qapp")
def test_strand_goes_round_its_bends_on_the_right_side():
    path = strand_path(Strand(rounded((Point(0, 0), Point(100, 0), Point(100, 100)), 30), "ink", 2))
    assert path.currentPosition() == QPointF(100, 100)
    assert path.boundingRect().right() == pytest.approx(100, abs=0.01)
    assert path.length() == pytest.approx(70 + 70 + 30 * 3.14159265 / 2, abs=0.1)


@pytest.mark.usefixtures("qapp")
def test_words_have_capitals_of_their_height():
    box = words_path(Words(Point(10, 20), "H", 5, "ink")).boundingRect()
    assert box.height() == pytest.approx(5, abs=0.1)
    assert box.center().y() == pytest.approx(20, abs=0.1)


def test_gaps_by_hand():
    plan = library_bus()
    gaps = gaps_of(plan, "INV1")
    at = plan.components["INV1"].position
    assert gaps["below"][0] <= at.y
    assert all(gap >= 0 for gap, _ in gaps.values())


def test_first_place_is_free():
    plan = library_bus()
    kind = plan.kinds[plan.components["EB1"].kind]
    at = first_place(plan, "A", kind, plan.boards["A"].box.centre)
    placed, reference = place_component(plan, kind, plan.fasteners, "A", at)
    stands = [each for each in review_of(placed).stops if reference in each.things and "same place" in each.sentence]
    assert not stands
