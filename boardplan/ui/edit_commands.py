"""Edit commands: copy, paste, duplicate, line up, space out - edits of what is selected, asked for by menu or key."""

from collections.abc import Callable

from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QLineEdit

from boardplan.editing.arrange import Axis, Edge, align_components, space_evenly
from boardplan.editing.cable_edits import pin_way, unpin
from boardplan.editing.clipboard import Clipping, clipping_of_text, clipping_text, copied, duplicate_things, pasted
from boardplan.editing.refused import EditRefused
from boardplan.editing.selection import Selection
from boardplan.model.plan import Plan
from boardplan.routing.route import Route
from boardplan.ui.desk import Desk
from boardplan.ui.first_place import free_place
from boardplan.ui.words import tr


def copy(desk: Desk) -> None:
    """Put what is selected on the desktop's clipboard; in a field, the field's own text."""
    focus = QApplication.focusWidget()
    if isinstance(focus, QLineEdit) and focus.hasSelectedText():
        focus.copy()
        return
    try:
        clipping = copied(desk.session.committed_plan, desk.session.selection.ids)
    except EditRefused as refused:
        desk.said.emit(refused.sentence)
        return
    if clipping is not None:
        QGuiApplication.clipboard().setText(clipping_text(clipping))


def paste(desk: Desk) -> None:
    """Take what is on the clipboard onto the board in hand; in a field, as text."""
    focus = QApplication.focusWidget()
    if isinstance(focus, QLineEdit):
        focus.paste()
        return
    clipping = clipping_of_text(QGuiApplication.clipboard().text())
    if clipping is None:
        desk.said.emit(tr("There is nothing on the clipboard that could hang on a board."))
        return
    board = desk.board.id
    _add_several(desk, tr("Paste"), lambda plan: _pasted_beside(plan, clipping, board))


def duplicate(desk: Desk) -> None:
    """Put copies of what is selected beside it."""
    ids = desk.session.selection.ids

    def duplicated(plan: Plan) -> tuple[Plan, tuple[str, ...]]:
        clipping = copied(plan, ids)
        if clipping is None or not clipping.plan.components:
            return duplicate_things(plan, ids)
        return _pasted_beside(plan, clipping, next(iter(clipping.plan.boards)))

    _add_several(desk, tr("Duplicate"), duplicated)


def _pasted_beside(plan: Plan, clipping: Clipping, board: str) -> tuple[Plan, tuple[str, ...]]:
    """Return the plan with copies at the free place nearest to where they come from, so that no two bodies meet."""
    if not clipping.plan.components or len(clipping.plan.boards) > 1:
        return pasted(plan, clipping, board)
    source = next(iter(clipping.plan.boards.values()))
    box = clipping.box.moved(-source.position.x, -source.position.y)
    return pasted(plan, clipping, board, at=free_place(plan, board, (box.width, box.height), box.centre))


def _add_several(desk: Desk, words: str, edit: Callable[[Plan], tuple[Plan, tuple[str, ...]]]) -> None:
    added: list[tuple[str, ...]] = []

    def only_plan(plan: Plan) -> Plan:
        changed, references = edit(plan)
        added.append(references)
        return changed

    if desk.edit(words, only_plan):
        desk.session.select(Selection(added[0]))


def align(desk: Desk, edge: Edge) -> None:
    """Line the selected components up."""
    desk.edit(tr("Line up"), lambda plan: align_components(plan, desk.session.selection.ids, edge))


def space(desk: Desk, axis: Axis) -> None:
    """Space the selected components evenly."""
    desk.edit(tr("Space evenly"), lambda plan: space_evenly(plan, desk.session.selection.ids, axis))


def pin(desk: Desk) -> None:
    """Pin the ways of the selected cables where they lie now."""
    ways = desk.review.ways
    found = {each: ways.get(each) for each in desk.session.selection.ids if each in desk.plan.cables}

    def pinned(plan: Plan) -> Plan:
        for cable, way in found.items():
            if isinstance(way, Route):
                plan = pin_way(plan, cable, way.points[1:-1])
        return plan

    desk.edit(tr("Pin the way"), pinned)


def leave(desk: Desk) -> None:
    """Leave the ways of the selected cables to the program: it takes their pins away."""
    pinned = [each for each in desk.session.selection.ids if each in desk.plan.cables and desk.plan.cables[each].pins]
    if not pinned:
        desk.said.emit(tr("No selected cable is pinned."))
        return

    def unpinned(plan: Plan) -> Plan:
        for cable in pinned:
            plan = unpin(plan, cable)
        return plan

    desk.edit(tr("Lay {} as the program would").format(", ".join(pinned[:3])), unpinned)
