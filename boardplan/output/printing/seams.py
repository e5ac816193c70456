"""Seams: where the sheets of a board part, so that they spare what is drilled.

Of all layouts of the fewest sheets, and of all places for each strip, the one is chosen with the fewest drill points
near a sheet's edge, then the fewest hole patterns that no sheet shows whole, then the fewest marks that none does.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache

from boardplan.geometry.point import Box, Point
from boardplan.output.printing.loose_seams import loosened
from boardplan.output.printing.seam_ground import Held, Row, SeamGround, Spared, total_of
from boardplan.output.printing.sheet_layouts import Layout, Strip

_SHIFT = 2.0
"""How finely places are looked at, in mm."""


@dataclass(frozen=True, slots=True)
class Placing:
    """A layout in its place: where each strip starts across, and where the tiles of each start along it."""

    layout: Layout
    across: tuple[float, ...]
    along: tuple[tuple[float, ...], ...]
    spared: Spared

    @property
    def rects(self) -> Iterator[tuple[int, int, Box]]:
        """Strip and place in it of every tile, and its rectangle on the board."""
        for number, (strip, low, starts) in enumerate(zip(self.layout.strips, self.across, self.along, strict=True)):
            for place, start in enumerate(starts):
                ends = start, low, start + strip.length, low + strip.depth
                yield number, place, Box(*ends) if self.layout.level else Box(ends[1], ends[0], ends[3], ends[2])


def all_placings(
    box: Box, layouts: Iterable[Layout], points: Sequence[Point], patterns: Sequence[Box], finest: float = _SHIFT
) -> list[Placing]:
    """Return each layout in the place that spares the most; `patterns` are boxes about holes that belong together."""
    ground = SeamGround(box, points, patterns, finest)
    return [_placed(ground, layout) for layout in layouts]


def loosened_placings(
    box: Box, placings: Iterable[Placing], points: Sequence[Point], patterns: Sequence[Box], finest: float = _SHIFT
) -> list[Placing]:
    """Return placings with seams that move each by itself, where tiles may share more than the overlap."""
    ground = SeamGround(box, points, patterns, finest)
    return [_loosened(ground, placing.layout) for placing in placings]


def _loosened(ground: SeamGround, layout: Layout) -> Placing:
    all_of_it = ground.everything
    depths = [strip.depth for strip in layout.strips]
    across = ground.axes[layout.level]
    starts = loosened(across, depths, layout.border, all_of_it, ground.finest)
    tiles, spared = [], []
    for strip, held in zip(layout.strips, across.held(starts, depths), strict=True):
        sizes = (strip.length,) * strip.count
        row = ground.row(
            layout, loosened(ground.axes[not layout.level], sizes, layout.border, held, ground.finest), sizes
        )
        tiles.append(row.starts)
        spared.append(held.shares(row.held))
    return Placing(layout, starts, tuple(tiles), total_of(spared))


def best_first(box: Box, placings: Iterable[Placing]) -> list[Placing]:
    """Return placings, those that spare the most first; among equal ones the plainest, seams in one line."""
    wide = box.width >= box.height

    def rank(placing: Placing) -> tuple[Spared, float, int, int, bool, bool]:
        layout = placing.layout
        lies = (layout.strips[0].length >= layout.strips[0].depth) == layout.level
        return placing.spared, layout.border, -layout.changes, -len(set(placing.along)), lies == wide, layout.level

    return sorted(placings, key=rank, reverse=True)


def _placed(ground: SeamGround, layout: Layout) -> Placing:
    """Return the place of a layout that spares the most.

    Strips share nothing but their overlap, in which no point is clear: so what one spares is no matter to the others.
    """
    rows = {strip: ground.along(layout, strip) for strip in layout.strips}

    @cache
    def best_row(strip: Strip, held: Held) -> tuple[Spared, int]:
        """Return the most that a strip spares of what it holds across, and in which of its places."""
        spared, index = max((held.shares(row.held), -index) for index, row in enumerate(rows[strip]))
        return spared, -index

    best: tuple[Spared, tuple[float, ...], list[Held], list[int]] | None = None
    for starts, held in ground.across(layout):
        if best and total_of(one.shares(one) for one in held) <= best[0]:
            continue
        chosen = [best_row(strip, one) for strip, one in zip(layout.strips, held, strict=True)]
        total = total_of(spared for spared, _ in chosen)
        if best is None or total > best[0]:
            best = total, starts, held, [index for _, index in chosen]
    if best is None:
        raise ValueError("strips have at least one place")
    spared, starts, held, places = best
    places = _in_line(layout, rows, held, spared) or places
    along = tuple(rows[strip][place].starts for strip, place in zip(layout.strips, places, strict=True))
    return Placing(layout, starts, along, spared)


def _in_line(layout: Layout, rows: Mapping[Strip, Sequence[Row]], held: Sequence[Held], spared: Spared) -> list[int]:
    """Return one place for all strips, so that their seams are in line, where that spares as much; else nothing."""
    if layout.changes:
        return []
    for index, row in enumerate(rows[layout.strips[0]]):
        if total_of(one.shares(row.held) for one in held) == spared:
            return [index] * len(layout.strips)
    return []
