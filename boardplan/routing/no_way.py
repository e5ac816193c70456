"""No way: why a cable can't be laid, in an installer's words."""

from collections.abc import Sequence
from itertools import pairwise

from boardplan.geometry.bends import turn_between
from boardplan.geometry.point import Point, bearing, box_around
from boardplan.geometry.units import tidy_number
from boardplan.model.cable import Cable
from boardplan.routing.route import NoWay
from boardplan.routing.square.blockers import Blocker
from boardplan.routing.square.ends import End
from boardplan.routing.square.least_way import least_way
from boardplan.routing.square.open_lines import UNITS, Barrier, OpenLines, units
from boardplan.routing.square.rays import leavings, reach_and_stop, spot_of

_NEARLY = 10.0  # degrees: ends no more askew than this face each other; common practice, no source


def why_no_way(cable: Cable, ends: tuple[End, End], lines: OpenLines, radius: float) -> NoWay:
    """Return what stands in a cable's way, when not even bends of the least radius find one."""
    return (
        _ends_too_near(cable, ends, radius)
        or _leg_too_short(cable, ends[0], lines, radius)
        or _leg_too_short(cable, ends[1], lines, radius)
        or _shut_in(cable, ends, lines, radius)
    )


def only_tangled(cable: Cable, ends: tuple[End, End]) -> NoWay:
    """Return what is wrong where a cable could only be laid in a loop over itself."""
    reason = f"from {ends[0].name} it could only come to {ends[1].name} by crossing itself; it has no room to slant"
    return NoWay(cable.id, reason, ends[0].point)


def _ends_too_near(cable: Cable, ends: tuple[End, End], radius: float) -> NoWay | None:
    start, end = ends
    if start.point == end.point:
        return NoWay(cable.id, f"both ends are at {start.name}", start.point)
    apart, wanted = start.point.distance_to(end.point), start.straight + end.straight
    facing = _looks_at(start, end) and _looks_at(end, start)
    if apart >= wanted or (apart > radius and start.owner != end.owner and not facing):
        return None
    reason = (
        f"{start.name} and {end.name} are {tidy_number(apart)} mm apart, but {_straights(start, end)} "
        f"take {tidy_number(wanted)} mm"
    )
    return NoWay(cable.id, reason, start.point)


def _looks_at(end: End, other: End) -> bool:
    """Say whether an end's direction is that to the other end, or nearly."""
    return end.heading is not None and abs(turn_between(end.heading, bearing(end.point, other.point))) < _NEARLY


def _straights(start: End, end: End) -> str:
    return "their lugs" if start.lugged and end.lugged else "the straight ends"


def _leg_too_short(cable: Cable, end: End, lines: OpenLines, radius: float) -> NoWay | None:
    """Return why no first leg out of an end has room for its straight and a bend, none where one has."""
    rays = [each.ray for each in leavings(end, lines, radius)]
    bend = units(radius)
    if any(ray.reach >= ray.straight + bend for ray in rays):
        return None
    if not rays or any(ray.spot != spot_of(end.point) for ray in rays):
        return NoWay(cable.id, f"there is no room to leave {end.name} in its direction", end.point)
    longest = max(rays, key=lambda ray: (ray.reach, -ray.axis, ray.sign))
    reach, stop = reach_and_stop(end, lines, longest.axis, longest.sign)
    wanted = (longest.straight + bend) / UNITS
    what = f"{'lug' if end.lugged else 'straight'} {tidy_number(end.straight)} and bend" if end.straight else "bend"
    reason = (
        f"the leg out of {end.name} is {tidy_number(wanted - reach / UNITS)} mm too short: {what} "
        f"{tidy_number(radius)} take {tidy_number(wanted)} mm, "
        f"{words_for(stop)} leaves {tidy_number(reach / UNITS)} mm"
    )
    return NoWay(cable.id, reason, end.point)


def _shut_in(cable: Cable, ends: tuple[End, End], lines: OpenLines, radius: float) -> NoWay:
    """Return which body the way would run into if nothing but the boards' edges were there."""
    bare = lines.without_bodies()
    points = least_way(ends, bare, radius).points
    if points is None:
        reason = f"its ends and bends of radius {tidy_number(radius)} find no room on the boards"
        return NoWay(cable.id, reason, ends[0].point)
    for start, stop in pairwise(points):
        hit = _first_hit(start, stop, lines.barriers, {end.owner for end in ends} - {""})
        if hit is not None:
            names = f"from {ends[0].name} to {ends[1].name}"
            reason = f"{words_for(hit[1])} stands in the way {names}, and there is no way round"
            return NoWay(cable.id, reason, hit[0])
    around = sorted({end.owner for end in ends} - {""})
    where = " and ".join(around) or "its ends"
    reason = f"there is no room for its bends of radius {tidy_number(radius)} beside {where}"
    return NoWay(cable.id, reason, ends[0].point)


def _first_hit(start: Point, stop: Point, barriers: Sequence[Barrier], own: set[str]) -> tuple[Point, Blocker] | None:
    """Return where a leg first runs into something, and into what."""
    leg = box_around((start, stop))
    near = [each for each in barriers if each.blocker.thing not in own and each.box.touches(leg)]
    steps = max(1, int(start.distance_to(stop) / 5.0))
    for step in range(steps + 1):
        share = step / steps
        at = Point(start.x + (stop.x - start.x) * share, start.y + (stop.y - start.y) * share)
        for each in near:
            if each.holds((units(at.x), units(at.y))):
                return at, each.blocker
    return None


def words_for(blocker: Blocker | None) -> str:
    """Return what blocks in words."""
    if blocker is None:
        return "what is round it"
    words = {"body": "", "edge": "the edge of the board", "no-go": "no-go box ", "channel": "channel "}
    return f"{words.get(blocker.sort, 'board fixing ')}{blocker.thing}"
