"""Survey panel: what was measured - the job, its boards, the room round them, what is behind and in front."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QScrollArea, QVBoxLayout, QWidget

from boardplan.editing.survey_edits import (
    Sheet,
    add_back_part,
    add_board,
    add_exit,
    add_fixing,
    add_framing,
    add_no_go_box,
)
from boardplan.editing.thing_edits import remove_things
from boardplan.geometry.point import Box, Point
from boardplan.geometry.units import length_text
from boardplan.model.board import BackPart, Board, BoardFixing, Exit, Framing, NoGoBox
from boardplan.model.plan import Plan
from boardplan.ui.controls.small_parts import small_button
from boardplan.ui.desk import Desk
from boardplan.ui.dialogs.length_dialog import ask_length
from boardplan.ui.panels.form import Form
from boardplan.ui.panels.section import Section
from boardplan.ui.panels.survey_fields import BOARD_FIELDS, JOB_FIELDS, ROOM_FIELDS
from boardplan.ui.panels.trays_row import TraysRow
from boardplan.ui.tables.row_list import RowList
from boardplan.ui.tables.rows import Row
from boardplan.ui.words import tr


@dataclass(frozen=True, slots=True)
class Surveyed:
    """A list of the survey: what it holds, how a row reads, how one more is begun, what an empty one says."""

    title: str
    collection: str
    icon: str
    row: Callable[[Plan, object], tuple[str, str]]
    add: Callable[[Plan, Board, float], tuple[Plan, str]]
    add_words: str
    empty: str
    known: Callable[[Plan], float | None] = lambda _plan: 0.0
    question: str = ""
    """A measure that a new one needs: as it was given last, or asked for."""


def _member(plan: Plan, framing: object) -> tuple[str, str]:
    assert isinstance(framing, Framing)  # noqa: S101 - the table pairs collection and function
    text = _lengths(plan, framing.width)
    way = tr("upright, {} wide") if framing.direction == "upright" else tr("level, {} high")
    return _lengths(plan, framing.centre), f"{way.format(text)}{', ' if framing.material else ''}{framing.material}"


def _no_go(plan: Plan, box: object) -> tuple[str, str]:
    assert isinstance(box, NoGoBox)  # noqa: S101
    return "", tr("{}, {} x {}").format(
        box.name or tr("no name"), _lengths(plan, box.width), _lengths(plan, box.height)
    )


def _exit(plan: Plan, way_out: object) -> tuple[str, str]:
    assert isinstance(way_out, Exit)  # noqa: S101
    hole = _lengths(plan, way_out.diameter) if way_out.diameter else tr("hole not measured")
    through = tr("over an edge") if way_out.through == "edge" else tr("through a hole, {}").format(hole)
    return "", f"{way_out.name}, {through}" if way_out.name else through


def _fixing(plan: Plan, fixing: object) -> tuple[str, str]:
    assert isinstance(fixing, BoardFixing)  # noqa: S101
    at = tr("x {}, y {}").format(_lengths(plan, fixing.position.x), _lengths(plan, fixing.position.y))
    return _lengths(plan, fixing.diameter), at


def _back_part(_plan: Plan, part: object) -> tuple[str, str]:
    assert isinstance(part, BackPart)  # noqa: S101
    return "", part.name


def _lengths(plan: Plan, value: float) -> str:
    return length_text(value, plan.job.units)


def _middle(board: Board) -> Point:
    centre = board.box.centre
    return Point(float(round(centre.x)), float(round(centre.y)))


def _new_member(plan: Plan, board: Board, width: float) -> tuple[Plan, str]:
    return add_framing(plan, board.id, "upright", _middle(board).x, width)


def _new_exit(plan: Plan, board: Board, _measure: float) -> tuple[Plan, str]:
    return add_exit(plan, board.id, Point(board.box.left, _middle(board).y))


def _new_box(plan: Plan, board: Board, _measure: float) -> tuple[Plan, str]:
    at = _middle(board)
    return add_no_go_box(plan, board.id, Box(at.x - 50, at.y - 50, at.x + 50, at.y + 50))


def _new_fixing(plan: Plan, board: Board, diameter: float) -> tuple[Plan, str]:
    return add_fixing(plan, board.id, _middle(board), diameter)


def _last_width(plan: Plan) -> float | None:
    return next((each.width for each in reversed(list(plan.framing.values()))), None)


def last_diameter(plan: Plan) -> float | None:
    """Return the through hole of the board fixing added last, none where there is none."""
    return next((each.diameter for each in reversed(list(plan.fixings.values()))), None)


def _new_back_part(plan: Plan, board: Board, _measure: float) -> tuple[Plan, str]:
    at = _middle(board)
    return add_back_part(
        plan, board.id, Box(board.box.left + 20, at.y - 30, board.box.right - 20, at.y + 30).corners(), tr("batten")
    )


FIXING_QUESTION = "How wide is the hole through the board for its fixings?"
LISTS: tuple[Surveyed, ...] = (
    Surveyed(
        "Framing behind",
        "framing",
        "framing",
        _member,
        _new_member,
        "Add a member of the framing",
        "Posts, studs and ribs the board is fixed to, measured one by one.",
        _last_width,
        "How wide is the member?",
    ),
    Surveyed(
        "Exits",
        "exits",
        "exit",
        _exit,
        _new_exit,
        "Add an exit",
        "Where cables leave the board, over an edge or through a hole.",
    ),
    Surveyed(
        "No-go boxes",
        "no_go_boxes",
        "no-go-box",
        _no_go,
        _new_box,
        "Add a no-go box",
        "Space something else needs: a door's swing, a valve handle.",
    ),
    Surveyed(
        "Board fixings",
        "fixings",
        "fixing",
        _fixing,
        _new_fixing,
        "Add a board fixing",
        "Screws or bolts through the board into the framing.",
        last_diameter,
        FIXING_QUESTION,
    ),
    Surveyed(
        "Parts on the back",
        "back_parts",
        "board",
        _back_part,
        _new_back_part,
        "Add a part on the back",
        "Cleats, battens and stand-offs.",
    ),
)


class SurveyPanel(QScrollArea):
    """Sections in the order a survey is taken."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._lists: dict[str, tuple[Surveyed, Section, RowList]] = {}
        self.setWidgetResizable(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        holder = QWidget()
        column = QVBoxLayout(holder)
        column.setContentsMargins(0, 4, 0, 12)
        column.setSpacing(0)
        self._forms = [
            Form(desk, JOB_FIELDS, lambda plan: plan.job),
            Form(desk, BOARD_FIELDS, partial(_board_in_hand, desk)),
            Form(desk, ROOM_FIELDS, partial(_board_in_hand, desk)),
        ]
        self._boards = RowList(tr("Boards"), desk.themes.theme)
        self._boards.grows()
        self._boards.picked.connect(desk.select)
        self._board_section = Section(desk, tr("Board"), self._board_body())
        self._board_section.add_button(small_button(desk.themes.theme, "add", tr("Add a board"), self._add_board))
        self._board_section.add_button(
            small_button(desk.themes.theme, "delete", tr("Remove this board"), self._remove_board)
        )
        for section in (
            Section(desk, tr("Job"), self._forms[0]),
            self._board_section,
            Section(desk, tr("Room round the board"), self._forms[2]),
        ):
            column.addWidget(section)
        for surveyed in LISTS:
            column.addWidget(self._add_list(surveyed))
        self.trays = TraysRow(desk)
        column.addWidget(Section(desk, tr("Battery trays"), self.trays))
        column.addStretch(1)
        self.setWidget(holder)
        desk.signals.seen_changed.connect(self.refresh)
        desk.signals.selection_changed.connect(self.refresh)
        self.refresh()

    def _board_body(self) -> QWidget:
        body = QWidget()
        column = QVBoxLayout(body)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._boards)
        column.addWidget(self._forms[1])
        return body

    def _add_list(self, surveyed: Surveyed) -> Section:
        rows = RowList(tr(surveyed.title), self._desk.themes.theme)
        rows.grows()
        rows.picked.connect(self._desk.select)
        rows.removed.connect(self._remove)
        section = Section(self._desk, tr(surveyed.title), rows)
        section.add_button(
            small_button(self._desk.themes.theme, "add", tr(surveyed.add_words), partial(self._add, surveyed))
        )
        self._lists[surveyed.collection] = (surveyed, section, rows)
        return section

    def refresh(self) -> None:
        """Show the survey as it is now."""
        plan, active = self._desk.plan, self._desk.session.selection.active
        for form in self._forms:
            form.refresh()
        boards = [Row(each.id, tr("Board {}").format(each.id), each.name) for each in plan.boards.values()]
        self._boards.show_rows(boards if len(boards) > 1 else ())
        self._boards.pick(self._desk.board.id)
        for surveyed, section, rows in self._lists.values():
            things = getattr(plan, surveyed.collection).values()
            rows.show_rows(self._rows(plan, surveyed, things))
            rows.pick(active)
            section.summarise(str(len(things)) if things else tr("none"))

    def _rows(self, plan: Plan, surveyed: Surveyed, things: Sequence[object]) -> list[Row]:
        if not things:
            return [Row(None, tr(surveyed.empty), wraps=True, quiet=True)]
        made = []
        for thing in things:
            figure, detail = surveyed.row(plan, thing)
            made.append(Row(thing.id, thing.id, detail, figure))  # type: ignore[attr-defined]
        return made

    def _add(self, surveyed: Surveyed) -> None:
        board, plan = self._desk.board, self._desk.session.committed_plan
        measure = surveyed.known(plan)
        if measure is None:
            measure = ask_length(tr(surveyed.question), plan.job.units, self.window())
        if measure is None:
            return
        given = measure
        self._desk.add(tr(surveyed.add_words), lambda plan: surveyed.add(plan, plan.boards[board.id], given))
        self._lists[surveyed.collection][1].unfold()

    def _remove(self, thing_id: str) -> None:
        self._desk.edit(tr("Remove {}").format(thing_id), lambda plan: remove_things(plan, [thing_id]))

    def _add_board(self) -> None:
        like = self._desk.board
        sheet = Sheet(like.box.width, like.box.height, like.thickness, like.material, like.fabric)
        self._desk.add(tr("Add a board"), lambda plan: add_board(plan, sheet))

    def _remove_board(self) -> None:
        self._remove(self._desk.board.id)


def _board_in_hand(desk: Desk, plan: Plan) -> Board:
    del plan
    return desk.board
