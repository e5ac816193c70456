"""Shut-off card: one page to laminate and hang beside the board: emergency, off, on, as large as it goes."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from boardplan.drawing.picture import Area, Line, Mark, Picture, Words
from boardplan.geometry.point import Box, Point
from boardplan.model.plan import Plan
from boardplan.output.printing.lettering import (
    FINE,
    LARGE,
    LEADING,
    PLAIN,
    TITLE,
    Measure,
    capital_height,
    fitting_height,
    wrapped,
)
from boardplan.output.printing.paper import Paper
from boardplan.output.printing.sheet import Part, Sheet
from boardplan.output.shut_off.shut_off_picture import number_disc, picture_scale, shut_off_picture
from boardplan.output.shut_off.shut_off_steps import (
    emergency_steps,
    off_steps,
    on_steps,
    shut_offs_of,
    warnings,
)
from boardplan.output.verdict import stop_words

ORDER = "Default order, to be replaced by the equipment instructions."
_SIDE, _EDGE, _GAP, _BAR, _PAD = 14.0, 12.0, 6.0, 10.0, 4.0
_SIZES = (TITLE, capital_height(15), LARGE, capital_height(10.5), PLAIN, FINE)
"""Read standing, at arm's length: larger than a list where there is room; the largest that goes on one page."""
_BETWEEN = 0.9
"""Air between steps, as a share of their capitals."""
_WORDS = 0.42
"""Share of the emergency's box that its words take, beside the picture."""
_LEAST_PICTURE, _MOST_PICTURE = 62.0, 120.0


@dataclass(frozen=True, slots=True)
class CardPaper:
    """What a card is printed on and what is said on it besides its steps."""

    plan: Plan
    paper: Paper
    stops: int
    measure: Measure

    @property
    def box(self) -> Box:
        """The page within its margins."""
        return Box(_SIDE, _EDGE, self.paper.width - _SIDE, (self.paper.height or 0.0) - _EDGE)

    @property
    def column(self) -> float:
        """How wide each of the two lists is."""
        return (self.box.width - _GAP) / 2

    @property
    def aside(self) -> float:
        """How much of the emergency's box its words take, beside the picture."""
        return self.box.width * _WORDS


@dataclass(frozen=True, slots=True)
class _List:
    """Steps set in lines: the number of each, its lines, and whether it is a number of the picture."""

    steps: tuple[tuple[str, tuple[str, ...]], ...]
    size: float
    discs: bool = False

    @property
    def height(self) -> float:
        lines = sum(len(each) for _, each in self.steps)
        return lines * self.size * LEADING + len(self.steps) * self.size * _BETWEEN


def shut_off_card(shared: CardPaper) -> Sheet:
    """Return the card, one page whatever is on the board."""
    box = shared.box
    head = tuple(_head(shared))
    top = box.top - 24 - (9.5 if shared.stops else 0)
    room = top - box.bottom - 7
    off, on, emergency = _fitted(shared, room)
    lists = max(off.height, on.height) + _BAR + _PAD
    deep = max(min(_MOST_PICTURE, room - lists - _GAP), _alarm_height(shared, emergency))
    alarm = Box(box.left, top - deep, box.right, top)
    marks = [*head, *_emergency(shared, emergency, alarm)]
    below = alarm.bottom - _GAP
    for title, steps, left in (("OFF", off, box.left), ("ON", on, box.left + shared.column + _GAP)):
        marks += _column(title, steps, Box(left, below - lists, left + shared.column, below))
    marks += _foot(shared)
    return Sheet("Shut-off card", shared.paper.width, shared.paper.height or 0.0, (Part(tuple(marks)),))


def _fitted(shared: CardPaper, room: float) -> tuple[_List, _List, _List]:
    """Return off, on and emergency at the largest size at which they go on the page, the emergency's no smaller.

    A job with more than goes there gets the smallest size.
    """
    plan, job = shared.plan, shut_offs_of(shared.plan)
    emergency = tuple(("" if number is None else str(number), words) for number, words in emergency_steps(plan, job))
    for index, size in enumerate(_SIZES):
        off, on = (_set(shared, _numbered(steps), shared.column, size) for steps in (off_steps(job), on_steps(job)))
        left = room - max(off.height, on.height) - _BAR - _PAD - _GAP
        for larger in _SIZES[: index + 1]:
            first = _set(shared, emergency, shared.aside - 2 * _PAD, larger, discs=True)
            if left >= max(_LEAST_PICTURE, _alarm_height(shared, first)):
                return off, on, first
    return off, on, first


def _alarm_height(shared: CardPaper, steps: _List) -> float:
    """Return how high the emergency's box is for its words alone."""
    return steps.height + _warning_height(shared, steps.size) + _BAR + 2 * _PAD


def _numbered(steps: Iterator[str]) -> tuple[tuple[str, str], ...]:
    return tuple((str(number), words) for number, words in enumerate(steps, start=1))


def _set(
    shared: CardPaper, steps: Sequence[tuple[str, str]], width: float, size: float, *, discs: bool = False
) -> _List:
    room = width - _indent(size)
    lines = tuple((number, tuple(wrapped(words, room, size, shared.measure))) for number, words in steps)
    return _List(lines, size, discs)


def _indent(size: float) -> float:
    return size * 2.6


def _head(shared: CardPaper) -> Iterator[Mark]:
    box, job = shared.box, shared.plan.job
    top = box.top
    if shared.stops:
        yield Area((Box(box.left, top - 5.5, box.right, top).corners(),), "ink")
        yield Words(Point(box.centre.x, top - 2.75), stop_words(shared.stops), PLAIN, "paper", bold=True)
        top -= 9.5
    about = "   ".join(each for each in (job.title, job.number, job.customer, job.place) if each)
    size = fitting_height(about, box.width, PLAIN, shared.measure)
    issued = "   ".join(each for each in (f"revision {job.revision}", job.date) if each)
    yield Words(Point(box.left, top - TITLE), "Shut-off card", TITLE, "ink", "start", bold=True, centred=False)
    yield Words(Point(box.right, top - TITLE), issued, PLAIN, "ink", "end", bold=True, centred=False)
    yield Words(Point(box.left, top - 10.5), about, size, "ink", "start", centred=False)
    yield Line((Point(box.left, top - 13), Point(box.right, top - 13)), "ink", 0.3)
    size = fitting_height(ORDER, box.width, LARGE, shared.measure, bold=True)
    yield Words(Point(box.left, top - 19.5), ORDER, size, "ink", "start", bold=True, centred=False)


def _emergency(shared: CardPaper, steps: _List, box: Box) -> Iterator[Mark]:
    plan = shared.plan
    yield from _bar("EMERGENCY", box)
    yield Line(box.corners(), "ink", 0.9, closed=True)
    y = box.top - _BAR - _PAD
    yield from _steps(steps, Point(box.left + _PAD, y))
    y -= steps.height + steps.size * 0.4
    for line in _warning_lines(shared, steps.size):
        y -= steps.size
        yield Words(Point(box.left + _PAD, y), line, steps.size, "ink", "start", bold=True, centred=False)
        y -= steps.size * (LEADING - 1)
    room = Box(box.left + shared.aside, box.bottom + _PAD + 4, box.right - _PAD, box.top - _BAR - _PAD)
    scale = picture_scale(plan, room.width, room.height)
    yield from shut_off_picture(plan, shut_offs_of(plan).marked, room, scale, shared.measure)
    words = f"seen from the front, scale 1 : {scale}"
    yield Words(Point(room.centre.x, box.bottom + 2.2), words, FINE, "quiet", centred=False)


def _warning_lines(shared: CardPaper, size: float) -> list[str]:
    width = shared.aside - 2 * _PAD
    said = warnings(shut_offs_of(shared.plan))
    return [line for words in said for line in wrapped(words, width, size, shared.measure, bold=True)]


def _warning_height(shared: CardPaper, size: float) -> float:
    return len(_warning_lines(shared, size)) * size * LEADING + size * 0.4


def _column(title: str, steps: _List, box: Box) -> Iterator[Mark]:
    yield from _bar(title, box)
    yield from _steps(steps, Point(box.left, box.top - _BAR - _PAD))


def _bar(title: str, box: Box) -> Picture:
    bar = Box(box.left, box.top - _BAR, box.right, box.top)
    words = Words(Point(bar.left + _PAD, bar.centre.y), title, TITLE, "paper", "start", bold=True)
    return Area((bar.corners(),), "ink"), words


def _steps(steps: _List, at: Point) -> Iterator[Mark]:
    y, size = at.y, steps.size
    for number, lines in steps.steps:
        if steps.discs and number:
            yield from number_disc(Point(at.x + size, y - size / 2), number, size)
        elif number:
            yield Words(Point(at.x, y - size), number, size, "ink", "start", bold=True, centred=False)
        for line in lines:
            y -= size
            yield Words(Point(at.x + _indent(size), y), line, size, "ink", "start", centred=False)
            y -= size * (LEADING - 1)
        y -= size * _BETWEEN


def _foot(shared: CardPaper) -> Iterator[Mark]:
    box = shared.box
    yield Line((Point(box.left, box.bottom - 1.5), Point(box.right, box.bottom - 1.5)), "line", 0.12)
    words = "Laminate and hang beside the board. Keep the shut-offs clear. Old revision: do not use."
    yield Words(Point(box.left, 6.8), words, FINE, "quiet", "start", centred=False)
    yield Words(Point(box.right, 6.8), "sheet 1 of 1", FINE, "ink", "end", bold=True, centred=False)
