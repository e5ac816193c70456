"""Shut-off steps: in which order a job is shut off and started, only for what it has, named by its references.

The order is common practice, no source; the instructions of the equipment replace it.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from boardplan.model.component import Component
from boardplan.model.plan import Plan
from boardplan.output.hand_over.points_to_test import INVERTERS, family_of, has_ac, is_ac_in
from boardplan.routing.lengths.end_work import work_at_ends

BLANK = "____________"
_MOST_LINES = 8
_SUPPLIES = ("shore", "generator", "genset")


@dataclass(frozen=True, slots=True)
class ShutOffs:
    """The components that steps name, by what they do; `supplies` are the far ends that bring in AC, in words."""

    battery: tuple[str, ...]
    pv: tuple[str, ...]
    inverters: tuple[str, ...]
    alternators: tuple[str, ...]
    other_sources: tuple[str, ...]
    monitors: tuple[str, ...]
    pre_charge: tuple[str, ...]
    supplies: tuple[str, ...]
    ac: bool
    has_pv: bool

    @property
    def marked(self) -> tuple[str, ...]:
        """What an emergency needs, in the order of its numbers in the picture."""
        return (*self.battery, *self.pv)


def shut_offs_of(plan: Plan) -> ShutOffs:
    """Return what of a job is shut off and started."""

    def of(*families: str, only: Callable[[Component], bool] = lambda _: True) -> tuple[str, ...]:
        return tuple(each.id for each in plan.components.values() if family_of(plan, each) in families and only(each))

    controllers = of("charge controllers")
    solar = {each for each in controllers if _takes_pv(plan, each)}
    return ShutOffs(
        battery=of("shut-offs"),
        pv=of("pv disconnects"),
        inverters=of(INVERTERS),
        alternators=of("alternator chargers"),
        other_sources=tuple(each for each in controllers if each not in solar),
        monitors=of("monitoring"),
        pre_charge=of(
            "contactors and protect relays", only=lambda each: "pre-charge" in plan.kind_of(each).name.casefold()
        ),
        supplies=tuple(dict.fromkeys(_supplies(plan))),
        ac=has_ac(plan),
        has_pv=bool(solar) or any(each.cable_class == "pv" for each in plan.cables.values()),
    )


def _takes_pv(plan: Plan, component: str) -> bool:
    terminals = plan.kind_of(plan.components[component]).terminals
    return any(each.id.casefold().startswith("pv") for each in terminals)


def _supplies(plan: Plan) -> Iterator[str]:
    """Yield what brings AC in: what is called shore or generator, and whatever feeds an AC input."""
    for component in plan.components.values():
        if _is_called_supply(plan.kind_of(component).name):
            yield component.id
    for cable in plan.cables.values():
        ends = work_at_ends(plan, cable)
        for here, there in (ends, ends[::-1]):
            into_ac = not here.raw and is_ac_in(here.place.rpartition(".")[2])
            if there.raw and (into_ac or _is_called_supply(there.place)):
                yield f"{there.place} ({cable.label or cable.id})"
            elif into_ac:
                yield there.place.rpartition(".")[0]


def _is_called_supply(name: str) -> bool:
    return any(word in name.casefold() for word in _SUPPLIES)


def off_steps(job: ShutOffs) -> Iterator[str]:
    """Yield how to shut off, step by step."""
    if job.ac or job.inverters:
        yield "AC loads off."
    if job.inverters:
        yield f"Inverter off at its own switch: {_names(job.inverters)}."
    if job.supplies:
        yield f"Shore or generator off: {_names(job.supplies)}."
    if job.has_pv or job.pv:
        yield f"Open the PV disconnect: {_names(job.pv)}."
    if job.other_sources:
        yield f"Other sources off: {_names(job.other_sources)}."
    if job.alternators:
        yield f"Engine off, alternator charger disabled: {_names(job.alternators)}."
    yield f"Open the battery shut-off: {_names(job.battery)}."
    yield "Wait 5 minutes, or as long as the equipment says: capacitors hold charge."
    yield "Prove dead: measure."


def on_steps(job: ShutOffs) -> Iterator[str]:
    """Yield how to start, step by step."""
    through = (
        f"through the pre-charge {_names(job.pre_charge)}" if job.pre_charge else "through the pre-charge, if fitted"
    )
    yield f"Close the battery shut-off, {through}: {_names(job.battery)}."
    if job.monitors:
        yield f"Monitor alive, polarity and voltage right: {_names(job.monitors)}."
    else:
        yield "Measure: polarity and voltage right."
    if job.has_pv or job.pv:
        yield f"Close the PV disconnect: {_names(job.pv)}."
    if job.other_sources:
        yield f"Other sources on: {_names(job.other_sources)}."
    if job.alternators:
        yield f"Alternator charger enabled: {_names(job.alternators)}."
    if job.inverters:
        yield f"Inverter on: {_names(job.inverters)}."
    if job.supplies:
        yield f"Shore or generator on: {_names(job.supplies)}."
    yield "Loads on."


def emergency_steps(plan: Plan, job: ShutOffs) -> Iterator[tuple[int | None, str]]:
    """Yield what to open in an emergency, each with its number in the picture, none where nobody knows where it is.

    More than a person reads in an emergency are named by their numbers together.
    """
    if len(job.marked) > _MOST_LINES:
        yield from ((None, words) for words in _together(job))
    else:
        for number, each in enumerate(job.marked, start=1):
            what = "battery shut-off" if each in job.battery else "PV disconnect"
            yield number, f"Open {what} {each}{_label_words(plan, each)}."
    if not job.battery:
        yield None, f"Open the battery shut-off: {BLANK}."
    if job.has_pv and not job.pv:
        yield None, f"Open the PV disconnect: {BLANK}."


def _together(job: ShutOffs) -> Iterator[str]:
    first = 1
    for what, names in (("battery shut-offs", job.battery), ("PV disconnects", job.pv)):
        last = first + len(names) - 1
        if names:
            numbers = f"{first} to {last}" if last > first else str(first)
            yield f"Open all {what}, {numbers} in the picture: {_names(names)}."
        first = last + 1


def _label_words(plan: Plan, component: str) -> str:
    label = plan.components[component].label
    return f", {label}" if label else ""


def warnings(job: ShutOffs) -> Iterator[str]:
    """Yield what stays live after that."""
    if job.has_pv or job.pv:
        yield "PV wires stay live in daylight."
    yield "Battery cables stay live up to the shut-off."


def questions(job: ShutOffs) -> Iterator[str]:
    """Yield what a card can't say: where a shut-off is that no board of the job carries."""
    if not job.battery:
        yield "Where is the battery shut-off? No board of this job has one."
    if job.has_pv and not job.pv:
        yield "Where is PV disconnected? No board of this job has a PV disconnect."


def _names(names: Sequence[str]) -> str:
    return ", ".join(names) or BLANK
