"""Clipping: which share of a straight line lies in an upright box."""

from boardplan.geometry.point import Box, Point


def share_in_box(a: Point, b: Point, box: Box) -> tuple[float, float] | None:
    """Return where a line from a to b enters and leaves a box, as shares of its length; none where it misses it.

    Liang and Barsky, "A new concept and method for line clipping", ACM Transactions on Graphics 3, 1984.

    >>> share_in_box(Point(0, 0), Point(10, 0), Box(2, -1, 20, 1))
    (0.2, 1.0)
    """
    low, high = 0.0, 1.0
    for start, end, least, most in ((a.x, b.x, box.left, box.right), (a.y, b.y, box.bottom, box.top)):
        if start == end:
            if not least <= start <= most:
                return None
            continue
        near, far = sorted(((least - start) / (end - start), (most - start) / (end - start)))
        low, high = max(low, near), min(high, far)
    return (low, high) if low < high else None
