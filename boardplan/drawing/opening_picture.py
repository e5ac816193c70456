"""Opening picture: exits where cables leave the board, and the bolts that hold the board to the wall."""

from boardplan.drawing.board_sheet_picture import ply_wall
from boardplan.drawing.picture import Area, Disc, Picture
from boardplan.drawing.relief import edges, solid
from boardplan.drawing.rings import bar, disc, hexagon
from boardplan.geometry.point import Point
from boardplan.model.board import Board, BoardFixing, Exit

_EDGE_BUSH = 30.0


def exit_picture(way_out: Exit, board: Board) -> Picture:
    """Return a hole with its grommet, or a rubber edging where cables pass over the board's edge."""
    if way_out.through == "hole":
        return _grommet(way_out.position, (way_out.diameter or 30.0) / 2)
    box, at = board.box, way_out.position
    gaps = {180.0: at.x - box.left, 0.0: box.right - at.x, 270.0: at.y - box.bottom, 90.0: box.top - at.y}
    outward = min(gaps, key=lambda side: abs(gaps[side]))
    start = at.ahead(outward + 90, _EDGE_BUSH / 2).ahead(outward, -2.5)
    edging = bar(start, outward - 90, _EDGE_BUSH, 5.0, 2.0)
    tip = at.ahead(outward, 15)
    arrow = (tip, at.ahead(outward, 7).ahead(outward + 90, 5), at.ahead(outward, 7).ahead(outward - 90, 5))
    return (*solid([edging], "graphite", "raised"), Area((arrow,), "quiet"))


def _grommet(at: Point, radius: float) -> Picture:
    hole = disc(at, radius, 32)
    lip = disc(at, radius + 4, 32)
    inner = disc(at, radius + 1, 32)
    return (
        *ply_wall(hole, min(7.0, radius * 0.4)),
        Area((lip, hole), "graphite"),
        *edges([lip], ("graphite-light", "graphite-dark"), edge=1.0),
        *edges([inner], ("graphite-dark", "graphite-light"), edge=1.0),
    )


def fixing_picture(fixing: BoardFixing) -> Picture:
    """Return a bolt head on its washer."""
    washer, head = (
        disc(fixing.position, fixing.diameter * 1.15, 24),
        hexagon(fixing.position, fixing.diameter * 1.35, 10),
    )
    shade = disc(fixing.position.moved(1.2, -1.2), fixing.diameter * 1.15, 24)
    return (
        Area((shade,), "shadow", opacity=0.25),
        *solid([washer], "steel", "raised", edge=0.8),
        *solid([head], "steel", "raised", edge=1.2),
        Disc(fixing.position, fixing.diameter * 0.4, "steel-light"),
    )
