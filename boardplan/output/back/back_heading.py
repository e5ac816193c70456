"""Back heading: what says on each sheet that it lies on the back, and on which side the datum corner is there."""

from collections.abc import Iterator
from functools import partial

from boardplan.drawing.picture import Area, Line, Mark, Picture, Words
from boardplan.geometry.point import Box, Point
from boardplan.model.board import Board
from boardplan.output.holes.datum import directions
from boardplan.output.printing.lettering import FINE, TITLE, Measure, TextLine, fitting_height, stacked
from boardplan.output.template.free_places import MARK, places_from_corner
from boardplan.output.template.template import hatched
from boardplan.output.template.template_words import arrow
from boardplan.output.template.word_block import Inscription
from boardplan.output.template.word_desk import WordDesk

BACK_WORDS = "BACK, MIRRORED"
_BAR, _PANEL = 10.0, 19.0
_PICTURE = 30.0
_FRAME = 4.5
_PITCH = 5.0


def headings(board: Board, desk: WordDesk) -> Iterator[Inscription]:
    """Yield a heading for each sheet, as near its upper left corner as it covers no hole; `board` is mirrored."""
    lines = _datum_lines(board)
    wanted = _PICTURE + max(desk.measure(text, FINE) for text in lines) + 4
    for own in desk.own:
        rect = own.grown(-_FRAME - 1)
        width = min(wanted, rect.width)
        away = partial(_away, rect)
        found = desk.places.best(places_from_corner(rect, width, _BAR + _PANEL, _PITCH, away), rising=True)
        if found:
            desk.places.take(found[0], MARK)
            yield Inscription(found[0], tuple(_heading(board, found[0], desk.measure)))


def _away(rect: Box, box: Box) -> float:
    return 0.05 * (box.left - rect.left + rect.top - box.top)


def _datum_lines(board: Board) -> list[str]:
    """Return what is on the other side here; the front's corner is that of the datum turned over."""
    here = board.datum.corner.replace("-", " ")
    front = here.replace("left", "RIGHT").replace("right", "left").replace("RIGHT", "right")
    right = directions(board).x > 0
    return [
        "Seen from behind: left and right are changed over.",
        f"Datum corner: {here} here, {front} on the front.",
        f"X runs to the {'right' if right else 'left'} here, to the {'left' if right else 'right'} on the front.",
        "Numbers and running dimensions are those of the front.",
    ]


def _heading(board: Board, room: Box, measure: Measure) -> Iterator[Mark]:
    bar = Box(room.left, room.top - _BAR, room.right, room.top)
    yield Area((room.corners(),), "paper", "ink", 0.35)
    yield Area((bar.corners(),), "ink")
    size = fitting_height(BACK_WORDS, bar.width - 6, TITLE, measure, bold=True)
    yield Words(bar.centre, BACK_WORDS, size, "paper", bold=True)
    yield from _datum_picture(board, Box(room.left + 2, room.bottom + 2, room.left + _PICTURE - 2, bar.bottom - 2))
    lines: list[TextLine] = []
    for number, text in enumerate(_datum_lines(board)):
        height = fitting_height(text, room.width - _PICTURE - 2, FINE, measure)
        lines.append((text, height, number == 1, "ink"))
    yield from stacked(lines, Point(room.left + _PICTURE, bar.bottom - 3))


def _datum_picture(board: Board, room: Box) -> Iterator[Mark]:
    """Yield a small board with its datum corner black, and which way X and Y run from it."""
    share = min(room.width / board.box.width, room.height / board.box.height)
    middle, half_x, half_y = room.centre, share * board.box.width / 2, share * board.box.height / 2
    towards = directions(board)
    corner = Point(middle.x - towards.x * half_x, middle.y - towards.y * half_y)
    sheet = Box(middle.x - half_x, middle.y - half_y, middle.x + half_x, middle.y + half_y)
    yield Area((sheet.corners(),), None, "quiet", 0.2)
    black = Box(corner.x, corner.y, corner.x, corner.y).grown(0.9)
    yield Area((black.corners(),), "ink")
    for name, way, length in (
        ("X", 0.0 if towards.x > 0 else 180.0, half_x),
        ("Y", 90.0 if towards.y > 0 else 270.0, half_y),
    ):
        yield from arrow(corner.ahead(way, 1.2), way, max(3.0, length - 1.2), "ink")
        inner = Point(corner.x + 2.6 * towards.x, corner.y + 2.6 * towards.y)
        yield Words(inner.ahead(way, max(1.5, length - 2)), name, FINE, "ink", bold=True)


def border(rect: Box) -> Picture:
    """Return the frame that only the back has: hatched all round within two lines."""
    inner = rect.grown(-_FRAME)
    rings = [rect.corners(), inner.corners()]
    return (
        *hatched(rings, 135, 2.5, "line"),
        Line(rect.corners(), "quiet", 0.25, closed=True),
        Line(inner.corners(), "quiet", 0.25, closed=True),
    )


def across(rect: Box, measure: Measure) -> Picture:
    """Return the words large and light across the middle of a sheet, below all else."""
    height = fitting_height(BACK_WORDS, 0.8 * rect.width, min(60.0, 0.2 * rect.height), measure, bold=True)
    return (Words(rect.centre, BACK_WORDS, height, "faint", bold=True),)
