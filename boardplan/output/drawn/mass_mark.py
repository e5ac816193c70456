"""Mass mark: the sign for a centre of mass, a disc with two of its quarters filled."""

from boardplan.drawing.picture import Area, Disc, Picture, Words
from boardplan.geometry.point import Point
from boardplan.output.printing.lettering import FINE

RADIUS = 2.1


def mass_mark(at: Point, letter: str = "", radius: float = RADIUS) -> Picture:
    """Return the sign about a point of the page, with a letter beside it that says of what it is the centre."""
    quarters = tuple((at, *(at.ahead(start + 90 * step / 8, radius) for step in range(9))) for start in (0.0, 180.0))
    words = (Words(at.moved(radius + 0.6, radius), letter, FINE, "ink", "start", bold=True),) if letter else ()
    ground = tuple(Disc(at.moved(radius + 1.2 + 1.3 * index, radius), 1.45, "paper") for index, _ in enumerate(letter))
    return (
        Disc(at, radius + 0.5, "paper"),
        Disc(at, radius, "paper", "ink", 0.25),
        Area(quarters, "ink"),
        *ground,
        *words,
    )
