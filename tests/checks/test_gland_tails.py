from dataclasses import replace

from boards import library_bus
from checks.plans import UNIT, cable, named, plan_of, unit


def joined(tail=None):
    """Two units of one kind with glands, and a cable from one to the other."""
    glands = tuple(replace(each, sort="gland", tail=tail) for each in UNIT.terminals)
    kind = replace(UNIT, terminals=glands)
    one = cable("W1", ("U1", "R"), ("U2", "L"), conductor="3x6")
    return plan_of(unit("U1", 100, 100), unit("U2", 400, 100), one, kinds=(kind,))


def test_a_tail_that_nobody_gave_is_asked_for_once_a_kind():
    (found,) = named(joined(), "gland-tail-unknown")
    assert (found.severity, found.things) == ("note", ("U1", "U2"))
    assert "how long are the tails" in found.sentence


def test_a_tail_of_the_sheet_is_no_question_and_neither_is_one_of_nought():
    assert named(joined(100), "gland-tail-unknown") == []
    assert named(joined(0), "gland-tail-unknown") == []


def test_a_gland_without_a_cable_is_not_asked_about():
    assert named(joined().without(["W1"]), "gland-tail-unknown") == []


def test_an_edition_with_flat_lengths_does_not_ask():
    assert named(replace(joined(), rules=library_bus().rules), "gland-tail-unknown") == []
