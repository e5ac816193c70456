"""Picture: a short list of primitives in millimetres, drawn alike on screen and paper.

A colour is an ink by name (see `palette`) or a real colour as "#rrggbb"; backends only translate.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Literal, TypeAlias

from boardplan.geometry.bends import Bend, Straight
from boardplan.geometry.placement import IN_PLACE, Placement
from boardplan.geometry.point import Point

Ink: TypeAlias = str
Anchor: TypeAlias = Literal["start", "middle", "end"]


@dataclass(frozen=True, slots=True)
class Line:
    """A line through points; a width of 0 is a hairline; dashes in mm; closed joins the ends."""

    points: tuple[Point, ...]
    ink: Ink
    width: float = 0.0
    dashes: tuple[float, ...] = ()
    closed: bool = False


@dataclass(frozen=True, slots=True)
class Area:
    """A filled shape of one or more rings (holes by the even-odd rule), its edge and rounded corners."""

    rings: tuple[tuple[Point, ...], ...]
    fill: Ink | None
    edge: Ink | None = None
    edge_width: float = 0.0
    corner_radius: float = 0.0
    opacity: float = 1.0


@dataclass(frozen=True, slots=True)
class Disc:
    """A filled circle and its edge."""

    centre: Point
    radius: float
    fill: Ink | None
    edge: Ink | None = None
    edge_width: float = 0.0
    dashes: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Strand:
    """A thick line along straights and bends, as a cable lies.

    `detail` is how wide what it adds to those above it shows, in mm, where that is little: a rim.
    """

    pieces: tuple[Straight | Bend, ...]
    ink: Ink
    width: float
    opacity: float = 1.0
    round_ends: bool = True
    dashes: tuple[float, ...] = ()
    detail: float = 0.0


@dataclass(frozen=True, slots=True)
class Words:
    """A line of text; `height` is that of its capitals in mm; turned counter-clockwise about its anchor.

    The anchor lies on the baseline, or on half the height of a capital where `centred` is set.
    """

    at: Point
    text: str
    height: float
    ink: Ink
    anchor: Anchor = "middle"
    turn: float = 0.0
    bold: bool = False
    centred: bool = True


Mark: TypeAlias = Line | Area | Disc | Strand | Words
Picture: TypeAlias = tuple[Mark, ...]


def placed_picture(marks: Iterable[Mark], placement: Placement) -> Picture:
    """Return a picture turned and shifted."""
    if placement == IN_PLACE:  # a board alone on its wall: nothing moves
        return tuple(marks)
    return tuple(_placed(mark, placement) for mark in marks)


def _placed(mark: Mark, placement: Placement) -> Mark:
    if isinstance(mark, Line):
        return replace(mark, points=placement.points(mark.points))
    if isinstance(mark, Area):
        return replace(mark, rings=tuple(placement.points(ring) for ring in mark.rings))
    if isinstance(mark, Disc):
        return replace(mark, centre=placement.point(mark.centre))
    if isinstance(mark, Strand):
        return replace(mark, pieces=tuple(_placed_piece(piece, placement) for piece in mark.pieces))
    return replace(mark, at=placement.point(mark.at), turn=(mark.turn + placement.turn) % 360.0)


def _placed_piece(piece: Straight | Bend, placement: Placement) -> Straight | Bend:
    start, end = placement.point(piece.start), placement.point(piece.end)
    if isinstance(piece, Straight):
        return Straight(start, end)
    return Bend(start, end, placement.point(piece.centre), piece.radius, piece.turn)
