"""Known: what is known of a plan so far - enough to show it, while the whole review may still be under way."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, TypeVar

from boardplan.checks.finding import Finding
from boardplan.checks.review import Review
from boardplan.model.plan import Plan
from boardplan.routing.channels.channel_fill import ChannelFill
from boardplan.routing.channels.channel_lanes import drawn_beside_each_other
from boardplan.routing.lengths.length_sum import CutLength
from boardplan.routing.route import Way
from boardplan.routing.supports.clamp import Clamp
from boardplan.routing.supports.retainers import Retainer, retainers_of
from boardplan.routing.together.crossings import Crossing

_T = TypeVar("_T")


@dataclass(frozen=True)
class Known:
    """A plan with ways, lengths, fills, findings and clamps.

    `stretched` are the cables whose way and length were only drawn along with what was moved: they are not
    worked out yet. `crossings` are looked for only when the hand rests; none where they were not yet.
    """

    plan: Plan
    ways: Mapping[str, Way]
    lengths: Mapping[str, CutLength]
    fills: Mapping[str, ChannelFill]
    findings: tuple[Finding, ...]
    clamps: Mapping[str, tuple[Clamp, ...]]
    stretched: frozenset[str] = frozenset()
    crossings: tuple[Crossing, ...] | None = None

    @cached_property
    def stops(self) -> tuple[Finding, ...]:
        """The findings because of which papers must not be issued."""
        return tuple(each for each in self.findings if each.stops)

    @cached_property
    def drawn(self) -> Mapping[str, Way]:
        """The ways as they are drawn: beside each other in channels."""
        return drawn_beside_each_other(self.plan, self.ways)

    @cached_property
    def retainers(self) -> Mapping[str, tuple[Retainer, ...]]:
        """The retainers of every channel that wants any."""
        return retainers_of(self.plan, self.ways)


def known_of(review: Review) -> Known:
    """Return what a review says, as far as it is shown."""
    return Known(review.plan, review.ways, review.lengths, review.fills, review.findings, review.clamps)


@dataclass(frozen=True, slots=True)
class News:
    """What a review says other than the one before; findings of none are those of before."""

    groups: Mapping[str, Mapping[str, Any]] = field(default_factory=dict)
    findings: tuple[Finding, ...] | None = None


_GROUPS = {"ways": "cables", "lengths": "cables", "clamps": "cables", "fills": "channels"}
"""Which things of a plan each mapping is about."""


def news_of(old: Review | None, new: Review) -> News:
    """Return what a review says other than an older one; everything where there is none."""
    groups = {name: _apart(getattr(old, name) if old else {}, getattr(new, name)) for name in _GROUPS}
    same = old is not None and old.findings == new.findings
    return News(groups, None if same else new.findings)


def _apart(old: Mapping[str, Any], new: Mapping[str, Any]) -> dict[str, Any]:
    return {key: each for key, each in new.items() if (was := old.get(key)) is not each and was != each}


def with_news(known: Known, plan: Plan, news: News) -> Known:
    """Return what is known of a plan from what was known before and the news; the same objects where alike."""
    made = {name: _merged(getattr(known, name), news.groups[name], getattr(plan, of)) for name, of in _GROUPS.items()}
    findings = known.findings if news.findings is None or news.findings == known.findings else news.findings
    return Known(plan, made["ways"], made["lengths"], made["fills"], findings, made["clamps"])


def _merged(old: Mapping[str, _T], new: Mapping[str, _T], things: Mapping[str, object]) -> Mapping[str, _T]:
    """Return the old values with the new ones put in, for these things only; equal ones stay the same objects."""
    found: dict[str, _T] = {}
    for key in things:
        value, was = new.get(key), old.get(key)
        kept = was if value is None or value == was else value
        if kept is not None:
            found[key] = kept
    return found
