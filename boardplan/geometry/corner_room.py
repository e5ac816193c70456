"""Corner room: how gently a cable can bend round the corner of a channel, from outer wall to outer wall."""

from math import cos, inf, radians

_STRAIGHT = 1e-9


def widest_bend(width: float, diameter: float, turn: float) -> float | None:
    """Return the largest centre-line radius with which a cable goes round a corner; none where it is too thick.

    The corner is sharp inside and out, `width` is between its walls, before it and behind it; `turn` in degrees. The
    cable lies at the outer wall, swings past the inside corner and comes to lie at the outer wall again: no bend is
    wider. With k = cos(turn/2), measured from the outer corner along the line to the inside one: that one lies w/k
    away, the bend's centre (R + d/2)/k, and the bend's inner edge R - d/2 from its centre must not cut it off:
    R + d/2 - w <= k (R - d/2), so R <= (w - (1 + k) d/2) / (1 - k). For a square corner that is 3.41 w - 2.91 d.

    >>> round(widest_bend(56, 10, 90), 1)
    162.1
    """
    if diameter > width:
        return None
    share = cos(radians(abs(turn)) / 2)
    return inf if 1 - share < _STRAIGHT else (width - (1 + share) * diameter / 2) / (1 - share)
