"""List sheets: tables on office paper, each sheet with its title block and its number."""

from collections.abc import Sequence
from dataclasses import dataclass

from boardplan.drawing.picture import Area, Line, Mark, Picture, Words, placed_picture
from boardplan.geometry.placement import Placement
from boardplan.geometry.point import Box, Point
from boardplan.model.plan import Plan
from boardplan.output.printing.lettering import FINE, LARGE, LEADING, PLAIN, TITLE, Measure, fitting_height, wrapped
from boardplan.output.printing.paper import Paper
from boardplan.output.printing.sheet import Part, Sheet
from boardplan.output.tables.table import LaidTable, Strip, Table, laid
from boardplan.output.verdict import stop_words

_SIDE, _TOP, _BOTTOM = 14.0, 12.0, 12.0
_HEADER = 17.0
_STOP_BAR = 9.5
_FOOT = 6.8
"""Where the one line at the foot of a sheet stands; of two each is half a line off. A caution is never set smaller."""
_TOGETHER = 0.7
"""A table that takes less of a sheet than this is not split."""


@dataclass(frozen=True, slots=True)
class ListPaper:
    """What all sheets of a list have in common; `footer` is the caution each of them carries."""

    plan: Plan
    title: str
    paper: Paper
    landscape: bool
    footer: str
    stops: int
    measure: Measure

    @property
    def size(self) -> tuple[float, float]:
        """Width and height of a sheet."""
        height = self.paper.height or 0.0
        return (height, self.paper.width) if self.landscape else (self.paper.width, height)

    @property
    def room(self) -> Box:
        """Where a sheet's own content goes, between its title block and its foot."""
        width, height = self.size
        top = height - _TOP - _HEADER - (_STOP_BAR if self.stops else 0.0)
        return Box(_SIDE, _BOTTOM, width - _SIDE, top)


def list_sheets(tables: Sequence[Table], shared: ListPaper) -> tuple[Sheet, ...]:
    """Return tables one after the other on as many sheets as they need, heads repeated on each."""
    room = shared.room.height
    pages: list[list[Strip]] = [[]]
    for table in tables:
        _fill(pages, table, laid(table, shared.room.width, shared.measure), room, shared)
    return tuple(_sheet(shared, strips, number, len(pages)) for number, strips in enumerate(pages, start=1))


def _fill(pages: list[list[Strip]], table: Table, done: LaidTable, room: float, shared: ListPaper) -> None:
    """Add a table's strips to the pages, a head at its start and on every new page."""
    used = sum(strip.height for strip in pages[-1])
    opening = [*_title(table, 11.0 if used else 8.0, shared), *_notes(table, shared), done.head]
    whole = sum(strip.height for strip in (*opening, *done.strips))
    first = done.strips[0].height + 8 if done.strips else 0
    least = whole if whole < _TOGETHER * room else sum(strip.height for strip in opening) + first
    if used and (table.opens_sheet or used + least > room):
        pages.append([])
        used = 0.0
    pages[-1] += opening
    used += sum(strip.height for strip in opening)
    heading: Strip | None = None
    for index, strip in enumerate(done.strips):
        heading = strip if strip.keep else heading
        following = done.strips[index + 1].height if strip.keep and index + 1 < len(done.strips) else 0
        if used + strip.height + following > room:
            again = [heading] if heading and not strip.keep else []
            pages.append([done.head, *again])
            used = sum(each.height for each in pages[-1])
        pages[-1].append(strip)
        used += strip.height


def _title(table: Table, room: float, shared: ListPaper) -> list[Strip]:
    if not table.title:
        return []
    size = fitting_height(table.title, shared.size[0] - 2 * _SIDE, LARGE, shared.measure, bold=True)
    words = Words(Point(0, -room + 2.5), table.title, size, "ink", "start", bold=True, centred=False)
    return [Strip(room, (words,), keep=True)]


def _notes(table: Table, shared: ListPaper) -> list[Strip]:
    if not table.notes:
        return []
    width = shared.size[0] - 2 * _SIDE
    lines = [line for note in table.notes for line in wrapped(note, width, FINE, shared.measure)]
    words = tuple(
        Words(Point(0, -FINE * LEADING * index - FINE), line, FINE, "ink", "start", centred=False)
        for index, line in enumerate(lines)
    )
    return [Strip(len(lines) * FINE * LEADING + 2.5, words)]


def _sheet(shared: ListPaper, strips: Sequence[Strip], number: int, count: int) -> Sheet:
    width, height = shared.size
    marks: list[Mark] = [*sheet_header(shared), *sheet_footer(shared, number, count)]
    y = shared.room.top
    for strip in strips:
        marks += placed_picture(strip.picture, Placement(0, Point(_SIDE, y)))
        y -= strip.height
    return Sheet(f"{shared.title} {number}", width, height, (Part(tuple(marks)),))


def sheet_header(shared: ListPaper) -> Picture:
    """Return the title block at the head of a sheet."""
    width, height = shared.size
    job, left, right, top = shared.plan.job, _SIDE, width - _SIDE, height - _TOP
    marks: list[Mark] = []
    if shared.stops:
        bar = Box(left, top - 5.5, right, top)
        marks += [
            Area((bar.corners(),), "ink"),
            Words(bar.centre, stop_words(shared.stops), PLAIN, "paper", bold=True),
        ]
        top -= _STOP_BAR
    title = fitting_height(shared.title, (right - left) * 0.6, TITLE, shared.measure, bold=True)
    facts = [job.number, job.customer, job.place]
    about = "   ".join(each for each in (job.title, *facts) if each)
    dated = "   ".join(each for each in (job.date, f"drawn {job.drawn_by}" if job.drawn_by else "") if each)
    marks += [
        Words(Point(left, top - TITLE), shared.title, title, "ink", "start", bold=True, centred=False),
        Words(Point(right, top - TITLE), f"revision {job.revision}", PLAIN, "ink", "end", bold=True, centred=False),
        Words(Point(left, top - 10.5), about, _fit(about, shared, 0.7), "ink", "start", centred=False),
        Words(Point(right, top - 10.5), dated, PLAIN, "ink", "end", centred=False),
        Line((Point(left, top - 13), Point(right, top - 13)), "ink", 0.3),
    ]
    return tuple(marks)


def _fit(text: str, shared: ListPaper, share: float) -> float:
    return fitting_height(text, (shared.size[0] - 2 * _SIDE) * share, PLAIN, shared.measure)


def sheet_footer(shared: ListPaper, number: int, count: int) -> Picture:
    """Return the caution and the number at the foot of a sheet."""
    left, right = _SIDE, shared.size[0] - _SIDE
    sheet = f"sheet {number} of {count}"
    room = right - left - shared.measure(sheet, FINE, bold=True) - 6
    lines = wrapped(shared.footer, room, FINE, shared.measure)
    top = _FOOT if len(lines) == 1 else _FOOT + FINE * LEADING / 2
    return (
        Line((Point(left, _BOTTOM - 1.5), Point(right, _BOTTOM - 1.5)), "line", 0.12),
        *(
            Words(Point(left, top - FINE * LEADING * index), line, FINE, "quiet", "start", centred=False)
            for index, line in enumerate(lines)
        ),
        Words(Point(right, top), sheet, FINE, "ink", "end", bold=True, centred=False),
    )
