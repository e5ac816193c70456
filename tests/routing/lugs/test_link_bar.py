"""Link bars: offered for a cable that can't be made between studs 40 to 100 mm apart; holes of ISO 273:1979, medium."""

from dataclasses import replace

import pytest
from checks.plans import UNIT, cable, named, plan_of, unit

from boardplan.checks.review import review_of
from boardplan.model.stud_size import MEDIUM_HOLES, medium_hole, thread_diameter
from boardplan.routing.lugs.link_bar import link_bar_offers

ON_TOP = replace(UNIT, id="high", terminals=tuple(replace(each, z=32, size="M10") for each in UNIT.terminals))


def joined(apart, conductor="70", upper="high", **fields):
    """Two units one above the other; U1.T at y 390 looks up, U2.B looks down from `apart` above it."""
    return plan_of(
        unit("U1", 100, 300),
        unit("U2", 100, 390 + apart - 10, kind=upper),
        cable("W1", ("U1", "T"), ("U2", "B"), conductor=conductor, **fields),
        kinds=(UNIT, ON_TOP),
    )


def offers(plan):
    return link_bar_offers(plan, review_of(plan).lengths)


@pytest.mark.parametrize(("apart", "offered"), [(39.9, 0), (40, 1), (80, 1), (100, 1), (100.1, 0)])
def test_centres_from_40_to_100_mm(apart, offered):
    # A straight jumper of 70 mm² is 2 x 40 + 2.5 x 16 = 120 mm at least: common practice, no source.
    plan = joined(apart)
    found = offers(plan)
    assert len(found) == offered
    assert [each.centres for each in found] == [pytest.approx(apart)] * offered
    assert all(each.least == pytest.approx(120) for each in found)


@pytest.mark.parametrize(("apart", "offered"), [(77.2, 1), (77.25, 0)])
def test_a_jumper_that_can_be_made_is_no_bar(apart, offered):
    # 16 mm² between studs of one height: 2 x 28 + 2.5 x 8.5 = 77.25 mm.
    assert len(offers(joined(apart, conductor="16", upper="unit"))) == offered


def test_a_bar_says_what_to_drill_and_leaves_its_section_open():
    (bar,) = offers(joined(80))
    assert [(each.place, each.stud, each.hole) for each in bar.ends] == [("U1.T", "M8", 9.0), ("U2.B", "M10", 11.0)]
    assert bar.step == 12
    assert "from the designer" in bar.question
    assert "70 mm²" in bar.question


def test_an_end_that_is_no_stud_has_no_bar():
    plan = plan_of(unit("U1", 100, 300), unit("U2", 260, 300), cable("W1", ("U1", "R"), ("U2", "L"), conductor="70"))
    assert offers(plan) == ()


def test_the_finding_offers_it():
    (found,) = named(joined(80), "link-bar-offered")
    assert found.severity == "warn"
    assert "hole 9 mm for M8 at U1.T" in found.sentence
    assert "hole 11 mm for M10 at U2.B" in found.sentence
    assert "the second stud 12 mm higher" in found.sentence


def test_an_earlier_edition_offers_none():
    plan = joined(80)
    limits = {name: each for name, each in plan.rules.limits.items() if not name.startswith("link-bar")}
    assert named(replace(plan, rules=replace(plan.rules, limits=limits)), "link-bar-offered") == []


@pytest.mark.parametrize(
    ("size", "hole"), [("M5", 5.5), ("M6", 6.6), ("M8", 9.0), ("M10", 11.0), ("M12", 13.5), ('3/8"', None), ("", None)]
)
def test_holes_are_medium_fit(size, hole):
    # ISO 273:1979, medium series H13
    assert medium_hole(size) == hole


@pytest.mark.parametrize(("size", "width"), [("M8", 8), (" m10", 10), ('3/8"', 9.525), ("5/16", 7.9375), ("#10", None)])
def test_thread_diameters(size, width):
    assert thread_diameter(size) == (None if width is None else pytest.approx(width))


def test_every_hole_passes_its_thread():
    assert all(hole > thread_diameter(size) for size, hole in MEDIUM_HOLES.items())
