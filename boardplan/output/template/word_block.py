"""Word block: some lines of words that are placed together on a drawing, and where they came to stand."""

from collections.abc import Sequence
from dataclasses import dataclass

from boardplan.drawing.picture import Area, Picture, placed_picture
from boardplan.geometry.placement import Placement
from boardplan.geometry.point import Box, Point
from boardplan.output.printing.lettering import Measure, TextLine, stacked


@dataclass(frozen=True, slots=True)
class Inscription:
    """Words in their place. A sheet shows them whole or not at all; `of` is the hole they belong to, if any."""

    box: Box
    picture: Picture
    of: str = ""


@dataclass(frozen=True, slots=True)
class Block:
    """Some lines of words as one block: its size, and its marks from its lower left."""

    width: float
    height: float
    marks: Picture

    def at(self, box: Box, extra: Picture = (), of: str = "") -> Inscription:
        """Return the words in a box of the block's size, on a ground that hides the lines below."""
        ground = Area((box.grown(0.3).corners(),), "paper", opacity=0.85)
        words = placed_picture(self.marks, Placement(0, Point(box.left, box.bottom)))
        return Inscription(box, (*extra, ground, *words), of)

    def upright_at(self, box: Box) -> Inscription:
        """Return the words turned to read from the right, in a box as wide as the block is high."""
        return Inscription(box, placed_picture(self.marks, Placement(90, Point(box.right, box.bottom))))


def block_of(lines: Sequence[TextLine], measure: Measure, indent: float = 0.0) -> Block:
    """Return lines as a block, the first of them indented."""
    stack = stacked(lines, Point(0, 0))
    height = 0.3 * stack[-1].height - stack[-1].at.y
    words = placed_picture(stack, Placement(0, Point(0, height)))
    if indent:
        words = (*placed_picture(words[:1], Placement(0, Point(indent, 0))), *words[1:])
    widths = [measure(text, size, bold=bold) for text, size, bold, _ in lines]
    widths[0] += indent
    return Block(max(widths), height, words)
