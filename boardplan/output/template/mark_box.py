"""Mark box: the room a mark of a picture takes, so that a sheet draws only what it shows."""

from boardplan.drawing.picture import Area, Disc, Line, Mark, Strand
from boardplan.geometry.bends import Straight
from boardplan.geometry.point import Box, box_around


def mark_box(mark: Mark) -> Box:
    """Return a box that holds a mark; that of words is on the safe side."""
    if isinstance(mark, Line):
        return box_around(mark.points).grown(mark.width)
    if isinstance(mark, Area):
        return box_around(point for ring in mark.rings for point in ring).grown(mark.edge_width)
    if isinstance(mark, Disc):
        return Box(*mark.centre, *mark.centre).grown(mark.radius + mark.edge_width)
    if isinstance(mark, Strand):
        points = [point for piece in mark.pieces for point in (piece.start, piece.end)]
        reach = max((piece.radius for piece in mark.pieces if not isinstance(piece, Straight)), default=0.0)
        return box_around(points).grown(mark.width + reach)
    return Box(*mark.at, *mark.at).grown((len(mark.text) + 1) * mark.height * 1.3)
