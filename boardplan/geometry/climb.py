"""Climb: what it takes a cable to get from one height to another, level before and after.

All lengths in mm. Seen from the side a climb is an arc, a straight slant and an arc back, tangent to each other:
elementary geometry of two equal circles and their inner common tangent.
"""

import math


def least_run(height: float, radius: float) -> float:
    """Return how far along a cable must go to get up by a height with a bend radius.

    Two arcs of t each rise 2R (1 - cos t) over 2R sin t, so sqrt(h (4R - h)) up to a height of 2R; from there on
    the climb is square, between two quarter circles: 2R.

    >>> least_run(128, 64), least_run(300, 64)
    (128.0, 128.0)
    """
    return math.sqrt(height * (4 * radius - height)) if height < 2 * radius else 2 * radius


def climb_length(height: float, run: float, radius: float) -> float:
    """Return the length of a climb over a run, which is at least `least_run` long.

    The circles' centres are sqrt(run² + (h - 2R)²) apart, so the slant, their inner tangent, is
    s = sqrt(run² + h² - 4R h), both arcs turn by t = 2 atan(h / (run + s)), and the whole is 2R t + s. Without a
    radius it is the plain slant sqrt(run² + h²); over 2R it is square: pi R + h - 2R.

    >>> round(climb_length(50, 130, 0), 2)
    139.28
    """
    if not height:
        return run
    slant = math.sqrt(max(0.0, run**2 + height**2 - 4 * radius * height))
    turn = 2 * math.atan2(height, run + slant)
    return 2 * radius * turn + slant


def climb_adds(height: float, run: float, radius: float) -> float:
    """Return how much longer a climb is than the run below it; where the run is too short for it, it takes more.

    It then climbs as square as its radius allows and reaches into the straight beside: from a height of 2R on it
    adds the height less what two square corners save, h - 2 (2 - pi/2) R.

    >>> round(climb_adds(200, 0, 64), 2)
    145.06
    """
    taken = max(run, least_run(height, radius))
    return max(0.0, climb_length(height, taken, radius) - taken)
