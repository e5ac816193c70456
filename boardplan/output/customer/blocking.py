"""Blocking: which board fixings the framing holds, and where blocking is needed for those that it doesn't."""

from collections.abc import Iterator
from dataclasses import dataclass

from boardplan.checks.board_fixings import inside_by
from boardplan.geometry.point import Point
from boardplan.model.board import Board, BoardFixing, Framing
from boardplan.model.plan import Plan
from boardplan.output.holes.datum import datum_point, datum_words, directions

_NOISE = 1e-6
LIMIT = "fixing-inside-member"


@dataclass(frozen=True, slots=True)
class Held:
    """A board fixing and the member that holds it best: how far inside its edges it is, in mm; none without framing."""

    fixing: BoardFixing
    member: Framing | None
    inside: float | None
    asked: float

    @property
    def misses(self) -> bool:
        """Whether no member is known to hold it far enough inside its edges."""
        return self.inside is None or self.inside < self.asked - _NOISE


@dataclass(frozen=True, slots=True)
class Piece:
    """Blocking between two upright members at a height, for some fixings; none for a member nobody surveyed."""

    left: Framing | None
    right: Framing | None
    level: float
    fixings: tuple[str, ...]


def held_fixings(plan: Plan, board: Board) -> tuple[Held, ...]:
    """Return how each fixing of a board is held, under the limit of the rule set."""
    members = members_of(plan, board)
    asked = plan.rules.limits[LIMIT].value
    return tuple(_held(each, members, asked) for each in plan.fixings.values() if each.board == board.id)


def members_of(plan: Plan, board: Board) -> tuple[Framing, ...]:
    """Return the members behind a board."""
    return tuple(each for each in plan.framing.values() if each.board == board.id)


def _held(fixing: BoardFixing, members: tuple[Framing, ...], asked: float) -> Held:
    if not members:
        return Held(fixing, None, None, asked)
    best = max(members, key=lambda each: inside_by(each, fixing.position))
    return Held(fixing, best, inside_by(best, fixing.position), asked)


def blocking_of(plan: Plan, board: Board) -> tuple[Piece, ...]:
    """Return the blocking that fixings without a hold need, one piece for those of a height in the same bay."""
    uprights = sorted(
        (each for each in members_of(plan, board) if each.direction == "upright"), key=lambda each: each.centre
    )
    pieces: dict[tuple[str, str, float], list[str]] = {}
    bays: dict[tuple[str, str, float], tuple[Framing | None, Framing | None]] = {}
    for held in held_fixings(plan, board):
        if held.misses:
            x, y = held.fixing.position
            left = next((each for each in reversed(uprights) if each.centre <= x), None)
            right = next((each for each in uprights if each.centre > x), None)
            key = (left.id if left else "", right.id if right else "", y)
            bays[key] = (left, right)
            pieces.setdefault(key, []).append(held.fixing.id)
    return tuple(Piece(*bays[key], key[2], tuple(names)) for key, names in pieces.items())


def survey_corner(board: Board) -> Point:
    """Return where a customer's tape starts, in board coordinates: the inside corner of the compartment if surveyed.

    It is the corner on the side of the board's own datum; without a compartment it is that datum itself.
    """
    room, box = board.compartment, board.box
    if room is None:
        return datum_point(board)
    corner = board.datum.corner
    return Point(
        box.left - room.left if "left" in corner else box.right + room.right,
        box.bottom - room.bottom if "lower" in corner else box.top + room.top,
    )


def corner_words(board: Board) -> str:
    """Return which corner all dimensions run from."""
    if board.compartment is None:
        return datum_words(board)
    return f"inside {board.datum.corner.replace('-', ' ')} corner of the space the board hangs in, as surveyed"


def from_corner(board: Board, point: Point) -> Point:
    """Return the distances of a point of a board from the survey's corner, both positive towards the board."""
    corner, towards = survey_corner(board), directions(board)
    return Point((point.x - corner.x) * towards.x, (point.y - corner.y) * towards.y)


def stations_of(plan: Plan, board: Board) -> tuple[tuple[Point, ...], tuple[Point, ...]]:
    """Return the points of a board that running dimensions lead to, across and upwards."""
    members, box = members_of(plan, board), board.box
    fixings = [each.position for each in plan.fixings.values() if each.board == board.id]
    exits = [each.position for each in plan.exits.values() if each.board == board.id and each.through == "hole"]
    corners = box.corners()
    across = [Point(each.centre, box.bottom) for each in members if each.direction == "upright"]
    up = [Point(box.left, each.centre) for each in members if each.direction == "level"]
    openings = [corner for ring in board.cutouts for corner in ring]
    return (*corners, *across, *fixings, *exits, *openings), (*corners, *up, *fixings, *exits, *openings)


def blocking_records(plan: Plan) -> Iterator[dict[str, object]]:
    """Yield each fixing of all boards with what holds it, as plain values for JSON; all in mm."""
    for board in plan.boards.values():
        for held in held_fixings(plan, board):
            yield {
                "fixing": held.fixing.id,
                "board": board.id,
                "from_survey_corner": [round(each, 6) for each in from_corner(board, held.fixing.position)],
                "member": held.member.id if held.member else None,
                "inside": None if held.inside is None else round(held.inside, 6),
                "asked": held.asked,
                "blocking": held.misses,
            }
