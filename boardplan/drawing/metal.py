"""Metal: nuts, washers and screw heads, many of a sort in a few marks."""

from collections.abc import Iterable, Sequence

from boardplan.drawing.picture import Area, Picture
from boardplan.drawing.relief import LIGHT, edges, solid
from boardplan.drawing.rings import bar, disc, hexagon
from boardplan.geometry.point import Point

ACROSS_FLATS = {3: 5.5, 4: 7.0, 5: 8.0, 6: 10.0, 8: 13.0, 10: 16.0, 12: 18.0}
"""Width across flats of a nut by its thread, ISO 4032, from memory; it only decides how a nut looks."""

HEAD_DIAMETERS = {"#6": 6.9, "#8": 8.2, "#10": 9.5, "#12": 10.8, "M5": 9.5, "M6": 12.0, "M8": 16.0}
"""Typical heads by the first word of a fastener; only for the look."""


def thread_of(size: str) -> int:
    """Return the nominal thread of a stud by its size, as in M10; 8 where the size is blank or no metric one."""
    digits = size.removeprefix("M").split("x")[0]
    return int(digits) if digits.isdigit() else 8


def nuts(places: Iterable[tuple[Point, int]], light: float = LIGHT) -> Picture:
    """Return nuts on studs with the end of the thread, in five marks."""
    held = list(places)
    if not held:
        return ()
    hexes = [hexagon(at, ACROSS_FLATS.get(thread, thread * 1.6), 15) for at, thread in held]
    return (
        *solid(hexes, "steel", "raised", light, 1.1),
        Area(tuple(disc(at, thread * 0.62, 14) for at, thread in held), "steel-light"),
        Area(tuple(disc(at, thread * 0.46, 14) for at, thread in held), "steel-dark"),
    )


def screws(places: Sequence[tuple[Point, float]], light: float = LIGHT) -> Picture:
    """Return screw heads by their centres and diameters, each with a cross, in five marks."""
    if not places:
        return ()
    heads = [disc(at, diameter / 2, 16) for at, diameter in places]
    cross = tuple(
        bar(at.ahead(30 + way, diameter * 0.29), 210 + way, diameter * 0.58, diameter * 0.11)
        for at, diameter in places
        for way in (0, 90)
    )
    return (
        Area(tuple(heads), "steel"),
        *edges(heads, ("steel-light", "steel-dark"), light, 0.9),
        Area(cross[::2], "graphite"),
        Area(cross[1::2], "graphite"),
    )
