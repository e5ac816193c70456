"""Grid numbers: where the 100 mm grid lies, counted from the datum, and what each line of it stands for."""

from collections.abc import Iterator

from boardplan.drawing.picture import Words
from boardplan.geometry.point import Box, Point
from boardplan.model.board import Board
from boardplan.model.job import Units
from boardplan.output.holes.datum import datum_point, directions
from boardplan.output.printing.lettering import FINE, Measure, text_box
from boardplan.output.template.free_places import WORDS, FreePlaces, common_box

GRID = 100.0
_INSIDE = 2.6
_STEPS = (0.0, 5.0, 10.0, 16.0, 24.0)


def grid_uprights(board: Board) -> Iterator[tuple[float, float]]:
    """Yield how far each upright line is from datum edge B, and its x on the board."""
    box = board.box
    return _lines(datum_point(board).x, directions(board).x, box.left, box.right)


def grid_levels(board: Board) -> Iterator[tuple[float, float]]:
    """Yield how far each level line is from datum edge A, and its y on the board."""
    box = board.box
    return _lines(datum_point(board).y, directions(board).y, box.bottom, box.top)


def _lines(origin: float, towards: float, low: float, high: float) -> Iterator[tuple[float, float]]:
    for step in range(1, int((high - low) // GRID) + 2):
        at = origin + towards * step * GRID
        if low <= at <= high:
            yield step * GRID, at


def grid_numbers(board: Board, units: Units, rect: Box, places: FreePlaces, measure: Measure) -> Iterator[Words]:
    """Yield the numbers of the grid lines a sheet shows: uprights at its lower edge, level ones at its left."""
    room = common_box(rect, board.box)
    if room is None:
        return
    unit = " mm" if units == "inch" else ""  # the ruler beside it counts inches
    for distance, x in grid_uprights(board):
        if room.left + 6 < x < room.right - 6:
            text = f"X {distance:g}{unit}"
            wide = measure(text, FINE)
            left = x + 0.8 if x + 0.8 + wide < rect.right else x - 0.8 - wide  # beside the line, whole on the sheet
            spots = [Point(left, room.bottom + _INSIDE + away) for away in _STEPS]
            yield from _number(text, spots, places, measure)
    for distance, y in grid_levels(board):
        if room.bottom + 6 < y < room.top - 6:
            spots = [Point(room.left + 1.5 + away, y + 1.6) for away in _STEPS]
            yield from _number(f"Y {distance:g}{unit}", spots, places, measure)


def _number(text: str, spots: list[Point], places: FreePlaces, measure: Measure) -> Iterator[Words]:
    words = [Words(spot, text, FINE, "quiet", "start") for spot in spots]
    boxes = [text_box(each, measure).grown(0.4) for each in words]
    found = places.best((box, 0.1 * rank) for rank, box in enumerate(boxes))
    if found and found[1] < WORDS:
        places.take(found[0], WORDS)
        yield words[boxes.index(found[0])]
