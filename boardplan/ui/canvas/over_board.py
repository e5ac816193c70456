"""Over board: what a tool or a finding points out on the board - guides, frames, gaps - and ends that are stuck."""

from collections.abc import Iterable

from PySide6.QtGui import QPainterPath
from PySide6.QtWidgets import QGraphicsScene

from boardplan.checks.finding import Finding
from boardplan.drawing.palette import Theme
from boardplan.geometry.point import Box, Point
from boardplan.geometry.units import length_text
from boardplan.model.plan import Plan
from boardplan.routing.route import NoWay, Way
from boardplan.ui.canvas.gaps import gap_lines
from boardplan.ui.canvas.outlines import rect_of
from boardplan.ui.canvas.over_lines import GapsItem, LineItem
from boardplan.ui.canvas.sights import GUIDE_DEPTH, SELECTED_DEPTH


class OverBoard:
    """Lays lines over a scene, on the plan and in the theme that it was last given."""

    def __init__(self, scene: QGraphicsScene, theme: Theme) -> None:
        self._scene = scene
        self.theme: Theme = theme
        self._plan: Plan | None = None
        self._gaps = GapsItem(GUIDE_DEPTH)
        self._stuck = LineItem(GUIDE_DEPTH, "stop", 2.0, fill=0.12)
        self._band = LineItem(GUIDE_DEPTH, "accent", 1.0, fill=0.10)
        self._pointed = LineItem(GUIDE_DEPTH, "stop", 2.0, fill=0.10)
        self._loose = LineItem(SELECTED_DEPTH, "stop", 1.5)
        self._guides: list[LineItem] = []
        for item in (self._gaps, self._stuck, self._band, self._pointed, self._loose):
            scene.addItem(item)

    def show_plan(self, plan: Plan, ways: Iterable[Way]) -> None:
        """Take a plan, and mark where cables without a way are stuck."""
        self._plan = plan
        path = QPainterPath()
        for way in ways:
            if isinstance(way, NoWay):
                path.addEllipse(rect_of(Box(way.near.x - 6, way.near.y - 6, way.near.x + 6, way.near.y + 6)))
        self._loose.show_path(path, self.theme, dashes=(3, 3))

    @property
    def stuck(self) -> QPainterPath:
        """What is framed because a cable that is being pushed can't lie there."""
        return self._stuck.path

    def show_stuck(self, area: Box | None) -> None:
        """Frame where a cable that is being pushed can't lie, or nothing."""
        path = QPainterPath()
        if area is not None:
            path.addRect(rect_of(area))
        self._stuck.show_path(path, self.theme, dashes=(2, 2))

    def show_guides(self, guides: Iterable[tuple[Point, Point]]) -> None:
        """Draw the guide lines of a tool."""
        lines = tuple(guides)
        while len(self._guides) < len(lines):
            self._guides.append(LineItem(GUIDE_DEPTH, "accent", 1.0))
            self._scene.addItem(self._guides[-1])
        for number, item in enumerate(self._guides):
            path = QPainterPath()
            for at in lines[number : number + 1]:
                path.moveTo(*at[0])
                path.lineTo(*at[1])
            item.show_path(path, self.theme, dashes=(4, 3))

    def show_gaps(self, component_id: str | None) -> None:
        """Draw the gaps round a component that is carried, or none."""
        plan = self._plan
        if plan is None or component_id is None or component_id not in plan.components:
            self._gaps.show_lines((), self.theme)
            return
        lines = gap_lines(plan, component_id)
        units = plan.job.units
        self._gaps.show_lines(((start, end, length_text(gap, units)) for start, end, gap in lines), self.theme)

    def show_band(self, band: tuple[Point, Point] | None) -> None:
        """Draw the box a tool is drawing up, or none."""
        path = QPainterPath()
        if band is not None:
            path.addRect(rect_of(Box(*band[0], *band[1])))
        self._band.show_path(path, self.theme)

    def point_out(self, finding: Finding | None) -> None:
        """Frame the place of a finding, or none."""
        path = QPainterPath()
        if finding is not None and self._plan is not None and finding.board in self._plan.boards:
            origin = self._plan.boards[finding.board].position
            box = finding.area or Box(*finding.place, *finding.place).grown(20)
            path.addRect(rect_of(box.moved(*origin)))
        self._pointed.show_path(path, self.theme, dashes=(4, 3))
