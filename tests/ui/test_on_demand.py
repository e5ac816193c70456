"""What is worked out only when it is asked for: what would free a cable, what sharing the channels leaves."""

from dataclasses import replace

from boards import library_bus
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
    cable = next(each for each in finding.things if each in hands.plan.cables)
    expected = what_frees(hands.plan, cable)

    def texts():
        return [each.text() for each in freeing.findChildren(QLabel) if each.isVisible()]

    qtbot.waitUntil(lambda: texts() == [each.words for each in expected], timeout=PATIENCE)
    moves = [each for each in expected if each.component]
    buttons = [each for each in freeing.findChildren(QPushButton) if each.isVisible()]
    assert len(buttons) == len(moves)
    assert all(each.accessibleName() for each in buttons)


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
