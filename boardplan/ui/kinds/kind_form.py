"""Kind form: what is measured on a unit, in the order in which one does it with a caliper in hand."""

from collections.abc import Iterable
from dataclasses import replace
from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QComboBox, QGridLayout, QLabel, QLineEdit, QVBoxLayout, QWidget

from boardplan.editing.kind_edits import sized, with_holes, with_room, with_terminals
from boardplan.editing.refused import EditRefused
from boardplan.geometry.point import Point
from boardplan.geometry.units import tidy_number
from boardplan.model.component_kind import ComponentKind, KeepClear, Terminal
from boardplan.model.job import Units
from boardplan.model.shelf import Shelf
from boardplan.ui.controls.choice import Choice
from boardplan.ui.controls.length_edit import LengthEdit
from boardplan.ui.controls.lines import LineColumn, Lines
from boardplan.ui.theme import Themes
from boardplan.ui.words import tr

_LEAVES: tuple[tuple[str, float | None], ...] = (
    ("any way", None), ("up", 90.0), ("down", 270.0), ("left", 180.0), ("right", 0.0),
)  # fmt: skip
_SORTS = ("stud", "clamp", "gland", "plug", "blade")
_POLES = ("", "+", "-", "L", "L1", "L2", "N", "PE", "signal")
_FACES = ("top", "bottom", "left", "right", "front")
_REASONS = ("air", "hands", "cover", "fuse pull", "handle", "lift-off", "gland")
_TURNS: tuple[tuple[str, tuple[float, ...] | None], ...] = (
    ("any way", None), ("upright only", (0.0,)), ("upright or upside down", (0.0, 180.0)),
    ("by quarters", (0.0, 90.0, 180.0, 270.0)),
)  # fmt: skip
_BACKING: tuple[tuple[str, bool | None], ...] = (("not said", None), ("asks for a pad", True), ("needs none", False))
_STATES = (
    ("typical: measure again", "typical"), ("from its sheet", "from sheet"), ("measured on the unit", "checked"),
    ("used on a finished job", "used"),
)  # fmt: skip


class KindForm(QWidget):
    """The form; says when anything in it was changed, and returns the kind it describes."""

    changed = Signal()

    def __init__(self, kind: ComponentKind, shelf: Shelf, units: Units, themes: Themes) -> None:
        super().__init__()
        self._kind, self._units, self._themes = kind, units, themes
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 12, 0)
        self._column.setSpacing(8)
        self._what(kind, shelf)
        self._body(kind)
        self._fixing(kind, shelf)
        self._landing(kind)
        self._rooms(kind)
        self._hanging(kind)
        self._column.addStretch(1)

    # What is asked, section by section

    def _what(self, kind: ComponentKind, shelf: Shelf) -> None:
        self.name = self._text(tr("Name"), kind.name)
        self.family = QComboBox()
        self.family.setEditable(True)
        self.family.setAccessibleName(tr("Family"))
        self.family.addItems(list(dict.fromkeys((kind.family, *shelf.families()))))
        self.family.setCurrentText(kind.family)
        self.family.currentTextChanged.connect(self._tell)
        self.prefix = self._text(tr("Letters of its reference"), kind.prefix)
        self.state = self._choice(tr("Where its measures come from"), _STATES, kind.data_state)
        self._section(tr("What it is"))
        self._rows(
            ((tr("name"), self.name), (tr("family"), self.family), (tr("letters"), self.prefix),
             (tr("its measures"), self.state))
        )  # fmt: skip

    def _body(self, kind: ComponentKind) -> None:
        box = kind.box
        self.width_edit = self._length(tr("Width"), box.width)
        self.height_edit = self._length(tr("Height"), box.height)
        self.depth_edit = self._length(tr("Depth"), kind.depth)
        self.mass = self._text(tr("Mass in kg"), _number_text(kind.mass), tr("not weighed"))
        self._section(tr("Body: widest, highest, how far it stands off the board"))
        self._rows(
            ((tr("width"), self.width_edit), (tr("height"), self.height_edit), (tr("depth"), self.depth_edit),
             (tr("kg"), self.mass))
        )  # fmt: skip

    def _fixing(self, kind: ComponentKind, shelf: Shelf) -> None:
        columns = (
            LineColumn(tr("middle from the left"), "length", tr("?")),
            LineColumn(tr("from below"), "length", tr("?")),
        )
        self.holes = self._lines(columns, tr("Add a hole"), (list(each.position) for each in kind.holes))
        self.flange = self._length(tr("Flange under the screw head"), kind.flange)
        fasteners = [(tr("not said"), "")] + [(each.name, each.id) for each in shelf.fasteners.values()]
        self.fastener = self._choice(tr("Fastener"), fasteners, kind.fastener)
        self._section(tr("Mounting holes: from the left and lower edge of the body"))
        self._column.addWidget(self.holes)
        self._rows(((tr("flange"), self.flange), (tr("fastener"), self.fastener)))

    def _landing(self, kind: ComponentKind) -> None:
        columns = (
            LineColumn(tr("name"), "text", tr("as printed"), stretch=2),
            LineColumn(tr("from the left"), "length", tr("?"), stretch=2),
            LineColumn(tr("from below"), "length", tr("?"), stretch=2),
            LineColumn(tr("off the board"), "length", tr("?"), stretch=2),
            LineColumn(tr("sort"), "choice", choices=tuple((tr(each), each) for each in _SORTS), stretch=2),
            LineColumn(tr("thread"), "text", tr("M8")),
            LineColumn(tr("leaves"), "choice", choices=tuple((tr(words), each) for words, each in _LEAVES), stretch=2),
            LineColumn(tr("pole"), "choice", choices=tuple((each or tr("none"), each) for each in _POLES)),
            LineColumn(tr("Nm"), "number", tr("?")),
        )
        lines = (
            [each.id, *each.position, each.z, each.sort, each.size, each.exit, each.pole, each.torque]
            for each in kind.terminals
        )
        self.terminals = self._lines(columns, tr("Add a terminal"), lines)
        self._section(tr("Terminals: where the middle of the stud or clamp is, and which way its cable leaves"))
        self._column.addWidget(self.terminals)

    def _rooms(self, kind: ComponentKind) -> None:
        columns = (
            LineColumn(tr("side"), "choice", choices=tuple((tr(each), each) for each in _FACES), stretch=2),
            LineColumn(tr("how far"), "length", tr("?"), stretch=2),
            LineColumn(tr("for"), "choice", choices=tuple((tr(each), each) for each in _REASONS), stretch=2),
            LineColumn(
                tr("who asks"), "choice", choices=((tr("good practice"), False), (tr("its sheet"), True)), stretch=2
            ),
        )
        lines = ([each.face, each.distance, each.reason, each.demanded] for each in kind.keep_clear)
        self.rooms = self._lines(columns, tr("Add room"), lines)
        self._section(tr("Room it needs: air, hands, covers"))
        self._column.addWidget(self.rooms)

    def _hanging(self, kind: ComponentKind) -> None:
        self.turns = self._choice(tr("How it may hang"), _TURNS, kind.allowed_turns)
        self.stage = self._choice(tr("Mounted"), ((tr("in the shop"), "shop"), (tr("on site"), "site")), kind.stage)
        self.backing = self._choice(tr("Behind it"), _BACKING, kind.non_combustible_backing)
        self.heat = self._text(tr("Heat at full load in W"), _number_text(kind.heat), tr("not said"))
        self.sensitive = QCheckBox(tr("suffers from heat below it"))
        self.sensitive.setChecked(kind.heat_sensitive)
        self.sensitive.clicked.connect(self._tell)
        self.note = self._text(tr("Note"), kind.note)
        self._section(tr("How it hangs"))
        self._rows(
            ((tr("may hang"), self.turns), (tr("mounted"), self.stage), (tr("behind it"), self.backing),
             (tr("heat W"), self.heat), ("", self.sensitive), (tr("note"), self.note))
        )  # fmt: skip

    # Controls

    def _section(self, words: str) -> None:
        label = QLabel(words)
        label.setProperty("part", "section")
        label.setWordWrap(True)
        if self._column.count():
            self._column.addSpacing(8)
        self._column.addWidget(label)

    def _rows(self, rows: Iterable[tuple[str, QWidget]]) -> None:
        """Lay controls out in two columns, each after its words."""
        grid = QGridLayout()
        grid.setHorizontalSpacing(8)
        grid.setVerticalSpacing(6)
        grid.setColumnStretch(1, 1)
        grid.setColumnStretch(3, 1)
        for number, (words, control) in enumerate(rows):
            label = QLabel(words)
            label.setProperty("part", "quiet")
            label.setBuddy(control)
            row, column = divmod(number, 2)
            grid.addWidget(label, row, 2 * column)
            grid.addWidget(control, row, 2 * column + 1)
        self._column.addLayout(grid)

    def _text(self, name: str, text: str, empty: str = "") -> QLineEdit:
        edit = QLineEdit(text)
        edit.setAccessibleName(name)
        edit.setPlaceholderText(empty)
        edit.editingFinished.connect(self._tell)
        return edit

    def _length(self, name: str, value: float | None) -> LengthEdit:
        edit = LengthEdit(name, may_be_empty=True, empty=tr("not measured"))
        edit.show_value(value, self._units)
        edit.changed.connect(self._tell)
        return edit

    def _choice(self, name: str, choices: Iterable[tuple[str, Any]], value: Any) -> Choice:  # noqa: ANN401
        box = Choice(name)
        for words, each in choices:
            box.addItem(tr(words), each)
        values = [box.itemData(number) for number in range(box.count())]
        if value not in values:
            box.addItem(tr("as it was"), value)
            values.append(value)
        box.setCurrentIndex(values.index(value))
        box.activated.connect(self._tell)
        return box

    def _lines(self, columns: tuple[LineColumn, ...], add: str, lines: Iterable[list[Any]]) -> Lines:
        table = Lines(columns, add, self._units, self._themes)
        for line in lines:
            table.add_line(line)
        table.changed.connect(self._tell)
        return table

    def _tell(self) -> None:
        self.changed.emit()

    # What it comes to

    def kind(self) -> ComponentKind:
        """Return the kind that is described. Raises EditRefused where something is no measure, or none."""
        kind = sized(
            self._kind, self.width_edit.value or 0.0, self.height_edit.value or 0.0, self.depth_edit.value or 0.0
        )
        kind = with_holes(kind, self.holes.values())
        kind = with_terminals(kind, [self._terminal(*each) for each in self.terminals.values()])
        kind = with_room(kind, [KeepClear(face, far or 0.0, *why) for face, far, *why in self.rooms.values()])
        name, prefix = self.name.text().strip(), self.prefix.text().strip()
        if not name:
            raise EditRefused(tr("What is it called? A name is needed."))
        if not (prefix.isascii() and prefix.isalpha() and prefix.isupper() and len(prefix) <= _LONGEST_PREFIX):
            raise EditRefused(tr("Which letters begin its reference? Expected one to six capital letters."))
        return replace(
            kind,
            name=name, family=self.family.currentText().strip(), prefix=prefix, data_state=self.state.currentData(),
            mass=_positive(self.mass, tr("Mass")), flange=self.flange.value, fastener=self.fastener.currentData(),
            allowed_turns=self.turns.currentData(), stage=self.stage.currentData(),
            non_combustible_backing=self.backing.currentData(), heat=_positive(self.heat, tr("Heat")),
            heat_sensitive=self.sensitive.isChecked(), note=self.note.text().strip(),
        )  # fmt: skip

    def _terminal(self, *said: Any) -> Terminal:  # noqa: ANN401
        """Return a terminal of a line; what the form does not ask stays as it was."""
        name, x, y, z, sort, size, leaves, pole, torque = said
        if x is None or y is None:
            raise EditRefused(tr("Where is terminal {}? Both distances are needed.").format(name or "?"))
        if z is None:
            raise EditRefused(tr("How far off the board is terminal {}?").format(name or "?"))
        held = self._kind.terminal(name) or Terminal(name, Point(x, y), z, sort)
        return replace(
            held, id=name, position=Point(x, y), z=z, sort=sort, size=size, exit=leaves, pole=pole, torque=torque
        )


_LONGEST_PREFIX = 6


def _number_text(value: float | None) -> str:
    return "" if value is None else tidy_number(value, 3)


def _positive(edit: QLineEdit, words: str) -> float | None:
    text = edit.text().strip()
    if not text:
        return None
    try:
        value = float(text.replace(",", "."))
    except ValueError:
        value = -1.0
    if not 0 < value < 1e5:  # noqa: PLR2004 - more is a slip
        raise EditRefused(tr("{}: '{}' is not a number above 0.").format(words, text))
    return value
