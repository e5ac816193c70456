"""Words on a body: how wide they are, and which way up they stay readable."""

from boardplan.drawing.picture import Ink, Words
from boardplan.geometry.point import Point

WIDTH_PER_CAPITAL = 0.92
"""Average width of a letter as a share of the height of a capital, in the bold face; measured roughly."""

_SHORT = 2


def width_of(text: str, height: float) -> float:
    """Return about how wide a text is, in mm."""
    return len(text) * height * WIDTH_PER_CAPITAL


def readable_turn(own: float, turn: float) -> float:
    """Return the turn of words on a turned body so that they read from below or from the right.

    `own` is their turn on the body, `turn` that of the body; the result is again a turn on the body.
    """
    on_wall = (own + turn) % 360
    return (own + 180) % 360 if 90 < on_wall <= 270 else own % 360  # noqa: PLR2004 - upside down


def body_words(at: Point, text: str, height: float, ink: Ink, turn: float) -> Words:
    """Return words on a body that is turned; signs of one or two characters stay upright."""
    own = (-turn) % 360 if len(text) <= _SHORT else readable_turn(0, turn)
    return Words(at, text, height, ink, turn=own, bold=True)
