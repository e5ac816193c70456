import pytest

from boardplan.editing.history import History
from boardplan.editing.thing_edits import nudge


@pytest.fixture
def plans(bus_plan):
    found = [bus_plan]
    for _ in range(3):
        found.append(nudge(found[-1], ["INV1"], "right"))
    return found


def test_back_and_forth(plans):
    history = History((plans[0],)).committed(plans[1], "one").committed(plans[2], "two")
    assert (history.plan, history.undo_words, history.redo_words) == (plans[2], "two", None)
    back = history.undone()
    assert (back.plan, back.undo_words, back.redo_words) == (plans[1], "one", "two")
    assert back.redone() == history
    assert back.undone().undone().plan is plans[0]
    assert back.undone().undo_words is None
    assert history.redone() == history


def test_a_new_step_forgets_what_was_undone(plans):
    history = History((plans[0],)).committed(plans[1], "one").committed(plans[2], "two").undone()
    other = history.committed(plans[3], "three")
    assert other.plans == (plans[0], plans[1], plans[3])
    assert other.words == ("one", "three")
    assert other.redo_words is None
