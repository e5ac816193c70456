"""Heights: how high a cable runs along its way, and what getting up and down adds to its length.

All in mm; heights are counted off the face that units and cables stand on, the fabric's where there is one, and
are those of the cable's centre line. What is assumed where no sheet says it:

- a cable is as high as its terminal up to the lug's mouth, and as long as it is over its own unit;
- on the board it lies on its jacket: half its diameter; it comes down there within the distance of a first clamp from
  where it was held higher: a lug's mouth, its own unit, a channel's wall, the side of what it goes over; between two
  such places that are too near for that one clamp holds a thick cable down half-way, and others stay up, in one climb;
- into a channel it goes through the slots of the walls, and there it stays: at a share of the channel's height;
- over a cover, or a body that its way crosses, it lies on top of that;
- over an edge it leaves as it lies, through a hole it goes down to the board's back.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from boardplan.geometry.bends import corner_saving
from boardplan.geometry.climb import climb_adds
from boardplan.geometry.units import tidy_number
from boardplan.model.cable import Cable, CableEnd, ExitEnd, OffBoardEnd, TerminalEnd
from boardplan.model.plan import Plan
from boardplan.routing.lengths.passed import Passable, met
from boardplan.routing.lengths.risen_lug import RisenLug, risen_lug
from boardplan.routing.route import Route
from boardplan.routing.square.ends import ends_of
from boardplan.routing.supports.clamp_obstacles import wants_clamps
from boardplan.routing.supports.clamp_spacing import Span
from boardplan.routing.supports.laid_way import laid

_NOISE = 1e-9


@dataclass(frozen=True, slots=True)
class Level:
    """A stretch of a way, along its centre line, at one height; `words` say what holds it there."""

    start: float
    end: float
    height: float
    words: str


@dataclass(frozen=True, slots=True)
class Climb:
    """A way from one level up or down to the next: over which stretch, between which heights, what it adds.

    `counts` is false for a slope so gentle that the rule set leaves it out.
    """

    before: Level
    after: Level
    adds: float
    counts: bool

    @property
    def run(self) -> float:
        """How far along the way there is for it."""
        return self.after.start - self.before.end

    @property
    def words(self) -> str:
        """What it is, for a line of a sum."""
        height = self.after.height - self.before.height
        over = f", {tidy_number(self.run)} along" if self.run > 0.05 else ""  # noqa: PLR2004 - nought on paper
        turn = "up" if height > 0 else "down"
        return f"{turn} {tidy_number(abs(height))} from {self.before.words} to {self.after.words}{over}"


def height_profile(plan: Plan, cable: Cable, way: Route, things: Iterable[Passable]) -> tuple[Level, ...]:
    """Return the levels of a cable along its way, in order; between two of them it climbs."""
    length = laid(way).length
    half = plan.conductors[cable.conductor].outside_diameter / 2
    first, last = _at_end(plan, cable, cable.start, way.radius), _at_end(plan, cable, cable.end, way.radius)
    held = [
        Level(0.0, min(first.end, length), first.height, first.words),
        Level(max(length - last.end, 0.0), length, last.height, last.words),
    ]
    ends = [each.component if isinstance(each, TerminalEnd) else "" for each in cable.ends]
    for thing, span in met(way, things):
        level = _over_own(span, length, (thing.thing == ends[0], thing.thing == ends[1]), held)
        on_top = cable.way == "outside" or thing.thing in way.over
        held += [] if level is _BETWEEN else [level or _over(thing, span, half, on_top=on_top)]
    return tuple(_laid_down(_highest(held), half, _coming_down(plan, cable, length)))


_BETWEEN = Level(0.0, 0.0, 0.0, "")
"""Says that both ends lie on the thing and the cable between them at its terminals' own heights."""


def _at_end(plan: Plan, cable: Cable, end: CableEnd, radius: float) -> Level:
    """Return how high a cable is at an end and for how long, as if it began there."""
    if not isinstance(end, TerminalEnd):
        return Level(0.0, 0.0, plan.conductors[cable.conductor].outside_diameter / 2, "the board")
    lug = risen_lug(plan, end, plan.conductors[cable.conductor])
    height = _terminal_height(plan, end)
    words = f"{end.component}.{end.terminal}"
    return lug_level(lug, height, radius, words)


def lug_level(lug: RisenLug, height: float, radius: float, words: str) -> Level:
    """Return the level that a cable comes to beyond its lug: the stud's own, or above an angled lug."""
    return Level(0.0, lug.reach(radius), height + lug.height(radius), words)


def _terminal_height(plan: Plan, end: TerminalEnd) -> float:
    terminal = plan.kind_of(plan.components[end.component]).terminal(end.terminal)
    if terminal is None:
        raise KeyError(f"{end.component} has no terminal {end.terminal}")
    return terminal.z


def _over_own(span: Span, length: float, own: tuple[bool, bool], held: Sequence[Level]) -> Level | None:
    """Return the level over a unit that the cable ends on, as high as that terminal; none over any other thing."""
    from_first = own[0] and span[0] <= _TOUCH
    to_last = own[1] and span[1] >= length - _TOUCH
    if from_first and to_last:
        return _BETWEEN
    if from_first or to_last:
        end = held[0] if from_first else held[1]
        return Level(*span, end.height, end.words)
    return None


_TOUCH = 1.0  # mm: a terminal at the very edge of its unit


def _over(thing: Passable, span: Span, half: float, *, on_top: bool) -> Level:
    if thing.inside is None:
        return Level(*span, thing.top + half, f"the top of {thing.thing}")
    if not (on_top and thing.covered):
        return Level(*span, thing.inside, f"channel {thing.thing}")
    return Level(*span, thing.top + half, f"the cover of {thing.thing}")


def _highest(levels: Sequence[Level]) -> list[Level]:
    """Return levels that don't overlap, in order: where several hold, the highest does; the ends' own stay."""
    first, last = levels[0], levels[1]
    cuts = sorted({place for each in levels for place in (each.start, each.end)})
    found: list[Level] = [Level(first.start, first.start, first.height, first.words)]
    for a, b in pairwise(cuts):
        there = [each for each in levels if each.start <= a + _NOISE and each.end >= b - _NOISE]
        if there:
            top = max(there, key=lambda each: each.height)
            _put(found, Level(a, b, top.height, top.words))
    _put(found, Level(last.end, last.end, last.height, last.words))
    return found


def _put(found: list[Level], level: Level) -> None:
    """Add a level, or lengthen the last one where it goes on as high."""
    before = found[-1]
    if before.height == level.height and before.end >= level.start - _NOISE and before.words == level.words:
        found[-1] = Level(before.start, level.end, before.height, before.words)
    else:
        found.append(level)


@dataclass(frozen=True, slots=True)
class _Down:
    """How a cable comes down to the board: within which distance, and at which of its ends it lies there already.

    `clamped` says that a single clamp holds it down where there is no room for two.
    """

    within: float
    at_ends: tuple[bool, bool]
    clamped: bool


def _coming_down(plan: Plan, cable: Cable, length: float) -> _Down:
    first, second = (isinstance(each, ExitEnd | OffBoardEnd) for each in cable.ends)
    jumper = all(each.lugged for each in ends_of(plan, cable)) and length < plan.rules.value("jumper-shorter-than")
    return _Down(plan.rules.value("clamp-first"), (first, second), wants_clamps(plan, cable) and not jumper)


def _laid_down(levels: Sequence[Level], half: float, down: _Down) -> Iterator[Level]:
    """Yield levels, and between any two that are far enough apart the one on the board."""
    yield levels[0]
    for index, (before, after) in enumerate(pairwise(levels)):
        start = before.end + (0.0 if index == 0 and down.at_ends[0] else down.within)
        end = after.start - (0.0 if index == len(levels) - 2 and down.at_ends[1] else down.within)
        if start > end and down.clamped and after.start - before.end > down.within:
            start = end = (start + end) / 2
        if start <= end:
            yield Level(start, end, half, "the board")
        yield after


def climbs_of(levels: Sequence[Level], radius: float, gentle: float) -> tuple[Climb, ...]:
    """Return the climbs between levels; those with a run of at least `gentle` times their height don't count."""
    found = []
    for before, after in pairwise(levels):
        height, run = abs(after.height - before.height), max(0.0, after.start - before.end)
        if height > _NOISE:
            found.append(Climb(before, after, climb_adds(height, run, radius), run < gentle * height - _NOISE))
    return tuple(found)


def through_hole(plan: Plan, end: CableEnd, radius: float, half: float) -> float:
    """Return what it adds to go down a hole to the board's back: nought over an edge.

    The height from the centre line on the board to the back, less what the bend into the hole saves; its radius is
    taken no larger than that height, as what bends behind the board belongs to the legs there.
    """
    if isinstance(end, TerminalEnd) or plan.exits[end.exit].through != "hole":
        return 0.0
    board = plan.boards[plan.exits[end.exit].board]
    depth = half + (board.fabric.thickness if board.fabric else 0.0) + board.thickness
    return depth - corner_saving(min(radius, depth), 90.0)
