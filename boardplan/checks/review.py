"""Review: everything known about a plan: ways, lengths, fills, findings; kept up to date for little after a change."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property

from boardplan.checks.acceptance import with_acceptance
from boardplan.checks.asking import Answers, Key, Ranked, ask_between, ask_of_each, ask_of_job, rank
from boardplan.checks.changes import fills_anew, ground_changed, holding_anew, lengths_anew, loaded_anew, moved_things
from boardplan.checks.finding import Finding
from boardplan.checks.grounds import all_room, fixing_loads, grounds_of
from boardplan.checks.neighbours import Neighbours
from boardplan.checks.site import Site
from boardplan.checks.spots import Spot
from boardplan.checks.survey import spot_of
from boardplan.model.plan import COLLECTIONS, Plan, Thing
from boardplan.routing.channels.channel_fill import ChannelFill, channel_fills
from boardplan.routing.find_route import find_routes, refreshed_routes
from boardplan.routing.lengths.cut_length import cut_lengths
from boardplan.routing.lengths.length_sum import CutLength
from boardplan.routing.route import Way
from boardplan.routing.supports.clamp import Clamp
from boardplan.routing.supports.clamps import holding_of
from boardplan.routing.supports.retainers import Retainer, retainers_of


@dataclass(frozen=True)
class _Kept:
    """What a review keeps so that the next one is cheap."""

    site: Site
    near: Neighbours
    answers: Answers


@dataclass(frozen=True)
class Review:
    """A plan with its cables' ways, lengths and clamps, the fill of its channels and all findings, gravest first."""

    plan: Plan
    ways: Mapping[str, Way]
    lengths: Mapping[str, CutLength]
    fills: Mapping[str, ChannelFill]
    findings: tuple[Finding, ...]
    _kept: _Kept = field(repr=False, compare=False)

    @cached_property
    def clamps(self) -> Mapping[str, tuple[Clamp, ...]]:
        """The clamps of every cable, those of a pair with both."""
        return {cable: held.clamps for cable, held in self._kept.site.holding.held.items()}

    @cached_property
    def retainers(self) -> Mapping[str, tuple[Retainer, ...]]:
        """The retainers of every channel that wants any."""
        return retainers_of(self.plan, self.ways)

    @cached_property
    def stops(self) -> tuple[Finding, ...]:
        """The findings because of which papers must not be issued."""
        return tuple(each for each in self.findings if each.stops)


def review_of(plan: Plan) -> Review:
    """Return the review of a plan from scratch."""
    return review_with_ways(plan, find_routes(plan))


def review_with_ways(plan: Plan, ways: Mapping[str, Way]) -> Review:
    """Return the review of a plan whose cables take the ways given."""
    spots = {}
    for thing in plan.things.values():
        spot = spot_of(plan, thing, ways.get(thing.id))
        if spot is not None:
            spots[thing.id] = spot
    grounds = grounds_of(plan)
    site = Site(
        plan=plan,
        ways=ways,
        lengths=cut_lengths(plan, ways),
        fills=channel_fills(plan, ways),
        holding=holding_of(plan, ways),
        grounds=grounds,
        rooms=all_room(grounds),
        loads=fixing_loads(plan),
        spots=spots,
    )
    near = Neighbours().with_changes({}, {key: spot.reach for key, spot in spots.items()})
    return _review(site, near, {**ask_of_each(site, spots), **ask_between(site, near, spots)})


def refreshed(review: Review, plan: Plan) -> Review:
    """Return what `review_of(plan)` would, asking again only what a change from the review's plan touches."""
    if plan is review.plan:
        return review
    return refreshed_with_ways(review, plan, refreshed_routes(review.plan, review.ways, plan))


def refreshed_with_ways(review: Review, plan: Plan, ways: Mapping[str, Way]) -> Review:
    """Return the review of a changed plan whose cables take the ways given."""
    if ground_changed(review.plan, plan):
        return review_with_ways(plan, ways)
    kept = review._kept  # noqa: SLF001 - its own
    moved = moved_things(review.plan, plan, review.ways, ways)
    lengths, summed = lengths_anew(kept.site, plan, ways, moved)
    fills, reckoned = fills_anew(kept.site, plan, ways, moved)
    holding, held = holding_anew(kept.site, plan, ways)
    loads = fixing_loads(plan)
    anew = summed | reckoned | held | loaded_anew(kept.site, plan, loads)
    spots, near = _surveyed(kept, plan, ways, moved)
    site = replace(
        kept.site, plan=plan, ways=ways, lengths=lengths, fills=fills, holding=holding, loads=loads, spots=spots
    )
    answers = {key: answer for key, answer in kept.answers.items() if _still_holds(key, moved, anew)}
    answers |= ask_of_each(site, moved | anew)
    answers |= ask_between(site, near, moved)
    return _review(site, near, answers)


def _surveyed(kept: _Kept, plan: Plan, ways: Mapping[str, Way], moved: set[str]) -> tuple[dict[str, Spot], Neighbours]:
    """Return the spots and who is near whom, with what moved measured again."""
    spots = dict(kept.site.spots)
    gone = {key: spot.reach for key in moved if (spot := spots.pop(key, None))}
    come = {}
    for key in moved:
        thing = _thing(plan, key)
        spot = spot_of(plan, thing, ways.get(key)) if thing else None
        if spot is not None:
            spots[key] = spot
            come[key] = spot.reach
    return spots, kept.near.with_changes(gone, come)


def _thing(plan: Plan, key: str) -> Thing | None:
    """Return a thing by its id, without the list of all things, which costs more than a change of one."""
    return next((group[key] for name in COLLECTIONS.values() if key in (group := getattr(plan, name))), None)


def _still_holds(key: Key, moved: set[str], anew: set[str]) -> bool:
    _, ids = key
    return moved.isdisjoint(ids) and not (len(ids) == 1 and ids[0] in anew)


def _review(site: Site, near: Neighbours, answers: Answers) -> Review:
    ranked: list[Ranked] = [each for answer in answers.values() for each in answer]
    ranked += ask_of_job(site)
    ranked.sort(key=lambda each: each[0])
    findings, notes = with_acceptance(site, [finding for _, finding in ranked])
    if notes:
        findings = sorted([*findings, *notes], key=rank)
    return Review(site.plan, site.ways, site.lengths, site.fills, tuple(findings), _Kept(site, near, answers))
