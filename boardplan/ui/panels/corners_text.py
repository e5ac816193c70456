"""Corners text: the corners of a way or a channel as they are typed: "800 168; 800 240", in mm."""

from collections.abc import Sequence

from boardplan.editing.refused import EditRefused
from boardplan.geometry.point import Point
from boardplan.geometry.units import tidy_number
from boardplan.ui.words import tr


def corners_text(points: Sequence[Point]) -> str:
    """Return corners as a text.

    >>> corners_text([Point(800, 168), Point(812.5, 240)])
    '800 168; 812.5 240'
    """
    return "; ".join(f"{tidy_number(each.x)} {tidy_number(each.y)}" for each in points)


def corners_of(text: str) -> tuple[Point, ...]:
    """Return the corners a text means; none for an empty one. Raises EditRefused."""
    corners = []
    for part in (each.split() for each in text.replace(",", ".").split(";") if each.strip()):
        try:
            x, y = (float(each) for each in part)
        except ValueError:
            raise EditRefused(tr("Corners are typed as x y; x y in mm, as in 800 168; 800 240.")) from None
        corners.append(Point(x, y))
    return tuple(corners)
