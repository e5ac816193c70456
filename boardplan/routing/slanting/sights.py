"""Free way sights: which places can be joined by straight legs that run through no box, many at once."""

from collections.abc import Sequence
from typing import TYPE_CHECKING, TypeAlias

from boardplan.geometry.point import Box

if TYPE_CHECKING:
    import numpy as np

    _Floats: TypeAlias = "np.typing.NDArray[np.float64]"
    _Flags: TypeAlias = "np.typing.NDArray[np.bool_]"

_LITTLE = 1e-9  # mm


def sights(some: "_Floats", others: "_Floats", boxes: Sequence[Box]) -> "_Flags":
    """Return for each of some places which others it sees past boxes, which legs may touch (Liang and Barsky, 1984)."""
    import numpy as np  # noqa: PLC0415 - slow to load

    if not len(some) or not len(others):
        return np.zeros((len(some), len(others)), dtype=bool)
    along = [_inverse(some[:, axis], others[:, axis]) for axis in (0, 1)]
    both = np.concatenate((some, others))
    (left, bottom), (right, top) = both.min(axis=0), both.max(axis=0)
    seen = np.ones((len(some), len(others)), dtype=bool)
    for box in boxes:
        if box.left >= right or box.right <= left or box.bottom >= top or box.top <= bottom:
            continue
        near, far = _within(some[:, :1], along[0], box.left, box.right)
        near_y, far_y = _within(some[:, 1:], along[1], box.bottom, box.top)
        np.maximum(near, near_y, out=near)
        np.minimum(far, far_y, out=far)
        seen &= np.maximum(near, 0.0, out=near) >= np.minimum(far, 1.0, out=far)
    return seen


def _inverse(some: "_Floats", others: "_Floats") -> "_Floats":
    """Return one over the steps along an axis; next to none counts as very little."""
    import numpy as np  # noqa: PLC0415 - slow to load

    steps = others[None, :] - some[:, None]
    inverse: _Floats = 1 / np.where(np.abs(steps) < _LITTLE, _LITTLE, steps)
    return inverse


def _within(some: "_Floats", inverse: "_Floats", low: float, high: float) -> tuple["_Floats", "_Floats"]:
    """Return at which shares of the legs they are between low and high along an axis."""
    import numpy as np  # noqa: PLC0415 - slow to load

    one, other = (low - some) * inverse, (high - some) * inverse
    return np.minimum(one, other), np.maximum(one, other)
