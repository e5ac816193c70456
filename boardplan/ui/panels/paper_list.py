"""Paper list: all papers of a job, each with a box to tick for what is written, and one picked to be looked at."""

from PySide6.QtCore import Signal

from boardplan.drawing.palette import Theme
from boardplan.output.papers import ALL_PAPERS
from boardplan.ui.tables.row_list import RowList
from boardplan.ui.tables.rows import Row
from boardplan.ui.words import tr


class PaperList(RowList):
    """The table of papers as rows."""

    changed = Signal()
    """Other papers are ticked."""

    def __init__(self, theme: Theme) -> None:
        super().__init__(tr("Papers"), theme)
        self._left_out: set[str] = set()
        self.ticked.connect(self._tick)
        self._show()

    @property
    def chosen(self) -> tuple[str, ...]:
        """The papers ticked, by their keys."""
        return tuple(each.key for each in ALL_PAPERS if each.key not in self._left_out)

    @property
    def all_chosen(self) -> bool:
        """Whether every paper is ticked."""
        return not self._left_out

    def tick_all(self) -> None:
        """Tick every paper, or none where every one is ticked."""
        self._left_out = {each.key for each in ALL_PAPERS} if self.all_chosen else set()
        self._show()
        self.changed.emit()

    def _tick(self, key: str) -> None:
        self._left_out ^= {key}
        self._show()
        self.changed.emit()

    def _show(self) -> None:
        self.show_rows([self._row(each.key, tr(each.name), tr(each.use)) for each in ALL_PAPERS])

    def _row(self, key: str, name: str, use: str) -> Row:
        ticked = key not in self._left_out
        written = tr("will be written") if ticked else tr("will not be written")
        return Row(key, name, ticked=ticked, quiet=not ticked, tip=use, spoken=f"{use}, {written}")
