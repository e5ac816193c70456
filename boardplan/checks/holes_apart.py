"""Holes apart: whether holes of different things leave enough wood between them."""

from collections.abc import Iterator
from math import dist

from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, where_is
from boardplan.checks.spots import HoledSpot, holes_of_spot
from boardplan.geometry.point import box_around


def holes_too_close(site: Site, one: HoledSpot, other: HoledSpot) -> Iterator[Finding]:
    """Yield a finding for the closest two holes of two things, where they are closer than the rule set asks."""
    if one.board.id != other.board.id:
        return
    limit = site.limit("hole-to-hole")
    short = [
        (apart - asked, apart, asked, a, b)
        for a in holes_of_spot(one)
        for b in holes_of_spot(other)
        if (apart := dist(a.at, b.at)) < (asked := limit.value * 2 * max(a.radius, b.radius)) - NOISE
    ]
    if not short:
        return
    _, apart, asked, a, b = min(short, key=lambda each: each[0])
    has, wants = site.two_lengths(apart, asked)
    words = f"Holes {a.hole.id} and {b.hole.id} are {has} apart; {wants}, {limit.value:g} times the larger, is asked"
    where = where_is(one, other, area=box_around([a.at, b.at]).grown(5.0))
    yield site.finding("holes-too-close", site.asked("hole-to-hole", asked), where, words, apart)
