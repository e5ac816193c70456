"""Fields: what a field of a form is - how it is typed, read from a thing and put into the plan."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Any, Literal, TypeAlias

from boardplan.editing.component_edits import (
    put_component,
)
from boardplan.editing.thing_edits import put_thing, rename_thing
from boardplan.geometry.point import Point
from boardplan.model.component import Component
from boardplan.model.plan import Plan
from boardplan.model.shelf import Shelf
from boardplan.model.trust import Trust
from boardplan.ui.trust_words import NOBODY_SAID, TRUST_WORDS
from boardplan.ui.words import tr

Sort: TypeAlias = Literal["text", "length", "choice", "check", "whole", "number", "fact"]
Choices: TypeAlias = Sequence[tuple[Any, str]]


@dataclass(frozen=True, slots=True)
class Field:
    """A field: its words, how it is typed, how its value is read from a thing and put into the plan."""

    words: str
    sort: Sort
    get: Callable[[Plan, Any], Any]
    put: Callable[[Plan, Any, Any], Plan] | None = None
    choices: Callable[[Plan, Shelf], Choices] | None = None
    may_be_empty: bool = False
    unit: str = ""
    name: str = ""
    """What the field is called for people who don't see its neighbours; its words where empty."""
    renames: bool = False
    empty: str = ""
    """What an empty field means, where that is not plain."""
    measures: Callable[[Any], Trust | None] | None = None
    """For a measured length, how it is said to be known; one changed by hand asks whether that still holds."""


FieldRow: TypeAlias = tuple[Field, ...]
"""Fields that stand beside each other; the first one's words label the row."""


def plain(attribute: str, words: str, sort: Sort = "text", **more: Any) -> Field:  # noqa: ANN401
    """Return a field that is simply one attribute of its thing."""
    return Field(
        words,
        sort,
        lambda _plan, thing: getattr(thing, attribute),
        lambda plan, thing, value: put_thing(plan, replace(thing, **{attribute: value})),
        **more,
    )


def trust_of(thing: Any) -> Trust | None:  # noqa: ANN401
    """Return how the measures of a thing are said to be known."""
    known: Trust | None = thing.trust
    return known


def measured(attribute: str, words: str, **more: Any) -> Field:  # noqa: ANN401
    """Return the field of a length that the trust of its thing is about."""
    return plain(attribute, words, "length", measures=trust_of, **more)


def trust(name: str) -> FieldRow:
    """Return the field that says how the measures of a thing are known."""
    return (plain("trust", "How known", "choice", choices=trust_choices(), name=name),)


def trust_choices() -> Callable[[Plan, Shelf], Choices]:
    """Return all that can be said of how a measure is known; first that nobody said anything."""
    return choices(NOBODY_SAID, *TRUST_WORDS)


def reference() -> Field:
    """Return the field of a thing's reference; changing it renames the thing."""

    def put(plan: Plan, thing: Any, value: str) -> Plan:  # noqa: ANN401
        return rename_thing(plan, thing.id, value)

    return Field("Reference", "text", lambda _plan, thing: thing.id, put, renames=True)


def position(measures: Callable[[Any], Trust | None] | None = None) -> FieldRow:
    """Return the fields of a thing's position on its board; `measures` where a trust is about it."""

    def put(axis: int) -> Callable[[Plan, Any, Any], Plan]:
        def moved(plan: Plan, thing: Any, value: float) -> Plan:  # noqa: ANN401
            at = Point(value, thing.position.y) if axis == 0 else Point(thing.position.x, value)
            if isinstance(thing, Component):
                return put_component(plan, thing.id, at)
            return put_thing(plan, replace(thing, position=at))

        return moved

    first = Field("Position x, y", "length", lambda _plan, thing: thing.position.x, put(0), name="Position x")
    second = Field("", "length", lambda _plan, thing: thing.position.y, put(1), name="Position y")
    return replace(first, measures=measures), replace(second, measures=measures)


def choices(*pairs: tuple[Any, str]) -> Callable[[Plan, Shelf], Choices]:
    """Return choices that are always the same, in words for people."""
    return lambda _plan, _shelf: [(value, tr(words)) for value, words in pairs]
