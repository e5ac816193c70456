"""Channel sharing, rows: what cables may not exceed in a piece, its room itself and what follows from it."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
import numpy.typing as npt

Numbers: TypeAlias = npt.NDArray[np.float64]
Integers: TypeAlias = npt.NDArray[np.int64]


@dataclass(frozen=True)
class Row:
    """What each cable takes in a piece, and how much all together may take."""

    piece: int
    takes: Numbers
    most: float


@dataclass(frozen=True)
class Rows:
    """Rows in order: the piece of each, what each cable takes in it (a column for each), how much is allowed.

    No answer that overfills nothing breaks one, so that any prices of rows prove a bound.
    """

    pieces: Integers
    takes: Numbers
    most: Numbers

    def paid(self, prices: Numbers, pieces: int) -> Numbers:
        """Return what each cable (a column) pays in each piece (a row) at prices."""
        total = np.zeros((pieces, self.takes.shape[1]))
        dear = np.flatnonzero(prices > 0)
        np.add.at(total, self.pieces[dear], self.takes[dear] * prices[dear, None])
        return total

    def more(self, found: Sequence[Row]) -> "Rows":
        """Return the rows with others after them."""
        return Rows(
            np.concatenate([self.pieces, np.array([each.piece for each in found], dtype=np.int64)]),
            np.vstack([self.takes, *(each.takes for each in found)]),
            np.concatenate([self.most, np.array([each.most for each in found])]),
        )

    def only(self, kept: Integers) -> "Rows":
        """Return some of the rows."""
        return Rows(self.pieces[kept], self.takes[kept], self.most[kept])


def room_rows(rooms: Numbers, areas: Numbers) -> Rows:
    """Return the rows of the rooms themselves, one for each piece."""
    return Rows(np.arange(len(rooms)), np.tile(areas, (len(rooms), 1)), rooms)
