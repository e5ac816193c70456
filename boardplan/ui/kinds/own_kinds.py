"""Own kinds: the commands for one's own shelf - measure, change, bring in, give away, take off."""

from dataclasses import replace
from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QFileDialog, QMenu, QMessageBox, QWidget

from boardplan.editing.component_edits import renew_kind
from boardplan.editing.kind_edits import free_id, new_kind
from boardplan.editing.refused import EditRefused
from boardplan.files.faults import BadFile
from boardplan.files.own_shelf import (
    ENDING,
    drop_kind,
    keep_kind,
    own_shelf_folder,
    read_kind,
    read_own_shelf,
    write_kind,
)
from boardplan.model.component_kind import ComponentKind
from boardplan.ui.desk import Desk
from boardplan.ui.dialogs.fault_dialog import show_bad_file, show_disk_fault
from boardplan.ui.kinds.kind_editor import KindEditor
from boardplan.ui.words import counted, tr


class OwnKinds(QObject):
    """Carries the commands out for a desk; what can't be read or written is said, nothing is lost."""

    def __init__(self, desk: Desk, parent: QWidget) -> None:
        super().__init__(parent)
        self._desk = desk
        self._parent = parent

    @property
    def kinds(self) -> dict[str, ComponentKind]:
        """A person's own kinds by id."""
        return read_own_shelf(own_shelf_folder()).kinds

    def fill(self, menu: QMenu, kind: ComponentKind | None) -> None:
        """Fill a menu with what can be done, to a kind where one is picked."""
        menu.addAction(tr("Measure a new unit..."), self.measure)
        if kind is not None:
            own = kind.id in self.kinds
            words = tr("Change {}...") if own else tr("Make {} my own...")
            menu.addAction(words.format(kind.name), partial(self.change, kind))
            menu.addAction(tr("Give {} away as a file...").format(kind.name), partial(self.give, kind))
            if own:
                menu.addAction(tr("Take {} off my shelf").format(kind.name), partial(self.take_off, kind))
        menu.addSeparator()
        menu.addAction(tr("Bring in a file..."), self.bring_in)
        for bad in read_own_shelf(own_shelf_folder()).bad:
            menu.addAction(
                tr("What is wrong with {}?").format(Path(bad.file).name), partial(show_bad_file, bad, self._parent)
            )

    def measure(self) -> None:
        """Measure a unit that is on no shelf."""
        self._edit(new_kind(self._desk.shelf.kinds))

    def change(self, kind: ComponentKind) -> None:
        """Change one's own kind, or make another's one's own under a new name."""
        self._edit(kind)

    def _edit(self, kind: ComponentKind) -> None:
        editor = KindEditor(kind, self._desk.shelf, self._desk.plan.job.units, self._desk.themes, self._parent)
        if editor.exec():
            self.keep(editor.kind, kind)

    def keep(self, kind: ComponentKind, before: ComponentKind) -> None:
        """Keep a kind on one's own shelf: under its id where it is one's own already, else under one of its own."""
        if before.id not in self.kinds:
            taken = {*self._desk.shelf.kinds, *self._desk.session.committed_plan.kinds}
            kind = replace(kind, id=free_id(kind.name, taken))
        try:
            keep_kind(kind, own_shelf_folder())
        except OSError as error:
            show_disk_fault(error, str(own_shelf_folder()), self._parent)
            return
        self._desk.shelf_changed.emit()
        self._renew(kind)

    def _renew(self, kind: ComponentKind) -> None:
        """Ask whether those on the board change as well, and say which cables lose their terminal."""
        plan, fasteners = self._desk.session.committed_plan, self._desk.shelf.fasteners
        members = [each.id for each in plan.components.values() if each.kind == kind.id]
        if not members or plan.kinds[kind.id] == kind:
            return
        try:
            _, lost = renew_kind(plan, kind, fasteners)
        except EditRefused as refused:
            self._desk.said.emit(refused.sentence)
            return
        box = QMessageBox(self._parent)
        box.setWindowTitle(tr("On this board too?"))
        words = counted("%n component here is of this kind: {}.|%n components here are of this kind: {}.", len(members))
        box.setText(words.format(", ".join(members)))
        if lost:
            box.setInformativeText(tr("These cables lose their terminal and go: {}.").format(", ".join(lost)))
        change = box.addButton(tr("Change them too"), QMessageBox.ButtonRole.AcceptRole)
        box.addButton(tr("Leave them"), QMessageBox.ButtonRole.RejectRole)
        box.setDefaultButton(change)
        box.exec()
        if box.clickedButton() is change:
            self._desk.edit(tr("Measure {} anew").format(kind.name), lambda each: renew_kind(each, kind, fasteners)[0])

    def give(self, kind: ComponentKind) -> None:
        """Write a kind to a file for somebody else."""
        wanted = str(Path.home() / f"{kind.id}{ENDING}")
        chosen, _ = QFileDialog.getSaveFileName(self._parent, tr("Give a kind away"), wanted, f"*{ENDING}")
        if chosen:
            try:
                write_kind(kind, Path(chosen))
            except OSError as error:
                show_disk_fault(error, chosen, self._parent)

    def bring_in(self) -> None:
        """Put a kind from a file on one's own shelf; one of the same id is asked about first."""
        chosen, _ = QFileDialog.getOpenFileName(self._parent, tr("Bring in a kind"), "", "*.json")
        if not chosen:
            return
        try:
            kind = read_kind(Path(chosen))
        except BadFile as bad:
            show_bad_file(bad, self._parent)
            return
        if kind.id in self.kinds and not self._sure(
            tr("{} is on your shelf already. Put this one in its place?"), kind
        ):
            return
        try:
            keep_kind(kind, own_shelf_folder())
        except OSError as error:
            show_disk_fault(error, str(own_shelf_folder()), self._parent)
            return
        self._desk.shelf_changed.emit()

    def take_off(self, kind: ComponentKind) -> None:
        """Take a kind off one's own shelf; boards that have it keep it."""
        if self._sure(tr("Take {} off your shelf? Boards that have it keep it."), kind):
            try:
                drop_kind(kind.id, own_shelf_folder())
            except OSError as error:
                show_disk_fault(error, str(own_shelf_folder()), self._parent)
            self._desk.shelf_changed.emit()

    def _sure(self, words: str, kind: ComponentKind) -> bool:
        yes, no = QMessageBox.StandardButton.Yes, QMessageBox.StandardButton.No
        return QMessageBox.question(self._parent, tr("My shelf"), words.format(kind.name), yes | no, no) == yes
