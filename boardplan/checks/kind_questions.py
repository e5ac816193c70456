"""Kind questions: what is wrong with a kind that somebody is measuring, and what nobody has said of it yet."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations
from math import hypot
from typing import Literal

from boardplan.geometry.point import Point
from boardplan.model.component_kind import ComponentKind, Terminal

_FAR_OUT = 60.0
"""A terminal further off the outline than this, in mm, is a slip: tongues and posts stand out less (no source)."""
_SAME = 0.5


@dataclass(frozen=True, slots=True)
class KindQuestion:
    """A sentence about a kind: a "slip" that must be mended, or a "question" that may stay open for now."""

    sort: Literal["slip", "question"]
    words: str


def kind_questions(kind: ComponentKind) -> tuple[KindQuestion, ...]:
    """Return all that is to be said of a kind, slips first."""
    slips = [KindQuestion("slip", words) for words in (*_hole_slips(kind), *_terminal_slips(kind))]
    questions = [KindQuestion("question", words) for words in (*_of_body(kind), *_of_terminals(kind), *_of_room(kind))]
    return (*slips, *questions)


def _hole_slips(kind: ComponentKind) -> Iterator[str]:
    for number, hole in enumerate(kind.holes, start=1):
        if _outside(kind, hole.position) > 0:
            yield f"Hole {number} lies outside the outline."
    for (first, one), (second, other) in combinations(enumerate(kind.holes, start=1), 2):
        if _apart(one.position, other.position) < _SAME:
            yield f"Holes {first} and {second} are at the same place."


def _terminal_slips(kind: ComponentKind) -> Iterator[str]:
    for terminal in kind.terminals:
        if _outside(kind, terminal.position) > _FAR_OUT:
            yield f"Terminal {terminal.id} lies more than {_FAR_OUT:g} mm off the outline."
    for one, other in combinations(kind.terminals, 2):
        if _apart(one.position, other.position) < _SAME and one.z == other.z:
            yield f"Terminals {one.id} and {other.id} are at the same place."


def _outside(kind: ComponentKind, point: Point) -> float:
    """Return how far a point lies off a kind's outline, in mm; 0 on it and within."""
    from shapely import Point as Spot  # noqa: PLC0415 - late, for a quick start
    from shapely import Polygon  # noqa: PLC0415

    distance: float = Polygon(kind.outline).distance(Spot(*point))
    return distance


def _apart(one: Point, other: Point) -> float:
    return hypot(one.x - other.x, one.y - other.y)


def _of_body(kind: ComponentKind) -> Iterator[str]:
    if kind.mass is None:
        yield "How heavy is it? Carrying and fixing depend on it."
    if not kind.holes:
        yield "Where are its mounting holes?"
    elif not kind.fastener:
        yield "Which fastener does it want?"
    elif kind.flange is None:
        yield "How thick is the flange under the screw head? The screw's length depends on it."
    if kind.non_combustible_backing is None:
        yield "Does its sheet ask for a non-combustible pad behind it?"
    if kind.heat is None:
        yield "How much heat does it give off at full load, in W?"


def _of_terminals(kind: ComponentKind) -> Iterator[str]:
    if not kind.terminals:
        yield "Where do cables land on it?"
    studs = [each for each in kind.terminals if each.sort == "stud"]
    for words, asked in (
        ("Of which thread is stud", [each for each in studs if not each.size]),
        ("What torque does its sheet give for", [each for each in studs if each.torque is None]),
        ("How much thread is usable on", [each for each in studs if each.usable_thread is None]),
    ):
        if asked:
            yield f"{words} {_listed(asked)}?"


def _listed(terminals: list[Terminal]) -> str:
    return ", ".join(each.id for each in terminals)


def _of_room(kind: ComponentKind) -> Iterator[str]:
    if not any(each.reason == "air" for each in kind.keep_clear):
        yield "Does its sheet ask for room for air?"
    if not any(each.face == "front" for each in kind.keep_clear):
        yield "How much room does a hand need before it, for fuses, handles, covers?"
