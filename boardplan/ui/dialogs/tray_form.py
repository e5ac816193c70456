"""Tray form: one battery tray as controls, and back again; what nobody knows is a blank and stays one."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QLabel, QVBoxLayout, QWidget

from boardplan.editing.refused import EditRefused
from boardplan.geometry.point import Point
from boardplan.geometry.units import length_text
from boardplan.model.job import Units
from boardplan.model.plan import Plan
from boardplan.model.tray import Battery, Tray, TrayBuilt, TrayExit, TrayFixing, TrayGaps
from boardplan.output.customer.tray_size import built_over, inside_of, over_of
from boardplan.ui.controls.lines import LineColumn, Lines, made_control, value_of
from boardplan.ui.dialogs.asking_dialog import small_words
from boardplan.ui.dialogs.tray_questions import BUILT, EXIT_COLUMNS, FIXING_COLUMNS, SECTIONS, STANDING, STRAP_COLUMNS
from boardplan.ui.theme import Themes
from boardplan.ui.words import tr

_PAIRS = 2
"""Questions that stand beside each other."""


class TrayForm(QWidget):
    """All that is asked of a tray; says when anything was changed."""

    changed = Signal()

    def __init__(self, tray: Tray, plan: Plan, themes: Themes) -> None:
        super().__init__()
        self._tray, self._plan, self._themes = tray, plan, themes
        self._asked: dict[str, tuple[LineColumn, QWidget]] = {}
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 12, 0)
        self._column.setSpacing(8)
        self.inside, self.off = small_words(""), small_words("")
        for title, questions in SECTIONS:
            self._section(title, questions)
            if title == STANDING:
                self._column.addWidget(self.inside)
        self.exits = self._lines(tr("Cable exits, measured inside"), EXIT_COLUMNS, tr("Add an exit"))
        self.fixings = self._lines(tr("Fixings, from the inside left front corner"), FIXING_COLUMNS, tr("Add a fixing"))
        self.straps = self._lines(tr("Where straps or bars cross"), STRAP_COLUMNS, tr("Add a strap"))
        self._section(*BUILT)
        self._column.addWidget(self.off)
        self._fill_lines(tray)
        self._column.addStretch(1)
        self.changed.connect(self._show_inside)
        self._show_inside()

    def control(self, path: str) -> QWidget:
        """Return the control of a question, by its path in the tray."""
        return self._asked[path][1]

    def _heading(self, title: str) -> None:
        heading = QLabel(title)
        heading.setProperty("part", "section")
        self._column.addSpacing(8)
        self._column.addWidget(heading)

    def _section(self, title: str, questions: Sequence[tuple[str, LineColumn]]) -> None:
        self._heading(tr(title))
        grid = QGridLayout()
        grid.setHorizontalSpacing(8)
        grid.setVerticalSpacing(6)
        for number, (path, asked) in enumerate(questions):
            column = _spoken(asked)
            control = made_control(column, _at(self._tray, path), self._plan.job.units, self.changed.emit)
            self._asked[path] = (column, control)
            label = QLabel(column.head)
            label.setProperty("part", "quiet")
            label.setBuddy(control)
            row, pair = divmod(number, _PAIRS)
            grid.addWidget(label, row, 2 * pair)
            grid.addWidget(control, row, 2 * pair + 1)
        for pair in range(_PAIRS):
            grid.setColumnMinimumWidth(2 * pair, 132)
            grid.setColumnStretch(2 * pair + 1, 1)
        self._column.addLayout(grid)

    def _lines(self, title: str, columns: Iterable[LineColumn], add: str) -> Lines:
        self._heading(title)
        table = Lines([_spoken(each) for each in columns], add, self._plan.job.units, self._themes)
        table.changed.connect(self.changed.emit)
        self._column.addWidget(table)
        return table

    def _fill_lines(self, tray: Tray) -> None:
        for out in tray.exits:
            self.exits.add_line([out.name, out.wall, out.along, out.height, out.diameter, out.edge, out.towards])
        for fixing in tray.fixings:
            self.fixings.add_line([*(fixing.at or (None, None)), fixing.bolt, fixing.into])
        for strap in tray.straps:
            self.straps.add_line([strap])

    # What it comes to

    def tray(self) -> Tray:
        """Return the tray that is described. Raises EditRefused where something is no number, or half a place."""
        said = {path: value_of(column, control) for path, (column, control) in self._asked.items()}
        built = _part(said, "built")
        own = {path: value for path, value in said.items() if "." not in path}
        return replace(
            self._tray,
            **own,
            battery=Battery(**_part(said, "battery")),
            gaps=TrayGaps(**_part(said, "gaps")),
            built=TrayBuilt(**built) if any(each not in {None, ""} for each in built.values()) else None,
            exits=tuple(TrayExit(*each) for each in self.exits.values()),
            fixings=tuple(_fixing(*each) for each in self.fixings.values()),
            straps=tuple(each for (each,) in self.straps.values() if each is not None),
        )

    def _show_inside(self) -> None:
        """Say how large the tray must be inside as things stand, and how far a built one is off."""
        try:
            tray = self.tray()
        except EditRefused as refused:
            self.inside.setText(refused.sentence)
            return
        self.inside.setText("\n".join(_inside_words(tray, self._plan)))
        self.off.setText("\n".join(_built_words(tray, self._plan)))


def _spoken(asked: LineColumn) -> LineColumn:
    """Return a question in the person's language."""
    choices = tuple((tr(words), value) for words, value in asked.choices)
    return replace(asked, head=tr(asked.head), empty=tr(asked.empty), choices=choices)


def _at(tray: Tray, path: str) -> Any:  # noqa: ANN401
    value: Any = tray
    for name in path.split("."):
        value = getattr(value, name, None)
    return value


def _part(said: dict[str, Any], part: str) -> dict[str, Any]:
    """Return what is said of a part of the tray."""
    return {path.partition(".")[2]: value for path, value in said.items() if path.startswith(f"{part}.")}


def _fixing(x: float | None, y: float | None, bolt: str, into: str) -> TrayFixing:
    if x is None and y is None:
        return TrayFixing(None, bolt, into)
    if x is None or y is None:
        raise EditRefused(tr("A fixing has only one of its two measures. Fill in both, or leave both blank."))
    return TrayFixing(Point(x, y), bolt, into)


def _inside_words(tray: Tray, plan: Plan) -> Iterable[str]:
    inside = inside_of(tray, plan.rules)
    for each in (inside.length, inside.width, inside.height):
        if each.total is None:
            yield tr("Inside {}: not known yet; what is the {}?").format(tr(each.name), ", ".join(each.missing))
        else:
            yield tr("Inside {}: {} needed.").format(tr(each.name), length_text(each.total, plan.job.units))


def _built_words(tray: Tray, plan: Plan) -> Iterable[str]:
    units, inside, built = plan.job.units, inside_of(tray, plan.rules), tray.built or TrayBuilt()
    for needed, is_built in ((inside.length, built.length), (inside.width, built.width), (inside.height, built.height)):
        over = None if is_built is None else built_over(needed.total, is_built)
        if over is not None:
            yield tr("Inside {}: {}.").format(tr(needed.name), _off_words(over, over_of(tray.units or units), units))


def _off_words(over: float, allowed: float, units: Units) -> str:
    if over < 0:
        return tr("{} TOO SMALL").format(length_text(-over, units))
    words = length_text(over, units)
    return tr("{} larger than needed").format(words) if over > allowed else tr("as needed")
