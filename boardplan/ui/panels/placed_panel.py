"""Placed panel: the components on the boards as a list, so that each can be found and taken without the canvas."""

from collections.abc import Iterator

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from boardplan.editing.thing_edits import remove_things
from boardplan.geometry.units import length_text, tidy_number
from boardplan.model.component import Component
from boardplan.ui.canvas.sights import component_ready
from boardplan.ui.desk import Desk
from boardplan.ui.panels.shelf_panel import SearchEdit
from boardplan.ui.tables.row_list import RowList
from boardplan.ui.tables.rows import Row
from boardplan.ui.words import tr


def placed_rows(desk: Desk, wanted: str) -> Iterator[Row]:
    """Yield the rows of components that hold all words wanted, board by board."""
    words, plan = wanted.lower().split(), desk.plan
    for board in plan.boards.values():
        rows = [_placed_row(desk, each) for each in plan.components.values() if each.board == board.id]
        found = [row for row in rows if all(word in row.words.lower() for word in words)]
        if found and len(plan.boards) > 1:
            yield Row(("board", board.id), tr("Board {}").format(board.id), heading=True)
        yield from found


def _placed_row(desk: Desk, component: Component) -> Row:
    plan = desk.plan
    kind, units = plan.kind_of(component), plan.job.units
    parts = [tr("x {}, y {}").format(*(length_text(each, units) for each in component.position))]
    if component.turn:
        parts.append(tr("turned {}\u00b0").format(tidy_number(component.turn)))
    parts += [tr("locked")] if component.locked else []
    parts += [component.label] if component.label else []
    picture = component_ready(kind, "", 0.0, desk.themes.theme)
    return Row(component.id, f"{component.id}  {kind.name}", ", ".join(parts), picture=picture)


class PlacedPanel(QWidget):
    """Search and list; a row picked is selected, Enter goes on with it on the canvas, Delete takes it off."""

    acted = Signal()

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self.search = SearchEdit()
        self.search.setPlaceholderText(tr("Search what is placed"))
        self.search.setAccessibleName(tr("Search what is placed"))
        self.search.setClearButtonEnabled(True)
        self.list = RowList(tr("Components on the board"), desk.themes.theme)
        self.empty = QLabel()
        self.empty.setWordWrap(True)
        self.empty.setProperty("part", "quiet")
        self._how = QLabel(tr("Enter goes on at the board: arrows move it, R turns it, Del removes it."))
        self._how.setProperty("part", "small")
        self._how.setWordWrap(True)
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 8, 12, 8)
        column.setSpacing(8)
        for part in (self.search, self.empty, self.list, self._how):
            column.addWidget(part, 1 if part is self.list else 0)
        column.addStretch(0)
        self.search.textChanged.connect(self.refresh)
        self.search.left.connect(self._to_list)
        self.list.picked.connect(desk.select)
        self.list.acted.connect(self.acted)
        self.list.removed.connect(self._remove)
        desk.signals.plan_changed.connect(self.refresh)
        desk.signals.selection_changed.connect(self._pick)
        desk.themes.changed.connect(self.refresh)
        self.refresh()

    def refresh(self) -> None:
        """Show the components as they are now."""
        none_at_all = not self._desk.plan.components
        rows = () if none_at_all else tuple(placed_rows(self._desk, self.search.text()))
        self.list.show_rows(rows)
        self.search.setEnabled(not none_at_all)
        nothing = tr("Nothing hangs on the board yet. Take a kind from the shelf: click it, then click on the board.")
        self.empty.setText(nothing if none_at_all else tr("Nothing on the board is called that."))
        self.empty.setVisible(not rows)
        for part in (self.list, self._how):
            part.setVisible(bool(rows))
        self._pick()

    def _pick(self) -> None:
        self.list.pick(self._desk.session.selection.active)

    def _to_list(self) -> None:
        first = next((row.key for row in self.list.rows if not row.heading), None)
        if first is not None:
            self.list.setFocus()
            if self.list.key is None:
                self._desk.select(first)

    def _remove(self, component: str) -> None:
        self._desk.edit(tr("Remove {}").format(component), lambda plan: remove_things(plan, [component]))
