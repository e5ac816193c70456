"""Lug picture: what is crimped, screwed or plugged on at the ends of a cable."""

from collections.abc import Sequence
from dataclasses import dataclass

from boardplan.drawing.metal import ACROSS_FLATS, thread_of
from boardplan.drawing.picture import Area, Picture, Strand
from boardplan.drawing.relief import solid
from boardplan.drawing.rings import bar, disc, hexagon
from boardplan.drawing.stretch import Pieces, stretch_of
from boardplan.drawing.terminal_picture import GLAND_REACH
from boardplan.geometry.bends import Straight
from boardplan.geometry.point import Point, bearing
from boardplan.model.board import Ring
from boardplan.model.component_kind import Terminal
from boardplan.model.conductor import Conductor, LugMeasures
from boardplan.routing.lugs.lug_place import lug_outline

_TUBE_PAST_MOUTH = 22.0
_TUBE_FROM = 0.3
"""Where on the barrel the heat-shrink tube begins, as a share of the barrel's length."""
_PLUG = 15.0
_FERRULE = 7.0


@dataclass(frozen=True, slots=True)
class DressedEnd:
    """An end of a cable at a terminal: its centre line from that end on, and what holds it there."""

    terminal: Terminal
    pieces: Pieces
    conductor: Conductor
    tube: str

    @property
    def at(self) -> Point:
        """Where the end lies."""
        return self.pieces[0].start

    @property
    def towards(self) -> float:
        """The direction the cable leaves in."""
        first = self.pieces[0]
        if isinstance(first, Straight):
            return bearing(first.start, first.end)
        return bearing(first.centre, first.start) + (90 if first.turn > 0 else -90)

    @property
    def lug(self) -> LugMeasures | None:
        """The measures of the lug, where the end lands on a stud and the lug is known."""
        return self.conductor.lug if self.terminal.sort == "stud" else None

    @property
    def bare(self) -> float:
        """How far from the terminal's place the jacket begins to be seen."""
        if self.lug:
            return self.lug.stop + _TUBE_FROM * self.lug.barrel
        return {"gland": GLAND_REACH * 0.8, "plug": _PLUG * 0.6, "clamp": 2.0}.get(self.terminal.sort, 0.0)


def tube_strand(end: DressedEnd) -> tuple[Strand, ...]:
    """Return the heat-shrink tube over a lug's barrel and the jacket behind it."""
    if end.lug is None:
        return ()
    stretch = stretch_of(end.pieces, end.bare, end.lug.mouth + _TUBE_PAST_MOUTH)
    if not stretch:
        return ()
    return (Strand(stretch, end.tube, end.conductor.outside_diameter + 1.8, round_ends=False),)


def lugs_picture(ends: Sequence[DressedEnd]) -> Picture:
    """Return the tinned lugs of all ends, in three marks."""
    lugs = [lug_outline(end.at, end.towards, end.lug, end.conductor.outside_diameter) for end in ends if end.lug]
    return solid(lugs, "tin", "raised", edge=0.8) if lugs else ()


def holds_picture(ends: Sequence[DressedEnd]) -> Picture:
    """Return what holds the ends: nuts, ferrules, push-on sleeves, plugs and gland caps, in a few marks."""
    by_sort = {sort: [end for end in ends if end.terminal.sort == sort] for sort in ("clamp", "blade", "plug", "gland")}
    ferrules = [_collar(end, -1.0, _FERRULE, end.conductor.outside_diameter * 0.8) for end in by_sort["clamp"]]
    sleeves = [_collar(end, -1.0, 12.0, max(6.0, end.conductor.outside_diameter * 1.2)) for end in by_sort["blade"]]
    plugs = [_collar(end, -2.0, _PLUG, max(9.0, end.conductor.outside_diameter * 1.5)) for end in by_sort["plug"]]
    caps = [
        _collar(end, GLAND_REACH * 0.72, GLAND_REACH * 0.34, end.conductor.outside_diameter + 5)
        for end in by_sort["gland"]
    ]
    return (
        *_nuts([end for end in ends if end.terminal.sort == "stud"]),
        *(solid(ferrules, "bone") if ferrules else ()),
        *(solid(sleeves, "amber", "raised", edge=0.6) if sleeves else ()),
        *(solid(plugs + caps, "graphite", "raised", edge=0.8) if plugs or caps else ()),
    )


def _collar(end: DressedEnd, first: float, length: float, width: float) -> Ring:
    return bar(end.at.ahead(end.towards, first), end.towards, length, width, 1.5)


def _nuts(ends: Sequence[DressedEnd]) -> Picture:
    if not ends:
        return ()
    held = [(end.at, thread_of(end.terminal.size)) for end in ends]
    hexes = tuple(hexagon(at, ACROSS_FLATS.get(thread, thread * 1.6), 15) for at, thread in held)
    return (
        Area(hexes, "steel", "steel-dark", 0.8),
        Area(tuple(disc(at, thread * 0.5, 14) for at, thread in held), "steel-light", "steel-dark", 0.9),
    )
