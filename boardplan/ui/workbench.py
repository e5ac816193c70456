"""Workbench: the window's whole content for one open job - strip, canvas, panels - and how they speak to each other."""

from functools import partial

from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication, QHBoxLayout, QSplitter, QStackedWidget, QVBoxLayout, QWidget

from boardplan.editing.component_edits import place_component
from boardplan.geometry.point import Point
from boardplan.model.cable import Cable, CableEnd
from boardplan.model.channel_section import ChannelSection
from boardplan.model.component_kind import ComponentKind
from boardplan.output.papers import ALL_PAPERS
from boardplan.ui.canvas.column import CanvasColumn
from boardplan.ui.controls.small_parts import hairline
from boardplan.ui.desk import STEPS, Desk
from boardplan.ui.dialogs.join_dialog import JoinDialog
from boardplan.ui.dialogs.length_dialog import ask_length
from boardplan.ui.edit_commands import leave
from boardplan.ui.first_place import first_place
from boardplan.ui.pages.pages_view import PagesView
from boardplan.ui.panels.course_strip import CourseStrip, StepButton
from boardplan.ui.panels.findings_panel import FindingsPanel
from boardplan.ui.panels.pack_panel import PackPanel
from boardplan.ui.panels.place_panel import PlacePanel
from boardplan.ui.panels.properties_panel import PropertiesPanel
from boardplan.ui.panels.survey_panel import FIXING_QUESTION, SurveyPanel, last_diameter
from boardplan.ui.panels.wire_panel import WirePanel
from boardplan.ui.tables.row_list import RowList
from boardplan.ui.words import tr

STRIP_WIDTH, PANEL_WIDTH = 272, 328


class Workbench(QWidget):
    """One job being worked on."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self.desk = desk
        desk.setParent(self)
        self.setObjectName("ground")
        self.canvas = CanvasColumn(desk)
        self.strip = CourseStrip(desk)
        self.findings = FindingsPanel(desk)
        self.survey, self.place = SurveyPanel(desk), PlacePanel(desk)
        self.shelf, self.placed = self.place.shelf, self.place.placed
        self.wire, self.pack = WirePanel(desk), PackPanel(desk)
        self.properties = PropertiesPanel(desk)
        self.pages = PagesView(desk.themes)
        self._middle = QStackedWidget()
        self._middle.addWidget(self.canvas)
        self._middle.addWidget(self.pages)
        self._steps = QStackedWidget()
        for panel in (self.survey, self.place, self.wire, self.pack):
            self._steps.addWidget(panel)
        self._lay_out()
        self._connect()
        self._show_step()

    def _lay_out(self) -> None:
        left = QWidget()
        left.setObjectName("strip")
        left.setFixedWidth(STRIP_WIDTH)
        column = QVBoxLayout(left)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.strip)
        column.addWidget(hairline())
        column.addWidget(self.findings, 1)
        right = QSplitter(Qt.Orientation.Vertical)
        right.setChildrenCollapsible(False)
        right.addWidget(self._steps)
        right.addWidget(self.properties)
        right.setSizes([360, 380])
        panel = QWidget()
        panel.setObjectName("panel")
        panel.setFixedWidth(PANEL_WIDTH)
        inside = QVBoxLayout(panel)
        inside.setContentsMargins(0, 0, 0, 0)
        inside.addWidget(right)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        for part in (left, hairline("upright"), self._middle, hairline("upright"), panel):
            row.addWidget(part, 1 if part is self._middle else 0)

    def _connect(self) -> None:
        desk, host = self.desk, self.canvas.host
        desk.step_changed.connect(self._show_step)
        desk.themes.changed.connect(self._show_theme)
        host.asked.connect(self._ask_conductor)
        desk.tool_asked.connect(self._ask_measure)
        host.turn_asked.connect(self.properties.turn)
        host.remove_asked.connect(self.properties.remove)
        host.leave_asked.connect(partial(leave, desk))
        self.shelf.taken.connect(self._take_kind)
        self.shelf.asked.connect(self.place_by_name)
        self.shelf.carried.connect(self._carry)
        self.shelf.dropped.connect(self._drop)
        self.placed.acted.connect(self._to_canvas)
        self.wire.join_asked.connect(self.join_by_name)
        self.wire.section_chosen.connect(self._take_section)
        self.wire.show_section(host.section)
        self.strip.taken.connect(self._to_canvas)
        self.pack.looked_at.connect(self.show_pages)
        self.pages.back_asked.connect(self.show_board)
        desk.finding_pointed.connect(self._show_board_for)
        desk.place_asked.connect(self.show_board)
        desk.signals.plan_changed.connect(self._show_pages_anew)

    def _show_step(self) -> None:
        self._steps.setCurrentIndex(STEPS.index(self.desk.step))
        self.show_board()

    # The board, or the pages of a paper in its place

    @property
    def middle(self) -> QWidget:
        """What is in the middle of the window: the board, or the pages."""
        return self._middle.currentWidget() or self.canvas

    def show_pages(self, paper: str) -> None:
        """Show the pages of a paper in the place of the board."""
        name = next(each.name for each in ALL_PAPERS if each.key == paper)
        self._middle.setCurrentWidget(self.pages)
        self.pages.show_paper(self.pack.images, paper, tr(name))

    def show_board(self) -> None:
        """Show the board again."""
        if self._middle.currentWidget() is self.pages:
            focus = QApplication.focusWidget()
            back = focus is not None and self.pages.isAncestorOf(focus)
            self._middle.setCurrentWidget(self.canvas)
            self.pack.papers.pick(None)
            if back:
                self._to_canvas()

    def _show_board_for(self, finding: object) -> None:
        if finding is not None:
            self.show_board()

    def _show_pages_anew(self) -> None:
        """Show a page as it is after a change, such as one that was undone."""
        if self._middle.currentWidget() is self.pages and self.pack.papers.key is not None:
            self.show_pages(self.pack.papers.key)

    def _show_theme(self) -> None:
        for rows in self.findChildren(RowList):
            rows.show_theme(self.desk.themes.theme)

    # The shelf and the canvas

    def _take_kind(self, kind: ComponentKind) -> None:
        self.canvas.host.take_kind(kind)

    def place_by_name(self, kind: ComponentKind) -> None:
        """Put a kind at the free place nearest to the middle of the view, and go on there with the arrow keys."""
        self.canvas.host.cancel()
        board = self.desk.board
        wanted = self.canvas.view.middle().minus(board.position)
        at = first_place(self.desk.session.committed_plan, board.id, kind, Point(*wanted))
        fasteners = self.desk.shelf.fasteners
        self.desk.take("select")
        self.desk.add(
            tr("Place {}").format(kind.name), lambda plan: place_component(plan, kind, fasteners, board.id, at)
        )
        self.canvas.view.setFocus(Qt.FocusReason.OtherFocusReason)

    def _carry(self, kind: ComponentKind, at: QPoint) -> None:
        host, view = self.canvas.host, self.canvas.view
        if self.desk.tool != "place" or host.kind is not kind:
            host.take_kind(kind)
        here = view.viewport().mapFromGlobal(at)
        if view.viewport().rect().contains(here):
            host.carry_to(view.wall_at(here))

    def _drop(self, kind: ComponentKind, at: QPoint) -> None:
        host, view = self.canvas.host, self.canvas.view
        here = view.viewport().mapFromGlobal(at)
        if view.viewport().rect().contains(here):
            self._carry(kind, at)
            host.drop()
            view.setFocus(Qt.FocusReason.MouseFocusReason)
        else:
            self.desk.take("select")

    def _ask_measure(self, tool: str) -> None:
        """Before a tool is taken in hand, ask for what it needs: a kind of the shelf, the hole of the first fixing."""
        host, plan = self.canvas.host, self.desk.session.committed_plan
        if tool == "place" and host.kind is None:
            self.place.show_shelf()
        if tool == "add_fixing" and host.diameter is None and last_diameter(plan) is None:
            host.diameter = ask_length(tr(FIXING_QUESTION), plan.job.units, self.window())

    # Cables

    def _take_section(self, section: ChannelSection) -> None:
        self.canvas.host.section = section
        self.canvas.host.begin()

    def _ask_conductor(self, start: CableEnd, end: CableEnd) -> None:
        self._join((start, end))

    def join_by_name(self) -> None:
        """Ask for both ends of a cable and what it is."""
        self._join((None, None))

    def _join(self, ends: tuple[CableEnd | None, CableEnd | None]) -> None:
        dialog = JoinDialog(self.desk, self.window(), ends, self.canvas.host.conductor)
        if dialog.exec():
            active = self.desk.plan.things.get(self.desk.session.selection.active or "")
            if isinstance(active, Cable):
                self.canvas.host.conductor = self.desk.plan.conductors[active.conductor]

    # Focus

    def _to_canvas(self) -> None:
        """After a step or a tool was clicked, its keys are to be heard at once."""
        self.canvas.view.setFocus(Qt.FocusReason.OtherFocusReason)

    def focus_next_part(self) -> None:
        """Go round the parts of the window: strip, findings, canvas, the step's panel, the fields."""
        panel = (self.survey, self.place, self.wire, self.pack)[STEPS.index(self.desk.step)]
        ring: tuple[QWidget, ...] = (self.strip, self.findings, self.middle, panel, self.properties)
        parts = [each for each in ring if each.isVisible() and _first_stop(each) is not None]
        focus = QApplication.focusWidget()
        at = next((number for number, each in enumerate(parts) if focus is not None and each.isAncestorOf(focus)), -1)
        target = _first_stop(parts[(at + 1) % len(parts)])
        if target is not None:
            target.setFocus(Qt.FocusReason.TabFocusReason)

    def close_desk(self) -> None:
        """Let go of the session before the workbench goes."""
        self.canvas.host.cancel()
        self.pages.end()
        self.pack.wait()
        self.desk.close()


def _first_stop(part: QWidget) -> QWidget | None:
    """Return the first control of a part that takes the keyboard; of the canvas, the board."""
    if isinstance(part, CanvasColumn):
        return part.view
    if isinstance(part, PlacePanel):
        return part.first_stop()
    if isinstance(part, PagesView):
        return part.focusProxy()
    stops = (each for each in part.findChildren(QWidget) if each.focusPolicy() & Qt.FocusPolicy.TabFocus)
    stops_seen = [each for each in stops if each.isVisible() and each.isEnabled()]
    checked = [each for each in stops_seen if isinstance(each, StepButton) and each.isChecked()]
    return next(iter(checked or stops_seen), None)
