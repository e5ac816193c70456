"""Lines over: what is open to a thin cable that may pass over low things, straight across and clear of their sides.

A line across a low thing is open; one along its side, half on it and half beside, is not, and no bend lies on it.
"""

from collections.abc import Iterable, Sequence
from itertools import pairwise

from boardplan.geometry.clipping import share_in_box
from boardplan.geometry.point import Point
from boardplan.routing.square.blockers import Blocker
from boardplan.routing.square.low_things import LowThing
from boardplan.routing.square.open_lines import Barrier, OpenLines


class LinesOver(OpenLines):
    """What is open to one thickness of cable, outside of channels and over low things.

    All barriers hold off bends, and are gone by; those of low things hold off lines along one axis alone, or none.
    """

    def __init__(self, blockers: Iterable[Blocker], half: float, low: Sequence[LowThing]) -> None:
        """Keep what blocks a cable of half a diameter (mm), which may pass over some things."""
        self._lets = {blocker: axis for each in low for blocker, axis in each.lets}
        added = [blocker for each in low for blocker in (*(side for side, _ in each.lets), *each.kept)]
        super().__init__(dict.fromkeys((*blockers, *added)), half)

    @property
    def solid(self) -> list[Barrier]:
        """What holds off all lines."""
        return [each for each in self.barriers if each.blocker not in self._lets]

    def barriers_at(self, axis: int, line: int) -> list[Barrier]:
        """Return what a line runs through, but for what lets it."""
        return [each for each in super().barriers_at(axis, line) if self._lets.get(each.blocker, axis) == axis]


def passed_over(points: Sequence[Point], low: Iterable[LowThing]) -> tuple[str, ...]:
    """Return the low things that a way passes over, in its order."""
    found: list[str] = []
    for a, b in pairwise(points):
        here = [
            (share[0], each.thing)
            for each in low
            for blocker, _ in each.lets
            if (share := share_in_box(a, b, blocker.box)) is not None
        ]
        found += [thing for _, thing in sorted(here)]
    return tuple(dict.fromkeys(found))
