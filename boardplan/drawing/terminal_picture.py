"""Terminal picture: studs, clamps, glands, plugs and blades of a kind, each sort in a few marks."""

from collections.abc import Sequence
from itertools import combinations

from boardplan.drawing.metal import nuts, screws, thread_of
from boardplan.drawing.picture import Area, Picture
from boardplan.drawing.relief import LIGHT, solid
from boardplan.drawing.rings import bar, disc
from boardplan.geometry.point import Point
from boardplan.model.board import Ring
from boardplan.model.component_kind import ComponentKind, Terminal

_WIDEST_CLAMP = 14.0
_WIDEST_GLAND = 26.0
_WIDEST_PLUG = 13.0
_WIDEST_BLADE = 8.0
GLAND_REACH = 22.0
"""How far a gland stands out of its terminal's place, in mm."""


def terminals_picture(kind: ComponentKind, turn: float) -> Picture:
    """Return all terminals of a kind, in its own coordinates."""
    light = LIGHT - turn
    return (
        *_studs(_of_sort(kind, "stud"), light),
        *_clamps(_of_sort(kind, "clamp"), light),
        *_glands(_of_sort(kind, "gland"), light),
        *_plugs(_of_sort(kind, "plug"), light),
        *_blades(_of_sort(kind, "blade"), light),
    )


def _of_sort(kind: ComponentKind, sort: str) -> list[Terminal]:
    return [each for each in kind.terminals if each.sort == sort]


def room_of(terminals: Sequence[Terminal], most: float) -> float:
    """Return how wide each of a row of terminals may be drawn, so that neighbours keep apart."""
    gaps = [a.position.distance_to(b.position) for a, b in combinations(terminals, 2)]
    return min([most, *(gap * 0.82 for gap in gaps)])


def exit_of(terminal: Terminal) -> float:
    """Return the direction a cable leaves a terminal in; down where any will do."""
    return 270.0 if terminal.exit is None else terminal.exit


def _studs(terminals: Sequence[Terminal], light: float) -> Picture:
    if not terminals:
        return ()
    pads = [disc(each.position, thread_of(each.size) * 1.12, 18) for each in terminals]
    return (
        *solid(pads, "brass", "raised", light, 0.8),
        *nuts([(each.position, thread_of(each.size)) for each in terminals], light),
    )


def _at_exit(terminal: Terminal, before: float, length: float, width: float, radius: float = 0.0) -> Ring:
    """Return a rectangle that begins before a terminal's place, on its cable's side, and runs into the body."""
    towards = exit_of(terminal)
    return bar(terminal.position.ahead(towards, before), towards + 180, length, width, radius)


def _clamps(terminals: Sequence[Terminal], light: float) -> Picture:
    if not terminals:
        return ()
    width = room_of(terminals, _WIDEST_CLAMP)
    blocks = tuple(_at_exit(each, 5, width * 1.75, width, 1.5) for each in terminals)
    mouths = tuple(_at_exit(each, 4, width * 0.55, width * 0.7, 1) for each in terminals)
    heads = [(each.position.ahead(exit_of(each) + 180, width * 0.75), width * 0.68) for each in terminals]
    return (Area(blocks, "graphite-dark"), Area(mouths, "shadow"), *screws(heads, light))


def gland_rings(at: Point, towards: float, width: float) -> tuple[Ring, Ring]:
    """Return the body and the dome nut of a gland that stands in a direction."""
    return (
        bar(at, towards, GLAND_REACH * 0.55, width, 2),
        bar(at.ahead(towards, GLAND_REACH * 0.5), towards, GLAND_REACH * 0.5, width * 0.82, 3),
    )


def _glands(terminals: Sequence[Terminal], light: float) -> Picture:
    if not terminals:
        return ()
    width = room_of(terminals, _WIDEST_GLAND)
    pairs = [gland_rings(each.position, exit_of(each), width) for each in terminals]
    return (
        *solid([dome for _, dome in pairs], "graphite", "raised", light, 1.2),
        *solid([body for body, _ in pairs], "graphite", "raised", light, 1.2),
    )


def _plugs(terminals: Sequence[Terminal], light: float) -> Picture:
    if not terminals:
        return ()
    width = room_of(terminals, _WIDEST_PLUG)
    frames = [_at_exit(each, 6, 12, width, 1.2) for each in terminals]
    ports = tuple(_at_exit(each, 4, 8, width * 0.66, 0.8) for each in terminals)
    contacts = tuple(_at_exit(each, -1.2, 2, width * 0.5) for each in terminals)
    return (*solid(frames, "graphite", "sunk", light, 0.8), Area(ports, "shadow"), Area(contacts, "brass"))


def _blades(terminals: Sequence[Terminal], light: float) -> Picture:
    if not terminals:
        return ()
    width = room_of(terminals, _WIDEST_BLADE)
    wells = tuple(_at_exit(each, 6, 15, width * 1.15, 1) for each in terminals)
    tabs = [_at_exit(each, 4, 11, width * 0.72, 0.6) for each in terminals]
    return (Area(wells, "graphite-dark"), *solid(tabs, "brass", "raised", light, 0.6))
