"""Points to test: what is measured before a job is handed over: cables, studs, lugs, sources, and what has settings."""

from collections.abc import Iterator
from dataclasses import dataclass

from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.component import Component
from boardplan.model.plan import Plan
from boardplan.routing.lugs.lug_stack import StackedLug, stacks_of

_CHARGERS = ("charge controllers", "alternator chargers")
INVERTERS = "inverter/chargers"
_WITH_SETTINGS = (
    "inverter/chargers", "charge controllers", "alternator chargers", "converters", "shunts", "monitoring",
    "contactors and protect relays", "batteries and trays",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class WatchedStud:
    """A stud that carries battery current, and the lugs on it whose warmth is watched."""

    place: str
    pole: str
    lugs: tuple[StackedLug, ...]


def family_of(plan: Plan, component: Component) -> str:
    """Return the family of a component's kind in small letters."""
    return plan.kind_of(component).family.strip().casefold()


def cables_to_test(plan: Plan) -> tuple[Cable, ...]:
    """Return the cables that are tested one by one: all but leads that are bought with moulded ends."""
    return tuple(each for each in plan.cables.values() if not plan.conductors[each.conductor].stock_lengths)


def watched_studs(plan: Plan) -> Iterator[WatchedStud]:
    """Yield the studs with lugs on them, but for those of protective earth, which carry no current."""
    for stack in stacks_of(plan):
        terminal = plan.kind_of(plan.components[stack.component]).terminal(stack.terminal)
        pole = terminal.pole if terminal else ""
        if pole != "PE":
            yield WatchedStud(stack.place, pole, stack.lugs)


def sources(plan: Plan) -> Iterator[Component]:
    """Yield what charges the battery: chargers with a cable on them, inverter/chargers with one on their AC input."""
    for component in plan.components.values():
        family, used = family_of(plan, component), terminals_in_use(plan, component.id)
        from_ac = family == INVERTERS and any(is_ac_in(each) for each in used)
        if from_ac or (used and family in _CHARGERS):
            yield component


def is_ac_in(terminal: str) -> bool:
    """Say whether a terminal of an inverter/charger takes in AC, by its name."""
    return terminal.casefold().replace(" ", "").replace("-", "").startswith("acin")


def terminals_in_use(plan: Plan, component: str) -> tuple[str, ...]:
    """Return the terminals of a component that a cable ends on."""
    ends = (end for cable in plan.cables.values() for end in cable.ends)
    return tuple(end.terminal for end in ends if isinstance(end, TerminalEnd) and end.component == component)


def units_with_settings(plan: Plan) -> tuple[Component, ...]:
    """Return the components whose settings are written down."""
    return tuple(each for each in plan.components.values() if family_of(plan, each) in _WITH_SETTINGS)


def has_ac(plan: Plan) -> bool:
    """Say whether any cable of a job carries AC."""
    return any(each.cable_class == "ac" for each in plan.cables.values())
