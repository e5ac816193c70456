"""Grid numbers: what each line of the 100 mm grid stands for, small, where a sheet's edge cuts it."""

from collections.abc import Iterator

from boardplan.drawing.picture import Words
from boardplan.geometry.point import Box, Point
from boardplan.model.board import Board
from boardplan.output.free_places import WORDS, FreePlaces, common_box
from boardplan.output.lettering import FINE, Measure, text_box

GRID = 100.0
_INSIDE = 2.6
_STEPS = (0.0, 5.0, 10.0, 16.0, 24.0)


def grid_numbers(board: Board, rect: Box, places: FreePlaces, measure: Measure) -> Iterator[Words]:
    """Yield the numbers of the grid lines a sheet shows: uprights at its lower edge, level ones at its left."""
    room = common_box(rect, board.box)
    if room is None:
        return
    box = board.box
    for step in range(1, int(box.width // GRID) + 1):
        x = box.left + step * GRID
        if room.left + 6 < x < room.right - 6:
            spots = [Point(x + 0.8, room.bottom + _INSIDE + away) for away in _STEPS]
            yield from _number(f"X {step * GRID:g}", spots, places, measure)
    for step in range(1, int(box.height // GRID) + 1):
        y = box.bottom + step * GRID
        if room.bottom + 6 < y < room.top - 6:
            spots = [Point(room.left + 1.5 + away, y + 1.6) for away in _STEPS]
            yield from _number(f"Y {step * GRID:g}", spots, places, measure)


def _number(text: str, spots: list[Point], places: FreePlaces, measure: Measure) -> Iterator[Words]:
    words = [Words(spot, text, FINE, "quiet", "start") for spot in spots]
    boxes = [text_box(each, measure).grown(0.4) for each in words]
    found = places.best((box, 0.1 * rank) for rank, box in enumerate(boxes))
    if found and found[1] < WORDS:
        places.take(found[0], WORDS)
        yield words[boxes.index(found[0])]
