"""What is worked out only when it is asked for: what would free a cable, what sharing the channels leaves."""

from dataclasses import replace

from boards import library_bus
from checks.plans import cable, channel, plan_of, unit
from PySide6.QtWidgets import QLabel, QPushButton

from boardplan.routing.sharing.left import saving_left
from boardplan.routing.what_frees import what_frees

PATIENCE = 120_000


def no_way(hands):
    return next((each for each in hands.session.known.findings if each.name == "cable-without-way"), None)


def pick(hands, finding):
    hands.window.desk.point_to(finding)


def test_a_cable_without_a_way_offers_what_would_free_it(open_plan, qtbot):
    plan = library_bus().with_things([replace(each, pins=()) for each in library_bus().cables.values()])
    down = replace(plan.components["LP1"], position=plan.components["LP1"].position.moved(0, -300))
    hands = open_plan(plan.with_things([down]), "wire")
    finding = no_way(hands)
    assert finding is not None, "the sample no longer gives a cable without a way"
    freeing = hands.bench.findings.freeing
    pick(hands, finding)
    assert freeing.ask.isVisible()
    freeing.ask.click()
    assert not freeing.ask.isVisible()
    name = next(each for each in finding.things if each in hands.plan.cables)
    expected = what_frees(hands.plan, name, tuple(hands.window.desk.shelf.channel_sections.values()))

    def texts():
        return [each.text() for each in freeing.findChildren(QLabel) if each.isVisible()]

    qtbot.waitUntil(lambda: texts() == [each.words for each in expected], timeout=PATIENCE)
    moves = [each for each in expected if each.component or each.channel]
    buttons = [each for each in freeing.findChildren(QPushButton) if each.isVisible()]
    assert len(buttons) == len(moves)
    assert all(each.accessibleName() for each in buttons)


def test_a_channel_too_shallow_is_made_deeper_at_once(open_plan, qtbot):
    """7 mm of cable is more than a third of 20 mm; 37 mm of the next section is enough for it."""
    joined = cable("W1", ("U1", "R"), ("U2", "L"), conductor="2x1.5", way="channel")
    shallow = channel("RW1", (210, 150), (790, 150), size=25, height=24)
    hands = open_plan(plan_of(unit("U1", 100, 100), unit("U2", 800, 100), shallow, joined), "wire")
    freeing = hands.bench.findings.freeing
    pick(hands, next(each for each in hands.session.known.findings if each.name == "cable-too-thick-for-channel"))
    freeing.ask.click()

    def buttons():
        return [each for each in freeing.findChildren(QPushButton) if each.isVisible()]

    qtbot.waitUntil(lambda: bool(buttons()), timeout=PATIENCE)
    assert buttons()[0].accessibleName() == (
        "Do so: Take a channel of 25 x 40 mm for RW1, not 25 x 24: it has room for W1."
    )
    buttons()[0].click()
    assert hands.plan.channels["RW1"].inner_height == 37


def test_other_findings_offer_nothing(open_plan):
    hands = open_plan(library_bus(), "wire")
    pick(hands, next(each for each in hands.session.known.findings if each.name != "cable-without-way"))
    assert not hands.bench.findings.freeing.isVisible()


def test_what_sharing_leaves_is_said_when_asked_for(open_plan, qtbot):
    hands = open_plan(library_bus(), "wire")
    sharing = hands.bench.wire.sharing
    sharing.ask.click()
    expected = saving_left(hands.plan, hands.session.known.ways).sentence
    qtbot.waitUntil(lambda: sharing.answer.text() == f"{expected[0].upper()}{expected[1:]}.", timeout=PATIENCE)
    hands.window.desk.edit("Turn", lambda plan: plan.with_things([replace(plan.cables["W08"], count=2)]))
    assert not sharing.answer.isVisible()
    assert sharing.ask.isVisible()
