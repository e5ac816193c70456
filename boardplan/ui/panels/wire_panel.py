"""Wire panel: the cables with their cut lengths, the channels with their fill, the section the next channel gets."""

from collections.abc import Iterator

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLabel, QLineEdit, QPushButton, QVBoxLayout, QWidget

from boardplan.editing.thing_edits import remove_things
from boardplan.geometry.bends import straight_length
from boardplan.geometry.units import length_text, tidy_number
from boardplan.model.cable import Cable, CableEnd, OffBoardEnd, TerminalEnd
from boardplan.model.channel_section import ChannelSection
from boardplan.routing.lengths.length_sum import CutLength
from boardplan.ui.controls.small_parts import small_button
from boardplan.ui.desk import Desk
from boardplan.ui.panels.section import Section
from boardplan.ui.panels.sharing_left import SharingLeft
from boardplan.ui.panels.thing_fields import sections_of
from boardplan.ui.tables.row_list import RowList
from boardplan.ui.tables.rows import Row
from boardplan.ui.words import tr
from boardplan.ui.words_of_length import length_lines, length_tip


def end_words(end: CableEnd) -> str:
    """Return an end in short words."""
    if isinstance(end, TerminalEnd):
        return f"{end.component} {end.terminal}"
    return f"{end.exit} {end.name}" if isinstance(end, OffBoardEnd) else end.exit


def cable_rows(desk: Desk, wanted: str) -> Iterator[Row]:
    """Yield the rows of cables that hold all words wanted."""
    words = wanted.lower().split()
    plan, lengths = desk.plan, desk.review.lengths
    for cable in plan.cables.values():
        row = _cable_row(desk, cable, lengths.get(cable.id))
        if all(word in row.words.lower() for word in words):
            yield row


def _cable_row(desk: Desk, cable: Cable, length: CutLength | None) -> Row:
    plan = desk.plan
    title = f"{cable.id}  {end_words(cable.start)} \u2013 {end_words(cable.end)}"
    conductor = plan.conductors[cable.conductor].name
    count = f"{cable.count} x " if cable.count > 1 else ""
    pinned = tr(", pinned") if cable.pins else ""
    cut = tr("no way") if length is None or length.cut is None else length_text(length.cut, plan.job.units, 0)
    swatch = plan.rules.colours.get(cable.colour, "#8D9092")
    about = cable.id in desk.review.stretched
    return Row(
        cable.id,
        title,
        f"{count}{conductor}, {cable.colour}{pinned}",
        f"≈ {cut}" if about else cut,
        swatch=swatch,
        quiet=about,
        tip=length_tip(length),
        spoken=length_lines(length),
    )


def channel_rows(desk: Desk) -> Iterator[Row]:
    """Yield the rows of channels: section, length and how full each is where it is fullest."""
    plan, fills = desk.plan, desk.review.fills
    for channel in plan.channels.values():
        fill = fills.get(channel.id)
        percent = fill.fullest.percent if fill is not None and fill.fullest is not None else 0.0
        detail = tr("{} x {} mm, {} long").format(
            tidy_number(channel.width),
            tidy_number(channel.height),
            length_text(straight_length(channel.line), plan.job.units),
        )
        yield Row(channel.id, channel.id, detail, tr("{} % full").format(tidy_number(percent, 0)), sign="channel")


class WirePanel(QWidget):
    """Cables first: they are what is looked at most."""

    join_asked = Signal()
    section_chosen = Signal(object)

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self.search = QLineEdit()
        self.search.setPlaceholderText(tr("Search the cables"))
        self.search.setAccessibleName(tr("Search the cables"))
        self.search.setClearButtonEnabled(True)
        self.cables = RowList(tr("Cables"), desk.themes.theme)
        self.channels = RowList(tr("Channels"), desk.themes.theme)
        self.channels.grows()
        self.sharing = SharingLeft(desk)
        self._empty = QLabel(
            tr("No cable yet. Take Join (J) and go from a terminal to another one or to an exit, or pick both by name:")
        )
        self._empty.setWordWrap(True)
        self._empty.setProperty("part", "quiet")
        self._nothing = QLabel(tr("No cable is called that."))
        self._nothing.setProperty("part", "quiet")
        self._join = QPushButton(tr("Join by name..."))
        self._join.clicked.connect(self.join_asked)
        self.sections = QComboBox()
        self.sections.setAccessibleName(tr("Section of the next channel"))
        for section in sections_of(desk.shelf):
            self.sections.addItem(tr("{} mm").format(section.words), section)
        self.sections.activated.connect(self._section)
        self._lay_out()
        for rows in (self.cables, self.channels):
            rows.picked.connect(desk.select)
            rows.removed.connect(self._remove)
        self.search.textChanged.connect(self.refresh)
        desk.signals.seen_changed.connect(self.refresh)
        desk.signals.selection_changed.connect(self._pick)
        self.refresh()

    def _lay_out(self) -> None:
        top = QHBoxLayout()
        top.setContentsMargins(12, 12, 12, 0)
        top.addWidget(self.search, 1)
        top.addWidget(small_button(self._desk.themes.theme, "add", tr("Join by name"), self.join_asked.emit))
        middle = QVBoxLayout()
        middle.setContentsMargins(12, 8, 12, 8)
        middle.setSpacing(8)
        middle.addWidget(self._empty)
        middle.addWidget(self._join, 0, Qt.AlignmentFlag.AlignLeft)
        middle.addWidget(self._nothing)
        middle.addWidget(self.cables, 1)
        middle.addStretch(0)
        body = QWidget()
        inside = QVBoxLayout(body)
        inside.setContentsMargins(0, 0, 0, 0)
        next_one = QHBoxLayout()
        words = QLabel(tr("The next one is"))
        words.setProperty("part", "quiet")
        next_one.addWidget(words)
        next_one.addWidget(self.sections, 1)
        inside.addLayout(next_one)
        inside.addWidget(self.channels)
        inside.addWidget(self.sharing)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(top)
        column.addLayout(middle, 1)
        column.addWidget(Section(self._desk, tr("Channels"), body))

    def refresh(self) -> None:
        """Show cables and channels as they are now."""
        if not self.isVisible() and self.cables.rows:
            return
        rows = tuple(cable_rows(self._desk, self.search.text()))
        self.cables.show_rows(rows)
        self.channels.show_rows(tuple(channel_rows(self._desk)))
        none_at_all = not self._desk.plan.cables
        self._empty.setVisible(none_at_all)
        self._join.setVisible(none_at_all)
        self.search.setEnabled(not none_at_all)
        self._nothing.setVisible(not none_at_all and not rows)
        self.cables.setVisible(bool(rows))
        self._pick()

    def showEvent(self, event: object) -> None:  # noqa: D102
        super().showEvent(event)  # type: ignore[arg-type]
        self.refresh()

    def _pick(self) -> None:
        active = self._desk.session.selection.active
        self.cables.pick(active)
        self.channels.pick(active)

    def show_section(self, section: ChannelSection) -> None:
        """Show which section the next channel gets; one that is not on the shelf is added to the list."""
        sizes = (section.width, section.height)
        held = [self.sections.itemData(number) for number in range(self.sections.count())]
        alike = [number for number, each in enumerate(held) if (each.width, each.height) == sizes]
        if not alike:
            self.sections.addItem(tr("{} mm").format(section.words), section)
        self.sections.setCurrentIndex(alike[0] if alike else self.sections.count() - 1)

    def _section(self, number: int) -> None:
        self.section_chosen.emit(self.sections.itemData(number))

    def _remove(self, thing_id: str) -> None:
        self._desk.edit(tr("Remove {}").format(thing_id), lambda plan: remove_things(plan, [thing_id]))
