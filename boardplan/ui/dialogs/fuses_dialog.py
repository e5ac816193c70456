"""Fuses dialog: what is known of each fuse or breaker of a component, one line a place; unknown stays blank."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from boardplan.editing.fuse_edits import set_fuses
from boardplan.model.fuse import Fuse
from boardplan.model.fuse_place import FusePlace, fuse_in, places_on
from boardplan.model.plan import Plan
from boardplan.ui.controls.lines import LineColumn, Lines
from boardplan.ui.desk import Desk
from boardplan.ui.dialogs.asking_dialog import AskingDialog, small_words
from boardplan.ui.theme import Themes
from boardplan.ui.words import tr


def places_of(plan: Plan, thing: str | None) -> tuple[FusePlace, ...]:
    """Return the fuse places and breakers of a component; none of anything else."""
    component = plan.components.get(thing or "")
    return tuple(places_on(component, plan.kind_of(component))) if component is not None else ()


class FusesDialog(AskingDialog):
    """Asks for type, rating, voltage, breaking capacity and spare of each place."""

    def __init__(self, plan: Plan, component: str, themes: Themes, parent: QWidget | None = None) -> None:
        self._component, self._places = component, places_of(plan, component)
        breakers = any(each.breaker for each in self._places)
        title = tr("Breakers of {}") if breakers else tr("Fuses of {}")
        super().__init__(plan, title.format(component), self._edited, parent, (860, 180 + 34 * len(self._places[:9])))
        columns = (
            LineColumn(tr("place"), "fact", stretch=2),
            LineColumn(tr("type"), "text", tr("which sort?"), stretch=4),
            LineColumn(tr("rating A"), "number", "?", stretch=1),
            LineColumn(tr("voltage V"), "number", "?", stretch=1),
            LineColumn(tr("breaks kA"), "number", "?", stretch=1),
            LineColumn(tr("spares are kept"), "text", tr("where?"), stretch=3),
            LineColumn(tr("note"), "text", stretch=3),
        )
        self.table = Lines(columns, "", plan.job.units, themes)
        for place in self._places:
            fuse = fuse_in(plan, place)
            self.table.add_line(
                [place.name, fuse.type, fuse.rating_a, fuse.voltage_v, fuse.breaking_capacity_ka, fuse.spare, fuse.note]
            )
        inside = QWidget()
        column = QVBoxLayout(inside)
        column.setContentsMargins(0, 0, 8, 0)
        column.addWidget(self.table)
        column.addStretch(1)
        kind = plan.kind_of(plan.components[component])
        note = tr("The designer of the system decides ratings and types. What is not known stays blank.")
        self.lay_out([small_words(kind.name)], inside, note)
        self.table.lines[0][1].setFocus()

    def _edited(self, plan: Plan) -> Plan:
        lines = zip(self._places, self.table.values(), strict=True)
        return set_fuses(plan, self._component, [Fuse(place.place, *said) for place, (_, *said) in lines])


def ask_fuses(desk: Desk, parent: QWidget | None) -> None:
    """Ask for the fuses of the component that is selected; say so where it has no place for any."""
    plan, component = desk.session.committed_plan, desk.session.selection.active
    if component is None or not places_of(plan, component):
        words = tr("{} has no fuse places and is no breaker.").format(component) if component else ""
        desk.said.emit(words or tr("Select a component that has fuses first."))
        return
    dialog = FusesDialog(plan, component, desk.themes, parent)
    if dialog.exec():
        desk.edit(tr("Change the fuses of {}").format(component), dialog.edited)
    dialog.deleteLater()
