"""One way: the way of a single cable, pinned or found, or why there is none.

A found way lies on the board. Only where a thin cable finds none there does it pass over a low body or a channel with
its cover on, never to save a detour: what lies on top is held by nothing, and is in the way of whoever opens things.

Ways are square where they can be. Between ends too little aside of each other for two square bends a square way winds
once round and crosses itself, where a slanting one goes straight there: so that one is taken. Where that has no room, a
longer square one that goes by is; where there is none either, no way is better than a loop over itself.
"""

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from boardplan.geometry.bends import tangent_length, turns, without_repeats
from boardplan.geometry.point import Box, Point
from boardplan.geometry.self_crossing import crosses_itself
from boardplan.model.cable import Cable
from boardplan.model.plan import Plan
from boardplan.routing.channels.in_channels import stretches_in_channels
from boardplan.routing.no_way import only_tangled, why_no_way
from boardplan.routing.route import InChannel, NoWay, Route, Way
from boardplan.routing.slanting.slanting_way import anything, bent_words, slanting_jumper, slanting_way
from boardplan.routing.square.ends import End, ends_of
from boardplan.routing.square.far_off import EVERYTHING
from boardplan.routing.square.least_way import least_way, straight_way, untangled_way
from boardplan.routing.square.lines_over import passed_over
from boardplan.routing.square.open_lines import OpenLines
from boardplan.routing.square.still_least import still_least
from boardplan.routing.square.surroundings import Surroundings

_DETOUR = 240.0  # mm: a cable that may choose goes no farther round channels that it can cross
_WORTH = 60.0  # mm: a shorter stretch of channel is not worth lifting its cover for
_NOISE = 1e-6  # mm: what sums of floats may be out by


def pinned_way(plan: Plan, cable: Cable) -> Route:
    """Return the way a person pinned: straight from corner to corner, with the least bends where no more fits.

    Bends drawn wider than the legs hold would save length that the cable needs.
    """
    ends = ends_of(plan, cable)
    points = without_repeats((ends[0].point, *cable.pins, ends[1].point))
    inside = () if cable.way == "outside" else stretches_in_channels(plan, points)
    conductor = plan.conductors[cable.conductor]
    bend, diameter = plan.rules.bends[conductor.construction], conductor.outside_diameter
    if bend.prefer == bend.least or _holds_bends(points, ends, bend.prefer * diameter):
        return Route(cable.id, points, bend.prefer * diameter, inside, source="pinned", why="pinned by hand")
    why = f"pinned by hand{bent_words(bend.least)}"
    return Route(cable.id, points, bend.least * diameter, inside, source="pinned", why=why)


def _holds_bends(points: tuple[Point, ...], ends: tuple[End, End], radius: float) -> bool:
    """Say whether every leg is as long as what lies on it: bends at its corners, what stands straight at an end."""
    held = (ends[0].straight, *(tangent_length(radius, turn) for turn in turns(points)), ends[1].straight)
    return len(points) > 1 and all(
        a.distance_to(b) >= before + after - _NOISE
        for (a, b), (before, after) in zip(pairwise(points), pairwise(held), strict=True)
    )


def found_way(around: Surroundings, cable: Cable, full: tuple[InChannel, ...] = (), before: Way | None = None) -> Way:
    """Return the best way of a cable that nobody pinned; `full` are stretches of channels it must not use.

    The way it had `before` a change saves looking too far off, or not far enough. Who only has to leave a full channel
    doesn't pass over anything for that.
    """
    way = _way_on_board(around, cable, full, before)
    return way if isinstance(way, Route) or full else _way_over(around, cable) or _over_fixings(around, cable) or way


def found_again(around: Surroundings, cable: Cable, way: Way, changed: Sequence[Box]) -> bool:
    """Say whether a way once found is sure to be found again, though what blocks changed in boxes within its reach.

    Only asked of a cable that a search found a square way for, nothing full: any other is looked for again.
    """
    if not isinstance(way, Route) or len(way.reaches) != 1 or way.reaches[0].limit >= EVERYTHING:
        return False
    ends, diameter = ends_of(around.plan, cable), around.plan.conductors[cable.conductor].outside_diameter
    meant, _ = way_meant(around.plan, cable)
    lines = around.lines(diameter, meant if around.lanes else "outside", (), ends)
    return still_least(ends, lines, way.points, way.reaches[0], changed, way.radius)


def _over_fixings(around: Surroundings, cable: Cable) -> Route | None:
    """Return the way of a cable that may lie over heads of board fixings, none where that does not help either.

    Any change may open one that need not.
    """
    way = _way_on_board(around.over_fixings, cable, (), None) if around.over_fixings else None
    if not isinstance(way, Route):
        return None
    return replace(way, why=f"{way.why}, over a board fixing as it finds no other way", reaches=(anything(way),))


def _way_on_board(around: Surroundings, cable: Cable, full: tuple[InChannel, ...], before: Way | None) -> Way:
    """Return the best way of a cable that passes over nothing."""
    expected = before.reaches[0].excess if isinstance(before, Route) and before.reaches else 0.0
    way, why = way_meant(around.plan, cable)
    if way == "outside" or not around.lanes:
        return _with_reason(
            _bent_as_it_fits(around, cable, "outside", full, expected), why or "outside: there is no channel"
        )
    by_channel = _bent_as_it_fits(around, cable, way, full, expected)
    if _worth(cable, by_channel):
        return _with_reason(by_channel, _through(by_channel))
    if isinstance(by_channel, NoWay):
        outside = _bent_as_it_fits(around, cable, "outside", full, expected)
        if isinstance(outside, Route):  # any change may open the way by channel
            outside = replace(outside, reaches=(anything(outside),))
        return _with_reason(outside, "outside: no channel leads there")
    return _beside_or_across(around, cable, by_channel)


def _way_over(around: Surroundings, cable: Cable) -> Route | None:
    """Return the way of a thin cable over low things, with the widest bends that fit; none where not even that helps.

    What finds no room for the least bends is not tried with wider ones. Any change may open a way on the board.
    """
    ends, conductor = ends_of(around.plan, cable), around.plan.conductors[cable.conductor]
    open_over = around.lines_over(conductor.outside_diameter, ends)
    if open_over is None or ends[0].point == ends[1].point:
        return None
    lines, low = open_over
    bend, found = around.plan.rules.bends[conductor.construction], None
    for factor in dict.fromkeys((bend.least, bend.prefer)):
        radius = factor * conductor.outside_diameter
        points = least_way(ends, lines, radius).points
        if points and crosses_itself(points):
            points = untangled_way(ends, lines, radius).points
        over = passed_over(points, low) if points else ()
        if not points or not over:
            break
        bent = "" if factor == bend.prefer else bent_words(factor)
        why = f"outside, over {' and '.join(over)}, as it finds no other way{bent}"
        found = Route(cable.id, points, radius, why=why, over=over)
    return replace(found, reaches=(anything(found),)) if found else None


def _beside_or_across(around: Surroundings, cable: Cable, across: Route) -> Way:
    """Return a way outside that is not much of a detour, or else one that crosses channels without using them."""
    ends, diameter = ends_of(around.plan, cable), around.plan.conductors[cable.conductor].outside_diameter
    lines = around.lines(diameter, "outside", (), ends)
    tried = straight_way(ends, lines, across.radius) or least_way(ends, lines, across.radius, _DETOUR)
    reaches = (*across.reaches, tried.reach)
    if tried.points is None:
        return _with_reason(replace(across, reaches=reaches), "across channels: outside of them it is a long way")
    outside = replace(across, points=tried.points, in_channels=(), reaches=reaches)
    untangled = _untangled(around.plan, cable, lines, outside, "outside", _DETOUR)
    if untangled is None:
        across = replace(across, reaches=(anything(across),))
        return _with_reason(across, "across channels: outside of them it would cross itself")
    return _with_reason(untangled, "outside: no channel lies on its way")


def _with_reason(way: Way, why: str) -> Way:
    """Return a way with why it lies so in front of how it is bent."""
    return replace(way, why=f"{why}{way.why}") if isinstance(way, Route) else way


def _through(way: Way) -> str:
    names = sorted({each.channel for each in way.in_channels}) if isinstance(way, Route) else []
    return f"through channel {' and '.join(names)}"


def _worth(cable: Cable, way: Way) -> bool:
    if isinstance(way, NoWay):
        return False
    inside = sum(each.end - each.start for each in way.in_channels)
    return inside >= (_WORTH if cable.way == "choose" else 1.0)


def way_meant(plan: Plan, cable: Cable) -> tuple[str, str]:
    """Return "channel", "outside" or "choose" as it comes out for a cable, and why it must stay outside."""
    conductor = plan.conductors[cable.conductor]
    most = plan.rules.value("channel-largest-conductor")
    if cable.way != "choose":
        return cable.way, "outside as chosen" if cable.way == "outside" else ""
    if cable.cable_class in ("ac", "pv"):
        return "outside", f"outside: {cable.cable_class.upper()} stays out of channels"
    if conductor.area is not None and conductor.area > most:
        return "outside", f"outside: {conductor.area:g} mm² is more than the {most:g} mm² that go in a channel"
    return "choose", ""


def _bent_as_it_fits(
    around: Surroundings, cable: Cable, way: str, full: tuple[InChannel, ...], expected: float
) -> Route | NoWay:
    """Return the way with the preferred bends, with the least ones where only those fit."""
    conductor = around.plan.conductors[cable.conductor]
    bend = around.plan.rules.bends[conductor.construction]
    ends = ends_of(around.plan, cable)
    lines = around.lines(conductor.outside_diameter, way, full, ends)
    hopeless, tangled = ends[0].point == ends[1].point, False
    for factor in dict.fromkeys((bend.prefer, bend.least)) if not hopeless else ():
        radius = factor * conductor.outside_diameter
        tried = straight_way(ends, lines, radius) or least_way(ends, lines, radius, expected=expected)
        if tried.points is not None:
            inside = () if way == "outside" else stretches_in_channels(around.plan, tried.points)
            bent = "" if factor == bend.prefer else bent_words(factor)
            route = Route(cable.id, tried.points, radius, inside, why=bent, reaches=(tried.reach,), full=full)
            route = route if factor == bend.prefer else replace(route, reaches=(anything(route),))
            route = route if way != "outside" else slanting_jumper(around.plan, cable, lines, route)
            untangled = _untangled(around.plan, cable, lines, route, way)
            if untangled is not None:
                return untangled
            tangled = True
        if tried.apart:
            hopeless = True
            break
    if tangled:
        return only_tangled(cable, ends)
    slanting = slanting_way(around.plan, cable, lines) if way == "outside" and not hopeless else None
    return slanting or why_no_way(cable, ends, lines, bend.least * conductor.outside_diameter)


def _untangled(
    plan: Plan, cable: Cable, lines: OpenLines, route: Route, way: str, most: float = EVERYTHING
) -> Route | None:
    """Return another way for a cable whose square one crosses itself, none where that has no room or does so too.

    Outside a slanting one, where it can, as it is shorter than one that goes by; any change may open one.
    """
    if not crosses_itself(route.points):
        return route
    slanting = slanting_way(plan, cable, lines, "square it would cross itself") if way == "outside" else None
    if slanting is not None and not crosses_itself(slanting.points):
        return slanting
    tried = untangled_way(ends_of(plan, cable), lines, route.radius, most)
    if tried.points is None or crosses_itself(tried.points):
        return None
    inside = () if way == "outside" else stretches_in_channels(plan, tried.points)
    return replace(route, points=tried.points, in_channels=inside, reaches=(tried.reach,))
