"""Clamp gaps: the stretches of a cable that nothing holds, and where on the wall they are."""

from collections.abc import Iterable, Sequence
from itertools import pairwise

from boardplan.geometry.point import Point, box_around
from boardplan.routing.route import Route
from boardplan.routing.supports.clamp import Gap
from boardplan.routing.supports.clamp_spacing import NOISE, Run, Span, widest_gap
from boardplan.routing.supports.laid_way import laid


def widest(way: Route, runs: Iterable[Run], places: Sequence[float]) -> Gap | None:
    """Return the longest stretch outside of channels that no clamp holds, none where there is none such."""
    gaps = [widest_gap(run, _within(run, places)) for run in runs]
    return _gap(way, _longest(gaps))


def widest_between(way: Route, runs: Iterable[Run], places: Sequence[float]) -> Gap | None:
    """Return the longest stretch between two supports, clamps or channels; from a terminal to its first is none."""
    gaps: list[Span] = []
    for run in runs:
        held = [
            *([run.start] if run.channel_before else []),
            *sorted(_within(run, places)),
            *([run.end] if run.channel_after else []),
        ]
        gaps += pairwise(held)
    return _gap(way, _longest(gaps))


def _within(run: Run, places: Iterable[float]) -> list[float]:
    return [at for at in places if run.start <= at <= run.end]


def _longest(gaps: Iterable[Span]) -> Span | None:
    return max(gaps, key=lambda gap: (round(gap[1] - gap[0], 6), -gap[0]), default=None)


def _gap(way: Route, span: Span | None) -> Gap | None:
    """Return a stretch of the centre line as a gap on the wall."""
    if span is None:
        return None
    middle = (span[0] + span[1]) / 2
    places = [_point_along(way, along) for along in (span[0], middle, span[1])]
    corners, along = [], 0.0
    for before, after in pairwise(laid(way).pieces):
        along += before.length
        if span[0] < along < span[1]:
            corners.append(after.start)
    return Gap(span[1] - span[0], places[1], box_around((*places, *corners)))


def _point_along(way: Route, along: float) -> Point:
    """Return the point at a distance along a centre line; on a bend, the one along the line between its ends."""
    for piece in laid(way).pieces:
        if along <= piece.length + NOISE:
            share = along / piece.length
            a, b = piece.start, piece.end
            return Point(a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share)
        along -= piece.length
    return way.points[-1]
