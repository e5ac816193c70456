"""Lookup: the thing an edit is about, or a plain refusal where there is none."""

from collections.abc import Iterable

from boardplan.editing.refused import EditRefused
from boardplan.model.board import Board
from boardplan.model.cable import Cable
from boardplan.model.channel import Channel
from boardplan.model.component import Component
from boardplan.model.plan import Plan, Thing


def board_of(plan: Plan, board_id: str) -> Board:
    """Return a board. Raises EditRefused."""
    if board_id not in plan.boards:
        raise EditRefused(f"There is no board {board_id}.")
    return plan.boards[board_id]


def component_of(plan: Plan, component_id: str) -> Component:
    """Return a component. Raises EditRefused."""
    if component_id not in plan.components:
        raise EditRefused(f"There is no component {component_id}.")
    return plan.components[component_id]


def components_of(plan: Plan, ids: Iterable[str]) -> tuple[Component, ...]:
    """Return components, each once. Raises EditRefused."""
    return tuple(component_of(plan, each) for each in dict.fromkeys(ids))


def channel_of(plan: Plan, channel_id: str) -> Channel:
    """Return a channel. Raises EditRefused."""
    if channel_id not in plan.channels:
        raise EditRefused(f"There is no channel {channel_id}.")
    return plan.channels[channel_id]


def cable_of(plan: Plan, cable_id: str) -> Cable:
    """Return a cable. Raises EditRefused."""
    if cable_id not in plan.cables:
        raise EditRefused(f"There is no cable {cable_id}.")
    return plan.cables[cable_id]


def things_of(plan: Plan, ids: Iterable[str]) -> tuple[Thing, ...]:
    """Return things of any sort, each once. Raises EditRefused."""
    found = []
    for each in dict.fromkeys(ids):
        if each not in plan.things:
            raise EditRefused(f"There is nothing called {each} in this job.")
        found.append(plan.things[each])
    return tuple(found)
