"""Reference tags: the references of components and the numbers of cables, each on a small plate where it is free."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from boardplan.drawing.picture import Area, Line, Mark, Picture, Words
from boardplan.drawing.rings import rectangle
from boardplan.geometry.bends import Straight
from boardplan.geometry.point import Box, Point
from boardplan.model.board import Board
from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.placed import placed
from boardplan.model.plan import Plan
from boardplan.output.cover.soft_picture import stage_of
from boardplan.output.drawn.scale import Scaled
from boardplan.output.printing.lettering import FINE, Measure
from boardplan.output.template.free_places import TERMINAL, WORDS, FreePlaces
from boardplan.routing.route import Route, Way

_PAD_X, _PAD_Y = 0.8, 0.7
_HIDES = 0.3 * WORDS
"""A tag that covers more of other words than this, as area times weight, is left out and told of."""
_COVERED = 0.35
"""How much of a tag may cover other components, as a share of its area."""
LEGIBLE = 20.0
"""On a drawing that is smaller, cables carry no numbers, and components only where they are large enough."""
_WIDER = 1.5
_SHARES = (0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9)


@dataclass
class Tags:
    """Tags set so far on a drawing, and the cables and components for which no place was left."""

    drawing: Scaled
    measure: Measure
    clip: Box
    places: FreePlaces = field(default_factory=FreePlaces)
    marks: list[Mark] = field(default_factory=list)
    unnamed: list[str] = field(default_factory=list)
    unmarked: list[str] = field(default_factory=list)

    def size(self, text: str, *, bold: bool) -> tuple[float, float]:
        """Return how large the tag of a text is."""
        return self.measure(text, FINE, bold=bold) + 2 * _PAD_X, FINE + 2 * _PAD_Y

    def shows(self, box: Box) -> bool:
        """Say whether a box lies whole on what is shown."""
        return self.clip.holds((box.left, box.bottom)) and self.clip.holds((box.right, box.top))

    def put(self, box: Box, text: str, *, bold: bool) -> None:
        """Set a tag in a box."""
        self.places.take(box, WORDS)
        ring = rectangle(box.left, box.bottom, box.width, box.height, 0.6)
        self.marks.append(Area((ring,), "paper", "ink" if bold else "quiet", 0.13))
        self.marks.append(Words(box.centre, text, FINE, "ink", bold=bold))


def component_tags(tags: Tags, plan: Plan, board: Board) -> None:
    """Set the reference of each component on it, or beside it with a hairline where it is too small."""
    units = [placed(plan, each) for each in plan.components.values() if each.board == board.id]
    boxes = [tags.drawing.box(unit.box.moved(*board.position)) for unit in units]
    for box in boxes:
        tags.places.take(box, TERMINAL)
    for unit, box in zip(units, boxes, strict=True):
        site = stage_of(plan, unit.component) == "site"
        text = f"{unit.component.label or unit.component.id}{'  site' if site else ''}"
        wide, high = tags.size(text, bold=True)
        if wide <= box.width - 0.6 and high <= box.height - 0.4:
            within = tags.places.best(_within(box, wide, high))
            if within:
                tags.put(within[0], text, bold=True)
            continue
        if tags.drawing.by > LEGIBLE and wide > _WIDER * box.width:
            tags.unmarked.append(unit.component.id)
            continue
        found = tags.places.best(each for each in _beside(box, wide, high) if tags.shows(each[0]))
        if found is None or found[1] > _HIDES + wide * high * TERMINAL * _COVERED:
            tags.unmarked.append(unit.component.id)
        else:
            tags.put(found[0], text, bold=True)
            if not found[0].touches(box.grown(0.7)):
                tags.marks.insert(0, Line((found[0].centre, box.centre), "quiet", 0.1))


def _about(at: Point, wide: float, high: float) -> Box:
    return Box(at.x - wide / 2, at.y - high / 2, at.x + wide / 2, at.y + high / 2)


def _within(box: Box, wide: float, high: float) -> Iterator[tuple[Box, float]]:
    for share in (0.5, 0.62, 0.38, 0.74, 0.26, 0.86, 0.14):
        for side in (0.5, 0.3, 0.7):
            x = box.left + wide / 2 + (box.width - wide) * (side if side == 0.5 else (side > 0.5))  # noqa: PLR2004
            y = box.bottom + high / 2 + (box.height - high) * share
            yield _about(Point(x, y), wide, high), 4 * abs(share - 0.5) + 3 * abs(side - 0.5)


def _beside(box: Box, wide: float, high: float) -> Iterator[tuple[Box, float]]:
    for away, own in ((0.5, 0.0), (3.5, 4.0), (7.0, 12.0), (12.0, 30.0)):
        for x in (box.centre.x, box.left + wide / 2, box.right - wide / 2):
            yield _about(Point(x, box.top + away + high / 2), wide, high), own
            yield _about(Point(x, box.bottom - away - high / 2), wide, high), own + 0.2
        yield _about(Point(box.right + away + wide / 2, box.centre.y), wide, high), own + 0.3
        yield _about(Point(box.left - away - wide / 2, box.centre.y), wide, high), own + 0.3


def cable_tags(tags: Tags, plan: Plan, ways: dict[str, Way], boards: Sequence[Board]) -> None:
    """Set the number of each cable on one of its straights, with its pole; those without a place are remembered."""
    shown = {board.id for board in boards}
    for cable in plan.cables.values():
        way = ways.get(cable.id)
        if not isinstance(way, Route) or not _on(plan, cable, shown):
            continue
        if tags.drawing.by > LEGIBLE:
            tags.unnamed.append(cable.id)
            continue
        text = f"{cable.id}{_pole(plan, cable)}"
        wide, high = tags.size(text, bold=False)
        found = tags.places.best(_along(tags, way, wide, high))
        if found is None or found[1] > _HIDES + wide * high * TERMINAL * _COVERED:
            tags.unnamed.append(cable.id)
        else:
            tags.put(found[0], text, bold=False)


def _on(plan: Plan, cable: Cable, shown: set[str]) -> bool:
    for end in cable.ends:
        thing = plan.components[end.component] if isinstance(end, TerminalEnd) else plan.exits.get(end.exit)
        if thing is not None and thing.board in shown:
            return True
    return False


def _pole(plan: Plan, cable: Cable) -> str:
    """Return plus or minus where the terminals of a single cable say it: paper without colour must, too."""
    if cable.count > 1 or plan.conductors[cable.conductor].cores > 1:
        return ""
    poles = set()
    for end in cable.ends:
        if isinstance(end, TerminalEnd):
            terminal = plan.kind_of(plan.components[end.component]).terminal(end.terminal)
            poles.add(terminal.pole if terminal else "")
    poles -= {""}
    return f" {'−' if poles == {'-'} else '+'}" if poles in ({"+"}, {"-"}) else ""


def _along(tags: Tags, way: Route, wide: float, high: float) -> Iterator[tuple[Box, float]]:
    straights = [piece for piece in way.pieces if isinstance(piece, Straight)]
    straights.sort(key=lambda each: -each.start.distance_to(each.end))
    for rank, piece in enumerate(straights[:6]):
        a, b = tags.drawing.point(piece.start), tags.drawing.point(piece.end)
        length = a.distance_to(b)
        for share in _SHARES:
            at = Point(a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share)
            for away in (0.0, wide / 2 + 0.9, -wide / 2 - 0.9):
                level = abs(b.x - a.x) > abs(b.y - a.y)
                up = high / (wide or 1) * away
                box = _about(at.moved(0, up) if level else at.moved(away, 0), wide, high)
                if tags.shows(box):
                    yield box, 2.0 * rank + abs(share - 0.5) + max(0.0, 4.0 - length) + (6.0 if away else 0.0)


def tag_picture(tags: Tags) -> Picture:
    """Return all tags."""
    return tuple(tags.marks)
