"""Hole layers: every hole once, a circle as wide as its bit, on a layer that says how it is drilled.

A hole that a machine must not drill as it stands - its bit unknown, over the edge of the board, over another hole - is
on a layer of its own with a question, so that whoever picks layers can't drill it unasked.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from shapely import Point as Place
from shapely import prepare

from boardplan.drawing.picture import Disc, Line, Mark, Words
from boardplan.geometry.point import Point
from boardplan.geometry.units import tidy_number
from boardplan.model.board import Board
from boardplan.model.holes import Hole
from boardplan.output.exchange.layer import Layer, Role
from boardplan.output.exchange.wood import wood_of
from boardplan.output.printing.lettering import PLAIN

NO_BIT, NO_DEPTH, OFF_BOARD, SAME_PLACE = "DRILL-UNKNOWN", "ASK-NO-DEPTH", "ASK-OFF-BOARD", "ASK-SAME-PLACE"
QUESTIONS = {
    NO_BIT: "no fastener says how wide: which bit?",
    NO_DEPTH: "the board is too thin for a pilot hole: how deep?",
    OFF_BOARD: "over the edge of the board: where does it belong?",
    SAME_PLACE: "over another hole: which of them?",
}
"""What is to be asked about the holes of each such layer."""
_ARM = 3.0
"""How far the mark of a hole whose bit nobody knows reaches from its centre, in mm."""
_EXACT = 0.005
"""Less than this is no difference, in mm."""


@dataclass(frozen=True, slots=True)
class DrilledLayer:
    """The holes of a layer, and what is to be done with it."""

    name: str
    role: Role
    holes: tuple[Hole, ...]

    @property
    def layer(self) -> Layer:
        """The layer as it is drawn."""
        return Layer(self.name, self.role, tuple(mark for hole in self.holes for mark in _marks(hole, self.name)))


def drilled_layers(board: Board, holes: Sequence[Hole], screws: Sequence[Hole]) -> tuple[DrilledLayer, ...]:
    """Return the holes of a board, then the screws of its clamps, by layer; layers in the order of their names."""
    found: dict[tuple[str, Role], list[Hole]] = {}
    inside, overlapping = _on_board(board, (*holes, *screws)), _overlapping((*holes, *screws))
    clamped = {screw.id for screw in screws}
    for hole in (*holes, *screws):
        key = _layer_key(hole, is_clamp=hole.id in clamped)
        if hole.bit is not None and hole.id in overlapping:
            key = SAME_PLACE, "ask"
        if hole.bit is not None and hole.id not in inside:
            key = OFF_BOARD, "ask"
        found.setdefault(key, []).append(hole)
    return tuple(DrilledLayer(name, role, tuple(found[name, role])) for name, role in sorted(found))


def _layer_key(hole: Hole, *, is_clamp: bool) -> tuple[str, Role]:
    """Return the name of a hole's layer, which says all that a drill is set to, and what is to be done with it."""
    if hole.bit is None:
        return NO_BIT, "ask"
    if hole.depth is not None and hole.depth <= 0:
        return NO_DEPTH, "ask"
    deep = "THROUGH" if hole.depth is None else "PILOT"
    end = "" if hole.depth is None else f"-DEEP-{tidy_number(hole.depth, 2)}"
    role: Role = "clamp" if is_clamp else "site" if hole.stage == "site" else "drill"
    return f"{role.upper()}-{deep}-{tidy_number(hole.bit, 3)}{end}", role


def _on_board(board: Board, holes: Iterable[Hole]) -> set[str]:
    """Return which holes lie whole on the wood."""
    wood = wood_of(board.outline, board.cutouts)
    prepare(wood)
    edges = wood.boundary
    return {
        hole.id
        for hole in holes
        if hole.bit is not None
        and wood.contains(Place(hole.position))
        and edges.distance(Place(hole.position)) >= hole.bit / 2 - _EXACT
    }


def _overlapping(holes: Sequence[Hole]) -> set[str]:
    """Return which holes overlap another, swept from left to right."""
    known = sorted((hole for hole in holes if hole.bit is not None), key=lambda each: each.position.x)
    widest = max((hole.bit or 0.0 for hole in known), default=0.0)
    found: set[str] = set()
    for index, hole in enumerate(known):
        for other in known[index + 1 :]:
            if other.position.x - hole.position.x > widest:
                break
            if hole.position.distance_to(other.position) < ((hole.bit or 0) + (other.bit or 0)) / 2 - _EXACT:
                found |= {hole.id, other.id}
    return found


def _marks(hole: Hole, layer: str) -> Iterator[Mark]:
    """Yield the circle of a hole, or a cross where no circle is true; a question beside both where there is one."""
    at, radius = hole.position, 0.0 if hole.bit is None else hole.bit / 2
    if hole.bit is None:
        for turn in (0.0, 90.0):
            yield Line((at.ahead(turn + 180, _ARM), at.ahead(turn, _ARM)), "ink", 0.18)
    else:
        yield Disc(at, radius, None, "ink", 0.18)
    if layer in QUESTIONS:
        aside = radius + 1
        yield Words(Point(at.x + aside, at.y + aside), "?", PLAIN, "ink", "start", bold=True, centred=False)
