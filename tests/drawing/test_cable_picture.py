"""Cables: as thick and coloured as the real ones, dressed at their ends."""

from dataclasses import replace

import pytest
from boards import library_bus
from inks import words_in

from boardplan.drawing.cable_picture import cable_picture, colours_of
from boardplan.drawing.hatching import inside
from boardplan.drawing.picture import Area, Strand
from boardplan.drawing.tint import mixed
from boardplan.model.placed import placed
from boardplan.routing.find_route import find_routes
from boardplan.routing.route import Route

PLAN = library_bus()
WAYS = {name: way for name, way in find_routes(PLAN).items() if isinstance(way, Route)}


def picture_of(name):
    return cable_picture(PLAN, PLAN.cables[name], WAYS[name])


@pytest.mark.parametrize("name", list(WAYS))
def test_a_cable_is_few_marks(name):
    assert 2 < len(picture_of(name)) <= 16


@pytest.mark.parametrize("name", ["W03", "W07", "W08", "W40"])
def test_a_cable_is_as_thick_as_its_conductor(name):
    diameter = PLAN.conductors[PLAN.cables[name].conductor].outside_diameter
    rim = next(mark for mark in picture_of(name) if isinstance(mark, Strand) and mark.opacity == 1)
    assert rim.width == diameter


@pytest.mark.parametrize(("name", "colour"), [("W07", "#2A2B2D"), ("W04", "#B3312C"), ("W40", "#3A6FA5")])
def test_a_cable_has_the_colour_of_the_rule_set(name, colour):
    assert colours_of(PLAN, PLAN.cables[name]) == (colour,)
    assert colour in {mark.ink for mark in picture_of(name) if isinstance(mark, Strand)}


@pytest.mark.parametrize(("name", "pair"), [("W19", 2), ("W20", 5)])
def test_cores_and_cables_lie_side_by_side(name, pair):
    strands = [mark for mark in picture_of(name) if isinstance(mark, Strand)]
    assert sum(mark.ink in {"#B3312C", "#2A2B2D"} for mark in strands) == pair


def test_a_second_colour_of_a_single_core_is_a_stripe():
    plan = PLAN.with_things([replace(PLAN.cables["W08"], colour="green/yellow")])
    picture = cable_picture(plan, plan.cables["W08"], WAYS["W08"])
    assert [mark.dashes != () for mark in picture if isinstance(mark, Strand) and mark.ink == "#E3B93C"] == [True]


@pytest.mark.parametrize("name", ["W03", "W06", "W07"])
def test_a_lug_lies_over_each_stud(name):
    palms = next(mark for mark in picture_of(name) if isinstance(mark, Area) and mark.fill == "tin")
    for end in PLAN.cables[name].ends:
        component = PLAN.components[end.component]
        stud = PLAN.on_wall(component.board, placed(PLAN, component).terminals[end.terminal].position)
        assert any(inside([ring], stud) for ring in palms.rings)


@pytest.mark.parametrize(("name", "colour", "tube"), [("W07", "red", "#2A2B2D"), ("W04", "black", "#B3312C")])
def test_tube_has_the_colour_of_the_polarity_whatever_the_cable(name, colour, tube):
    plan = PLAN.with_things([replace(PLAN.cables[name], colour=colour)])
    diameter = plan.conductors[plan.cables[name].conductor].outside_diameter
    strands = [mark for mark in cable_picture(plan, plan.cables[name], WAYS[name]) if isinstance(mark, Strand)]
    tubes = {mark.ink for mark in strands if mark.width > diameter and mark.opacity == 1}
    shades = {mixed(tube, "#000000", share / 100) for share in range(20, 60)}
    assert tubes
    assert tubes <= shades


@pytest.mark.parametrize(("name", "words"), [("W07", ["W07"]), ("W40", []), ("W08", [])])
def test_thick_cables_carry_their_number(name, words):
    assert [mark.text for mark in words_in(picture_of(name))] == words


def test_an_unknown_colour_is_grey():
    assert colours_of(PLAN, replace(PLAN.cables["W07"], colour="tartan")) == ("#8D9092",)


def test_a_cable_too_short_to_see_still_shows_its_lugs():
    cable, way = PLAN.cables["W07"], WAYS["W07"]
    stub = replace(way, points=(way.points[0], way.points[0].moved(12, 0)))
    assert any(isinstance(mark, Area) and mark.fill == "tin" for mark in cable_picture(PLAN, cable, stub))


def test_a_cable_of_no_length_is_no_picture():
    way = WAYS["W07"]
    assert cable_picture(PLAN, PLAN.cables["W07"], replace(way, points=way.points[:1])) == ()
