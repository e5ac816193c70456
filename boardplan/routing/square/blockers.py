"""Blockers: what stands in a cable's way on the wall, as upright boxes.

A body of any shape is cut into level strips, and each strip stands for the box round it: exact for shapes
with upright and level sides, on the safe side for all others. Along a slanting side ways turn past whole strips; what
blocks there are thinner ones.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal, TypeAlias

from boardplan.geometry.point import Box, Point, box_around
from boardplan.model.board import Board, Ring
from boardplan.model.channel import Channel
from boardplan.model.component import Component
from boardplan.model.placed import Placed, placed
from boardplan.model.plan import Plan

Sort: TypeAlias = Literal["body", "edge", "no-go", "fixing", "channel"]

NEAR_BOARD = 60.0
"""A no-go box that begins farther off the board than this leaves room for cables: common practice, no source."""
_JOINT = 3.0  # mm: boards that hang no farther apart than this let cables across
_STRIP, _PART = 8.0, 2.0  # mm: the height of strips where a side slants, and of the parts of one
_BEYOND = 5000.0  # mm: how far outside of the boards nothing may lie


@dataclass(frozen=True, slots=True)
class Blocker:
    """A box on the wall that cables keep off by `clearance`, counted from the jacket; `thing` is its id.

    Where it is more than the thing itself, `parts` in it are nearer to the thing and are all that blocks.
    """

    sort: Sort
    thing: str
    box: Box
    clearance: float
    parts: tuple[Box, ...] = ()


def blockers_of(plan: Plan) -> tuple[Blocker, ...]:
    """Return everything that blocks cables outside of channels, channels last."""
    return (*_edges(plan), *_bodies(plan), *_no_go(plan), *_fixings(plan), *_channels(plan))


def _bodies(plan: Plan) -> list[Blocker]:
    return [
        blocker
        for each in sorted(plan.components.values(), key=lambda one: one.id)
        for blocker in _body(plan, each, plan.rules.value("cable-to-body"))
    ]


_CACHE_SIZE = 4096
_bodies_held: dict[int, tuple[Placed, Point, float, tuple[Blocker, ...]]] = {}


def _body(plan: Plan, component: Component, clearance: float) -> tuple[Blocker, ...]:
    """Return what a component blocks; remembered as long as it lies where it lay."""
    lies, origin = placed(plan, component), plan.boards[component.board].position
    held = _bodies_held.get(id(lies))
    if held is not None and held[0] is lies and held[1:3] == (origin, clearance):
        return held[3]
    if len(_bodies_held) >= _CACHE_SIZE:
        _bodies_held.clear()
    ring = [plan.on_wall(component.board, point) for point in lies.outline]
    found = tuple(Blocker("body", component.id, box, clearance, parts) for box, parts in _cut(ring))
    _bodies_held[id(lies)] = lies, origin, clearance, found
    return found


def _no_go(plan: Plan) -> list[Blocker]:
    return [
        Blocker("no-go", each.id, each.box.moved(*plan.boards[each.board].position), 0.0)
        for each in sorted(plan.no_go_boxes.values(), key=lambda one: one.id)
        if each.from_z < NEAR_BOARD
    ]


def _fixings(plan: Plan) -> list[Blocker]:
    """Return the squares that the heads of board fixings need free."""
    half = plan.rules.value("fixing-under-cable") / 2
    found = []
    for each in sorted(plan.fixings.values(), key=lambda one: one.id):
        at = plan.on_wall(each.board, each.position)
        found.append(Blocker("fixing", each.id, box_around([at]).grown(half), 0.0))
    return found


def _channels(plan: Plan) -> list[Blocker]:
    clearance = plan.rules.value("cable-to-body")
    return [
        Blocker("channel", each.id, box, clearance)
        for each in sorted(plan.channels.values(), key=lambda one: one.id)
        for ring in channel_rings(plan, each)
        for box in boxes_of_ring(ring)
    ]


def channel_rings(plan: Plan, channel: Channel) -> list[Ring]:
    """Return the outside of each straight leg of a channel on the wall, lengthened to meet round its corners."""
    line = [plan.on_wall(channel.board, each) for each in channel.line]
    half, last = channel.width / 2, len(line) - 2
    rings: list[Ring] = []
    for index, (a, b) in enumerate(pairwise(line)):
        length = a.distance_to(b)
        if not length:
            continue
        along = Point((b.x - a.x) / length, (b.y - a.y) / length)
        back, on = half if index else 0.0, half if index < last else 0.0
        start = a.moved(-along.x * back, -along.y * back)
        end = b.moved(along.x * on, along.y * on)
        side = Point(-along.y * half, along.x * half)
        rings.append((start.minus(side), end.minus(side), end.moved(*side), start.moved(*side)))
    return rings


def _edges(plan: Plan) -> list[Blocker]:
    """Return what is not board: round the boards, between them, in their cut-outs."""
    boards = tuple(sorted(plan.boards.values(), key=lambda one: one.id))
    return [Blocker("edge", "", box, 0.0) for box in _off_board(boards)]


_held: list[tuple[tuple[Board, ...], tuple[Box, ...]]] = []


def _off_board(boards: tuple[Board, ...]) -> tuple[Box, ...]:
    for held, boxes in _held:
        if held == boards:
            return boxes
    boxes = _cut_off_board(boards) if boards else ()
    _held.append((boards, boxes))
    del _held[:-8]
    return boxes


def _cut_off_board(boards: Sequence[Board]) -> tuple[Box, ...]:
    from shapely import unary_union  # noqa: PLC0415 - slow to load
    from shapely.geometry import Polygon  # noqa: PLC0415

    sheets = []
    for board in boards:
        rings = [[each.moved(*board.position) for each in ring] for ring in (board.outline, *board.cutouts)]
        sheets.append(Polygon(rings[0], rings[1:]))
    grown = [each.buffer(_JOINT / 2, join_style="mitre") for each in sheets]
    joined = unary_union(grown).buffer(-_JOINT / 2, join_style="mitre")
    rings = []
    for part in getattr(joined, "geoms", [joined]):
        rings += [part.exterior.coords, *(hole.coords for hole in part.interiors)]
    edges = [edge for ring in rings for edge in pairwise([Point(round(x, 6), round(y, 6)) for x, y in ring])]
    return tuple(_outside_boxes(edges))


def _outside_boxes(edges: list[tuple[Point, Point]]) -> list[Box]:
    around = box_around(point for edge in edges for point in edge).grown(_BEYOND)
    boxes = [
        Box(around.left, around.bottom, around.right, around.bottom + _BEYOND),
        Box(around.left, around.top - _BEYOND, around.right, around.top),
    ]
    for low, high in _strips(edges):
        at = around.left
        for left, right in _insides(edges, low, high, widest=False):
            boxes.append(Box(at, low, left, high))
            at = right
        boxes.append(Box(at, low, around.right, high))
    return _stacked(boxes)


def boxes_of_ring(ring: Sequence[Point]) -> list[Box]:
    """Return upright boxes that cover a ring."""
    return [box for box, _ in _cut(ring)]


def _cut(ring: Sequence[Point]) -> list[tuple[Box, tuple[Box, ...]]]:
    """Return upright boxes that cover a ring, each with smaller ones in it that do so too, none where it is exact."""
    box = box_around(ring)
    corners = set(ring)
    if len(ring) == 4 and corners == set(box.corners()):  # noqa: PLR2004 - a rectangle
        return [(box, ())]
    edges = list(pairwise((*ring, ring[0])))
    exact, slanting = [], []
    for low, high in _strips(edges):
        parts = _parts(edges, low, high)
        for left, right in _insides(edges, low, high, widest=True):
            inside = tuple(each for each in parts if left <= each.left and each.right <= right)
            strip = Box(left, low, right, high)
            if all(each.left == left and each.right == right for each in inside):
                exact.append(strip)
            else:
                slanting.append((strip, inside))
    return [*((each, ()) for each in _stacked(exact)), *slanting]


def _parts(edges: Sequence[tuple[Point, Point]], low: float, high: float) -> list[Box]:
    """Return boxes that cover what is inside rings in a strip, in thinner strips."""
    count = math.ceil((high - low) / _PART)
    cuts = [*(low + (high - low) * index / count for index in range(count)), high]
    return [
        Box(left, bottom, right, top)
        for bottom, top in pairwise(cuts)
        for left, right in _insides(edges, bottom, top, widest=True)
    ]


def _strips(edges: Iterable[tuple[Point, Point]]) -> list[tuple[float, float]]:
    """Return level strips between all corners, cut finer where a side slants."""
    edges = list(edges)
    heights = sorted({point.y for edge in edges for point in edge})
    strips = []
    for low, high in pairwise(heights):
        slants = any(a.x != b.x and min(a.y, b.y) < high and max(a.y, b.y) > low for a, b in edges)
        parts = max(1, int((high - low) / _STRIP)) if slants else 1
        cuts = [low + (high - low) * index / parts for index in range(parts)] + [high]
        strips += list(pairwise(cuts))
    return strips


def _insides(
    edges: Iterable[tuple[Point, Point]], low: float, high: float, *, widest: bool
) -> list[tuple[float, float]]:
    """Return the level stretches inside rings anywhere in a strip (widest), or all through it."""
    sides = []
    for a, b in edges:
        if min(a.y, b.y) < high and max(a.y, b.y) > low:
            ends = [a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y) for y in (low, high)]
            sides.append(((ends[0] + ends[1]) / 2, min(ends), max(ends)))
    sides.sort()
    inner, outer = (1, 2) if widest else (2, 1)
    spans = [(enter[inner], leave[outer]) for enter, leave in zip(sides[::2], sides[1::2], strict=False)]
    return [span for span in spans if span[0] < span[1]]


def _stacked(boxes: Iterable[Box]) -> list[Box]:
    """Return the boxes with those joined that stand on each other and are equally wide."""
    joined: list[Box] = []
    for box in sorted(boxes, key=lambda each: (each.left, each.right, each.bottom)):
        before = joined[-1] if joined else None
        if before and before.left == box.left and before.right == box.right and before.top >= box.bottom:
            joined[-1] = before._replace(top=max(before.top, box.top))
        else:
            joined.append(box)
    return joined
