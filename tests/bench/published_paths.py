"""Hold shortest ways against published ones: python tests/bench/published_paths.py --dubins FOLDER --euclid FOLDER.

--dubins: a folder with `shortest.csv`, poses and shortest lengths by the closed forms of Shkel and Lumelsky (2001).
--euclid: a folder with `arena.mesh` and `arena_expected.csv`, 160 pairs of points and the optimal lengths to five
decimals that came with Cui, Harabor and Grastien, "Compromise-free pathfinding on a navigation mesh", IJCAI 2017.
"""

import argparse
import csv
import math
import time
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path

import shapely

from boardplan.geometry.bends import rounded, straight_length
from boardplan.geometry.dubins import Pose, shortest_between
from boardplan.geometry.point import Point
from boardplan.geometry.shortest_path import Room


def rows_of(path: Path) -> Iterator[dict[str, str]]:
    """Yield the rows of a table with a heading."""
    with path.open(encoding="utf-8") as file:
        yield from csv.DictReader(file)


def dubins(folder: Path) -> None:
    """Print how far the shortest ways between poses are off the published ones."""
    worst = worst_end = worst_bent = 0.0
    count = 0
    for count, row in enumerate(rows_of(folder / "shortest.csv"), start=1):
        x0, y0, h0, x1, y1, h1, radius, length = (float(row[key]) for key in list(row)[:8])
        start, end = Pose(Point(x0, y0), math.degrees(h0)), Pose(Point(x1, y1), math.degrees(h1))
        way = shortest_between(start, end, radius)
        worst = max(worst, abs(way.length - length))
        worst_end = max(worst_end, way.pose_at(way.length).at.distance_to(end.at))
        bent = sum(piece.length for piece in rounded(way.corners(), radius))
        worst_bent = max(worst_bent, abs(bent - way.length))
        if way.word != row["word"]:
            print(f"  row {count}: {way.word} is as short as the published {row['word']}")
    print(f"{'two poses':<34}{count:>6} cases   worst length off {worst:.1e} mm (given to about 5e-10)")
    print(f"{'':<34}{'':>6}         worst end off {worst_end:.1e} mm, as bent corners {worst_bent:.1e} mm")


def floor_of(mesh: Path) -> shapely.Polygon:
    """Return the floor of a mesh of convex polygons, as one polygon with holes."""
    words = mesh.read_text(encoding="utf-8").split()
    vertices, polygons = int(words[2]), int(words[3])
    at, corners = 4, []
    for _ in range(vertices):
        corners.append((float(words[at]), float(words[at + 1])))
        at += 3 + int(words[at + 2])
    parts = []
    for _ in range(polygons):
        sides = int(words[at])
        parts.append(shapely.Polygon([corners[int(each)] for each in words[at + 1 : at + 1 + sides]]))
        at += 1 + 2 * sides
    return shapely.union_all(parts)


def half_digit(text: str) -> float:
    """Return half of the last digit of a number as it is written, and what a float is out by."""
    return 0.5 * 10.0 ** -len(text.partition(".")[2]) + 1e-9


def euclid(folder: Path) -> None:
    """Print how far the shortest ways among polygons are off the published ones."""
    floor = floor_of(folder / "arena.mesh")
    rings = [[Point(*each) for each in ring.coords[:-1]] for ring in (floor.exterior, *floor.interiors)]
    started = time.perf_counter()
    room = Room(rings[0], rings[1:])
    made = time.perf_counter() - started
    rows = [list(row.values()) for row in rows_of(folder / "arena_expected.csv")]
    started = time.perf_counter()
    ways = [room.shortest(*(Point(float(row[at]), float(row[at + 1])) for at in (0, 2))) for row in rows]
    each = (time.perf_counter() - started) / len(rows)
    off = [abs(straight_length(way) - float(row[4])) if way else math.inf for way, row in zip(ways, rows, strict=True)]
    agree = sum(difference <= half_digit(row[4]) for difference, row in zip(off, rows, strict=True))
    inside = all(shapely.covers(floor, shapely.LineString(leg)) for way in ways if way for leg in pairwise(way))
    print(f"{'among polygons':<34}{len(rows):>6} cases   {agree} agree to the last digit given, worst {max(off):.1e}")
    print(f"{'':<34}{'':>6}         every leg inside the room: {'yes' if inside else 'NO'}")
    print(f"{'':<34}{len(room.corners):>6} corners; making the room takes as long as {made / each:.0f} ways through it")


def main() -> None:
    """Print the tables of the folders given."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--dubins", type=Path)
    parser.add_argument("--euclid", type=Path)
    wanted = parser.parse_args()
    if wanted.dubins:
        dubins(wanted.dubins)
    if wanted.euclid:
        euclid(wanted.euclid)


if __name__ == "__main__":
    main()
