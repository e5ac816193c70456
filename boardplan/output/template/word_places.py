"""Word places: where the words of a hole, a terminal or a sheet may stand, the most wanted first."""

from collections.abc import Iterator

from boardplan.geometry.point import Box, Point
from boardplan.output.holes.hole_mark import ARM
from boardplan.output.template.free_places import common_box
from boardplan.output.template.word_block import Block


def outside(box: Box, rect: Box) -> float:
    """Return the area of a box outside another."""
    shared = common_box(box, rect)
    return box.width * box.height - (shared.width * shared.height if shared else 0.0)


def steps(low: float, high: float, step: float = 5.0) -> list[float]:
    """Return places along a stretch, a step apart; none where it is too short."""
    return [low + step * index for index in range(int((high - low) // step) + 1)] if high >= low else []


def round_a_hole(at: Point, block: Block, reach: float) -> Iterator[tuple[Box, float]]:
    """Yield places for a hole's words: in the four quarters of the cross, then further out."""
    beside = max(reach + 0.8, 1.2)
    for away, own in ((1.7, 0.0), (reach + 1, 2.0), (ARM + 1.5, 6.0), (16.0, 14.0), (24.0, 26.0), (34.0, 45.0)):
        for across in (beside, ARM + 1.5) if away < ARM else (1.2, beside, away):
            for up in (1, -1):
                for right in (1, -1):
                    left = at.x + across if right > 0 else at.x - across - block.width
                    low = at.y + away if up > 0 else at.y - away - block.height
                    nudge = 0.3 * (right < 0) + 0.2 * (up < 0)
                    yield Box(left, low, left + block.width, low + block.height), own + 0.2 * across + nudge
    for away, own in ((ARM + 1.2, 4.0), (16.0, 14.0), (24.0, 26.0), (34.0, 45.0)):
        middle = at.y - block.height / 2
        yield Box(at.x + away, middle, at.x + away + block.width, middle + block.height), own
        yield Box(at.x - away - block.width, middle, at.x - away, middle + block.height), own + 0.3
        centre = at.x - block.width / 2
        yield Box(centre, at.y + away, centre + block.width, at.y + away + block.height), own
        yield Box(centre, at.y - away - block.height, centre + block.width, at.y - away), own + 0.3


def round_a_point(at: Point, block: Block, gap: float) -> Iterator[tuple[Box, float]]:
    """Yield places for a short name: above, below, to either side, then a little further."""
    for away, own in ((gap, 0.0), (gap + 2.5, 4.0), (gap + 5, 9.0)):
        left, low = at.x - block.width / 2, at.y - block.height / 2
        yield Box(left, at.y + away, left + block.width, at.y + away + block.height), own
        yield Box(left, at.y - away - block.height, left + block.width, at.y - away), own + 0.1
        yield Box(at.x + away, low, at.x + away + block.width, low + block.height), own + 0.2
        yield Box(at.x - away - block.width, low, at.x - away, low + block.height), own + 0.3
