"""Asking: puts the questions of the table to things, and to pairs of things that are near each other."""

from collections.abc import Iterable, Iterator, Mapping
from typing import TypeAlias

from boardplan.checks.all_checks import CHECKS
from boardplan.checks.check import CheckBetween, CheckOnJob, CheckOnOne
from boardplan.checks.finding import Finding
from boardplan.checks.neighbours import Neighbours, touching
from boardplan.checks.site import Site
from boardplan.checks.spots import SORTS, Spot
from boardplan.model.rule_set import SEVERITIES

Key: TypeAlias = tuple[str, tuple[str, ...]]
"""A check's name and the ids of what it was asked about."""
Rank: TypeAlias = tuple[object, ...]
Ranked: TypeAlias = tuple[Rank, Finding]
Answers: TypeAlias = Mapping[Key, tuple[Ranked, ...]]


def rank(finding: Finding) -> Rank:
    """Return what findings are sorted by: gravest first, then board, name, place, things, words."""
    grave = SEVERITIES.index(finding.severity)
    return grave, finding.board, finding.name, finding.place, finding.things, finding.sentence


def ask_of_each(site: Site, ids: Iterable[str]) -> dict[Key, tuple[Ranked, ...]]:
    """Return the answers of things to the questions about one thing; those without a finding are left out."""
    found: dict[Key, tuple[Ranked, ...]] = {}
    for each in ids:
        spot = site.spots.get(each)
        for check in _ON_ONE[type(spot)] if spot else ():
            answer = _ranked(check.function(site, spot))
            if answer:
                found[check.name, (each,)] = answer
    return found


def ask_between(site: Site, near: Neighbours, ids: Iterable[str]) -> dict[Key, tuple[Ranked, ...]]:
    """Return the answers to the questions about pairs, for every pair with at least one of the ids."""
    found: dict[Key, tuple[Ranked, ...]] = {}
    done: set[str] = set()
    for each in ids:
        spot = site.spots.get(each)
        if spot is None:
            continue
        done.add(each)
        for other_id in near.around(spot.reach):
            if other_id not in done:
                other = site.spots[other_id]
                pair = (spot, other) if each < other_id else (other, spot)
                _ask_pair(site, *pair, found)
    return found


def _ask_pair(site: Site, one: Spot, other: Spot, found: dict[Key, tuple[Ranked, ...]]) -> None:
    rows = _BETWEEN[type(one), type(other)]
    if not rows or not touching(one.reach, other.reach):
        return
    for check, swapped in rows:
        pair = (other, one) if swapped else (one, other)
        answer = _ranked(check.function(site, *pair))
        if answer:
            found[check.name, (pair[0].id, pair[1].id)] = answer


def ask_of_job(site: Site) -> list[Ranked]:
    """Return the answers to the questions about the whole job."""
    return [ranked for check in _ON_JOB for ranked in _ranked(check.function(site))]


def _ranked(findings: Iterator[Finding]) -> tuple[Ranked, ...]:
    return tuple((rank(finding), finding) for finding in findings)


def _questions_between(one: type[Spot], other: type[Spot]) -> tuple[tuple[CheckBetween, bool], ...]:
    """Return the questions for two sorts of things, and whether they are asked of the second about the first."""
    rows = []
    for check in CHECKS:
        if isinstance(check, CheckBetween):
            straight, swapped = one in check.of and other in check.near, other in check.of and one in check.near
            rows += [(check, False)] if straight else []
            rows += [(check, True)] if swapped and not (straight and check.mutual) else []
    return tuple(rows)


_ON_ONE = {
    sort: tuple(check for check in CHECKS if isinstance(check, CheckOnOne) and sort in check.of) for sort in SORTS
}
_BETWEEN = {(one, other): _questions_between(one, other) for one in SORTS for other in SORTS}
_ON_JOB = tuple(check for check in CHECKS if isinstance(check, CheckOnJob))
