"""Review: the refreshed one is the one from scratch, whatever was changed; the samples; what sentences hold."""

from dataclasses import replace

import pytest
from boards import library_bus, lookout_cabin
from checks.plans import BOARD, UNIT, cable, channel, fixing, plan_of, post, unit
from hypothesis import given, settings
from hypothesis import strategies as st

from boardplan.checks.asking import rank
from boardplan.checks.review import refreshed, review_of
from boardplan.geometry.point import Box, Point
from boardplan.model.board import BackPart, Compartment, Exit, Fabric, Material, NoGoBox
from boardplan.model.cable import Cable, Leg, OffBoardEnd, TerminalEnd
from boardplan.model.component_kind import Cooling, KeepClear
from boardplan.model.job import Acceptance
from boardplan.model.joins import with_dependants

AIRY = replace(
    UNIT,
    id="airy",
    heat=30,
    keep_clear=(KeepClear("top", 60, "air", demanded=True), KeepClear("front", 60, "hands")),
    cooling=Cooling(exhaust=("top",)),
)
TENDER = replace(
    UNIT,
    id="tender",
    heat_sensitive=True,
    keep_clear=(KeepClear("bottom", 30, "air"),),
    cooling=Cooling(intake=("bottom",)),
)
NUTTED = replace(UNIT, id="nutted", fastener="nut", mass=None)
KINDS = (UNIT, AIRY, TENDER, NUTTED)


def busy_plan():
    """Return two boards with something of every sort on them; all cables pinned, for finding ways is another test."""
    right = replace(BOARD, id="B", position=Point(1000, 0), fabric=Fabric(2), compartment=Compartment(5, 50, 5, 20, 90))
    away = OffBoardEnd("X1", "battery", (Leg(700, "estimated"),))
    return plan_of(
        unit("U1", 100, 100),
        unit("U2", 300, 110, kind="airy"),
        unit("U3", 310, 250, kind="tender"),
        unit("U4", 600, 420, 90, kind="airy"),
        unit("U5", 800, 500, kind="nutted"),
        unit("U6", 60, 300, kind="nutted", board="B"),
        unit("U7", 240, 215),
        unit("U8", 830, 40),
        unit("U9", 700, 640, 30),
        channel("RW1", (60, 400), (500, 400)),
        channel("RW2", (300, 430), (300, 700)),
        fixing("F1", 30, 30),
        fixing("F2", 500, 600),
        fixing("F3", 15, 400, board="B"),
        post("P1", 30),
        Exit("X1", "A", "hole", Point(700, 200), "hole", 40),
        Exit("X2", "A", "edge", Point(0, 400)),
        NoGoBox("pipe", "A", "pipe", 850, 100, 60, 400, 30, 80),
        BackPart("batten", "A", "batten", Box(500, 0, 540, 800).corners()),
        cable("W1", ("U1", "T"), ("U3", "B"), (150, 230), (360, 230)),
        cable("W2", ("U2", "R"), ("U4", "B"), (450, 160), (450, 350), (650, 350), cable_class="ac"),
        cable("W3", ("U1", "R"), ("U4", "L"), (250, 150), (250, 380), (650, 380), group="M"),
        cable("W4", ("U5", "T"), ("U6", "L"), (850, 350), group="M"),
        Cable("W5", TerminalEnd("U3", "T"), away, "16", "red", "dc", pins=(Point(360, 500), Point(700, 500))),
        cable("W6", ("U1", "T"), ("U4", "T"), (150, 400), (400, 400), (650, 400)),
        kinds=KINDS,
        boards={"A": replace(BOARD, cutouts=(Box(700, 600, 760, 700).corners(),)), "B": right},
        accepted=(Acceptance("bodies-overlap", ("U3", "U7"), "Lead", "why not"),),
    )


PLACES = st.tuples(st.integers(-2, 18), st.integers(-2, 14)).map(lambda at: Point(at[0] * 50 + 3, at[1] * 50 + 7))


def _moved(plan, draw):
    name = draw(st.sampled_from(sorted({*plan.components, *plan.fixings, *plan.exits})))
    return plan.with_things([replace(plan.things[name], position=draw(PLACES))])


def _turned(plan, draw):
    held = plan.components[draw(st.sampled_from(sorted(plan.components)))]
    return plan.with_things([replace(held, turn=draw(st.sampled_from([0, 90, 180, 270, 30])))])


def _other_kind(plan, draw):
    held = plan.components[draw(st.sampled_from(sorted(plan.components)))]
    return plan.with_things([replace(held, kind=draw(st.sampled_from([kind.id for kind in KINDS])))])


def _deleted(plan, draw):
    return plan.without(with_dependants(plan, [draw(st.sampled_from(sorted({*plan.things} - {*plan.boards})))]))


def _added(plan, draw):
    number, at = draw(st.integers(1, 9)), draw(PLACES)
    name = f"N{number}"
    new = draw(
        st.sampled_from(
            [
                unit(name, at.x, at.y, kind="tender"),
                fixing(name, at.x, at.y),
                channel(name, (at.x, at.y), (at.x + 200, at.y)),
                Exit(name, "A", "hole", at, "hole", 30),
                NoGoBox(name, "A", name, at.x, at.y, 50, 50),
                BackPart(name, "B", name, Box(at.x, at.y, at.x + 50, at.y + 50).corners()),
                cable(name, ("U1", "R"), ("U1", "T"), (at.x, 150), (at.x, 400)),
            ]
        )
    )
    clear = plan.without(with_dependants(plan, [name]))
    return clear if isinstance(new, Cable) and "U1" not in clear.components else clear.with_things([new])


def _line(plan, draw):
    if not plan.channels:
        return plan
    held = plan.channels[draw(st.sampled_from(sorted(plan.channels)))]
    start = draw(PLACES)
    return plan.with_things(
        [replace(held, line=(start, start.moved(0, 250)), inner_width=draw(st.sampled_from([5, 50])))]
    )


def _cable(plan, draw):
    if not plan.cables:
        return plan
    held = plan.cables[draw(st.sampled_from(sorted(plan.cables)))]
    changes = draw(
        st.sampled_from(
            [
                {"count": 7},
                {"group": "M"},
                {"group": ""},
                {"conductor": "70"},
                {"cable_class": "pv"},
                {"way": "outside"},
            ]
        )
    )
    return plan.with_things([replace(held, **changes)])


def _kinds(plan, draw):
    name = draw(st.sampled_from(["unit", "airy", "nutted"]))
    changes = draw(st.sampled_from([{"depth": 95.0}, {"flange": 9.0}, {"mass": 90.0}, {"heat_sensitive": True}]))
    return replace(plan, kinds={**plan.kinds, name: replace(plan.kinds[name], **changes)})


def _ground(plan, draw):
    changes = draw(
        st.sampled_from(
            [
                {"framing": {}},
                {"job": replace(plan.job, units="inch")},
                {"boards": {**plan.boards, "A": replace(plan.boards["A"], thickness=12)}},
                {"fasteners": {**plan.fasteners, "screw": replace(plan.fasteners["screw"], length=None)}},
                {"conductors": {**plan.conductors, "wire": replace(plan.conductors["wire"], lug=None)}},
                {"accepted": ()},
            ]
        )
    )
    return replace(plan, **changes)


EDITS = (_moved, _moved, _turned, _other_kind, _deleted, _added, _line, _cable, _kinds, _ground)


@settings(max_examples=2 * settings.default.max_examples)
@given(st.data())
def test_refreshed_is_the_review_from_scratch(data):
    review = review_of(BUSY)
    for _ in range(data.draw(st.integers(1, 6))):
        if len(review.plan.components) < 2:
            break
        plan = data.draw(st.sampled_from(EDITS))(review.plan, data.draw)
        review = refreshed(review, plan)
        assert review == review_of(plan)
        assert list(review.findings) == sorted(review.findings, key=rank)


BUSY = busy_plan()


def test_the_busy_plan_keeps_most_checks_busy():
    assert len({each.name for each in review_of(BUSY).findings}) >= 16


@pytest.mark.parametrize("sample", [library_bus, lookout_cabin])
def test_every_component_of_a_sample_moved(sample):
    plan = sample()
    review = review_of(plan)
    for held in plan.components.values():
        moved = plan.with_things([replace(held, position=held.position.moved(-13, 7))])
        assert refreshed(review, moved) == review_of(moved)
    assert review == review_of(plan), "a review is never changed by the next one"


def test_the_same_plan_is_the_same_review():
    review = review_of(BUSY)
    assert refreshed(review, BUSY) is review


@pytest.mark.parametrize("sample", [library_bus, lookout_cabin])
def test_samples_have_no_stop(sample):
    assert [each.sentence for each in review_of(sample()).stops] == []


@pytest.mark.parametrize("plan", [BUSY, library_bus(), lookout_cabin()], ids=["busy", "bus", "cabin"])
def test_every_sentence_holds_the_source_and_every_place_is_told(plan):
    review = review_of(plan)
    assert review.findings
    for each in review.findings:
        assert each.sentence.endswith(f"({each.source})."), each
        assert each.board in {"", *plan.boards}
        assert set(each.things) <= set(plan.things)
        assert (each.measured is None) == (each.limit is None)


def test_lengths_are_told_in_the_units_of_the_job():
    plan = replace(BUSY, job=replace(BUSY.job, units="inch"))
    found = next(each for each in review_of(plan).findings if each.name == "keep-clear-blocked")
    assert "2-3/8 in" in found.sentence  # 60 mm


def test_two_lengths_that_read_alike_are_told_apart():
    plan = plan_of(unit("U1", 300, 300), unit("U2", 404.96, 300))
    (found,) = [each for each in review_of(plan).findings if each.name == "gap-too-small"]
    assert "4.96 mm" in found.sentence


def assert_refreshed(plan, changed, name, count):
    """Check that a change brings or takes findings of a name, in the refreshed review too."""
    review = review_of(plan)
    assert [each.name for each in review.findings].count(name) == 0
    again = refreshed(review, changed)
    assert again == review_of(changed)
    assert [each.name for each in again.findings].count(name) == count


def test_fixings_are_asked_again_when_their_load_changes():
    board = replace(BOARD, material=Material("light", 4.5))
    heavy = replace(UNIT, id="heavy", mass=30.0)
    plan = plan_of(unit("U1", 500, 400), fixing("F1", 20, 300), kinds=[UNIT, heavy], board=board)
    changed = plan.with_things([replace(plan.components["U1"], kind="heavy")])
    assert_refreshed(plan, changed, "hole-near-edge", 1)


def test_cables_are_asked_again_when_only_the_terminal_changes():
    # The way stays where it is; behind a gland 20 mm stand straight, behind a clamp 6.
    plan = plan_of(
        unit("U1", 100, 100),
        unit("U2", 700, 100),
        cable("W1", ("U1", "R"), ("U2", "R"), (230, 150), (230, 300), (790, 300)),
    )
    terminals = tuple(replace(each, sort="gland") for each in UNIT.terminals)
    changed = replace(plan, kinds={"unit": replace(UNIT, terminals=terminals)})
    assert_refreshed(plan, changed, "bend-tighter-than-preferred", 1)


def test_channels_are_asked_again_when_only_the_class_of_a_cable_changes():
    cables = [cable(name, ("U1", "R"), ("U2", "L"), (260, 350), (640, 350)) for name in ("W1", "W2")]
    plan = plan_of(unit("U1", 100, 300), unit("U2", 700, 300), channel("RW", (250, 350), (650, 350)), *cables)
    changed = plan.with_things([replace(cables[0], cable_class="ac")])
    assert_refreshed(plan, changed, "classes-share-channel", 1)


def test_corners_are_asked_again_when_only_the_channel_gets_narrower():
    # 6 mm thick, 4 times that as bend radius: a square corner has to be 12.2 mm wide for it.
    run = channel("RW", (250, 350), (500, 350), (500, 700))
    bent = cable("W1", ("U1", "R"), ("U2", "T"), (260, 350), (500, 350), (500, 690), (850, 690))
    plan = plan_of(unit("U1", 100, 300), unit("U2", 800, 500), run, bent)
    changed = plan.with_things([replace(run, inner_width=12.0)])
    assert_refreshed(plan, changed, "channel-corner-tighter-than-preferred", 1)


def test_loaded_conductors_are_counted_again_when_only_a_cable_s_cores_are_more():
    many = cable("W1", ("U1", "R"), ("U2", "L"), (260, 350), (640, 350), count=16)
    plan = plan_of(unit("U1", 100, 300), unit("U2", 700, 300), channel("RW", (250, 350), (650, 350)), many)
    twin = replace(plan.conductors["wire"], cores=2)
    changed = replace(plan, conductors={**plan.conductors, "wire": twin})
    assert_refreshed(plan, changed, "many-loaded-conductors", 1)
