"""Label sheet: a job's labels on their stock, and the list that says what to watch when sticking them on."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from boardplan.drawing.picture import Line, Mark, Words, placed_picture
from boardplan.geometry.placement import Placement
from boardplan.geometry.point import Box, Point
from boardplan.model.label_stock import LabelGrid, LabelStock, hand_cut_stock
from boardplan.model.plan import Plan
from boardplan.output.labels.label_picture import LabelPicture, cable_picture, plate_picture
from boardplan.output.labels.label_words import CableLabel, PlateLabel, cable_labels, component_labels, fuse_labels
from boardplan.output.labels.label_wrap import circumference, goes_round, grid_for
from boardplan.output.printing.lettering import FINE, Measure, fitting_height
from boardplan.output.printing.paper import Paper
from boardplan.output.printing.sheet import Part, Sheet
from boardplan.output.verdict import stop_words
from boardplan.routing.lengths.length_sum import CutLength

_EDGE = 5.0
"""Nothing is printed nearer to the edge of a page, in mm: most printers can't reach it (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class PlacedLabel:
    """A label, where it goes (its grid, and its number there from 0 on), and how it looks."""

    label: CableLabel | PlateLabel
    grid: LabelGrid
    index: int
    look: LabelPicture
    too_small: bool = False


@dataclass(frozen=True, slots=True)
class LabelSet:
    """All labels of a job on their stock."""

    stock: LabelStock
    placed: tuple[PlacedLabel, ...]

    @property
    def cables(self) -> list[tuple[CableLabel, PlacedLabel]]:
        """The labels of cable ends, in sticking order."""
        return [(each.label, each) for each in self.placed if isinstance(each.label, CableLabel)]

    @property
    def plates(self) -> list[tuple[PlateLabel, PlacedLabel]]:
        """The labels of components, then of fuse places."""
        return [(each.label, each) for each in self.placed if isinstance(each.label, PlateLabel)]


def plain_stock(paper: Paper) -> LabelStock:
    """Return sticky paper of an office paper's size, cut by hand: what labels go on where no stock is chosen."""
    return hand_cut_stock(paper.name, paper.width, paper.height or 0.0)


def label_set(plan: Plan, lengths: Mapping[str, CutLength], stock: LabelStock, measure: Measure) -> LabelSet:
    """Return all labels of a job, each on the shortest labels of the stock that go round its cable."""
    used: dict[LabelGrid, int] = {}
    placed: list[PlacedLabel] = []
    for cable in cable_labels(plan, lengths):
        grid = grid_for(cable.diameter, stock)
        round_once = circumference(cable.diameter)
        placed.append(
            PlacedLabel(
                cable, grid, _next(used, grid),
                cable_picture(cable, grid.along, grid.wrap, round_once, measure),
                too_small=not goes_round(cable.diameter, grid, stock.overlap),
            )
        )  # fmt: skip
    for plate in (*component_labels(plan), *fuse_labels(plan)):
        grid = stock.plates
        look = plate_picture(plate, grid.width, grid.height, measure)
        placed.append(PlacedLabel(plate, grid, _next(used, grid), look))
    return LabelSet(stock, tuple(placed))


def _next(used: dict[LabelGrid, int], grid: LabelGrid) -> int:
    used[grid] = used.get(grid, -1) + 1
    return used[grid]


def label_sheets(labels: LabelSet, plan: Plan, stops: int, measure: Measure) -> tuple[Sheet, ...]:
    """Return the pages of labels, each grid on pages of its own; where the margin has room it names job and sheet."""
    pages = list(_pages(labels))
    return tuple(
        Sheet(
            f"Labels {number}",
            grid.page_width,
            grid.page_height,
            tuple(_parts(grid, members, _head(plan, grid, stops, f"label sheet {number} of {len(pages)}", measure))),
        )
        for number, (grid, members) in enumerate(pages, start=1)
    )


def _pages(labels: LabelSet) -> Iterator[tuple[LabelGrid, Sequence[PlacedLabel]]]:
    for grid in dict.fromkeys((*labels.stock.cables, labels.stock.plates)):
        members = [each for each in labels.placed if each.grid == grid]
        for start in range(0, len(members), grid.count):
            yield grid, members[start : start + grid.count]


def _parts(grid: LabelGrid, members: Sequence[PlacedLabel], head: Sequence[Mark]) -> Iterator[Part]:
    cuts = [_cut_line(grid.box(each.index % grid.count)) for each in members] if grid.cut else []
    yield Part((*head, *cuts))
    for each in members:
        box = grid.box(each.index % grid.count)
        yield Part(placed_picture(each.look.picture, _placement(each, box)))


def _placement(each: PlacedLabel, box: Box) -> Placement:
    """Return where a label's upper left corner goes; words on a cable run along it, whichever side goes round."""
    turned = isinstance(each.label, CableLabel) and each.grid.round == "width"
    return Placement(90, Point(box.left, box.bottom)) if turned else Placement(0, Point(box.left, box.top))


def _cut_line(box: Box) -> Line:
    return Line(box.corners(), "line", 0.1, closed=True)


def _head(plan: Plan, grid: LabelGrid, stops: int, sheet: str, measure: Measure) -> list[Mark]:
    if grid.top < _EDGE + 2 * FINE:
        return []
    job, width = plan.job, grid.page_width - 4 * _EDGE
    words = [stop_words(stops)] if stops else []
    words += [job.title, job.number, f"revision {job.revision}", job.date, sheet]
    if grid.cut:
        words.append(f"cut along the lines: {grid.width:g} x {grid.height:g} mm")
    text = "   ".join(each for each in words if each)
    at = Point(2 * _EDGE, grid.page_height - _EDGE - 2 * FINE)
    size = fitting_height(text, width, FINE, measure, bold=bool(stops))
    return [Words(at, text, size, "ink", "start", bold=bool(stops), centred=False)]
