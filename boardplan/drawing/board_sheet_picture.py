"""Board sheet picture: the plywood with its fabric, its edges and cut-outs, in board coordinates."""

import math
from collections.abc import Iterator

from boardplan.drawing.hatching import hatch, inside, lines_at
from boardplan.drawing.picture import Area, Ink, Picture
from boardplan.drawing.relief import LIGHT, edges
from boardplan.drawing.rings import bar, inset
from boardplan.geometry.point import Point, bearing, box_around
from boardplan.model.board import Board, Ring

_PLIES = 5
_PLY = 1.2
_THREAD_PITCH = 5.2
_MOST_THREADS = 240
_TOGETHER = 25
_FLECKS_PER_M2 = 420
_MOST_FLECKS = 700
_GOLDEN = 0.6180339887
"""Multiples of the golden ratio are spread evenly without a visible pattern, and alike on every run."""


def board_sheet_picture(board: Board) -> Picture:
    """Return the sheet with what covers it: fabric with a faint weave, or bare wood with its grain."""
    rings = (board.outline, *board.cutouts)
    return (
        *_shadow(board),
        Area(rings, "fabric" if board.fabric else "ply-face"),
        *(_weave(rings) if board.fabric else _grain(rings)),
        *(_rolled_edge(board.outline) if board.fabric else _plies(board.outline)),
        *(mark for cutout in board.cutouts for mark in ply_wall(cutout)),
    )


def _shadow(board: Board) -> Picture:
    """Return the shadow of a board that stands off its wall by its thickness."""
    return tuple(
        Area(
            (tuple(point.ahead(LIGHT + 180, reach) for point in board.outline),), "shadow", corner_radius=6, opacity=dim
        )
        for reach, dim in ((15.0, 0.06), (10.0, 0.09), (5.0, 0.14))
    )


def _weave(rings: tuple[Ring, ...]) -> Picture:
    """Return a linen-like weave: uneven threads both ways, and flecks; lines that lie level or upright draw quickly."""
    pitch = max(_THREAD_PITCH, max(box_around(rings[0]).width, box_around(rings[0]).height) / _MOST_THREADS)
    return (
        Area(_threads(rings, 0, pitch, 0.30), "fabric-weave"),
        *_upright(_threads(rings, 90, pitch * 1.4, 0.22), "fabric-warp"),
        Area(_threads(rings, 0, pitch * 1.9, 0.16), "fabric-light", opacity=0.35),
        Area(tuple(_flecks(rings, 0.0)), "fabric-light", opacity=0.45),
        Area(tuple(_flecks(rings, 0.5)), "fabric-dark", opacity=0.28),
    )


def _upright(threads: tuple[Ring, ...], ink: Ink) -> Picture:
    """Return upright threads a few at a time: painters are slow where a level line crosses many edges of one shape."""
    return tuple(Area(threads[first : first + _TOGETHER], ink) for first in range(0, len(threads), _TOGETHER))


def _threads(rings: tuple[Ring, ...], towards: float, pitch: float, thick: float) -> tuple[Ring, ...]:
    box = box_around(point.turned(-towards) for point in rings[0])
    first, last = math.ceil(box.bottom / pitch), math.floor(box.top / pitch)
    levels = (pitch * (step + 0.55 * ((step * _GOLDEN) % 1)) for step in range(first, last))
    return tuple(bar(a, towards, a.distance_to(b), pitch * thick) for a, b in lines_at(rings, towards, levels))


def _flecks(rings: tuple[Ring, ...], seed: float) -> Iterator[Ring]:
    """Yield short fibres that lie on the fabric, none of them over its edge."""
    box = box_around(rings[0]).grown(-6)
    count = min(_MOST_FLECKS, int(box.width * box.height / 1e6 * _FLECKS_PER_M2))
    for index in range(count):
        share = (index * _GOLDEN + seed) % 1
        at = Point(box.left + box.width * share, box.bottom + box.height * (index + seed) / count)
        towards = 360 * ((index * _GOLDEN * 7) % 1)
        if inside(rings, at.ahead(towards, -4)) and inside(rings, at.ahead(towards, 9)):
            yield bar(at, towards, 5, 0.7)


def _grain(rings: tuple[Ring, ...]) -> Picture:
    box = box_around(rings[0])
    pitch = max(5.0, box.height / _MOST_THREADS)
    return (
        Area(_threads(rings, 0, pitch * 2.3, 0.10), "ply-edge-dark", opacity=0.28),
        Area(_threads(rings, 0, pitch * 3.7, 0.22), "ply-edge", opacity=0.35),
        Area(tuple(_thread(a, b, 0.5) for a, b in hatch(rings, 0, pitch * 5)), "ply-edge-dark", opacity=0.2),
    )


def _thread(start: Point, end: Point, width: float) -> Ring:
    return bar(start, bearing(start, end), start.distance_to(end), width)


def _rolled_edge(outline: Ring) -> Picture:
    """Return the border where fabric rolls over the edge of the wood."""
    return (
        *_faded(edges([inset(outline, 2.6)], ("fabric-light", "fabric-dark"), edge=4.0), 0.35),
        *edges([outline], ("fabric-light", "fabric-dark"), edge=2.6),
    )


def _plies(outline: Ring) -> Picture:
    """Return the border of a bare board: its edge a little broken, so that the layers of the wood show."""
    return tuple(
        Area((inset(outline, ply * _PLY), inset(outline, (ply + 1) * _PLY)), _ply_ink(ply)) for ply in range(_PLIES)
    )


def _ply_ink(ply: int) -> Ink:
    return "ply-edge" if ply % 2 else "ply-edge-dark"


def _faded(picture: Picture, opacity: float) -> Picture:
    return tuple(Area(mark.rings, mark.fill, opacity=opacity) if isinstance(mark, Area) else mark for mark in picture)


def ply_wall(opening: Ring, deep: float = 8.0) -> Picture:
    """Return an opening, and the layers of the wood on those of its walls that the eye can see."""
    step = deep / _PLIES
    walls = tuple(edges([inset(opening, ply * step)], ("hole", _ply_ink(ply)), edge=step)[1] for ply in range(_PLIES))
    return (Area((opening,), "hole"), *walls)
