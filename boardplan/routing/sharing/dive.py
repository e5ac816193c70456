"""Channel sharing, dive: the linear program made whole, a few cables at a time, the rest shared out anew each time.

The surest ways are settled first; diving with a program of generated ways (Sadykov, Vanderbeck and others 2019).
"""

import random
from typing import TYPE_CHECKING

import numpy as np

from boardplan.routing.sharing.sharing import Chosen, Loads

if TYPE_CHECKING:
    from boardplan.routing.sharing.prices import Prices
    from boardplan.routing.sharing.rows import Numbers

_WHOLE, _SHARE = 0.999, 1e-6
"""From which share a way counts as chosen, and from which as chosen in part."""
_AT_ONCE = 30
"""Of how many cables one is settled that has a way in part only, each time the program is solved; two at least."""
_SHAKEN = 0.3
"""By how much of itself a share may count for less, by chance, so that each dive is another."""

_NOISE = 1e-9
"""mm²: what room may seem too little by; well within what the linear program takes for none."""


def dived(prices: "Prices", chance: random.Random) -> Chosen:
    """Return an answer that the linear program comes to; cables that find no room in its ways stay outside."""
    program = prices.program()
    loads = Loads(prices.network, prices.wishes, [None] * len(prices.wishes))
    least, most = np.zeros(len(program.ways)), np.ones(len(program.ways))
    at_once = max(2, len(prices.wishes) // _AT_ONCE)
    while True:
        shares = program.solved(least, most).shares
        order = _order(shares, least, chance)
        if not order:
            return tuple(loads.chosen)
        parts = 0
        for way in order:
            number, path = program.ways[way]
            in_part = shares[way] < _WHOLE
            if loads.chosen[number] is not None or (in_part and parts == at_once):
                continue
            parts += in_part
            if all(loads.left[piece] >= loads.wishes[number].area - _NOISE for piece in path.pieces):
                loads.lay(number, path)
                least[way] = 1.0
            else:
                most[way] = 0.0


def _order(shares: "Numbers", least: "Numbers", chance: random.Random) -> list[int]:
    """Return the ways not settled that have a share, the surest first."""
    open_ways = np.flatnonzero((shares > _SHARE) & (least < 1)).tolist()
    sure = {way: shares[way] * (1 - _SHAKEN * chance.random()) for way in open_ways}
    return sorted(open_ways, key=lambda way: (-sure[way], way))
