"""Beyond the exit: where a cable goes on to, and its legs from there - each with how far its length can be trusted."""

from dataclasses import replace
from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QLineEdit, QPushButton, QVBoxLayout, QWidget

from boardplan.editing.cable_edits import set_cable
from boardplan.geometry.units import length_text
from boardplan.model.cable import Cable, ExitEnd, Leg, OffBoardEnd
from boardplan.ui.controls.choice import Choice
from boardplan.ui.controls.length_edit import LengthEdit
from boardplan.ui.controls.small_parts import small_button
from boardplan.ui.desk import Desk
from boardplan.ui.trust_words import TRUST_WORDS
from boardplan.ui.words import tr


class BeyondExit(QWidget):
    """The legs of the end that leaves the board; hidden for a cable with both ends on it."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._shown: ExitEnd | OffBoardEnd | None = None
        self._cable = ""
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(6)

    def show_cable(self, cable: Cable) -> None:
        """Show the legs of a cable."""
        end = leaving_end(cable)
        self.setVisible(end is not None)
        if cable.id == self._cable and end is self._shown:
            return
        held = self._named_in_focus() if cable.id == self._cable else ""
        self._cable, self._shown = cable.id, end
        self._empty()
        if end is not None:
            self._fill(end)
        self._focus(held)

    def _named_in_focus(self) -> str:
        """Return the name of the control that has the keyboard, so that its successor gets it."""
        focus = self.focusWidget()
        return focus.accessibleName() if focus is not None and focus is self.window().focusWidget() else ""

    def _focus(self, name: str) -> None:
        places = (self._column.itemAt(number) for number in range(self._column.count()))
        held = (each.widget() for each in places if each is not None)
        for part in (each for each in held if name and each is not None):
            for control in (part, *part.findChildren(QWidget)):
                if control.accessibleName() == name:
                    part.show()  # the layout would do so later, and what is hidden takes no focus
                    control.setFocus(Qt.FocusReason.TabFocusReason)
                    return

    def _empty(self) -> None:
        while self._column.count():
            held = self._column.takeAt(0)
            if held is not None and (widget := held.widget()) is not None:
                widget.hide()
                widget.deleteLater()

    def _fill(self, end: ExitEnd | OffBoardEnd) -> None:
        legs = end.legs if isinstance(end, OffBoardEnd) else ()
        total = length_text(sum(leg.length for leg in legs), self._desk.plan.job.units)
        title = QLabel(tr("Beyond {}: {}").format(end.exit, total) if legs else tr("Beyond {}").format(end.exit))
        title.setProperty("part", "section")
        self._column.addWidget(title)
        name = QLineEdit(end.name if isinstance(end, OffBoardEnd) else "")
        name.setPlaceholderText(tr("What it goes on to"))
        name.setAccessibleName(tr("What the cable goes on to"))
        name.editingFinished.connect(partial(self._rename, name))
        self._column.addWidget(name)
        for number, leg in enumerate(legs):
            self._column.addWidget(self._leg(number, leg))
        add = QPushButton(tr("Add a leg"))
        add.setAccessibleName(tr("Add a leg"))
        add.clicked.connect(self._add)
        self._column.addWidget(add)

    def _leg(self, number: int, leg: Leg) -> QWidget:
        row = QWidget()
        line = QHBoxLayout(row)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(6)
        length = LengthEdit(tr("Length of leg {}").format(number + 1))
        length.show_value(leg.length, self._desk.plan.job.units)
        length.changed.connect(partial(self._set_length, number))
        trust = Choice(tr("How leg {} is known").format(number + 1))
        for value, words in TRUST_WORDS:
            trust.addItem(tr(words), value)
        trust.setCurrentIndex(trust.findData(leg.trust))
        trust.activated.connect(partial(self._set_trust, number))
        line.addWidget(length, 2)
        line.addWidget(trust, 3)
        words = tr("Remove leg {}").format(number + 1)
        line.addWidget(small_button(self._desk.themes.theme, "remove", words, partial(self._remove, number)))
        return row

    # Edits

    def _legs(self) -> tuple[Leg, ...]:
        return self._shown.legs if isinstance(self._shown, OffBoardEnd) else ()

    def _rename(self, edit: QLineEdit) -> None:
        held = self._shown.name if isinstance(self._shown, OffBoardEnd) else ""
        if edit.text().strip() != held:
            self._put(edit.text().strip(), self._legs(), tr("Change where {} goes on to").format(self._cable))

    def _set_length(self, number: int, value: float) -> None:
        self._put_leg(number, replace(self._legs()[number], length=value))

    def _set_trust(self, number: int, choice: int) -> None:
        self._put_leg(number, replace(self._legs()[number], trust=TRUST_WORDS[choice][0]))

    def _put_leg(self, number: int, leg: Leg) -> None:
        legs = self._legs()
        self._put(None, (*legs[:number], leg, *legs[number + 1 :]), tr("Change a leg of {}").format(self._cable))

    def _add(self) -> None:
        self._put(None, (*self._legs(), Leg(0.0, "estimated")), tr("Add a leg to {}").format(self._cable))
        self._focus(tr("Length of leg {}").format(len(self._legs())))

    def _remove(self, number: int) -> None:
        legs = self._legs()
        self._put(None, (*legs[:number], *legs[number + 1 :]), tr("Remove a leg of {}").format(self._cable))

    def _put(self, name: str | None, legs: tuple[Leg, ...], words: str) -> None:
        old = self._shown
        if old is None:
            return
        held = old.name if isinstance(old, OffBoardEnd) else ""
        new_name = held if name is None else name
        new: OffBoardEnd | ExitEnd = ExitEnd(old.exit, old.loop)
        if legs or new_name:
            rope, lug = (old.rope, old.lug) if isinstance(old, OffBoardEnd) else (None, None)
            new = OffBoardEnd(old.exit, new_name or tr("off the board"), legs, old.loop, rope, lug)
        cable = self._desk.session.committed_plan.cables[self._cable]
        if cable.start is old:
            self._desk.edit(words, lambda plan: set_cable(plan, cable.id, start=new))
        else:
            self._desk.edit(words, lambda plan: set_cable(plan, cable.id, end=new))


def leaving_end(cable: Cable) -> ExitEnd | OffBoardEnd | None:
    """Return the end of a cable that leaves the board, none where both stay on it."""
    return next((end for end in cable.ends if isinstance(end, (ExitEnd, OffBoardEnd))), None)
