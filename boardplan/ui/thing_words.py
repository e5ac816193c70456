"""Thing words: what each sort of thing is called."""

from typing import Any

from boardplan.model.board import BackPart, Board, BoardFixing, Exit, Framing, NoGoBox
from boardplan.model.cable import Cable
from boardplan.model.channel import Channel
from boardplan.model.component import Component
from boardplan.model.job import Job
from boardplan.ui.words import tr


def title_of(thing: Any) -> str:  # noqa: ANN401
    """Return what a sort of thing is called above its form."""
    names = {
        Component: tr("Component"),
        Channel: tr("Channel"),
        Cable: tr("Cable"),
        Framing: tr("Framing"),
        NoGoBox: tr("No-go box"),
        Exit: tr("Exit"),
        BoardFixing: tr("Board fixing"),
        BackPart: tr("Part on the back"),
        Board: tr("Board"),
        Job: tr("Job"),
    }
    return names[type(thing)]
