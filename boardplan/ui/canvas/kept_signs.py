"""Kept signs: the signs of findings on the board; one whose finding is there as before stays as it is."""

from collections.abc import Iterable

from PySide6.QtCore import QPointF
from PySide6.QtWidgets import QGraphicsScene

from boardplan.checks.finding import Finding
from boardplan.drawing.palette import Theme
from boardplan.model.plan import Plan
from boardplan.ui.canvas.signs import SignItem, glyph_of


class KeptSigns:
    """Holds a sign for each open finding; those that are not needed any more are given to new findings."""

    def __init__(self, scene: QGraphicsScene) -> None:
        self._scene = scene
        self._signs: dict[Finding, SignItem] = {}

    def show(self, plan: Plan, findings: Iterable[Finding], theme: Theme) -> None:
        """Show a sign for each open finding that has its place on a board."""
        placed = dict.fromkeys(each for each in findings if each.open and each.board in plan.boards)
        spare = [self._signs.pop(gone) for gone in [each for each in self._signs if each not in placed]]
        for finding in placed:
            sign = self._signs.get(finding) or (spare.pop() if spare else self._new())
            self._signs[finding] = sign
            at = plan.on_wall(finding.board, finding.place)
            sign.show_finding(finding, at, theme, glyph_of(finding, plan.cables))
        for sign in spare:
            self._scene.removeItem(sign)

    def places(self) -> list[QPointF]:
        """Return where on the wall signs are."""
        return [each.pos() for each in self._signs.values()]

    def _new(self) -> SignItem:
        sign = SignItem()
        self._scene.addItem(sign)
        return sign
