"""Laid cables looked at from outside: sampled along their centre line, measured against bodies with shapely."""

import math
from dataclasses import replace

from shapely import unary_union
from shapely.geometry import LineString, Point, Polygon

from boardplan.geometry.bends import Straight, tangent_length, turn_between, turns
from boardplan.geometry.point import bearing
from boardplan.model.cable import TerminalEnd
from boardplan.model.placed import placed
from boardplan.routing.square.ends import ends_of

STEP = 3.0


def unpinned(plan):
    return replace(plan, cables={name: replace(each, pins=()) for name, each in plan.cables.items()})


def bodies(plan):
    """Return the outline of each component on the wall."""
    return {
        each.id: Polygon([plan.on_wall(each.board, point) for point in placed(plan, each).outline])
        for each in plan.components.values()
    }


def channel_bodies(plan):
    """Return the outside of each channel on the wall."""
    return {
        each.id: LineString([plan.on_wall(each.board, point) for point in each.line]).buffer(
            each.width / 2, cap_style="flat", join_style="mitre"
        )
        for each in plan.channels.values()
    }


def sampled(route):
    """Return the centre line as runs of points, one for each straight and bend."""
    return [_points(piece) for piece in route.pieces]


def _points(piece):
    count = max(2, math.ceil(piece.length / STEP) + 1)
    shares = [index / (count - 1) for index in range(count)]
    if isinstance(piece, Straight):
        a, b = piece.start, piece.end
        return [(a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share) for share in shares]
    first = bearing(piece.centre, piece.start)
    return [tuple(piece.centre.ahead(first + piece.turn * share, piece.radius)) for share in shares]


def owners(cable):
    return [end.component if isinstance(end, TerminalEnd) else "" for end in cable.ends]


def too_near(plan, cable, route):
    """Return the bodies a cable comes nearer than the rule set wants, its own ones next to its ends left out."""
    conductor = plan.conductors[cable.conductor]
    wanted = conductor.outside_diameter / 2 + plan.rules.value("cable-to-body") - 0.02
    ends = [Point(each.point) for each in ends_of(plan, cable)]
    held = dict(bodies(plan))
    if cable.way == "outside":
        held |= channel_bodies(plan)
    pieces = sampled(route)
    found = set()
    first, last = owners(cable)
    for index, points in enumerate(pieces):
        run = LineString(points)
        if cable.way != "outside":
            run = run.difference(unary_union(list(channel_bodies(plan).values())))
            if run.is_empty:
                continue
        for name, body in held.items():
            beside_first = index < 2 and (name == first or body.distance(ends[0]) < wanted)
            beside_last = index >= len(pieces) - 2 and (name == last or body.distance(ends[1]) < wanted)
            if not beside_first and not beside_last and body.distance(run) < wanted:
                found.add(name)
    return found


def off_boards(plan, route):
    """Return how much of a centre line lies off the boards, in mm."""
    sheets = [
        Polygon(
            [plan.on_wall(each.id, point) for point in each.outline],
            [[plan.on_wall(each.id, point) for point in ring] for ring in each.cutouts],
        ).buffer(1.5, join_style="mitre")
        for each in plan.boards.values()
    ]
    line = LineString([point for points in sampled(route) for point in points])
    return line.difference(unary_union(sheets)).length


def short_legs(plan, cable, route):
    """Return what each leg lacks for its lugs and bends, where it lacks any, in mm."""
    start, end = ends_of(plan, cable)
    bent = [0.0, *(tangent_length(route.radius, turn) for turn in turns(route.points)), 0.0]
    lacking = []
    for index, (a, b) in enumerate(zip(route.points, route.points[1:], strict=False)):
        wanted = bent[index] + bent[index + 1]
        wanted += start.straight if index == 0 else 0.0
        wanted += end.straight if index == len(route.points) - 2 else 0.0
        if a.distance_to(b) < wanted - 0.01:
            lacking.append(wanted - a.distance_to(b))
    return lacking


def askew_at_ends(plan, cable, route):
    """Return how many degrees the first and last legs are off the directions of their ends."""
    start, end = ends_of(plan, cable)
    legs = ((start, route.points[0], route.points[1]), (end, route.points[-1], route.points[-2]))
    return [0.0 if at.heading is None else abs(turn_between(at.heading, bearing(a, b))) for at, a, b in legs]
