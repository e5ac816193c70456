"""Free way: a way that is not square, bent with a radius at any angle among what blocks, in the ends' directions.

Where nothing stands in the way between two poses it is the shortest there is (Dubins 1957). Else a search over places
for corners finds one, or where that fails one from pose to pose; its corners are then shifted to where it is locally
shortest.
"""

from boardplan.geometry.bends import Straight, corner_saving, straight_length, turns
from boardplan.geometry.dubins import Pose, shortest_between
from boardplan.geometry.point import Box, Point, bearing
from boardplan.routing.slanting.corners import CornerSearch
from boardplan.routing.slanting.left import Left
from boardplan.routing.slanting.room import FreeRoom, open_to
from boardplan.routing.slanting.search import FreeSearch, parts_of, whole_way
from boardplan.routing.slanting.shortening import shortened
from boardplan.routing.square.ends import End
from boardplan.routing.square.open_lines import OpenLines

_CHOICES = 4
"""How many of the directions an end may choose from are searched, nearest to the other end first."""


def free_way(
    ends: tuple[End, End], lines: OpenLines, radius: float, *, thorough: bool = True
) -> tuple[Point, ...] | None:
    """Return the corners of a way of bends of a radius and straights at any angle, none where none was found.

    Every leg holds its bends and what stays straight at an end. A `thorough` look goes on from pose to pose where
    corners off those of bodies don't do. Lengths in mm.
    """
    room = FreeRoom(ends, lines)
    if ends[0].point == ends[1].point:
        return None
    starts = [pose for pose in _poses(ends[0], ends[1].point) if open_to(Straight(ends[0].point, pose.at), room.first)]
    stops = [pose for pose in _poses(ends[1], ends[0].point) if open_to(Straight(ends[1].point, pose.at), room.last)]
    poses = [(start, Pose(stop.at, (stop.heading + 180.0) % 360.0)) for start in starts for stop in stops]
    if not poses:
        return None
    direct = [points for start, end in poses if (points := _direct(room, start, end, radius)) is not None]
    if direct:
        return min(direct, key=lambda points: way_length(points, radius))
    found = CornerSearch(room, radius).run()
    if found is None and thorough:
        found = CornerSearch(room, radius, along=True).run() or _searched(room, _few(poses, ends), radius, lines)
    return None if found is None else shortened(room, found, radius)


def way_length(points: tuple[Point, ...], radius: float) -> float:
    """Return the length of a way along its straights and bends, in mm."""
    return straight_length(points) - sum(corner_saving(radius, turn) for turn in turns(points))


def _poses(end: End, other: Point) -> list[Pose]:
    """Return where the straight out of an end may stop."""
    headings = _headings(end, other)
    return [Pose(end.point.ahead(heading, end.straight), heading) for heading in headings]


def _headings(end: End, other: Point) -> list[float]:
    if end.heading is not None:
        return [end.heading]
    return [bearing(end.point, other), *(45.0 * number for number in range(8))]


def _direct(room: FreeRoom, start: Pose, end: Pose, radius: float) -> tuple[Point, ...] | None:
    """Return the shortest way of all, none where something stands in it."""
    way = shortest_between(start, end, radius)
    points = whole_way(room, start, parts_of(way), radius)
    return points if room.clears(points, radius) else None


def _few(poses: list[tuple[Pose, Pose]], ends: tuple[End, End]) -> list[tuple[Pose, Pose]]:
    """Return the pairs of poses to search between: all where ends have their directions, else the nearest open ones."""
    if all(end.heading is not None for end in ends):
        return poses
    return sorted(poses, key=lambda pair: pair[0].at.distance_to(pair[1].at))[:_CHOICES]


def _searched(
    room: FreeRoom, poses: list[tuple[Pose, Pose]], radius: float, lines: OpenLines
) -> tuple[Point, ...] | None:
    """Return the first way that going on from pose to pose finds, none where it finds none."""
    bodies: list[Box] = [each.box for each in lines.barriers if each.blocker.sort != "edge"]
    for start, end in poses:
        left = Left(end.at, start.at, room.only_bend, bodies)
        found = FreeSearch(room, start, end, radius, left).run()
        if found is not None:
            return found
    return None
