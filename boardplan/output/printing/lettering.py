"""Lettering: the four sizes of type on paper, and how wide and how high words come out."""

from collections.abc import Sequence
from typing import Protocol, TypeAlias

from boardplan.drawing.picture import Anchor, Ink, Words
from boardplan.geometry.point import Box, Point
from boardplan.geometry.units import mm_from_points

CAPITAL = 0.668
"""Height of a capital as a share of the type size, of the font we print with; a test compares it with the font."""
DESCENT = 0.24
"""How far letters like g reach below the line, as a share of the type size; measured on the font."""


def capital_height(points: float) -> float:
    """Return the height of a capital in mm at a type size in points."""
    return mm_from_points(points) * CAPITAL


FINE, PLAIN, LARGE, TITLE = (capital_height(points) for points in (7, 9, 12, 18))
"""The four sizes of type on paper, 7, 9, 12 and 18 points, as heights of a capital in mm."""
_ROUNDING = 1e-3  # a sum of widths may come out this much short, in mm
LEADING = 1.75
"""Distance from line to line as a multiple of the height of a capital."""


TextLine: TypeAlias = tuple[str, float, bool, Ink]
"""A line of words: the text, the height of its capitals in mm, whether it is bold, its ink."""


class Measure(Protocol):
    """Says how wide a text is in mm, at a height of its capitals in mm."""

    def __call__(self, text: str, height: float, *, bold: bool = False) -> float:
        """Return the width."""


def wrapped(text: str, width: float, height: float, measure: Measure, *, bold: bool = False) -> list[str]:
    """Return a text as lines no wider than a width; a single word that is wider is broken."""
    lines: list[str] = []
    for paragraph in text.split("\n"):
        line = ""
        for word in paragraph.split():
            longer = f"{line} {word}" if line else word
            if measure(longer, height, bold=bold) <= width + _ROUNDING:
                line = longer
                continue
            if line:
                lines.append(line)
            *full, line = _broken(word, width, height, measure, bold=bold)
            lines += full
        lines.append(line)
    return lines


def _broken(word: str, width: float, height: float, measure: Measure, *, bold: bool) -> list[str]:
    pieces = [""]
    for letter in word:
        if pieces[-1] and measure(pieces[-1] + letter, height, bold=bold) > width + _ROUNDING:
            pieces.append("")
        pieces[-1] += letter
    return pieces


def fitting_height(text: str, width: float, height: float, measure: Measure, *, bold: bool = False) -> float:
    """Return a height at which a text is no wider than a width, at most the one given."""
    wide = measure(text, height, bold=bold)
    return height if wide <= width else height * width / wide


def text_box(words: Words, measure: Measure) -> Box:
    """Return the box round words that are not turned, or turned by quarter turns."""
    wide = measure(words.text, words.height, bold=words.bold)
    left = {"start": 0.0, "middle": -wide / 2, "end": -wide}[words.anchor]
    low = -words.height / 2 if words.centred else 0.0
    below = words.height / CAPITAL * DESCENT
    corners = [Point(left, low - below), Point(left + wide, low + words.height)]
    turned = [corner.turned(words.turn) for corner in corners]
    xs, ys = [each.x for each in turned], [each.y for each in turned]
    return Box(min(xs), min(ys), max(xs), max(ys)).moved(*words.at)


def stacked(lines: Sequence[TextLine], at: Point, anchor: Anchor = "start") -> tuple[Words, ...]:
    """Return lines (text, height, bold, ink) one under the other, `at` the top of the first capital."""
    placed: list[Words] = []
    y = at.y
    for text, height, bold, ink in lines:
        y -= height
        placed.append(Words(Point(at.x, y), text, height, ink, anchor, bold=bold, centred=False))
        y -= height * (LEADING - 1)
    return tuple(placed)
