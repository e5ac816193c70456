"""Battery trays are put into a job as long as its file could hold them; what can't be is refused in a sentence."""

from dataclasses import replace

import pytest
from boards import honey_trailer

from boardplan.editing.refused import EditRefused
from boardplan.editing.tray_edits import new_tray, with_trays
from boardplan.files.plan_file import plan_of_text, plan_text
from boardplan.model.tray import Battery, Tray, TrayExit, TrayGaps

GOOD = Tray("T1", "house bank", battery=Battery(390, 190, 240.5, 26), columns=4, rows=1, along="width")


def test_trays_are_put_in_and_can_be_saved_and_read():
    plan = with_trays(honey_trailer(), [GOOD, Tray("T2")])
    assert plan.trays == (GOOD, Tray("T2"))
    assert plan_of_text(plan_text(plan)) == plan
    assert with_trays(plan, [GOOD, Tray("T2")]) is plan
    assert with_trays(plan, []).trays == ()


def test_a_new_tray_knows_nothing_and_has_the_next_reference():
    assert new_tray(honey_trailer(), []) == Tray("T1")
    assert new_tray(honey_trailer(), [Tray("T1"), Tray("T7")]) == Tray("T8")


@pytest.mark.parametrize(
    ("trays", "words"),
    [
        ([GOOD, GOOD], "Two trays are called T1"),
        ([replace(GOOD, battery=Battery(mass=-1))], "Tray T1, battery mass: "),
        ([replace(GOOD, columns=0)], "Tray T1, columns: "),
        ([replace(GOOD, gaps=TrayGaps(side=float("inf")))], "Tray T1, gaps side: "),
        ([replace(GOOD, exits=(TrayExit("plus"), TrayExit("")))], "cable exit 2 called"),
        ([replace(GOOD, exits=(TrayExit("plus", diameter=-4),))], "Tray T1, exits 1 diameter: "),
        ([replace(GOOD, finished_by="soon")], "Tray T1, finished by: "),
        ([replace(GOOD, id="")], "Tray without a reference, id: "),
    ],
)
def test_what_a_tray_can_not_be_is_refused(trays, words):
    with pytest.raises(EditRefused, match=words):
        with_trays(honey_trailer(), trays)
