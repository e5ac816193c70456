"""Snapping: what a moving box nearly lines up with, the small shift that makes it exact, and why, in words.

Both axes are looked at alike and independently: for the upright one, boxes and lines are exchanged about
the diagonal and the words with them.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from boardplan.geometry.point import Box, Point

_SAME = 1e-6
_MOST_GUIDES = 3
_OVERHANG = 20.0


@dataclass(frozen=True, slots=True)
class SnapBox:
    """A box to line up with, and what people call it."""

    box: Box
    words: str


@dataclass(frozen=True, slots=True)
class SnapLine:
    """An upright line at an x or a level one at a y; what snaps to it: edges, the centre, or one edge alone."""

    axis: Literal["x", "y"]
    at: float
    words: str
    catches: Literal["edges", "centre", "low", "high"] = "edges"


@dataclass(frozen=True, slots=True)
class Guide:
    """A line that shows what was lined up, with the reason."""

    start: Point
    end: Point
    words: str


@dataclass(frozen=True, slots=True)
class Snap:
    """How far to shift the box, and why."""

    shift: Point
    guides: tuple[Guide, ...] = ()

    @property
    def words(self) -> str:
        """All reasons in one line."""
        return ", ".join(dict.fromkeys(guide.words for guide in self.guides))


@dataclass(frozen=True, slots=True)
class _Offer:
    """A shift along x that lines something up: how good a reason it is, and the spans its guides reach over."""

    shift: float
    rank: int
    words: str
    at: float
    spans: tuple[Box, ...]
    gaps: tuple[tuple[float, float], ...] = ()


_WORDS = {
    "x": {"low": "left edge", "high": "right edge", "low_s": "left edges", "high_s": "right edges"},
    "y": {"low": "bottom edge", "high": "top edge", "low_s": "bottom edges", "high_s": "top edges"},
}


def snap_box(
    moving: Box, boxes: Sequence[SnapBox] = (), lines: Sequence[SnapLine] = (), *, reach: float, grid: float = 0.0
) -> Snap:
    """Return the shift that lines a box up with what lies within reach; where nothing does, with the grid.

    >>> snap_box(Box(0, 52, 40, 92), [SnapBox(Box(3, 0, 43, 30), "PB1")], reach=5, grid=1).shift
    Point(x=3, y=0.0)
    """
    across = _best(list(_offers(moving, boxes, lines, "x")), reach)
    up = _best(list(_offers(_flipped(moving), [_flipped_box(each) for each in boxes], lines, "y")), reach)
    dx = across[0].shift if across else _to_grid(moving.left, grid)
    dy = up[0].shift if up else _to_grid(moving.bottom, grid)
    landed = moving.moved(dx, dy)
    guides = [guide for offer in across for guide in _guides(offer, landed)]
    flipped = [guide for offer in up for guide in _guides(offer, _flipped(landed))]
    guides += [Guide(Point(g.start.y, g.start.x), Point(g.end.y, g.end.x), g.words) for g in flipped]
    return Snap(Point(dx, dy), tuple(guides))


def snap_point(
    at: Point, boxes: Sequence[SnapBox] = (), lines: Sequence[SnapLine] = (), *, reach: float, grid: float = 0.0
) -> Snap:
    """Return the shift that lines a point up, as for a box without a size."""
    return snap_box(Box(at.x, at.y, at.x, at.y), boxes, lines, reach=reach, grid=grid)


def _to_grid(value: float, grid: float) -> float:
    return round(value / grid) * grid - value if grid > 0 else 0.0


def _best(offers: list[_Offer], reach: float) -> list[_Offer]:
    """Return the offers of the least shift, the best reason first; all of them lead to the same place."""
    near = [offer for offer in offers if abs(offer.shift) <= reach]
    if not near:
        return []
    least = min(near, key=lambda offer: (abs(offer.shift), offer.rank))
    same = [offer for offer in near if abs(offer.shift - least.shift) < _SAME]
    return sorted(same, key=lambda offer: offer.rank)[:_MOST_GUIDES]


def _flipped(box: Box) -> Box:
    return Box(box.bottom, box.left, box.top, box.right)


def _flipped_box(box: SnapBox) -> SnapBox:
    return SnapBox(_flipped(box.box), box.words)


def _offers(
    moving: Box, boxes: Sequence[SnapBox], lines: Iterable[SnapLine], axis: Literal["x", "y"]
) -> Iterator[_Offer]:
    """Yield all shifts along x that line something up, near or far."""
    for line in lines:
        if line.axis == axis:
            yield from _line_offers(moving, line, axis)
    for each in boxes:
        yield from _edge_offers(moving, each, axis)
    yield from _gap_offers(moving, boxes)


def _line_offers(moving: Box, line: SnapLine, axis: Literal["x", "y"]) -> Iterator[_Offer]:
    names = _WORDS[axis]
    if line.catches in {"edges", "low"}:
        yield _Offer(line.at - moving.left, 0, f"{names['low']} at {line.words}", line.at, ())
    if line.catches in {"edges", "high"} and moving.width:
        yield _Offer(line.at - moving.right, 0, f"{names['high']} at {line.words}", line.at, ())
    if line.catches == "centre":
        yield _Offer(line.at - moving.centre.x, 1, f"centre of {line.words}", line.at, ())


def _edge_offers(moving: Box, each: SnapBox, axis: Literal["x", "y"]) -> Iterator[_Offer]:
    names, box = _WORDS[axis], each.box
    yield _Offer(box.left - moving.left, 0, f"{names['low_s']} in line with {each.words}", box.left, (box,))
    yield _Offer(box.centre.x - moving.centre.x, 2, f"centres in line with {each.words}", box.centre.x, (box,))
    if moving.width:
        yield _Offer(box.right - moving.right, 0, f"{names['high_s']} in line with {each.words}", box.right, (box,))
        yield _Offer(
            box.right - moving.left, 3, f"{names['low']} at the {names['high']} of {each.words}", box.right, (box,)
        )
        yield _Offer(
            box.left - moving.right, 3, f"{names['high']} at the {names['low']} of {each.words}", box.left, (box,)
        )


def _gap_offers(moving: Box, boxes: Sequence[SnapBox]) -> Iterator[_Offer]:
    """Yield shifts that repeat a gap between two neighbours in the same row, or halve the room between them."""
    row = sorted(
        (each for each in boxes if each.box.bottom < moving.top and moving.bottom < each.box.top),
        key=lambda each: each.box.left,
    )
    for first, second in pairwise(row):
        low, high = first.box.right, second.box.left
        gap = high - low
        if gap <= 0:
            continue
        words = f"gap {gap:.4g} as between {first.words} and {second.words}"
        spans = (first.box, second.box)
        after, before = second.box.right + gap, first.box.left - gap
        yield _Offer(after - moving.left, 4, words, after, spans, ((low, high), (second.box.right, after)))
        yield _Offer(before - moving.right, 4, words, before, spans, ((low, high), (before, first.box.left)))
        if moving.width < gap:
            half = (gap - moving.width) / 2
            left, right = low + half, high - half
            words = f"gap {half:.4g} to {first.words} and to {second.words}"
            yield _Offer(left - moving.left, 4, words, left, spans, ((low, left), (right, high)))


def _guides(offer: _Offer, landed: Box) -> Iterator[Guide]:
    if offer.gaps:
        y = landed.centre.y
        for low, high in offer.gaps:
            yield Guide(Point(low, y), Point(high, y), offer.words)
        return
    bottom = min([landed.bottom, *(box.bottom for box in offer.spans)])
    top = max([landed.top, *(box.top for box in offer.spans)])
    aside = 0.0 if offer.spans else _OVERHANG
    yield Guide(Point(offer.at, bottom - aside), Point(offer.at, top + aside), offer.words)
