"""Corner room: against a search that lays a band as thick as the cable in a bent corridor."""

from math import cos, inf, radians, sin, sqrt, tan

import pytest
from shapely import LineString, prepare

from boardplan.geometry.corner_room import widest_bend

STEPS = 300


def corridor(width, turn):
    """Return a bent corridor, its legs long enough for any bend tried."""
    long = 40 * width
    far = long * cos(radians(turn)), long * sin(radians(turn))
    room = LineString([(-long, 0), (0, 0), far]).buffer(width / 2, cap_style="flat", join_style="mitre", mitre_limit=50)
    room = room.buffer(1e-3 * width, join_style="mitre")
    prepare(room)
    return room


def band(aside, beyond, radius, turn, diameter):
    """Return a cable that runs that far right of the middle of the legs, bent with a radius in between."""
    angle = radians(turn)
    # Where the two legs of its centre line meet: y = -aside, and `beyond` right of the line through 0 at the angle.
    y = -aside
    x = (beyond - aside * cos(angle)) / sin(angle)
    reach = radius * tan(angle / 2)
    arc = [
        (x - reach + radius * sin(angle * step / STEPS), y + radius * (1 - cos(angle * step / STEPS)))
        for step in range(STEPS + 1)
    ]
    return LineString(arc).buffer(diameter / 2, cap_style="flat", quad_segs=4)


def searched(width, diameter, turn):
    """Return the largest radius found by laying bands at many distances aside of the legs."""
    room, spare = corridor(width, turn), (width - diameter) / 2
    sides = [spare * share / 4 for share in range(-4, 5)]

    def lies(radius):
        return any(room.covers(band(a, b, radius, turn, diameter)) for a in sides for b in sides)

    low, high = diameter / 2, 400 * width
    for _ in range(30):
        middle = sqrt(low * high)
        low, high = (middle, high) if lies(middle) else (low, middle)
    return low


@pytest.mark.parametrize(
    ("width", "diameter", "turn"), [(56, 6, 90), (21, 9, 90), (10, 9, 90), (37, 12, 45), (56, 20, 120), (21, 7, 30)]
)
def test_no_band_bends_wider(width, diameter, turn):
    assert widest_bend(width, diameter, turn) == pytest.approx(searched(width, diameter, turn), rel=0.01)


@pytest.mark.parametrize(("width", "diameter"), [(56, 10.5), (21, 7), (12, 12)])
def test_square_corner(width, diameter):
    # Outer corner at 0, inside corner at (w, w), the bend about (R + d/2, R + d/2): they lie R - d/2 apart.
    radius = widest_bend(width, diameter, 90)
    assert sqrt(2) * (radius + diameter / 2 - width) == pytest.approx(radius - diameter / 2)


def test_bent_either_way_alike_and_straight_on_without_end():
    assert widest_bend(56, 6, -90) == widest_bend(56, 6, 90)
    assert widest_bend(56, 6, 0) == inf
    assert widest_bend(56, 6, 30) > widest_bend(56, 6, 60) > widest_bend(56, 6, 90)


def test_a_cable_as_thick_as_the_corridor_turns_about_the_inside_corner():
    assert widest_bend(12, 12, 90) == pytest.approx(6)
    assert widest_bend(12, 12.01, 90) is None


def test_a_channel_60_wide_gives_25_mm2_its_radius():
    # 25 mm² goes in a channel only if that is 60 x 60 and its corners allow R = 42: common practice, no source.
    assert widest_bend(56, 10.5, 90) >= 42
