"""Stretches in channels, by plain geometry."""

import pytest

from boardplan.geometry.point import Point
from boardplan.model.channel import Channel
from boardplan.routing.channels.in_channels import inside_channel

STRAIGHT = (Point(0, 0), Point(500, 0))
BENT = (Point(0, 0), Point(500, 0), Point(500, 400))


@pytest.mark.parametrize(
    ("line", "way", "stretches"),
    [
        (STRAIGHT, ((100, 200), (100, 5), (600, 5)), ((100, 500),)),  # in from the side, out at the end
        (STRAIGHT, ((100, 200), (100, -200)), ()),  # square across
        (STRAIGHT, ((100, 200), (160, -40)), ((142.5, 157.5),)),  # askew across
        (STRAIGHT, ((-50, 31), (600, 31)), ()),  # along the outer wall
        (STRAIGHT, ((400, 0), (100, 0)), ((100, 400),)),  # against its direction
        (STRAIGHT, ((50, 90), (50, 0), (150, 0), (150, 90), (300, 90), (300, 0), (400, 0)), ((50, 150), (300, 400))),
        (BENT, ((100, 100), (100, 0), (500, 0), (500, 200), (700, 200)), ((100, 700),)),  # round its corner
    ],
)
def test_stretches_along_a_centre_line(line, way, stretches):
    channel = Channel("RW1", "A", line, 60, 60, 56, 56)
    found = inside_channel(line, channel, tuple(Point(*each) for each in way))
    assert [(pytest.approx(a), pytest.approx(b)) for a, b in stretches] == list(found)
