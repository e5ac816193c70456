"""Label picture: one label as it is printed; words that don't fit go smaller by steps, then end in an ellipsis."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from boardplan.drawing.picture import Anchor, Line, Mark, Picture, Words, placed_picture
from boardplan.geometry.placement import Placement
from boardplan.geometry.point import Point
from boardplan.output.labels.label_words import CableLabel, PlateLabel
from boardplan.output.printing.lettering import CAPITAL, DESCENT, FINE, LARGE, PLAIN, TITLE, Measure, wrapped

PAD = 1.5
"""Left free at every edge of a label, in mm: a printer may feed a sheet a little askew."""
_AIR = 0.75  # between lines, as a share of the next line's capitals
_BETWEEN = 3.0  # between the same words said twice round a cable, in mm
_START_ROOM = 3.5
_GAP = 2.0
_BLANK = 18.0
_STEPS = ((TITLE, PLAIN, FINE), (TITLE, FINE, FINE), (LARGE, FINE, FINE), (PLAIN, FINE, FINE), (FINE, FINE, FINE))
"""Heights of the name, of the words under it and of the last line, largest first."""
ELLIPSIS = "…"


@dataclass(frozen=True, slots=True)
class LabelPicture:
    """A label drawn from its upper left corner, downwards; `shortened` are words that ended in an ellipsis.

    `flag` says that its cable is thinner than its words are high: they take the whole label, to be folded round.
    """

    picture: Picture
    shortened: tuple[str, ...] = ()
    flag: bool = False


@dataclass(frozen=True, slots=True)
class _Part:
    text: str
    bold: bool = False
    end: bool = False
    """Whether it stands at the right end of its line."""


@dataclass(frozen=True, slots=True)
class _Row:
    parts: tuple[_Part, ...]
    size: float
    blank: bool = False
    """Whether the line leaves room to write by hand."""


def shortened_words(text: str, width: float, height: float, measure: Measure, *, bold: bool = False) -> str:
    """Return words, cut short and ended by an ellipsis where they are wider than a width in mm."""
    if measure(text, height, bold=bold) <= width:
        return text
    for length in range(len(text) - 1, 0, -1):
        shorter = text[:length].rstrip() + ELLIPSIS
        if measure(shorter, height, bold=bold) <= width:
            return shorter
    return ELLIPSIS


def cable_picture(label: CableLabel, along: float, wrap: float, visible: float, measure: Measure) -> LabelPicture:
    """Return a cable end's label, `along` mm wide and `wrap` mm high, the words as often as they go into `visible`.

    Only the upper `visible` mm, once round the cable, are seen: the lower rest is stuck on first and lies below them.
    """
    seen = min(visible, wrap)
    width, room = along - 2 * PAD, seen - PAD
    chosen = _chosen(_cable_choices(label, width, measure), width, room, measure)
    flag = _block_height(chosen) > room
    if flag:
        seen, room = wrap, wrap - PAD
        chosen = _chosen(_cable_choices(label, width, measure), width, room, measure)
    block, shortened = _block(chosen, width, measure)
    high = _block_height(chosen)
    copies = max(1, int((room - PAD + _BETWEEN) // (high + _BETWEEN)))
    step = (room + PAD / 2) / copies
    marks: list[Mark] = []
    for copy in range(copies):
        marks += _moved(block, PAD, -PAD - copy * step)
    if wrap - seen >= _START_ROOM:
        marks += _start(along, wrap, seen, measure)
    return LabelPicture(tuple(marks), shortened, flag)


def plate_picture(label: PlateLabel, width: float, height: float, measure: Measure) -> LabelPicture:
    """Return a flat label: its name large, the words under it; a fuse's also its rating, or a blank for it."""
    room = width - 2 * PAD
    chosen = _chosen(_plate_choices(label, room, measure), room, height - 2 * PAD, measure)
    block, shortened = _block(chosen, room, measure)
    down = max(PAD, (height - _block_height(chosen)) / 2)
    return LabelPicture(tuple(_moved(block, PAD, -down)), shortened)


def _plate_choices(label: PlateLabel, width: float, measure: Measure) -> Iterator[Sequence[_Row]]:
    """Yield what may stand on a flat label, the best first. A rating stands whole or not at all: 25 is not 250."""
    rating = "" if label.rating is None else f"{label.rating:g} A"
    whole = bool(rating) and measure(rating, FINE, bold=True) <= width
    sorts = [_Row((_Part(label.type),), FINE)] if label.type else []
    for name, middle, _ in _STEPS:
        rows = [_Row((_Part(label.name, bold=True),), name), _Row((_Part(label.words),), middle)]
        if not label.fuse:
            yield rows
        elif whole:
            for words in (f"replace with {rating}", rating):
                if measure(words, middle, bold=True) <= width:
                    yield [*rows, _Row((_Part(words, bold=True),), middle), *sorts]
        else:
            yield [*rows, *sorts, _Row((_Part("replace with"),), middle, blank=True)]


def _cable_choices(label: CableLabel, width: float, measure: Measure) -> Iterator[Sequence[_Row]]:
    """Yield what may stand on a cable's label, the best first: at each step on fewest lines, then broken."""
    ways = f"{label.here} > {label.there}"
    for name, middle, last in _STEPS:
        head = _Row((_Part(label.name, bold=True), _Part(label.end_words, bold=True, end=True)), name)
        for lines in ([label.conductor], wrapped(label.conductor, width, last, measure)):
            conductor = [_Row((_Part(each),), last) for each in lines]
            broken = wrapped(ways, width, middle, measure, bold=True)
            for places in ([ways], [label.here, f"> {label.there}"], broken):
                yield [head, *(_Row((_Part(each, bold=True),), middle) for each in places), *conductor]


def _chosen(choices: Iterable[Sequence[_Row]], width: float, room: float, measure: Measure) -> Sequence[_Row]:
    """Return the first choice that is not too high and has the fewest rows that are too wide, else the lowest."""
    high: list[Sequence[_Row]] = []
    low: list[tuple[int, Sequence[_Row]]] = []
    for rows in choices:
        if _block_height(rows) > room:
            high.append(rows)
            continue
        wide = sum(not _fits(row, width, measure) for row in rows)
        if not wide:
            return rows
        low.append((wide, rows))
    return min(low, key=lambda each: each[0])[1] if low else min(high, key=_block_height)


def _part_size(row: _Row, part: _Part) -> float:
    return min(row.size, PLAIN) if part.end else row.size


def _fits(row: _Row, width: float, measure: Measure) -> bool:
    gaps = _GAP * (len(row.parts) - 1) + (_BLANK if row.blank else 0.0)
    return sum(measure(part.text, _part_size(row, part), bold=part.bold) for part in row.parts) + gaps <= width


def _block_height(rows: Sequence[_Row]) -> float:
    gaps = sum(row.size * _AIR for row in rows[1:])
    return sum(row.size for row in rows) + gaps + rows[-1].size / CAPITAL * DESCENT


def _block(rows: Sequence[_Row], width: float, measure: Measure) -> tuple[list[Mark], tuple[str, ...]]:
    """Return rows from an upper left corner downwards, and the words that had to be cut short."""
    marks: list[Mark] = []
    shortened: list[str] = []
    y = 0.0
    for index, row in enumerate(rows):
        y -= row.size * (1 + _AIR if index else 1)
        words, cut = _row(row, width, y, measure)
        marks += words
        shortened += cut
    return marks, tuple(shortened)


def _row(row: _Row, width: float, y: float, measure: Measure) -> tuple[list[Mark], list[str]]:
    marks: list[Mark] = []
    cut: list[str] = []
    room = width - (_BLANK if row.blank else 0.0)
    for part in row.parts:  # the name first: it is the last to be cut
        size = _part_size(row, part)
        text = shortened_words(part.text, room, size, measure, bold=part.bold)
        if text != part.text:
            cut.append(part.text)
        if measure(text, size, bold=part.bold) > room:
            continue
        anchor: Anchor = "end" if part.end else "start"
        at = Point(width if part.end else 0, y)
        marks.append(Words(at, text, size, "ink", anchor, bold=part.bold, centred=False))
        room = max(0.0, room - measure(text, size, bold=part.bold) - _GAP)
    if row.blank:
        unit = measure("A", row.size)
        line = (Point(width - room - _BLANK, y - 0.4), Point(width - unit - 1, y - 0.4))
        marks += [Line(line, "ink", 0.2), Words(Point(width, y), "A", row.size, "ink", "end", centred=False)]
    return marks, cut


def _start(along: float, wrap: float, seen: float, measure: Measure) -> list[Mark]:
    """Return the part that is stuck on first, below the words that stay in sight."""
    edge = Line((Point(PAD, -seen), Point(along - PAD, -seen)), "line", 0.12, (1.0, 1.0))
    text, middle = "stick this end first", Point(along / 2, -(seen + wrap) / 2)
    fits = measure(text, FINE) <= along - 2 * PAD
    return [edge, Words(middle, text, FINE, "quiet")] if fits else [edge]


def _moved(marks: Sequence[Mark], dx: float, dy: float) -> list[Mark]:
    return list(placed_picture(marks, Placement(0, Point(dx, dy))))
