"""Cable fields: what can be typed and chosen of a cable - what it is, how it lies, what is on its ends."""

from dataclasses import replace
from typing import Any, Literal

from boardplan.editing.cable_edits import pin_way, set_cable
from boardplan.editing.refused import EditRefused
from boardplan.files.shelf_file import bundled_shelf
from boardplan.model.cable import Cable, CableEnd, Loop, Lug, TerminalEnd
from boardplan.model.plan import Plan
from boardplan.model.shelf import Shelf
from boardplan.ui.panels.corners_text import corners_of, corners_text
from boardplan.ui.panels.fields import Choices, Field, FieldRow, Sort, choices, reference


def _conductors(plan: Plan, shelf: Shelf) -> Choices:
    return [(each.id, each.name) for each in {**shelf.conductors, **plan.conductors}.values()]


def _colours(plan: Plan, _shelf: Shelf) -> Choices:
    return [(name, name) for name in plan.rules.colours]


def _put_conductor(plan: Plan, cable: Cable, value: str) -> Plan:
    return set_cable(plan, cable.id, conductor=plan.conductors.get(value) or bundled_shelf().conductors[value])


def _cable(attribute: str, words: str, sort: Sort, **more: Any) -> Field:  # noqa: ANN401
    return Field(
        words,
        sort,
        lambda _plan, cable: getattr(cable, attribute),
        lambda plan, cable, value: set_cable(plan, cable.id, **{attribute: value}),
        **more,
    )


_LUG_FORMS = choices(
    (None, "plain, straight"), ("straight", "straight, clocked"), ("45", "45 degrees"), ("90", "90 degrees")
)


def _lug_fields(which: Literal["start", "end"], words: str) -> FieldRow:
    """Return the form and the clocking of the lug at an end; there is none at an exit."""

    def lug(cable: Cable) -> Lug | None:
        end = getattr(cable, which)
        return end.lug if isinstance(end, TerminalEnd) else None

    def put(plan: Plan, cable: Cable, new: Lug | None) -> Plan:
        end = getattr(cable, which)
        if not isinstance(end, TerminalEnd):
            return plan
        changed = replace(end, lug=new)
        return set_cable(plan, cable.id, start=changed) if which == "start" else set_cable(plan, cable.id, end=changed)

    def with_form(plan: Plan, cable: Cable, form: Any) -> Plan:  # noqa: ANN401
        held = lug(cable) or Lug(_stud(plan, getattr(cable, which)))
        return put(plan, cable, None if form is None else replace(held, form=form))

    def with_clocking(plan: Plan, cable: Cable, degrees: float) -> Plan:
        if lug(cable) is None and not degrees:
            return plan
        held = lug(cable) or Lug(_stud(plan, getattr(cable, which)))
        return put(plan, cable, replace(held, clocking=degrees))

    return (
        Field(words, "choice", lambda _plan, cable: held.form if (held := lug(cable)) else None, with_form, _LUG_FORMS),
        Field(
            "",
            "number",
            lambda _plan, cable: held.clocking if (held := lug(cable)) else 0.0,
            with_clocking,
            unit="°",
            name=f"{words}, clocked by",
        ),
    )


def _stud(plan: Plan, end: CableEnd) -> str:
    """Return the stud a lug must fit: that of its terminal."""
    if not isinstance(end, TerminalEnd):
        return ""
    terminal = plan.kind_of(plan.components[end.component]).terminal(end.terminal)
    return terminal.size if terminal else ""


_LOOPS = choices((None, "none"), ("service", "service loop"), ("drip", "drip loop"))


def _loop(cable: Cable, which: Literal["start", "end"]) -> Loop | None:
    held: Loop | None = getattr(cable, which).loop
    return held


def _with_loop(plan: Plan, cable: Cable, which: Literal["start", "end"], new: Loop | None) -> Plan:
    changed = replace(getattr(cable, which), loop=new)
    return set_cable(plan, cable.id, start=changed) if which == "start" else set_cable(plan, cable.id, end=changed)


def _loop_fields(which: Literal["start", "end"], words: str) -> tuple[FieldRow, FieldRow]:
    """Return the rows of the loop left near an end, and how much cable it takes; empty for what the rule set takes."""

    def with_sort(plan: Plan, cable: Cable, sort: Any) -> Plan:  # noqa: ANN401
        held = _loop(cable, which)
        return _with_loop(plan, cable, which, None if sort is None else Loop(sort, held.length if held else None))

    def with_length(plan: Plan, cable: Cable, length: float | None) -> Plan:
        held = _loop(cable, which)
        if held is not None:
            return _with_loop(plan, cable, which, replace(held, length=length))
        if length is not None:
            raise EditRefused("Choose which loop it is before giving it a length.")
        return plan

    def sort_of(_plan: Plan, cable: Cable) -> Any:  # noqa: ANN401
        return held.sort if (held := _loop(cable, which)) else None

    def length_of(_plan: Plan, cable: Cable) -> float | None:
        return held.length if (held := _loop(cable, which)) else None

    length = Field(
        "how long", "length", length_of, with_length, may_be_empty=True, name=f"{words}, how long", empty="by the rules"
    )
    return (Field(words, "choice", sort_of, with_sort, _LOOPS),), (length,)


CABLE_FIELDS: tuple[FieldRow, ...] = (
    (reference(),),
    (Field("Conductor", "choice", lambda _plan, cable: cable.conductor, _put_conductor, _conductors),),
    (_cable("colour", "Colour", "choice", choices=_colours),),
    (
        _cable(
            "cable_class",
            "Class",
            "choice",
            choices=choices(("dc", "DC"), ("ac", "AC"), ("pv", "PV"), ("signal", "signal")),
        ),
    ),
    (
        _cable(
            "way",
            "Way",
            "choice",
            choices=choices(("choose", "as the program finds it"), ("channel", "in channels"), ("outside", "outside")),
        ),
    ),
    (
        _cable(
            "slack",
            "Slack",
            "choice",
            choices=choices(
                (None, "by the rule set"),
                ("jumper", "as a jumper"),
                ("large", "as a large cable"),
                ("small", "as a small cable"),
                ("off-board", "as off the board"),
                ("signal", "as a signal cable"),
            ),
        ),
    ),
    (_cable("count", "How many alike", "whole"),),
    (_cable("group", "Matched group", "text"),),
    (_cable("label", "Label", "text"),),
    (
        Field(
            "Pinned corners",
            "text",
            lambda _plan, cable: corners_text(cable.pins),
            lambda plan, cable, value: pin_way(plan, cable.id, corners_of(value)),
            unit="mm",
        ),
    ),
    _lug_fields("start", "Lug, first end"),
    _lug_fields("end", "Lug, second end"),
    *_loop_fields("start", "Loop, first end"),
    *_loop_fields("end", "Loop, second end"),
)
