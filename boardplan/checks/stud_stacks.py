"""Stud stacks: how many lugs go on one stud, whether its thread holds them, and whether they can be fanned."""

from collections.abc import Iterator
from dataclasses import replace

from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, Where
from boardplan.geometry.units import tidy_number
from boardplan.model.cable import Cable
from boardplan.model.placed import placed
from boardplan.routing.lugs.lug_stack import Stack, Stud, cables_on_studs, fan_of, stack_of


def too_many_lugs(site: Site) -> Iterator[Finding]:
    """Yield a finding for each stud with more lugs than may lie on one."""
    limit = site.limit("lugs-on-a-stud")
    crowded = {
        stud: cables
        for stud, cables in cables_on_studs(site.plan).items()
        if sum(each.count for each in cables) > limit.value
    }
    for stack in _stacks(site, crowded):
        names = ", ".join(each.cable for each in stack.lugs)
        words = (
            f"{stack.count} lugs go on {stack.place} ({names}); {limit.value:g} may: take a busbar, not a longer stack"
        )
        yield site.finding("too-many-lugs", limit, _where(site, stack), words, float(stack.count))


def thread_too_short(site: Site) -> Iterator[Finding]:
    """Yield a finding for each stud whose usable thread is known and doesn't hold palms, washers and nut."""
    plan = site.plan
    kinds = {kind.id for kind in plan.kinds.values() if any(each.usable_thread is not None for each in kind.terminals)}
    lying = cables_on_studs(plan) if kinds else {}
    asked = {stud: cables for stud, cables in lying.items() if plan.components[stud[0]].kind in kinds}
    for stack in _stacks(site, asked):
        if stack.short > NOISE and stack.thread is not None and stack.asked is not None:
            has, wants = site.two_lengths(stack.thread, stack.asked)
            words = (
                f"The stud {stack.place} has {has} of thread; {stack.count} palms, washers, nut and two turns take "
                f"{wants}"
            )
            limit = site.asked("stud-hardware", stack.asked)
            yield site.finding("thread-too-short", limit, _where(site, stack), words, stack.thread)


def _stacks(site: Site, lying: dict[Stud, list[Cable]]) -> Iterator[Stack]:
    """Yield the stacks of some studs, each with its lugs in the order they lie."""
    for stud in sorted(lying):
        stack = stack_of(site.plan, stud, lying[stud])
        if stack is not None:
            yield stack


def _where(site: Site, stack: Stack) -> Where:
    component = site.plan.components[stack.component]
    at = placed(site.plan, component).terminals[stack.terminal].position
    things = component.id, *(each.cable for each in stack.lugs)
    return Where(things, component.board, site.plan.on_wall(component.board, at))


def lugs_have_no_fan(site: Site) -> Iterator[Finding]:
    """Yield a finding for each stud whose lugs can't be fanned so that no barrel lies on another."""
    if not site.knows("lugs-fanned"):
        return
    several = {stud: cables for stud, cables in cables_on_studs(site.plan).items() if len(cables) > 1}
    for stack in _stacks(site, several):
        fan = fan_of(site.plan, stack)
        if fan is None or fan.spread <= fan.room + NOISE:
            continue
        limit = replace(site.limit("lugs-fanned"), value=fan.room)
        names = ", ".join(each.cable for each in stack.lugs)
        words = (
            f"The lugs on {stack.place} ({names}) take {tidy_number(fan.spread, 0)} degrees to be fanned; "
            f"{fan.room:g} are there: take a busbar"
        )
        yield site.finding("lugs-have-no-fan", limit, _where(site, stack), words, fan.spread)
