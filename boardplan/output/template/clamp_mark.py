"""Clamp mark: two bars across a cable, and a stalk to each screw, with a filled square where it is drilled freehand."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from boardplan.drawing.picture import Area, Line, Picture
from boardplan.drawing.rings import bar
from boardplan.geometry.point import Box, Point, box_around
from boardplan.geometry.units import tidy_number
from boardplan.model.board import Board
from boardplan.model.plan import Plan
from boardplan.output.template.free_places import common_box
from boardplan.routing.supports.clamp import Clamp, own_clamps
from boardplan.routing.supports.clamp_holes import screw_for

_WIDTH, _FINE = 0.3, 0.12
_SQUARE = 1.2
"""Side of the square for a screw, in mm: not round and filled, so that nobody takes it for a hole to drill by."""


def placed_clamps(plan: Plan, clamps: Mapping[str, tuple[Clamp, ...]], board: Board) -> Iterator[Clamp]:
    """Yield the clamps on a board, each once, in the board's own coordinates."""
    for each in own_clamps(clamps):
        if each.board == board.id:
            screws = tuple(plan.off_wall(board.id, screw) for screw in each.screws)
            yield replace(each, at=plan.off_wall(board.id, each.at), screws=screws)


def clamp_mark(clamp: Clamp, *, by_hand: bool = True) -> Picture:
    """Return the mark of a clamp on the template; screws with a hole of their own are marked as holes are."""
    out = clamp.width / 2
    bars = []
    for way in (0, 180):
        middle = clamp.at.ahead(clamp.towards + way, clamp.length / 2)
        ends = middle.ahead(clamp.towards + 90, out), middle.ahead(clamp.towards - 90, out)
        bars.append(Line(ends, "quiet", _WIDTH))
    stalks = (_stalk(clamp, screw) for screw in clamp.screws)
    squares = (bar(at.ahead(clamp.towards + 180, _SQUARE / 2), clamp.towards, _SQUARE, _SQUARE) for at in clamp.screws)
    return (*bars, *stalks, *(Area((square,), "quiet") for square in squares if by_hand))


def _stalk(clamp: Clamp, screw: Point) -> Line:
    """Return the line from the cable's jacket to a screw."""
    share = clamp.width / 2 / clamp.at.distance_to(screw)
    start = Point(clamp.at.x + (screw.x - clamp.at.x) * share, clamp.at.y + (screw.y - clamp.at.y) * share)
    return Line((start, screw), "quiet", _FINE)


def clamp_box(clamp: Clamp) -> Box:
    """Return the box round the mark of a clamp."""
    sides = [clamp.at.ahead(clamp.towards + turn, clamp.width / 2) for turn in (90, -90)]
    ends = [side.ahead(clamp.towards + way, clamp.length / 2) for side in sides for way in (0, 180)]
    return box_around((*ends, *clamp.screws)).grown(_SQUARE / 2)


def clamp_note(plan: Plan, board: Board, clamps: tuple[Clamp, ...], rect: Box) -> str:
    """Return how deep the screws of clamps may go, for a sheet that shows any; nothing for others.

    Board thickness less the wood left under a pilot hole, less what a drill held by hand goes too deep.
    """
    if not any(common_box(clamp_box(each), rect) for each in clamps):
        return ""
    screw = screw_for(plan, board)
    left, by_hand = plan.rules.value("pilot-depth-left"), plan.rules.value("clamp-screw-point")
    if screw is not None:
        deep = tidy_number(board.thickness - left)
        return (
            f"Two bars: clamp. Its screws, numbered C: {screw.bit:.1f} mm, {deep} deep by a depth stop, {screw.name}."
        )
    depth = board.thickness - left - by_hand
    if depth <= 0:
        return "Two bars and a square: clamp. The board is too thin for its screws: ask."
    parts = f"{tidy_number(board.thickness)} board - {tidy_number(left)} left - {tidy_number(by_hand)} by hand"
    return (
        f"Two bars and a square: clamp. Clamp screws: drill freehand here, no deeper than {tidy_number(depth)} mm "
        f"({parts})."
    )
