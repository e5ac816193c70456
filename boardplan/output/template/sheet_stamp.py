"""Sheet stamp: the tile's name with its small map, the face of the board and UP; on large sheets a title block."""

from collections.abc import Iterator, Sequence

from boardplan.drawing.picture import Area, Line, Mark, Words
from boardplan.geometry.point import Box, Point, box_around
from boardplan.output.holes.datum import edge_words
from boardplan.output.printing.lettering import (
    FINE,
    LARGE,
    LEADING,
    PLAIN,
    TITLE,
    TextLine,
    fitting_height,
    stacked,
    wrapped,
)
from boardplan.output.printing.pages import OVERLAP, Tile
from boardplan.output.printing.printer_correction import drawn_words, error_words, largest_size, not_ready_words
from boardplan.output.printing.printer_tiles import page_factors
from boardplan.output.template.template_set import TemplateSet, count_words
from boardplan.output.verdict import stop_words

_WIDTH, _HEIGHT = 60.0, 17.0
_MAP_WIDTH, _ARROW_WIDTH = 25.0, 10.0
_LARGE_WIDTH, _BLOCK_HEIGHT = 125.0, 38.0
_LARGE_FROM = 380.0
"""Sheets with at least this width and height, in mm, have room for a title block."""
_BAR_EDGE = 1.9


def stamp_size(shared: TemplateSet, tile: Tile) -> tuple[float, float]:
    """Return the width and height a sheet's stamp takes."""
    words = shared.measure(_face_words(shared), LARGE, bold=True)
    width = _LARGE_WIDTH if _large(tile) else max(_WIDTH, _MAP_WIDTH + words + _ARROW_WIDTH)
    stop = sum(_bar_height(_bar_lines(shared, each, width)) for each in _warnings(shared))
    return width, _HEIGHT + (_BLOCK_HEIGHT if _large(tile) else 0.0) + stop


def _warnings(shared: TemplateSet) -> list[str]:
    """Return why nothing may be drilled by this sheet."""
    stop = stop_words(shared.stops) if shared.stops else ""
    return [each for each in (stop, not_ready_words(shared.printing)) if each]


def _bar_lines(shared: TemplateSet, words: str, width: float) -> list[str]:
    """Return a warning in lines of its full size: it is read at arm's length."""
    return wrapped(words, width - 3, PLAIN, shared.measure, bold=True)


def _bar_height(lines: Sequence[str]) -> float:
    return PLAIN * (1 + LEADING * (len(lines) - 1)) + 2 * _BAR_EDGE


def _large(tile: Tile) -> bool:
    return min(tile.rect.width, tile.rect.height) >= _LARGE_FROM


def stamp(shared: TemplateSet, tile: Tile, room: Box) -> Iterator[Mark]:
    """Yield the stamp in a room of its size; in board coordinates."""
    yield Area((room.corners(),), "paper", "line", 0.15, opacity=0.95)
    for words in _warnings(shared):
        lines = _bar_lines(shared, words, room.width)
        bar = Box(room.left, room.top - _bar_height(lines), room.right, room.top)
        yield Area((bar.corners(),), "ink")
        yield from stacked(
            [(line, PLAIN, True, "paper") for line in lines], Point(bar.centre.x, bar.top - _BAR_EDGE), "middle"
        )
        room = Box(room.left, room.bottom, room.right, bar.bottom)
    if _large(tile):
        yield from _title_block(shared, tile, Box(room.left, room.bottom, room.right, room.top - _HEIGHT))
        room = Box(room.left, room.top - _HEIGHT, room.right, room.top)
    yield from _name(shared, tile, room)
    yield from _up_arrow(Point(room.right - 5, room.bottom))


def _name(shared: TemplateSet, tile: Tile, room: Box) -> Iterator[Mark]:
    """Yield the map with this tile filled and the tile's name; of a single sheet the board's."""
    single = len(shared.tiles) == 1
    left = room.left + (4 if single else _MAP_WIDTH)
    name = shared.template.board.name if single else tile.name
    if not single:
        yield from _map(shared, tile, Box(room.left + 2, room.bottom + 2, room.left + 22, room.top - 2))
    size = fitting_height(name, room.right - _ARROW_WIDTH - left, TITLE, shared.measure, bold=True)
    yield Words(Point(left, room.bottom + 9.5), name, size, "ink", "start", bold=True, centred=False)
    board = _face_words(shared)
    yield Words(Point(left, room.bottom + 3), board, LARGE, "ink", "start", bold=True, centred=False)


def _face_words(shared: TemplateSet) -> str:
    return f"{shared.template.board.id}  {shared.face.words}"


def _up_arrow(at: Point) -> Iterator[Mark]:
    x, y = at
    yield Line((Point(x, y + 6), Point(x, y + 13)), "ink", 0.5)
    yield Area(((Point(x, y + 15.5), Point(x - 1.8, y + 12), Point(x + 1.8, y + 12)),), "ink")
    yield Words(Point(x, y + 3.6), "UP", FINE, "ink", bold=True)


def _title_block(shared: TemplateSet, tile: Tile, room: Box) -> Iterator[Mark]:
    job, board = shared.job, shared.template.board
    on_sheet = [hole for hole in shared.template.holes if tile.rect.holds(hole.position)]
    facts = (job.number, job.customer, job.place)
    dated = (f"revision {job.revision}", job.date, f"drawn {job.drawn_by}" if job.drawn_by else "")
    units = "inch" if job.units == "inch" else "mm"
    lines: tuple[tuple[str, float, bool], ...] = (
        (job.title, LARGE, True),
        ("   ".join(each for each in facts if each), PLAIN, False),
        (f"{shared.face.title}, board {board.id} {board.name}", PLAIN, False),
        ("   ".join(each for each in dated if each), PLAIN, True),
        (f"{units}, from the {edge_words(board)}s A and B", PLAIN, False),
        (drawn_words(shared.printing, page_factors(shared.printing, tile)), PLAIN, False),
        (error_words(shared.printing, largest_size(board), job.units), PLAIN, False),
        (count_words(on_sheet, shared.template.holes), PLAIN, False),
    )
    fitted: list[TextLine] = [
        (text, fitting_height(text, room.width - 8, size, shared.measure, bold=bold), bold, "ink")
        for text, size, bold in lines
    ]
    yield Line((Point(room.left, room.top), Point(room.right, room.top)), "line", 0.15)
    yield from stacked(fitted, Point(room.left + 4, room.top - 3))


def _map(shared: TemplateSet, tile: Tile, room: Box) -> Iterator[Mark]:
    """Yield all tiles small, each to the middle of its overlaps, with this one filled."""
    cells = [each.rect.grown(-OVERLAP / 2) for each in shared.tiles]
    whole = box_around(corner for cell in cells for corner in cell.corners())
    share = min(room.width / whole.width, room.height / whole.height)
    shift = Point(room.centre.x - share * whole.centre.x, room.centre.y - share * whole.centre.y)
    for each, cell in zip(shared.tiles, cells, strict=True):
        small = Box(*(share * side for side in cell)).moved(*shift)
        yield Area((small.corners(),), "ink" if each is tile else None, "quiet", 0.12)
