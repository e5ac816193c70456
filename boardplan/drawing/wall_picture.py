"""Wall picture: what is behind a board and what must stay empty before it, as ghosts over the sheet."""

from boardplan.drawing.hatching import hatch
from boardplan.drawing.picture import Area, Line, Picture, Words
from boardplan.geometry.point import Box, Point
from boardplan.model.board import BackPart, Board, Framing, NoGoBox

_PAST_THE_BOARD = 60.0
_DASHES = (9.0, 5.0)


def framing_box(framing: Framing, board: Board) -> Box:
    """Return the front view of a member, a little past the board where it has no end."""
    box, half = board.box, framing.width / 2
    if framing.direction == "upright":
        start = box.bottom - _PAST_THE_BOARD if framing.start is None else framing.start
        end = box.top + _PAST_THE_BOARD if framing.end is None else framing.end
        return Box(framing.centre - half, start, framing.centre + half, end)
    start = box.left - _PAST_THE_BOARD if framing.start is None else framing.start
    end = box.right + _PAST_THE_BOARD if framing.end is None else framing.end
    return Box(start, framing.centre - half, end, framing.centre + half)


def framing_picture(framing: Framing, board: Board) -> Picture:
    """Return a member of the wall, seen through the board: its body, its edges and its centre line."""
    box = framing_box(framing, board)
    left, right = Point(box.left, box.bottom), Point(box.right, box.top)
    if framing.direction == "upright":
        sides = ((left, Point(box.left, box.top)), (Point(box.right, box.bottom), right))
        middle = (Point(framing.centre, box.bottom), Point(framing.centre, box.top))
    else:
        sides = ((left, Point(box.right, box.bottom)), (Point(box.left, box.top), right))
        middle = (Point(box.left, framing.centre), Point(box.right, framing.centre))
    return (
        Area((box.corners(),), "framing", opacity=0.3),
        *(Line(side, "framing-line", 0.7, _DASHES) for side in sides),
        Line(middle, "framing-line", 0.4, (14.0, 3.0, 2.0, 3.0)),
    )


def back_part_picture(part: BackPart) -> Picture:
    """Return a cleat or batten on the back of the board, seen through it."""
    return (
        Area((part.outline,), "framing", opacity=0.25),
        Line(part.outline, "framing-line", 0.8, (4.0, 3.0), closed=True),
    )


def no_go_picture(box: NoGoBox) -> Picture:
    """Return space that must stay empty: hatched, with its name."""
    ring = box.box.corners()
    spacing = max(8.0, (box.width + box.height) / 60)
    height = max(5.0, min(11.0, box.height * 0.3))
    return (
        Area((ring,), "stop", opacity=0.07),
        *(Line((start, end), "stop", 0.5) for start, end in hatch([ring], 45, spacing)),
        Line(ring, "stop", 1.2, closed=True),
        Words(box.box.centre, box.name, height, "stop", bold=True),
    )
