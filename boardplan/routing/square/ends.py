"""Ends: where on the wall a cable begins, in which direction it leaves, and how long it stays straight.

Both ends are described alike, as if the cable left them.
"""

from dataclasses import dataclass
from itertools import pairwise

from boardplan.geometry.bends import turn_between
from boardplan.geometry.point import Point, bearing
from boardplan.model.cable import Cable, CableEnd, TerminalEnd
from boardplan.model.component_kind import Terminal
from boardplan.model.conductor import Conductor
from boardplan.model.placed import placed
from boardplan.model.plan import Plan
from boardplan.model.rule_set import RuleSet


@dataclass(frozen=True, slots=True)
class End:
    """An end of a cable on the wall. `heading` is the direction it leaves in, none where it may choose.

    `straight` is how far it stays straight before its first bend begins, in mm; `owner` the component it lies on, "" at
    an exit; `over_edge` where it comes over the edge of the board. `leg` is how long its first leg should be for a hand
    to keep the straight asked behind a lug before the tightest bend, 0 where none is asked.
    """

    point: Point
    heading: float | None
    straight: float
    owner: str
    name: str
    over_edge: bool = False
    lugged: bool = False
    leg: float = 0.0

    def roomy(self, radius: float) -> float:
        """Return how far it should stay straight before a bend with a radius, in mm; a hand can bend it tighter."""
        return max(self.straight, self.leg - radius)


def ends_of(plan: Plan, cable: Cable) -> tuple[End, End]:
    """Return both ends of a cable, first to second."""
    conductor = plan.conductors[cable.conductor]
    return _end(plan, cable.start, conductor), _end(plan, cable.end, conductor)


def _end(plan: Plan, end: CableEnd, conductor: Conductor) -> End:
    if isinstance(end, TerminalEnd):
        return _on_terminal(plan, end, conductor)
    leaving = plan.exits[end.exit]
    edge = leaving.through == "edge"
    heading = _inwards(plan.boards[leaving.board].outline, leaving.position) if edge else None
    point = plan.on_wall(leaving.board, leaving.position)
    return End(point, heading, 0.0, "", leaving.name or leaving.id, over_edge=edge)


def _on_terminal(plan: Plan, end: TerminalEnd, conductor: Conductor) -> End:
    component = plan.components[end.component]
    lies = placed(plan, component).terminals[end.terminal]
    straight, lugged = straight_at(plan.rules, lies.terminal, conductor), lies.terminal.sort == "stud"
    behind = plan.rules.value("straight-behind-lug") if lugged and plan.rules.knows("straight-behind-lug") else None
    least = plan.rules.bends[conductor.construction].least * conductor.outside_diameter
    return End(
        point=plan.on_wall(component.board, lies.position),
        heading=None if lies.exit is None else lies.exit % 360.0,
        straight=straight,
        owner=end.component,
        name=f"{end.component}.{end.terminal}",
        lugged=lugged,
        leg=0.0 if behind is None else straight + behind + least,
    )


def straight_at(rules: RuleSet, terminal: Terminal, conductor: Conductor) -> float:
    """Return how far a cable stays straight at a terminal: the lug's mouth, or the rule set's limit, in mm."""
    if terminal.sort == "stud" and conductor.lug:
        return conductor.lug.mouth
    limits = {"gland": "straight-at-gland", "plug": "straight-at-plug"}
    return rules.value(limits.get(terminal.sort, "straight-at-clamp"))


def _inwards(outline: tuple[Point, ...], point: Point) -> float:
    """Return the direction square to the nearest edge of a counter-clockwise outline, into the board."""
    edges = [edge for edge in pairwise((*outline, outline[0])) if edge[0] != edge[1]]
    a, b = min(edges, key=lambda edge: (round(_distance(point, *edge), 6), edge))
    heading = (bearing(a, b) + 90.0) % 360.0
    quarter = round(heading / 90.0) * 90.0
    return quarter % 360.0 if abs(turn_between(heading, quarter)) < 1e-6 else heading  # noqa: PLR2004 - float noise


def _distance(point: Point, a: Point, b: Point) -> float:
    along = ((point.x - a.x) * (b.x - a.x) + (point.y - a.y) * (b.y - a.y)) / a.distance_to(b) ** 2
    share = min(max(along, 0.0), 1.0)
    return point.distance_to((a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share))
