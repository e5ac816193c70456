"""Clamp spacing: where along a cable its clamps go, once it is known where they may.

All places are distances along the cable's centre line in mm; free spans are sorted and don't overlap.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import TypeAlias

Span: TypeAlias = tuple[float, float]

NOISE = 1e-6
_SWEEPS = 12
NEAR_FIRST = 25.0
"""How far from its place a clamp that is there already still counts as the first; common practice: 100 to 150 mm."""


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of cable outside of channels; an end is either in hand of a channel or of a terminal or an exit."""

    start: float
    end: float
    channel_before: bool = False
    channel_after: bool = False

    @property
    def length(self) -> float:
        """How long it is."""
        return self.end - self.start


@dataclass(frozen=True, slots=True)
class Spacing:
    """Distance of the first clamp, the pitch of all others, and how near to each other two may stand, in mm."""

    first: float
    pitch: float
    least: float


def spaced(run: Run, free: Sequence[Span], given: Sequence[float], spacing: Spacing) -> list[float]:
    """Return where clamps are added to those given: the first ones at their distance, the others evenly between.

    >>> spaced(Run(0, 800), [(0, 800)], [], Spacing(125, 175, 40))
    [125, 262.5, 400.0, 537.5, 675]
    """
    if run.length <= (spacing.pitch if run.channel_before and run.channel_after else spacing.first) + NOISE:
        return []
    firsts = _firsts(run, free, given, spacing)
    held = sorted([*given, *firsts])
    bounds = [*([run.start] if run.channel_before else []), *held, *([run.end] if run.channel_after else [])]
    between = [at for a, b in pairwise(bounds) for at in _filled(a, b, free, spacing)]
    return sorted([*firsts, *between])


def _firsts(run: Run, free: Sequence[Span], given: Sequence[float], spacing: Spacing) -> list[float]:
    """Return the clamps next to terminals and exits that are not given already."""
    wanted = []
    if not run.channel_before:
        wanted.append(run.start + spacing.first)
    if not run.channel_after:
        wanted.append(run.end - spacing.first)
    if len(wanted) > 1 and wanted[1] - wanted[0] < spacing.least:
        wanted = [(run.start + run.end) / 2]
    found: list[float] = []
    for at in wanted:
        if any(abs(at - each) <= NEAR_FIRST for each in given):
            continue
        near = nearest(free, at)
        if near is not None and all(abs(near - each) >= spacing.least for each in (*given, *found)):
            found.append(near)
    return found


def nearest(free: Sequence[Span], at: float) -> float | None:
    """Return the free place nearest to a place, the earlier of two; none where nothing is free."""
    places = [min(max(at, low), high) for low, high in free]
    return min(places, key=lambda each: (abs(each - at), each), default=None)


def _filled(a: float, b: float, free: Sequence[Span], spacing: Spacing) -> list[float]:
    """Return as few clamps between two as the pitch asks for, as even as can be."""
    if b - a <= spacing.pitch + NOISE:
        return []
    open_spans = common(free, a + spacing.least, b - spacing.least)
    far = list(_as_far_as_can_be(a, b, open_spans, spacing))
    even = [nearest(open_spans, a + (b - a) * step / (len(far) + 1)) for step in range(1, len(far) + 1)]
    places = [each for each in even if each is not None]
    gaps = [after - before for before, after in pairwise([a, *places, b])]
    if all(spacing.least <= gap <= spacing.pitch + NOISE for gap in gaps):
        return places
    return _evened([a, *far, b], open_spans, spacing.pitch)


def common(spans: Iterable[Span], low: float, high: float) -> list[Span]:
    """Return what spans have in common with a stretch."""
    return [(max(start, low), min(end, high)) for start, end in spans if max(start, low) <= min(end, high)]


def _as_far_as_can_be(a: float, b: float, free: Sequence[Span], spacing: Spacing) -> Iterator[float]:
    """Yield places that are each as far from the one before as the pitch lets them: fewer won't do."""
    at = a
    while b - at > spacing.pitch + NOISE:
        within = common(free, at + spacing.least, at + spacing.pitch)
        beyond = common(free, at + spacing.pitch, b)
        if not within and not beyond:
            return
        at = within[-1][1] if within else beyond[0][0]
        yield at


def _evened(held: list[float], free: Sequence[Span], pitch: float) -> list[float]:
    """Return the places between two moved to the middle between their neighbours, as far as they may.

    No gap grows by it beyond the pitch.
    """
    found = list(held)
    for _ in range(_SWEEPS):
        for index in range(1, len(found) - 1):
            before, here, after = found[index - 1 : index + 2]
            middle = nearest(free, (before + after) / 2)
            if middle is not None and _better((before, here, after), middle, pitch):
                found[index] = middle
    return found[1:-1]


def _better(held: tuple[float, float, float], middle: float, pitch: float) -> bool:
    before, here, after = held
    within = middle - before <= max(here - before, pitch) and after - middle <= max(after - here, pitch)
    return within and max(middle - before, after - middle) < max(here - before, after - here)


def widest_gap(run: Run, clamps: Sequence[float]) -> Span:
    """Return the widest gap of a run between what holds the cable: its ends and its clamps."""
    held = [run.start, *sorted(clamps), run.end]
    return max(pairwise(held), key=lambda gap: (round(gap[1] - gap[0], 6), -gap[0]))
