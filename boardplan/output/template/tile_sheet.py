"""Tile sheet: one page of a drilling template, with all a person needs to trust it."""

from collections.abc import Callable, Iterator, Sequence
from functools import partial

from boardplan.drawing.picture import Line, Mark, Picture, Words, placed_picture
from boardplan.geometry.placement import Placement
from boardplan.geometry.point import Box, Point
from boardplan.output.holes.datum import edge_words
from boardplan.output.printing.lettering import FINE, Measure, fitting_height
from boardplan.output.printing.pages import Tile
from boardplan.output.printing.printer_correction import NOT_READY, drawn_words, error_words, largest_size
from boardplan.output.printing.printer_tiles import drawn_box, page_factors
from boardplan.output.printing.scale_bars import (
    BAR_DEPTH,
    BAR_LENGTH,
    LONG_DEPTH,
    long_bar,
    long_length,
    scale_bar,
)
from boardplan.output.printing.sheet import Part, Sheet
from boardplan.output.template.free_places import (
    WORDS,
    FreePlaces,
    common_box,
    places_from_corner,
    places_from_left,
    places_within,
)
from boardplan.output.template.grid_numbers import grid_numbers
from boardplan.output.template.mark_box import mark_box
from boardplan.output.template.sheet_note import note_sentences, sheet_note
from boardplan.output.template.sheet_stamp import stamp, stamp_size
from boardplan.output.template.template_set import TemplateSet, count_words
from boardplan.output.template.template_words import hole_number
from boardplan.output.template.word_block import Inscription
from boardplan.output.template.word_desk import WordDesk
from boardplan.output.verdict import stop_words

MEASURE_BARS = "Print at 100 % / actual size. Measure both bars before use. Not 100.0 mm within 0.3 mm? Stop."
BEFORE_DRILLING = "Before drilling: what is behind? Tank, pipe, cable, skin, window."
_JOIN = "Trim at the ticks, lay cross on cross, check bars, 100 mm grid and long diagonal."
_FABRIC = "Fabric: cut it crosswise with a knife first, never run a bit into it."
_PITCH = 5.0


def tile_sheets(shared: TemplateSet) -> Iterator[Sheet]:
    """Yield the page of each tile, in the order of the tiles."""
    for number, tile in enumerate(shared.tiles, start=1):
        yield _sheet(shared, tile, number)


def _sheet(shared: TemplateSet, tile: Tile, number: int) -> Sheet:
    template = shared.template
    shift = Placement(0, tile.to_page((0, 0)))
    words = [each for each in template.words if _whole(each.box, tile.rect)]
    again = _missing_numbers(shared, tile, {each.of for each in words})
    furniture = tuple(_furniture(shared, tile))
    notes = note_sentences(shared, tile)
    note = sheet_note(shared, tile, notes)
    lettering = [mark for each in (*words, *again, *([note] if note else [])) for mark in each.picture]
    inside = common_box(tile.rect, template.board.box)
    scale = page_factors(shared.printing, tile)
    parts = [
        Part(placed_picture(furniture, shift), tile.on_page, scale, tile.at),
        Part(placed_picture((*lettering, *_seen(template.marks, tile.rect)), shift), tile.on_page, scale, tile.at),
        Part((*_ticks(drawn_box(shared.printing, tile)), *_strips(shared, tile, number, [] if note else notes))),
    ]
    if inside:
        ground = placed_picture(_seen(template.ground, inside), shift)
        parts.insert(0, Part(ground, inside.moved(*tile.to_page((0, 0))), scale, tile.at))
    name = f"{template.board.id} {tile.name}"
    return Sheet(name, tile.page_width, tile.page_height, tuple(parts))


def _whole(box: Box, rect: Box) -> bool:
    return rect.holds((box.left, box.bottom)) and rect.holds((box.right, box.top))


def _missing_numbers(shared: TemplateSet, tile: Tile, named: set[str]) -> list[Inscription]:
    """Return numbers for the holes in the overlap whose words are whole on the neighbour only."""
    template = shared.template
    desk = WordDesk((tile.rect,), (tile.rect,), template.places, shared.measure)
    every = (*template.holes, *template.clamp_holes)
    missing = [hole for hole in every if hole.id not in named and tile.rect.holds(hole.position)]
    return [hole_number(template.plan, hole, desk) for hole in missing]


def _seen(picture: Picture, rect: Box) -> list[Mark]:
    """Return the marks that reach into a rectangle."""
    return [mark for mark in picture if mark_box(mark).touches(rect)]


def _furniture(shared: TemplateSet, tile: Tile) -> Iterator[Mark]:
    """Yield the scale bars and the sheet's name, where they cover nothing that matters; in board coordinates."""
    places, rect = shared.template.places, tile.rect.grown(-2)
    bars: list[tuple[str, float, float, Callable[[Box, str], Picture]]] = [
        ("X", BAR_LENGTH, BAR_DEPTH, scale_bar),
        ("Y", BAR_DEPTH, BAR_LENGTH, scale_bar),
    ]
    long = long_length(shared.job.units)
    if rect.width > long:
        bars.append(("X", long, LONG_DEPTH, partial(long_bar, units=shared.job.units)))
    if rect.height > long:
        bars.append(("Y", LONG_DEPTH, long, partial(long_bar, units=shared.job.units)))
    for axis, width, height, draw in bars:
        room = _room(places, rect, width, height, low=axis == "X")
        if room:
            yield from draw(room, axis)
    room = _corner(places, rect, *stamp_size(shared, tile))
    if room:
        yield from stamp(shared, tile, room)
    yield from grid_numbers(shared.template.board, shared.job.units, tile.rect, places, shared.measure)


def _room(places: FreePlaces, rect: Box, width: float, height: float, *, low: bool) -> Box | None:
    """Return the best place for a bar: a level one low on the sheet, an upright one to the left."""
    if low:
        spots = ((box, 0.02 * (box.bottom - rect.bottom)) for box in places_within(rect, width, height, _PITCH))
    else:
        spots = ((box, 0.02 * (box.left - rect.left)) for box in places_from_left(rect, width, height, _PITCH))
    found = places.best(spots, rising=True)
    if found is None:
        return None
    places.take(found[0], WORDS)
    return found[0]


def _corner(places: FreePlaces, rect: Box, width: float, height: float) -> Box | None:
    """Return the best place for the sheet's name: as near the upper right corner as can be."""

    def away(box: Box) -> float:
        return 0.05 * (rect.right - box.right + rect.top - box.top)

    found = places.best(places_from_corner(rect, width, height, _PITCH, away), rising=True)
    if found is None:
        return None
    places.take(found[0], WORDS)
    return found[0]


def _ticks(box: Box) -> Iterator[Mark]:
    """Yield ticks in the margin where the sheet is trimmed."""
    for x, out in ((box.left, -1), (box.right, 1)):
        for y, up in ((box.bottom, -1), (box.top, 1)):
            yield Line((Point(x, y + up * 0.6), Point(x, y + up * 4.5)), "ink", 0.12)
            yield Line((Point(x + out * 0.6, y), Point(x + out * 4.5, y)), "ink", 0.12)


def _strips(shared: TemplateSet, tile: Tile, number: int, notes: Sequence[str]) -> Iterator[Mark]:
    """Yield two lines of words above and two below the drawing, clear of what printers can't reach."""
    job, board = shared.job, shared.template.board
    on_sheet = [hole for hole in shared.template.holes if tile.rect.holds(hole.position)]
    sheet = f"tile {tile.name}   sheet {number} of {len(shared.tiles)}"
    title = "   ".join(
        each for each in (job.title, job.number, f"board {board.id} {board.name}", shared.face.title) if each
    )
    facts = [
        f"revision {job.revision}",
        job.date,
        f"drawn {job.drawn_by}" if job.drawn_by else "",
        f"{'inch' if job.units == 'inch' else 'mm'}, from the {edge_words(board)}s A and B",
        drawn_words(shared.printing, page_factors(shared.printing, tile)),
    ]
    stop = f"{stop_words(shared.stops)}   " if shared.stops else ""
    if shared.printing.ready:
        facts.append(error_words(shared.printing, largest_size(board), job.units))
    else:
        stop = f"{NOT_READY}   {stop}"
    box = drawn_box(shared.printing, tile)
    left, right = box.left + 1.5, box.right - 1.5
    above, below = box.top, box.bottom
    lines = (
        (above + 3.1, f"{stop}{title}", sheet, True),
        (above + 0.7, "   ".join(each for each in facts if each), count_words(on_sheet, shared.template.holes), False),
    )
    for y, first, last, bold in lines:
        yield from _strip(shared.measure, (left, right, y), first, last, bold=bold)
    yield from _cautions(shared, (left, right, below), notes)


def _cautions(shared: TemplateSet, span: tuple[float, float, float], notes: Sequence[str]) -> Iterator[Mark]:
    """Yield what to mind, the scale first and bold, on two lines below the drawing; notes without room last."""
    measure, (left, right, below) = shared.measure, span
    sentences = [BEFORE_DRILLING, shared.face.use]
    if len(shared.tiles) > 1:
        sentences.insert(0, _JOIN)
    if shared.template.board.fabric:
        sentences.append(_FABRIC)
    sentences += notes
    first = fitting_height(MEASURE_BARS, right - left, FINE, measure, bold=True)
    yield Words(Point(left, below - 2.1), MEASURE_BARS, first, "ink", "start", bold=True, centred=False)
    beside = left + measure(MEASURE_BARS, first, bold=True) + 2.5
    while sentences and beside + measure(sentences[0], FINE) <= right:
        yield Words(Point(beside, below - 2.1), sentences[0], FINE, "ink", "start", centred=False)
        beside += measure(sentences.pop(0), FINE) + 2.5
    rest = "  ".join(sentences)
    size = fitting_height(rest, right - left, FINE, measure)
    yield Words(Point(left, below - 4.4), rest, size, "ink", "start", centred=False)


def _strip(measure: Measure, span: tuple[float, float, float], first: str, last: str, *, bold: bool) -> Iterator[Mark]:
    left, right, y = span
    gap = f"{first}      {last}"
    size = fitting_height(gap, right - left, FINE, measure, bold=bold)
    if first:
        yield Words(Point(left, y), first, size, "ink", "start", bold=bold, centred=False)
    if last:
        yield Words(Point(right, y), last, size, "ink", "end", bold=bold, centred=False)
