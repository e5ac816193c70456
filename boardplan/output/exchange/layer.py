"""Layer: a part of a board's drawing by what is to be done with it, as files for other programs know it."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

from boardplan.drawing.picture import Picture
from boardplan.geometry.point import Box

OUTLINE, CUT_OUTS, ASK_CUT_OUTS = "CUT-OUTLINE", "CUT-OPENINGS", "ASK-OPENINGS"
Role: TypeAlias = Literal["cut", "drill", "site", "clamp", "ask", "reference"]
"""What is to be done: cut, drilled in the shop, drilled on site, drilled once a cable lies there, asked about first,
or only looked at."""


@dataclass(frozen=True, slots=True)
class Layer:
    """Marks in board coordinates; the name is of capitals, digits, hyphens and dots, which every program takes."""

    name: str
    role: Role
    picture: Picture


@dataclass(frozen=True, slots=True)
class BoardDrawing:
    """All layers of a board, lowest first, within a box in board coordinates; what is left out has no layer."""

    title: str
    layers: tuple[Layer, ...]
    box: Box
