"""All checks: the table is complete, and every limit it needs is in every rule set."""

import ast
from pathlib import Path

import pytest
from checks.plans import rules

import boardplan.checks
from boardplan.checks.all_checks import CHECKS
from boardplan.checks.cable_bends import STRAIGHT
from boardplan.checks.check import CheckOnJob
from boardplan.checks.spots import SORTS
from boardplan.files.rule_set_file import rule_sets

FOLDER = Path(boardplan.checks.__file__).parent
MODULES = sorted(path for path in FOLDER.glob("*.py") if path.stem != "__init__")


def names_given_to(asking):
    """Return every name that is handed to the rule set by functions of these names, one of a choice or alone."""
    calls = [
        node
        for path in MODULES
        for node in ast.walk(ast.parse(path.read_text()))
        if isinstance(node, ast.Call) and getattr(node.func, "attr", getattr(node.func, "id", "")) in asking
    ]
    constants = [
        each for call in calls if call.args for each in ast.walk(call.args[0]) if isinstance(each, ast.Constant)
    ]
    return {each.value for each in constants}


def limits_used():
    return names_given_to(("limit", "asked", "value")) | set(STRAIGHT.values())


def public_checks():
    """Yield module and name of every public function that yields findings."""
    for path in MODULES:
        for node in ast.parse(path.read_text()).body:
            yields = isinstance(node, ast.FunctionDef) and node.returns and ast.unparse(node.returns)
            if yields == "Iterator[Finding]" and not node.name.startswith("_"):
                yield path.stem, node.name


def test_every_check_is_in_the_table():
    listed = {(check.function.__module__.rpartition(".")[2], check.function.__name__) for check in CHECKS}
    assert set(public_checks()) == listed


def test_names_are_there_once_and_questions_ask():
    names = [check.name for check in CHECKS]
    assert len(set(names)) == len(names)
    assert all(check.question.endswith("?") for check in CHECKS)


def test_checks_are_asked_of_sorts_that_exist():
    for check in CHECKS:
        if not isinstance(check, CheckOnJob):
            assert set(check.of) | set(getattr(check, "near", ())) <= set(SORTS)


@pytest.mark.parametrize("rule_set", rule_sets(), ids=lambda each: each.edition)
def test_every_limit_is_in_the_rule_set(rule_set):
    """An earlier edition may lack what later checks ask for; they ask first whether it knows the limit."""
    used = limits_used()
    assert len(used) > 40
    latest = max(rule_sets(), key=lambda each: each.edition)
    asked_first = names_given_to(("knows",)) if rule_set is not latest else set()
    assert used - asked_first <= set(rule_set.limits)


def test_every_limit_says_where_it_comes_from():
    assert all(limit.source for limit in rules().limits.values())
