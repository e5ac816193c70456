"""Blocking sheet: the wall behind a board with its framing, fixings and openings, for whoever puts blocking in it."""

from collections.abc import Iterator

from boardplan.drawing.picture import Area, Line
from boardplan.drawing.rings import rectangle
from boardplan.geometry.point import Point
from boardplan.geometry.units import length_text
from boardplan.model.board import Board
from boardplan.model.plan import Plan
from boardplan.output.customer.blocking import LIMIT, blocking_of, corner_words, from_corner, held_fixings, members_of
from boardplan.output.customer.blocking_view import NOTE, BlockingView
from boardplan.output.customer.tray_words import FOOTER
from boardplan.output.drawn.blocks import Block, Row, columns_of
from boardplan.output.drawn.dimensions import dimension_text, units_words
from boardplan.output.drawn.drawn_sheet import DrawnPage, pages_with_words
from boardplan.output.drawn.fixing_sign import fixing_sign
from boardplan.output.drawn.scale import SCALES
from boardplan.output.making import Making
from boardplan.output.printing.sheet import Part
from boardplan.output.tables.list_sheets import ListPaper

NEAR = 3.0
"""How far a member may be off its place, in mm (common practice, no source)."""
_ASIDE, _GUTTER, _WORDS = 64.0, 6.0, 74.0
_LEAD = 17.0


def blocking_pages(making: Making, board: Board) -> list[DrawnPage]:
    """Return the page of a board's wall, nothing where neither framing nor fixings are known."""
    plan = making.plan
    if not members_of(plan, board) and not held_fixings(plan, board):
        return []
    view = BlockingView(plan, board, making.fonts.width)
    title = f"Framing and blocking, board {board.id}{f', {board.name}' if board.name else ''}"
    frames = [making.frame(title, FOOTER, landscape=landscape) for landscape in (False, True)]
    shared, by = min(((each, _scale(view, each)) for each in frames), key=lambda each: each[1])
    room = shared.room
    drawing = Part(view.picture(by, Point(room.left, room.top)))
    wide, high = view.size(by)
    low = room.top - high - _GUTTER
    if shared.landscape:
        edge = max(room.left + wide + _GUTTER, room.right - 1.3 * _ASIDE)
        columns = [room._replace(left=edge), room._replace(right=edge - _GUTTER, top=low)]
    else:
        columns = list(columns_of(room._replace(top=low), 3))
    return pages_with_words(shared, [drawing], _blocks(plan, board), columns)


def _scale(view: BlockingView, shared: ListPaper) -> float:
    room = shared.room
    free = (room.width - _ASIDE - _GUTTER, room.height) if shared.landscape else (room.width, room.height - _WORDS)
    sizes = ((by, view.size(by)) for by in SCALES[1:])
    return next((by for by, size in sizes if size[0] <= free[0] and size[1] <= free[1]), SCALES[-1])


def _blocks(plan: Plan, board: Board) -> list[Block]:
    blocks = [
        Block("What to do", list(_task_rows(plan, board)), 0.0, wide=True),
        Block("Framing, as surveyed", list(_framing_rows(plan, board)), _LEAD),
        Block("Board fixings", list(_fixing_rows(plan, board)), _LEAD, 50.0),
        Block("Openings and cable exits", list(_exit_rows(plan, board)), _LEAD, 50.0),
        Block("Lines and signs", list(_sign_rows(plan, board)), 11.5),
        Block("Before we come", list(_end_rows()), _LEAD),
    ]
    return [block for block in blocks if block.rows]


def _task_rows(plan: Plan, board: Board) -> Iterator[Row]:
    units = plan.job.units
    yield Row(f"All dimensions in {units_words(units)}, running from the {corner_words(board)}.")
    yield Row(f"Members and blocking on their place within {length_text(NEAR, units)}.", bold=True)
    limit = plan.rules.limits[LIMIT]
    wood = length_text(limit.value, units)
    if not members_of(plan, board):
        yield Row("Where are the members behind this board? Measure each centre and width from the corner:", blank=True)
        yield Row("", blank=True)
        return
    if not held_fixings(plan, board):
        yield Row("No board fixings are placed yet. Which members shall hold the board?", blank=True)
        return
    pieces = blocking_of(plan, board)
    rules = f"rule set {plan.rules.id}, edition {plan.rules.edition}"
    if not pieces:
        yield Row(f"No blocking is needed: each fixing is at least {wood} inside the edge of a member ({rules}).")
    for number, piece in enumerate(pieces, start=1):
        ends = " and ".join(each.id if each else "what is beyond, not surveyed" for each in (piece.left, piece.right))
        level = dimension_text(from_corner(board, Point(0, piece.level)).y, units)
        words = (
            f"B{number}: blocking between {ends}, its middle at Y {level}, for {', '.join(piece.fixings)}; at least "
            f"{wood} on each side of a fixing's middle ({rules}). Drawn in dashes, not to size. Section:"
        )
        yield Row(words, blank=True)
    yield Row("What is behind: tank, pipe, cable, skin, window? Look before you screw anything in.")


def _framing_rows(plan: Plan, board: Board) -> Iterator[Row]:
    units = plan.job.units
    for member in members_of(plan, board):
        upright = member.direction == "upright"
        at = from_corner(board, Point(member.centre, member.centre))
        place = f"X {dimension_text(at.x, units)}" if upright else f"Y {dimension_text(at.y, units)}"
        wide = dimension_text(member.width, units)
        yield Row(f"centre {place}, {wide} wide{f', {member.material}' if member.material else ''}", member.id)


def _fixing_rows(plan: Plan, board: Board) -> Iterator[Row]:
    units = plan.job.units
    for held in held_fixings(plan, board):
        at = from_corner(board, held.fixing.position)
        place = f"X {dimension_text(at.x, units)}  Y {dimension_text(at.y, units)}"
        if held.member is None or held.inside is None:
            yield Row(f"{place}  member?", held.fixing.id)
        elif held.misses:
            off = length_text(abs(held.inside), units)
            how = f"only {off} inside {held.member.id}" if held.inside >= 0 else f"misses {held.member.id} by {off}"
            yield Row(f"{place}  {how}", held.fixing.id, bold=True)
        else:
            yield Row(f"{place}  in {held.member.id}", held.fixing.id)


def _exit_rows(plan: Plan, board: Board) -> Iterator[Row]:
    units = plan.job.units
    for number, way_out in enumerate((each for each in plan.exits.values() if each.board == board.id), start=1):
        at = from_corner(board, way_out.position)
        hole = "over the edge"
        if way_out.through == "hole":
            wide = "____" if way_out.diameter is None else length_text(way_out.diameter, units)
            hole = f"hole {wide}"
        place = f"X {dimension_text(at.x, units)}  Y {dimension_text(at.y, units)}"
        yield Row(f"{place}  {hole}: {way_out.name}", f"E{number} {way_out.id}")
    for number, ring in enumerate(board.cutouts, start=1):
        xs, ys = zip(*(from_corner(board, each) for each in ring), strict=True)
        size = f"X {dimension_text(min(xs), units)} to {dimension_text(max(xs), units)}"
        yield Row(
            f"{size}, Y {dimension_text(min(ys), units)} to {dimension_text(max(ys), units)}", f"cut-out {number}"
        )


def _sign_rows(plan: Plan, board: Board) -> Iterator[Row]:
    at, ring = Point(0, 0), rectangle(-4.5, -1.3, 9, 2.6)
    yield Row(
        "edge of the board and of openings in it", sign=(Line((Point(-4.8, 0), Point(4.8, 0)), "ink", 0.45, (3, 1)),)
    )
    if members_of(plan, board):
        yield Row("member of the wall, with its centre", sign=(Area((ring,), NOTE, "quiet", 0.2),))
    held = held_fixings(plan, board)
    if any(not each.misses for each in held):
        yield Row("board fixing that a member holds", sign=fixing_sign(at))
    if any(each.misses for each in held):
        yield Row("board fixing that needs blocking", sign=fixing_sign(at, misses=True))
    if board.compartment:
        corner = (Line((Point(3.5, -1.2), Point(-2, -1.2), Point(-2, 1.3)), "ink", 0.7),)
        yield Row("the corner to measure from", sign=corner)


def _end_rows() -> Iterator[Row]:
    yield Row("Finished before which day?", "finished by", blank=True)
    yield Row("of the whole wall and of each piece, with a tape in the picture", "photo")
    yield Row("", "built by", blank=True)
    yield Row("", "date, signed", blank=True)
