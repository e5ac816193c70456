"""Doubtful dimensions: those that the crew did not measure: estimated, scaled from a photo, given by the customer."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from math import hypot

from boardplan.geometry.point import Box, box_around
from boardplan.geometry.units import tidy_number
from boardplan.model.board import Board, Exit, Framing, NoGoBox
from boardplan.model.cable import Cable, OffBoardEnd
from boardplan.model.component import Component
from boardplan.model.placed import placed
from boardplan.model.plan import Plan
from boardplan.model.trust import Trust
from boardplan.routing.lengths.length_sum import CutLength

FALLING: tuple[Trust, ...] = ("estimated", "photo", "customer")
"""What is measured again, the least trusted first."""
_WHICH = "from where to where? ____________"
"""Asked of one of several legs that nobody described: a number alone doesn't say where to hold the tape."""


@dataclass(frozen=True, slots=True)
class Doubtful:
    """A thing with dimensions in mm to measure again, by name; what hangs on it in words; cables not to be cut yet."""

    thing: str
    sort: str
    where: str
    trust: Trust
    dimensions: tuple[tuple[str, float], ...]
    hangs_on: str = ""
    not_final: tuple[str, ...] = ()


def doubtful_things(plan: Plan, lengths: Mapping[str, CutLength]) -> tuple[Doubtful, ...]:
    """Return all that is to be measured again, the least trusted first, in the order of the job."""
    found = (*_boards(plan), *_framing(plan), *_no_go_boxes(plan), *_exits(plan), *_legs(plan, lengths))
    return tuple(sorted((each for each in found if each.trust in FALLING), key=lambda each: FALLING.index(each.trust)))


def _boards(plan: Plan) -> Iterator[Doubtful]:
    for board in plan.boards.values():
        if board.trust:
            sizes = (("width", board.box.width), ("height", board.box.height))
            yield Doubtful(board.id, "board", "its size", board.trust, sizes, "template, holes, all that lies on it")
        if board.compartment and board.compartment.trust:
            yield from _compartment(plan, board, board.compartment.trust)


def _compartment(plan: Plan, board: Board, trust: Trust) -> Iterator[Doubtful]:
    room = board.compartment
    if room is None:
        return
    for side, gap in (("left", room.left), ("bottom", room.bottom), ("right", room.right), ("top", room.top)):
        users = ", ".join(_reaching_past(plan, board, side))
        hangs_on = f"room kept clear for {users}" if users else "way in, hands and covers at that edge"
        yield Doubtful(board.id, "compartment", f"{side} of the board", trust, (("gap to the wall", gap),), hangs_on)
    if room.depth is not None:
        deepest = max((plan.kind_of(each).depth for each in _on(plan, board)), default=None)
        deep = "" if deepest is None else f"; the deepest component takes {tidy_number(deepest)}"
        words = f"what stands out, and the room before it{deep}"
        yield Doubtful(board.id, "compartment", "before the board", trust, (("free depth", room.depth),), words)


def _on(plan: Plan, board: Board) -> list[Component]:
    return [each for each in plan.components.values() if each.board == board.id]


_PAST: Mapping[str, Callable[[Box, Box], bool]] = {
    "left": lambda board, zones: zones.left < board.left,
    "bottom": lambda board, zones: zones.bottom < board.bottom,
    "right": lambda board, zones: zones.right > board.right,
    "top": lambda board, zones: zones.top > board.top,
}


def _reaching_past(plan: Plan, board: Board, side: str) -> Iterator[str]:
    """Yield the components that keep room clear past a side of their board."""
    for component in _on(plan, board):
        corners = [point for zone in placed(plan, component).zones for point in zone.ring]
        if corners and _PAST[side](board.box, box_around(corners)):
            yield component.id


def _framing(plan: Plan) -> Iterator[Doubtful]:
    for each in plan.framing.values():
        if each.trust:
            axis = "x" if each.direction == "upright" else "y"
            ends = [(name, value) for name, value in (("from", each.start), ("to", each.end)) if value is not None]
            sizes = ((f"centre, {axis}", each.centre), ("width", each.width), *ends)
            fixings = ", ".join(_fixings_in(plan, each))
            hangs_on = f"fixings {fixings}" if fixings else "where screws and nuts may go"
            yield Doubtful(each.id, "framing", _behind(each), each.trust, sizes, hangs_on)


def _behind(framing: Framing) -> str:
    material = f"{framing.material}, " if framing.material else ""
    return f"{material}{framing.direction}, behind board {framing.board}"


def _fixings_in(plan: Plan, member: Framing) -> Iterator[str]:
    for each in plan.fixings.values():
        across, along = each.position if member.direction == "upright" else each.position[::-1]
        inside = abs(across - member.centre) <= member.width / 2
        low = member.start is None or along >= member.start
        if each.board == member.board and inside and low and (member.end is None or along <= member.end):
            yield each.id


def _no_go_boxes(plan: Plan) -> Iterator[Doubtful]:
    for each in plan.no_go_boxes.values():
        if each.trust:
            sizes = (
                ("x", each.x), ("y", each.y), ("width", each.width), ("height", each.height),
                ("off the board from", each.from_z), ("to", each.to_z),
            )  # fmt: skip
            yield Doubtful(each.id, "no-go box", f"at board {each.board}", each.trust, sizes, _nearest(plan, each))


def _nearest(plan: Plan, box: NoGoBox) -> str:
    """Return which component is nearest to a box seen from the front, and how near."""
    gaps = [
        (_gap(box.box, placed(plan, each).box), each.id) for each in plan.components.values() if each.board == box.board
    ]
    if not gaps:
        return "what may stand there"
    gap, name = min(gaps)
    return (
        f"what may stand there; nearest is {name}, {tidy_number(gap)} mm beside it" if gap else f"{name} is before it"
    )


def _gap(one: Box, other: Box) -> float:
    across = max(one.left - other.right, other.left - one.right, 0.0)
    up = max(one.bottom - other.top, other.bottom - one.top, 0.0)
    return hypot(across, up)


def _exits(plan: Plan) -> Iterator[Doubtful]:
    for each in plan.exits.values():
        if each.trust:
            wide = [] if each.diameter is None else [("diameter", each.diameter)]
            sizes = (*_place_of(plan.boards[each.board].box, each), *wide)
            cables = ", ".join(_through(plan, each))
            hangs_on = f"cut of {cables}" if cables else "no cable yet"
            where = f"{each.name or each.through}, board {each.board}"
            yield Doubtful(each.id, "exit", where, each.trust, sizes, hangs_on)


def _place_of(box: Box, leaves: Exit) -> list[tuple[str, float]]:
    """Return where an exit is; over an edge only how far along it: the edge itself is the board's."""
    x, y = leaves.position
    along_level, along_upright = y in (box.bottom, box.top), x in (box.left, box.right)
    if leaves.through == "edge" and along_level != along_upright:
        return [("x", x)] if along_level else [("y", y)]
    return [("x", x), ("y", y)]


def _through(plan: Plan, leaves: Exit) -> Iterator[str]:
    for cable in plan.cables.values():
        if any(getattr(end, "exit", None) == leaves.id for end in cable.ends):
            yield cable.id


def _legs(plan: Plan, lengths: Mapping[str, CutLength]) -> Iterator[Doubtful]:
    for cable in plan.cables.values():
        for end in cable.ends:
            if isinstance(end, OffBoardEnd):
                yield from _legs_of(plan, cable, end, lengths)


def _legs_of(plan: Plan, cable: Cable, end: OffBoardEnd, lengths: Mapping[str, CutLength]) -> Iterator[Doubtful]:
    members = [
        each.id for each in plan.cables.values() if each.id == cable.id or (cable.group and each.group == cable.group)
    ]
    open_cuts = tuple(each for each in members if not lengths[each].final)
    group = f", with matched group {cable.group}: {', '.join(members)}" if len(members) > 1 else ""
    for number, leg in enumerate(end.legs, start=1):
        where = f"leg {number} of {len(end.legs)}, {plan.exits[end.exit].name or end.exit} to {end.name}"
        if leg.note or len(end.legs) > 1:
            where += f" ({leg.note or _WHICH})"
        hangs_on = f"cut of {cable.id}{group}"
        yield Doubtful(cable.id, "leg", where, leg.trust, (("length", leg.length),), hangs_on, open_cuts)


def unsaid(plan: Plan) -> Iterator[tuple[str, int, int]]:
    """Yield of which sorts of things nobody said how they were measured: the words, how many, of how many."""
    boards = tuple(plan.boards.values())
    rooms = tuple(each.compartment for each in boards if each.compartment)
    for words, things in (
        ("the size of boards", boards),
        ("the room round boards", rooms),
        ("members of framing", tuple(plan.framing.values())),
        ("no-go boxes", tuple(plan.no_go_boxes.values())),
        ("exits", tuple(plan.exits.values())),
    ):
        count = sum(each.trust is None for each in things)
        if count:
            yield words, count, len(things)
