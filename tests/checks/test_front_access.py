"""Front access: depths at the limit of the compartment, fronts that want room, depths nobody measured."""

from dataclasses import replace

import pytest
from checks.plans import BOARD, UNIT, named, plan_of, unit

from boardplan.model.board import Compartment
from boardplan.model.component_kind import KeepClear


def board(depth):
    return replace(BOARD, compartment=Compartment(200, 200, 200, 200, depth))


@pytest.mark.parametrize(("depth", "deep", "front"), [(130, 0, 0), (129.9, 0, 1), (50, 0, 1), (49.9, 1, 0)])
def test_unit_50_deep_that_asks_80_in_front(depth, deep, front):
    fused = replace(UNIT, keep_clear=(KeepClear("front", 80, "fuse pull"),))
    plan = plan_of(unit("U1", 300, 300), kinds=[fused], board=board(depth))
    assert len(named(plan, "deeper-than-compartment")) == deep
    found = named(plan, "front-too-close")
    assert [each.measured for each in found] == [pytest.approx(depth - 50)] * front


@pytest.mark.parametrize("around", [None, Compartment(10, 10, 10, 10)])
def test_unknown_depth_is_one_question_for_a_board_in_use(around):
    bare = replace(BOARD, compartment=around)
    (found,) = named(plan_of(unit("U1", 300, 300), unit("U2", 500, 300), board=bare), "compartment-depth-unknown")
    assert found.severity == "note"
    assert found.things == ("A",)
    assert named(plan_of(board=bare), "compartment-depth-unknown") == []
