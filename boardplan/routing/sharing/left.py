"""Channel sharing, saving left: how much cable another sharing of the channels could save at most, in plain words.

Each cable that had to leave a channel to others is held against the way it would take if all channels were empty. No
sharing gives a cable less than that, so that the sum of the differences bounds what any other one could save.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from boardplan.model.plan import Plan
from boardplan.routing.one_way import found_way
from boardplan.routing.route import Route, Way
from boardplan.routing.sharing.choice import cost_of
from boardplan.routing.square.surroundings import surroundings_of

_STEP = 0.1  # m: what is said is rounded up to so much
_LITTLE = 5.0  # mm: less than that is not worth a word


@dataclass(frozen=True, slots=True)
class SavingLeft:
    """What another sharing of the channels could save at most.

    `at_most` is in mm in channels; a mm outside counts for more, as in the search for ways. `moved` are the cables that
    left a channel to others, `outside` those of them that lie in none now.
    """

    at_most: float
    moved: tuple[str, ...]
    outside: tuple[str, ...]

    @property
    def sentence(self) -> str:
        """It in words."""
        if self.at_most < _LITTLE:
            saving = "no cable can be saved by sharing channels otherwise"
        else:
            metres = math.ceil(self.at_most / 1000 / _STEP - 1e-9) * _STEP
            saving = f"at most {metres:.1f} m of cable could still be saved by sharing channels otherwise"
        return f"{saving}; outside for want of room: {', '.join(self.outside)}" if self.outside else saving


def saving_left(plan: Plan, ways: Mapping[str, Way]) -> SavingLeft:
    """Return what could still be saved on the ways of a plan; looks for a way of each cable that was moved."""
    moved = {name: way for name, way in sorted(ways.items()) if isinstance(way, Route) and way.full}
    if not moved:
        return SavingLeft(0.0, (), ())
    around = surroundings_of(plan)
    most = math.fsum(
        max(0.0, cost_of(plan, cable, way.alone or way) - cost_of(plan, cable, found_way(around, cable)))
        for way in moved.values()
        for cable in (plan.cables[way.cable],)
    )
    return SavingLeft(most, tuple(moved), tuple(name for name, way in moved.items() if not way.in_channels))
