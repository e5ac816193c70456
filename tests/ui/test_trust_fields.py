"""How a measure is known is said beside it, one step back; a measure changed by hand leaves it and asks."""

from dataclasses import replace

import pytest
from boards import honey_trailer
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from boardplan.ui.panels.fields import trust_choices
from boardplan.ui.panels.survey_fields import ROOM_FIELDS

TRUSTS = [None, "measured", "customer", "photo", "estimated"]


@pytest.fixture
def hands(open_plan):
    plan = honey_trailer()
    board = plan.boards["A"]
    bare = replace(board, trust=None, compartment=replace(board.compartment, trust=None))
    return open_plan(plan.with_things([bare]), "survey")


def choose(box, words):
    """Choose by the keyboard: the first letters of the words."""
    box.setFocus()
    QTest.keyClicks(box, words[:4])


def form_of(hands, thing):
    hands.window.desk.select(thing)
    return hands.bench.properties.form


def first_of(hands, collection):
    return next(iter(getattr(hands.plan, collection)))


@pytest.mark.parametrize(
    ("collection", "name"),
    [
        ("boards", "How the size is known"),
        ("framing", "How the member is known"),
        ("no_go_boxes", "How the box is known"),
        ("exits", "How the exit is known"),
    ],
)
def test_trust_is_chosen_by_keys_and_undone(hands, collection, name):
    thing = first_of(hands, collection)
    before = getattr(hands.plan, collection)[thing].trust
    box = form_of(hands, thing).editor(name)
    assert [box.itemData(number) for number in range(box.count())] == TRUSTS
    wanted, words = ("photo", "from a photo") if before != "photo" else ("estimated", "estimated")
    choose(box, words)
    assert getattr(hands.plan, collection)[thing].trust == wanted
    assert hands.session.history.undo_words == f"Change {name.lower()}"
    hands.act("undo")
    assert getattr(hands.plan, collection)[thing].trust == before
    assert box.currentData() == before


def test_the_room_has_a_trust_of_its_own(hands):
    form = hands.bench.survey._forms[2]  # noqa: SLF001 - the third section
    choose(form.editor("How the room is known"), "given")
    board = hands.plan.boards["A"]
    assert (board.compartment.trust, board.trust) == ("customer", None)


def test_a_room_that_nobody_measured_can_not_be_trusted(open_plan):
    plan = honey_trailer()
    hands = open_plan(plan.with_things([replace(plan.boards["A"], compartment=None)]), "survey")
    said = []
    hands.window.desk.said.connect(said.append)
    before = hands.plan
    box = hands.bench.survey._forms[2].editor("How the room is known")  # noqa: SLF001
    choose(box, "measured")
    assert hands.plan is before
    assert said[-1].startswith("Nothing is known of the room round the board yet.")
    assert box.currentData() is None


@pytest.mark.parametrize(("trust", "asks"), [("estimated", True), ("photo", True), ("measured", False), (None, False)])
def test_a_measure_changed_by_hand_keeps_its_trust_and_asks(open_plan, trust, asks):
    plan = honey_trailer()
    hands = open_plan(plan.with_things([replace(plan.boards["A"], trust=trust)]), "survey")
    said = []
    hands.window.desk.said.connect(said.append)
    width = form_of(hands, "A").editor("Width")
    width.setFocus()
    width.selectAll()
    QTest.keyClicks(width, "1230")
    QTest.keyClick(width, Qt.Key.Key_Return)
    assert hands.plan.boards["A"].box.width == 1230
    assert hands.plan.boards["A"].trust == trust
    assert said[-1].startswith("Still marked") is asks


def test_every_measure_of_the_room_asks_and_the_choices_say_who_measured():
    asking = [field.name for row in ROOM_FIELDS for field in row if field.measures is not None]
    assert len(asking) == 5
    words = [words for _, words in trust_choices()(honey_trailer(), None)]
    assert words == ["nobody said", "measured by us", "given by customer", "from a photo", "estimated"]
