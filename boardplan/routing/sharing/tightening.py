"""Channel sharing, tightening: rows that the shares of the linear program break, though no whole cables do.

A cover found for one piece holds in every other that has no more room, so those known are tried everywhere first;
then come covers by rules of thumb, in every piece; then, a few pieces at a time, those that take a linear program.
"""

import numpy as np

from boardplan.routing.sharing.covers import SAFE, cover_row, may_have_cover, quick_cover_row
from boardplan.routing.sharing.rows import Numbers, Row
from boardplan.routing.sharing.sharing import ROOM_NOISE

EXCEEDED = 1e-4
"""By what part shares must break a row for it to count."""
_LOOKED = 500
"""At how many shares in pieces is looked for covers in a round that takes linear programs."""


class Tightening:
    """Looks for covers, and knows all that were found.

    `slow` says whether what is quick to find has been found, so that rounds take longer now.
    """

    def __init__(self, room: Numbers, areas: Numbers) -> None:
        """Begin with no covers; `room` by piece, `areas` by cable."""
        self._room, self._areas = room, areas
        self._known: list[tuple[float, Numbers]] = []
        self._next, self._unlooked = 0, len(room)
        self.slow = False

    @property
    def unlooked(self) -> bool:
        """Say whether there are pieces that the slow search has not looked at since it began anew."""
        return self._unlooked > 0

    def begin_anew(self) -> None:
        """Look at every piece again: shares have changed."""
        self._unlooked = len(self._room)

    def rows(self, inside: Numbers) -> list[Row]:
        """Return rows that shares break, at most one for each piece; `inside` is by piece and by cable."""
        found = self._known_elsewhere(inside) or self._kept(inside, range(len(self._room)), quick=True)
        if not found:
            self.slow = True
            found = self._kept(inside, self._next_pieces(inside), quick=False)
        return found

    def _known_elsewhere(self, inside: Numbers) -> list[Row]:
        """Return covers found in pieces with no less room that are broken here too."""
        if not self._known:
            return []
        weights = np.array([takes for _, takes in self._known])
        over = inside @ weights.T - 1
        over[self._room[:, None] > np.array([room for room, _ in self._known])] = 0.0
        worst, broken = over.argmax(axis=1), over.max(axis=1) > EXCEEDED
        return [_row(piece, weights[worst[piece]]) for piece in np.flatnonzero(broken).tolist()]

    def _kept(self, inside: Numbers, pieces: "range | list[int]", *, quick: bool) -> list[Row]:
        """Return covers found in some pieces, and keep them."""
        look, found = quick_cover_row if quick else cover_row, []
        for piece in pieces:
            room = float(self._room[piece])
            takes = look(inside[piece], self._areas, room)
            if takes is not None:
                self._known.append((room, takes))
                found.append(_row(piece, takes))
        return found

    def _next_pieces(self, inside: Numbers) -> list[int]:
        """Return the next few pieces that may have a cover."""
        found: list[int] = []
        looked = 0
        while self._unlooked and looked < _LOOKED:
            piece, self._next = self._next, (self._next + 1) % len(self._room)
            self._unlooked -= 1
            if may_have_cover(inside[piece], self._areas, float(self._room[piece])):
                looked += int((inside[piece] > ROOM_NOISE).sum())
                found.append(piece)
        return found


def _row(piece: int, takes: Numbers) -> Row:
    return Row(piece, takes, 1.0 + SAFE)
