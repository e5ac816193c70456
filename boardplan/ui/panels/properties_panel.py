"""Properties panel: the form of what is selected, and the buttons that act on it."""

from functools import partial
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QScrollArea, QVBoxLayout, QWidget

from boardplan.editing.component_edits import About, turn_components
from boardplan.editing.thing_edits import remove_things
from boardplan.model.cable import Cable
from boardplan.model.component import Component
from boardplan.model.plan import Plan
from boardplan.ui.controls.short_label import ShortLabel
from boardplan.ui.controls.small_parts import hairline, small_button
from boardplan.ui.desk import Desk
from boardplan.ui.panels.beyond_exit import BeyondExit
from boardplan.ui.panels.cable_sum import CableSum
from boardplan.ui.panels.form import Form
from boardplan.ui.panels.fuses_row import FusesRow
from boardplan.ui.panels.thing_fields import THING_FIELDS
from boardplan.ui.thing_words import title_of
from boardplan.ui.words import counted, tr

_HEAD_ALONE, _AS_HIGH_AS_IT_LIKES = 56, 16_777_215


class PropertiesPanel(QWidget):
    """Shows one form at a time; several things selected show only what can be done to all."""

    def __init__(self, desk: Desk) -> None:  # noqa: PLR0915 - a form is one list of statements
        super().__init__()
        self._desk = desk
        self.form: Form | None = None
        self.sum: CableSum | None = None
        self.beyond: BeyondExit | None = None
        self.fuses: FusesRow | None = None
        self._shown: tuple[type, ...] = ()
        self._seen = ""
        self._title = QLabel()
        self._title.setProperty("part", "heading")
        self._detail = ShortLabel()
        self._detail.setProperty("part", "small")
        self._turn = small_button(desk.themes.theme, "turn", tr("Turn by a quarter (R)"), self.turn)
        self._remove = small_button(desk.themes.theme, "delete", tr("Remove (Del)"), self.remove)
        self._area = QScrollArea()
        self._area.setWidgetResizable(True)
        self._area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        head = QHBoxLayout()
        head.setContentsMargins(16, 8, 8, 4)
        head.addWidget(self._title)
        head.addSpacing(8)
        head.addWidget(self._detail, 1)
        head.addWidget(self._turn)
        head.addWidget(self._remove)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(hairline())
        column.addLayout(head)
        column.addWidget(self._area, 1)
        desk.signals.selection_changed.connect(self.refresh)
        desk.signals.seen_changed.connect(self.refresh)
        desk.step_changed.connect(self.refresh)
        self.refresh()

    def refresh(self) -> None:
        """Show what is selected now."""
        things = self._things()
        self.setVisible(bool(things) and self._desk.step != "pack")
        self.setMaximumHeight(_HEAD_ALONE if len(things) > 1 else _AS_HIGH_AS_IT_LIKES)
        if not things:
            self._shown = ()
            return
        active = things[-1]
        components = [each for each in things if isinstance(each, Component)]
        self._turn.setVisible(bool(components))
        if len(things) > 1:
            self._title.setText(counted("%n thing|%n things", len(things)))
            self._detail.setText(", ".join(each.id for each in things[:4]) + (" ..." if len(things) > 4 else ""))  # noqa: PLR2004
        else:
            self._title.setText(active.id)
            self._detail.setText(self._kind_words(active))
        if active.id != self._seen:
            self._seen = active.id
            self._area.verticalScrollBar().setValue(0)
        sorts = tuple(type(each) for each in things)
        if sorts != self._shown:
            self._shown = sorts
            self._show_form(active if len(things) == 1 else None)
        elif self.form is not None:
            self.form.refresh()
        self._show_more(active)

    def _show_more(self, thing: Any) -> None:  # noqa: ANN401
        """Show what stands above or below the form of some sorts of things."""
        if self.beyond is not None and isinstance(thing, Cable):
            self.beyond.show_cable(thing)
        if self.fuses is not None and isinstance(thing, Component):
            self.fuses.show_component(thing)
        if self.sum is not None:
            self._show_sum(thing.id)

    def _show_sum(self, cable: str) -> None:
        known = self._desk.review
        if self.sum is not None:
            self.sum.show_length(known.lengths.get(cable), known.ways.get(cable), about=cable in known.stretched)

    def _kind_words(self, thing: Any) -> str:  # noqa: ANN401
        if isinstance(thing, Component):
            return self._desk.plan.kind_of(thing).name
        return title_of(thing).lower()

    def focus_form(self) -> None:
        """Put the cursor into the first field."""
        if self.form is not None and self.isVisible():
            self.form.focus_first()

    def turn(self) -> None:
        """Turn the selected components by a quarter."""
        ids = [each.id for each in self._things() if isinstance(each, Component)]
        if ids:
            about: About = "each" if len(ids) == 1 else "group"
            self._desk.edit(tr("Turn"), lambda plan: turn_components(plan, ids, 90, about))

    def remove(self) -> None:
        """Remove what is selected."""
        ids = [each.id for each in self._things()]
        if ids:
            self._desk.edit(tr("Remove {}").format(", ".join(ids[:3])), lambda plan: remove_things(plan, ids))

    def _things(self) -> list[Any]:
        plan = self._desk.plan
        return [plan.things[each] for each in self._desk.session.selection.ids if each in plan.things]

    def _show_form(self, thing: Any) -> None:  # noqa: ANN401
        self.form = None
        self.sum = None
        self.beyond = None
        self.fuses = None
        if thing is None:
            self._area.setWidget(QWidget())
            self._area.setVisible(False)
            return
        holder = QWidget()
        column = QVBoxLayout(holder)
        column.setContentsMargins(16, 4, 12, 12)
        column.setSpacing(12)
        if isinstance(thing, Cable):
            self.sum = CableSum(self._desk)
            self._show_sum(thing.id)
            self.beyond = BeyondExit(self._desk)
            self.beyond.show_cable(thing)
            for part in (self.sum, self.beyond, hairline()):
                column.addWidget(part)
        form = Form(self._desk, THING_FIELDS[type(thing)], partial(_active_thing, self._desk, type(thing)))
        self.form = form
        column.addWidget(form)
        if isinstance(thing, Component):
            self.fuses = FusesRow(self._desk)
            column.addWidget(self.fuses)
            self.fuses.show_component(thing)
        column.addStretch(1)
        self._area.setWidget(holder)
        self._area.setVisible(True)


def _active_thing(desk: Desk, sort: type, plan: Plan) -> Any:  # noqa: ANN401
    thing = plan.things.get(desk.session.selection.active or "")
    return thing if isinstance(thing, sort) else None
