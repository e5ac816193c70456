"""Trays dialog: the battery trays that a customer builds, one at a time; all that was changed is taken at once."""

from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from boardplan.editing.refused import EditRefused
from boardplan.editing.tray_edits import new_tray, refuse_unsound, with_trays
from boardplan.model.plan import Plan
from boardplan.model.tray import Tray
from boardplan.ui.controls.choice import Choice
from boardplan.ui.desk import Desk
from boardplan.ui.dialogs.asking_dialog import AskingDialog
from boardplan.ui.dialogs.tray_form import TrayForm
from boardplan.ui.theme import Themes
from boardplan.ui.words import tr


class TraysDialog(AskingDialog):
    """Shows one tray; what is wrong with it is said before another is shown."""

    def __init__(self, plan: Plan, themes: Themes, parent: QWidget | None = None) -> None:
        super().__init__(plan, tr("Battery trays"), self._edited, parent, (820, 640))
        self._themes = themes
        self.trays: list[Tray] = list(plan.trays)
        self._at = 0
        self.form: TrayForm | None = None
        self.choice = Choice(tr("Which tray"))
        self.choice.activated.connect(self._go_to)
        self.add = QPushButton(tr("Add a tray"))
        self.add.setAutoDefault(False)
        self.add.clicked.connect(self._add)
        self.remove = QPushButton(tr("Remove this tray"))
        self.remove.setAutoDefault(False)
        self.remove.clicked.connect(self._remove)
        self._empty = QLabel(tr("Trays that the customer builds before the crew comes. Add the first one."))
        self._empty.setProperty("part", "quiet")
        head, holder = QWidget(), QWidget()
        row = QHBoxLayout(head)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.choice, 1)
        row.addWidget(self.add)
        row.addWidget(self.remove)
        self._holder = QVBoxLayout(holder)
        self._holder.setContentsMargins(0, 0, 0, 0)
        self._holder.addWidget(self._empty)
        note = tr("A blank is a question on the customer's sheet. Gaps left blank are those of the rule set, if any.")
        self.lay_out([head], holder, note)
        self._show(0)
        (self.add if not self.trays else self.choice).setFocus()

    def _show(self, at: int) -> None:
        """Show a tray by its number, or that there is none."""
        self._at = at
        self.choice.clear()
        for tray in self.trays:
            self.choice.addItem(f"{tray.id}  {tray.name}".strip())
        self.choice.setCurrentIndex(at if self.trays else -1)
        self.choice.setEnabled(bool(self.trays))
        self.remove.setEnabled(bool(self.trays))
        self._empty.setVisible(not self.trays)
        if self.form is not None:
            self._holder.removeWidget(self.form)
            self.form.hide()
            self.form.deleteLater()
            self.form = None
        if self.trays:
            self.form = TrayForm(self.trays[at], self._plan, self._themes)
            self._holder.addWidget(self.form)
        self.say("")

    def _keep(self) -> bool:
        """Keep what is said of the tray shown; where it can't be, say why and return no."""
        try:
            self._settle()
        except EditRefused as refused:
            self.say(refused.sentence)
            return False
        return True

    def _settle(self) -> None:
        if self.form is not None:
            tray = self.form.tray()
            refuse_unsound(tray)
            self.trays[self._at] = tray

    def _go_to(self, at: int) -> None:
        if self._keep():
            self._show(at)
        else:
            self.choice.setCurrentIndex(self._at)

    def _add(self) -> None:
        if self._keep():
            self.trays.append(new_tray(self._plan, self.trays))
            self._show(len(self.trays) - 1)
            if self.form is not None:
                self.form.control("name").setFocus()

    def _remove(self) -> None:
        del self.trays[self._at]
        self._show(max(0, self._at - 1))

    def _edited(self, plan: Plan) -> Plan:
        self._settle()
        return with_trays(plan, self.trays)


def ask_trays(desk: Desk, parent: QWidget | None) -> None:
    """Ask for the battery trays of the job."""
    dialog = TraysDialog(desk.session.committed_plan, desk.themes, parent)
    if dialog.exec():
        desk.edit(tr("Change the battery trays"), dialog.edited)
    dialog.deleteLater()
