"""Survey edits: a new job, its boards, and what the wall behind and around them holds."""

from dataclasses import dataclass, field, replace
from typing import Literal

from boardplan.editing.lookup import board_of
from boardplan.editing.references import next_board_letter, next_reference
from boardplan.editing.refused import EditRefused
from boardplan.editing.soundness import LONGEST_TEXT, with_changed
from boardplan.geometry.nearest import nearest_on_ring
from boardplan.geometry.point import Box, Point
from boardplan.model.board import (
    BackPart,
    Board,
    BoardFixing,
    Compartment,
    Exit,
    Fabric,
    Framing,
    Material,
    NoGoBox,
    Ring,
    Sides,
)
from boardplan.model.fastener import Fastener
from boardplan.model.job import Job, Units
from boardplan.model.plan import Plan
from boardplan.model.rule_set import RuleSet

_LONGEST_TITLE = 120
_BETWEEN_BOARDS = 0.0


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet to begin a board with."""

    width: float
    height: float
    thickness: float = 18.0
    material: Material = field(default_factory=lambda: Material("plywood"))
    fabric: Fabric | None = None


def new_plan(title: str, sheet: Sheet, rules: RuleSet, units: Units = "mm") -> Plan:
    """Return a new job with one empty board. Raises EditRefused."""
    plan, _ = add_board(Plan(Job("?"), rules), sheet)
    return set_job(plan, Job(title, units=units))


def set_job(plan: Plan, job: Job) -> Plan:
    """Return the plan with other fields of its job. Raises EditRefused."""
    job = replace(job, title=job.title.strip())
    if not 1 <= len(job.title) <= _LONGEST_TITLE:
        raise EditRefused(f"A job needs a title of 1 to {_LONGEST_TITLE} characters.")
    if not (job.revision.isascii() and job.revision.isupper() and job.revision.isalpha() and len(job.revision) <= 2):  # noqa: PLR2004
        raise EditRefused(f"'{job.revision}' is not a revision: expected one or two capital letters.")
    if job.date and not _is_date(job.date):
        raise EditRefused(f"'{job.date}' is not a date: expected year-month-day, as 2026-11-02.")
    if any(len(each) > LONGEST_TEXT for each in (job.number, job.customer, job.place, job.drawn_by)):
        raise EditRefused(f"A field of the job is longer than {LONGEST_TEXT} characters.")
    return plan if job == plan.job else replace(plan, job=job)


def _is_date(text: str) -> bool:
    parts = text.split("-")
    return [len(each) for each in parts] == [4, 2, 2] and all(each.isascii() and each.isdigit() for each in parts)


def set_rules(plan: Plan, rules: RuleSet) -> Plan:
    """Return the plan checked under another rule set."""
    return plan if rules == plan.rules else replace(plan, rules=rules)


def add_board(plan: Plan, sheet: Sheet, name: str = "") -> tuple[Plan, str]:
    """Return the plan with another board to the right of all others, and its letter."""
    margin = plan.rules.value("edge-margin")
    right = max((each.position.x + each.box.right for each in plan.boards.values()), default=0.0)
    left = right + _BETWEEN_BOARDS
    board = Board(
        id=next_board_letter(plan),
        name=name,
        outline=_rectangle(sheet.width, sheet.height),
        position=Point(left, 0.0),
        thickness=sheet.thickness,
        material=sheet.material,
        fabric=sheet.fabric,
        edge_margins=Sides(margin, margin, margin, margin),
    )
    return with_changed(plan, [board]), board.id


def _rectangle(width: float, height: float) -> Ring:
    if not (width > 0 and height > 0):
        raise EditRefused("A board needs a width and a height.")
    return Box(0.0, 0.0, float(width), float(height)).corners()


def set_board_size(plan: Plan, board_id: str, width: float, height: float) -> Plan:
    """Return the plan with a board that is a plain rectangle of a size; cut-outs stay where they are."""
    return set_board_outline(plan, board_id, _rectangle(width, height))


def set_board_outline(plan: Plan, board_id: str, outline: Ring, cutouts: tuple[Ring, ...] | None = None) -> Plan:
    """Return the plan with another outline for a board, and if given other cut-outs; exits follow the edge."""
    board = board_of(plan, board_id)
    changed = replace(board, outline=tuple(outline), cutouts=board.cutouts if cutouts is None else cutouts)
    plan = with_changed(plan, [changed])
    following = [
        replace(each, position=nearest_on_ring(changed.outline, each.position))
        for each in plan.exits.values()
        if each.board == board_id and each.through == "edge"
    ]
    return with_changed(plan, following)


def set_compartment(plan: Plan, board_id: str, compartment: Compartment | None) -> Plan:
    """Return the plan with the room round a board as surveyed, or none."""
    if compartment is not None and compartment.depth is not None and compartment.depth <= 0:
        raise EditRefused("The depth of a compartment can't be nought. Leave it empty where nobody measured it.")
    return with_changed(plan, [replace(board_of(plan, board_id), compartment=compartment)])


def set_margins(plan: Plan, board_id: str, margins: Sides) -> Plan:
    """Return the plan with other edge margins for a board."""
    return with_changed(plan, [replace(board_of(plan, board_id), edge_margins=margins)])


def add_exit(
    plan: Plan,
    board_id: str,
    at: Point,
    name: str = "",
    *,
    through: Literal["edge", "hole"] = "edge",
    diameter: float | None = None,
) -> tuple[Plan, str]:
    """Return the plan with an exit, and its reference; one over an edge lands on the outline nearest by."""
    board = board_of(plan, board_id)
    place = nearest_on_ring(board.outline, at) if through == "edge" else at
    exit_ = Exit(next_reference(plan, "X"), board_id, name, place, through, diameter)
    return with_changed(plan, [exit_]), exit_.id


def add_fixing(
    plan: Plan, board_id: str, at: Point, diameter: float, fastener: Fastener | None = None
) -> tuple[Plan, str]:
    """Return the plan with a board fixing, and its reference; `diameter` is its through hole."""
    board_of(plan, board_id)
    if fastener and fastener.id not in plan.fasteners:
        plan = replace(plan, fasteners={**plan.fasteners, fastener.id: fastener})
    fixing = BoardFixing(next_reference(plan, "BF-"), board_id, at, diameter, fastener.id if fastener else "")
    return with_changed(plan, [fixing]), fixing.id


def add_framing(
    plan: Plan, board_id: str, direction: Literal["upright", "level"], centre: float, width: float
) -> tuple[Plan, str]:
    """Return the plan with a member of the wall behind a board, and its reference."""
    board_of(plan, board_id)
    prefix = f"{'post' if direction == 'upright' else 'rail'}-{board_id}"
    member = Framing(next_reference(plan, prefix), board_id, direction, centre, width)
    return with_changed(plan, [member]), member.id


def add_no_go_box(
    plan: Plan, board_id: str, box: Box, name: str = "", depth: tuple[float, float] = (0.0, 1000.0)
) -> tuple[Plan, str]:
    """Return the plan with space that must stay empty, and its reference; depth is from and to z."""
    board_of(plan, board_id)
    if depth[0] >= depth[1]:
        raise EditRefused("A no-go box must end further out than it begins.")
    no_go = NoGoBox(next_reference(plan, "NG"), board_id, name, box.left, box.bottom, box.width, box.height, *depth)
    return with_changed(plan, [no_go]), no_go.id


def add_back_part(plan: Plan, board_id: str, outline: Ring, name: str) -> tuple[Plan, str]:
    """Return the plan with a part on the back of a board, its outline seen from the front, and its reference."""
    board_of(plan, board_id)
    part = BackPart(next_reference(plan, "BP"), board_id, name, tuple(outline))
    return with_changed(plan, [part]), part.id
