"""First place: where a kind goes that was taken from the shelf without a pointer - the nearest free place."""

from collections.abc import Iterator

from boardplan.geometry.point import Box, Point
from boardplan.model.component_kind import ComponentKind
from boardplan.model.placed import placed
from boardplan.model.plan import Plan

_STEP = 20.0
_RINGS = 60


def first_place(plan: Plan, board_id: str, kind: ComponentKind, wanted: Point) -> Point:
    """Return the lower left, in board coordinates, for a kind whose middle should lie near a point of the board.

    The place is on whole millimetres, inside the edge margins and clear of other components and channels;
    where there is none, it is the wanted place itself.
    """
    return free_place(plan, board_id, (kind.box.width, kind.box.height), wanted)


def free_place(plan: Plan, board_id: str, size: tuple[float, float], wanted: Point) -> Point:
    """Return the lower left for something so wide and so high in mm, as for a kind."""
    width, height = size
    board = plan.boards[board_id]
    margins, edge = board.edge_margins, board.box
    inside = Box(
        edge.left + margins.left, edge.bottom + margins.bottom, edge.right - margins.right, edge.top - margins.top
    )
    gap = plan.rules.value("gap-between-components")
    taken = [placed(plan, each).box.grown(gap) for each in plan.components.values() if each.board == board_id]
    for channel in (each for each in plan.channels.values() if each.board == board_id):
        for start, end in zip(channel.line, channel.line[1:], strict=False):
            low, high = Point(min(start.x, end.x), min(start.y, end.y)), Point(max(start.x, end.x), max(start.y, end.y))
            taken.append(Box(*low, *high).grown(channel.width / 2))
    for middle in _around(wanted):
        corner = Point(float(round(middle.x - width / 2)), float(round(middle.y - height / 2)))
        box = Box(corner.x, corner.y, corner.x + width, corner.y + height)
        fits = (
            inside.left <= box.left
            and box.right <= inside.right
            and inside.bottom <= box.bottom
            and box.top <= inside.top
        )
        if fits and not any(box.touches(each) for each in taken):
            return corner
    return Point(float(round(wanted.x - width / 2)), float(round(wanted.y - height / 2)))


def _around(wanted: Point) -> Iterator[Point]:
    """Yield places in growing squares about a point."""
    yield wanted
    for ring in range(1, _RINGS):
        for step in range(-ring, ring + 1):
            for dx, dy in ((step, ring), (step, -ring), (ring, step), (-ring, step)):
                yield wanted.moved(dx * _STEP, dy * _STEP)
