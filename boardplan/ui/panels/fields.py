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


def reference() -> Field:
    """Return the field of a thing's reference; changing it renames the thing."""

    def put(plan: Plan, thing: Any, value: str) -> Plan:  # noqa: ANN401
        return rename_thing(plan, thing.id, value)

    return Field("Reference", "text", lambda _plan, thing: thing.id, put, renames=True)


def position() -> FieldRow:
    """Return the fields of a thing's position on its board."""

    def put(axis: int) -> Callable[[Plan, Any, Any], Plan]:
        def moved(plan: Plan, thing: Any, value: float) -> Plan:  # noqa: ANN401
            at = Point(value, thing.position.y) if axis == 0 else Point(thing.position.x, value)
            if isinstance(thing, Component):
                return put_component(plan, thing.id, at)
            return put_thing(plan, replace(thing, position=at))

        return moved

    return (
        Field("Position x, y", "length", lambda _plan, thing: thing.position.x, put(0), name="Position x"),
        Field("", "length", lambda _plan, thing: thing.position.y, put(1), name="Position y"),
    )


def choices(*pairs: tuple[Any, str]) -> Callable[[Plan, Shelf], Choices]:
    """Return choices that are always the same, in words for people."""
    return lambda _plan, _shelf: [(value, tr(words)) for value, words in pairs]
