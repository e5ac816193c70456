"""Zone picture: the room a component needs beside its faces."""

from boardplan.drawing.hatching import hatch
from boardplan.drawing.picture import Area, Line, Picture
from boardplan.model.placed import Placed


def zone_picture(placed: Placed) -> Picture:
    """Return the keep-clear zones of a placed component, in board coordinates; what its sheet demands is hatched."""
    marks: list[Area | Line] = []
    for zone in placed.zones:
        marks.append(Area((zone.ring,), "keep-clear", opacity=0.10))
        if zone.keep_clear.demanded:
            marks += [Line(leg, "keep-clear", 0.35) for leg in hatch([zone.ring], 45, 14.0)]
        marks.append(Line(zone.ring, "keep-clear", 0.7, (5.0, 3.0), closed=True))
    return tuple(marks)
