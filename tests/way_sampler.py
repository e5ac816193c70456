"""Way sampler: takes the bent centre line of a way every half millimetre and checks it from scratch against its plan.

It uses the plan, shapely and numpy, and nothing of the program's finding of ways. What is asked:

- bends: every arc has at least the least radius of the cable's construction, and so has the circle through each three
  neighbouring samples of an arc; the heading never jumps;
- at each end: the first leg leaves in the terminal's direction (a straight way from end to end may be askew by what a
  hand gives: 10 degrees) and stays straight for the lug's mouth, or for the rule set's straight at that terminal;
- clearance from the jacket: cable-to-body to bodies, and to channels for cables that stay outside; to no-go boxes
  near the board, the board's edges and cut-outs the jacket itself;
- clearance of the jacket from the squares that the heads of board fixings need, unless the way says that it lies there;
- what a way says it passes over: only a thin cable, only over a plain body lower than 60 mm without a stud, or a
  channel with its cover on; straight across it, its jacket clear of the sides it runs along and of terminals on it.

Left out is only what an end can't avoid: over its first leg and first bend the body the end lies on; over its first
leg the clearance to what stands nearer to the end itself, whose bare outline the centre line must still keep off; at
an exit over an edge that edge, up to where the jacket is clear of it. Inside a channel its walls keep bodies off.
"""

import math
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import shapely
from random_plans import ring_of
from shapely.affinity import translate
from shapely.geometry import LineString, Point, Polygon

from boardplan.model.cable import TerminalEnd
from boardplan.model.plan import Plan

STEP = 0.5
SLACK = 0.02  # mm: what whole thousandths and sampling may be out by
ASKEW = 10.0  # degrees: common practice, no source
NEAR_BOARD = 60.0  # mm: a no-go box that begins farther off the board leaves room: common practice, no source
JOINT = 1.5  # mm: half of what boards may hang apart for cables to cross


@dataclass(frozen=True)
class EndThere:
    """An end on the wall: where, in which direction it leaves (none for any), how far straight, on what."""

    at: tuple[float, float]
    heading: float | None
    straight: float
    owner: str
    over_edge: bool


@dataclass(frozen=True)
class Thing:
    """What a cable keeps off: its sort, name, shape on the wall, and the clearance asked of a jacket."""

    sort: str
    name: str
    shape: Polygon
    clearance: float


@dataclass(frozen=True)
class Piece:
    """A straight or arc of a centre line as samples; a radius of infinity for a straight."""

    samples: np.ndarray
    radius: float
    begins: float
    ends: float
    """Headings in degrees."""


def end_there(plan: Plan, cable, end) -> EndThere:
    """Return an end where it lies, worked out from the plan alone."""
    rules, conductor = plan.rules, plan.conductors[cable.conductor]
    if not isinstance(end, TerminalEnd):
        leaving = plan.exits[end.exit]
        board = plan.boards[leaving.board]
        at = (leaving.position.x + board.position.x, leaving.position.y + board.position.y)
        if leaving.through != "edge":
            return EndThere(at, None, 0.0, "", over_edge=False)
        return EndThere(at, _inwards(board.outline, leaving.position), 0.0, "", over_edge=True)
    component = plan.components[end.component]
    at, terminal = _terminal_at(plan, end)
    heading = None if terminal.exit is None else (terminal.exit + component.turn) % 360
    names = {"gland": "straight-at-gland", "plug": "straight-at-plug"}
    straight = rules.limits[names.get(terminal.sort, "straight-at-clamp")].value
    if terminal.sort == "stud" and conductor.lug is not None:
        straight = conductor.lug.stop + conductor.lug.barrel
    return EndThere(at, heading, straight, component.id, over_edge=False)


def behind_lugs(plan: Plan, cable, end, radius: float) -> float:
    """Return how far on a cable is to stay straight behind a lug, before a bend of a radius that a hand may tighten."""
    conductor = plan.conductors[cable.conductor]
    asked = plan.rules.limits.get("straight-behind-lug")
    if asked is None or not isinstance(end, TerminalEnd) or _terminal_at(plan, end)[1].sort != "stud":
        return 0.0
    least = plan.rules.bends[conductor.construction].least * conductor.outside_diameter
    return max(0.0, asked.value - (radius - least))


def is_roomy(plan: Plan, cable, way) -> bool:
    """Say whether a way stays as straight behind both lugs as the rule set asks; one without bends does."""
    return all(roomy_ends(plan, cable, way))


def roomy_ends(plan: Plan, cable, way) -> tuple[bool, bool]:
    """Say at which of its ends a way stays as straight behind a lug as the rule set asks; one without bends does."""
    legs = (way.points[:2], way.points[:-3:-1])
    first, last = (
        len(way.points) <= 2
        or math.dist(a, b) + SLACK
        >= end_there(plan, cable, end).straight + behind_lugs(plan, cable, end, way.radius) + way.radius
        for end, (a, b) in zip(cable.ends, legs, strict=True)
    )
    return first, last


def _terminal_at(plan: Plan, end: TerminalEnd):
    """Return where a terminal lies on the wall, and the terminal."""
    component = plan.components[end.component]
    kind, origin = plan.kinds[component.kind], plan.boards[component.board].position
    terminal = next(each for each in kind.terminals if each.id == end.terminal)
    cos, sin = math.cos(math.radians(component.turn)), math.sin(math.radians(component.turn))
    turned = [(x * cos - y * sin, x * sin + y * cos) for x, y in (*kind.outline, terminal.position)]
    left, bottom = min(x for x, _ in turned[:-1]), min(y for _, y in turned[:-1])
    x, y = turned[-1]
    return (x - left + component.position.x + origin.x, y - bottom + component.position.y + origin.y), terminal


def _inwards(outline, position) -> float:
    """Return the direction square to the nearest edge of a counter-clockwise outline, into the board."""
    a, b = min(pairwise((*outline, outline[0])), key=lambda edge: LineString(edge).distance(Point(position)))
    return (math.degrees(math.atan2(b.y - a.y, b.x - a.x)) + 90) % 360


def things_of(plan: Plan, *, channels: bool) -> list[Thing]:
    """Return all that cables keep off, channels among them for cables that stay outside."""
    gap = plan.rules.limits["cable-to-body"].value
    found = []
    for each in plan.components.values():
        origin = plan.boards[each.board].position
        ring = [(x + origin.x, y + origin.y) for x, y in ring_of(plan.kinds[each.kind].outline, each)]
        found.append(Thing("body", each.id, Polygon(ring), gap))
    for each in plan.no_go_boxes.values():
        if each.from_z < NEAR_BOARD:
            origin = plan.boards[each.board].position
            x, y = each.x + origin.x, each.y + origin.y
            found.append(Thing("no-go", each.id, shapely.box(x, y, x + each.width, y + each.height), 0.0))
    if channels:
        found += [Thing("channel", name, shape, gap) for name, shape in channel_shapes(plan).items()]
    for each in plan.fixings.values():
        x, y = plan.on_wall(each.board, each.position)
        half = plan.rules.limits["fixing-under-cable"].value / 2
        found.append(Thing("fixing", each.id, shapely.box(x - half, y - half, x + half, y + half), 0.0))
    return [*found, Thing("edge", "", off_boards(plan), 0.0)]


def channel_shapes(plan: Plan) -> dict[str, Polygon]:
    """Return the outside of each channel on the wall."""
    return {
        each.id: LineString([plan.on_wall(each.board, point) for point in each.line]).buffer(
            each.width / 2, cap_style="flat", join_style="mitre"
        )
        for each in plan.channels.values()
    }


def off_boards(plan: Plan) -> Polygon:
    """Return all that is no board: round the boards and in their cut-outs; narrow joints between boards are board."""
    sheets = []
    for each in plan.boards.values():
        rings = [[plan.on_wall(each.id, point) for point in ring] for ring in (each.outline, *each.cutouts)]
        sheets.append(Polygon(rings[0], rings[1:]).buffer(JOINT, join_style="mitre"))
    joined = shapely.union_all(sheets).buffer(-JOINT, join_style="mitre")
    return joined.envelope.buffer(3000, join_style="mitre").difference(joined)


def bent(points, radius: float) -> list[Piece]:
    """Return the centre line of a way bent at its corners, in straights and arcs; None of it is shortened to fit."""
    corners = [np.array(each, dtype=float) for each in points]
    headings = [_heading(a, b) for a, b in pairwise(corners)]
    pieces, at = [], corners[0]
    for corner, before, after in zip(corners[1:-1], headings, headings[1:], strict=False):
        turn = (after - before + 180) % 360 - 180
        tangent = radius * math.tan(math.radians(abs(turn)) / 2)
        start = corner - tangent * _towards(before)
        pieces.append(_straight(at, start, before))
        pieces.append(_arc(start, before, turn, radius))
        at = corner + tangent * _towards(after)
    return [*pieces, _straight(at, corners[-1], headings[-1])]


def _heading(a, b) -> float:
    return math.degrees(math.atan2(b[1] - a[1], b[0] - a[0]))


def _towards(heading: float) -> np.ndarray:
    return np.array((math.cos(math.radians(heading)), math.sin(math.radians(heading))))


def _straight(start, end, heading: float) -> Piece:
    """Return a straight; one that runs backwards, as its bends take more than there is, shows in its headings."""
    length = float(np.hypot(*(end - start)))
    count = max(2, math.ceil(length / STEP) + 1)
    samples = start + np.linspace(0, 1, count)[:, None] * (end - start)
    runs = _heading(start, end) if length > SLACK else heading
    return Piece(samples, math.inf, runs, runs)


def _arc(start, heading: float, turn: float, radius: float) -> Piece:
    side = math.copysign(1, turn)
    centre = start + radius * _towards(heading + 90 * side)
    count = max(3, math.ceil(radius * math.radians(abs(turn)) / STEP) + 1)
    angles = np.radians(heading - 90 * side + turn * np.linspace(0, 1, count))
    return Piece(centre + radius * np.column_stack((np.cos(angles), np.sin(angles))), radius, heading, heading + turn)


def violations(plan: Plan, cable, way) -> list[str]:
    """Return what is wrong with a way, each as "sort: words"."""
    pieces = bent(way.points, way.radius)
    ends = end_there(plan, cable, cable.start), end_there(plan, cable, cable.end)
    return [
        *_bends(plan, cable, pieces),
        *_at_ends(ends, pieces),
        *(f"over: {cable.id} may not pass over {name}" for name in way.over if not _may_pass_over(plan, cable, name)),
        *(
            each
            for each in _too_near(plan, cable, pieces, ends, way.over)
            if not each.startswith("fixing") or "over a board fixing" not in way.why
        ),
    ]


def _off(a: float, b: float) -> float:
    return abs((a - b + 180) % 360 - 180)


def _bends(plan: Plan, cable, pieces: list[Piece]) -> list[str]:
    conductor = plan.conductors[cable.conductor]
    least = plan.rules.bends[conductor.construction].least * conductor.outside_diameter
    found = []
    for piece in pieces:
        if piece.radius < least - 1e-6:
            found.append(f"bend: an arc of {piece.radius:.2f} is tighter than {least:.2f}")
        if math.isfinite(piece.radius) and sampled_radius(piece.samples) < least - SLACK:
            found.append(f"bend: sampled {sampled_radius(piece.samples):.2f}, least {least:.2f}")
    for before, after in pairwise(pieces):
        if _off(before.ends, after.begins) > 0.1 or np.hypot(*(before.samples[-1] - after.samples[0])) > SLACK:
            found.append("kink: the heading jumps, or a leg is shorter than its bends")
    return found


def sampled_radius(samples: np.ndarray) -> float:
    """Return the least radius of the circle through three neighbouring samples: abc / 4 area."""
    a, b, c = samples[:-2], samples[1:-1], samples[2:]
    sides = [np.hypot(*(one - other).T) for one, other in ((a, b), (b, c), (a, c))]
    twice = np.abs((b - a)[:, 0] * (c - a)[:, 1] - (b - a)[:, 1] * (c - a)[:, 0])
    with np.errstate(divide="ignore"):
        return float(np.min(sides[0] * sides[1] * sides[2] / (2 * twice)))


def _at_ends(ends, pieces: list[Piece]) -> list[str]:
    found = []
    for end, piece, leaves in ((ends[0], pieces[0], pieces[0].begins), (ends[1], pieces[-1], pieces[-1].ends + 180)):
        at = piece.samples[0] if piece is pieces[0] and end is ends[0] else piece.samples[-1]
        if np.hypot(*(at - np.array(end.at))) > SLACK:
            found.append("end: it does not lie on its terminal")
        allowed = ASKEW if len(pieces) == 1 else 0.01
        if end.heading is not None and _off(leaves, end.heading) > allowed:
            found.append(f"end: leaves {_off(leaves, end.heading):.2f} degrees off its terminal")
        wanted = ends[0].straight + ends[1].straight if len(pieces) == 1 else end.straight
        length = float(np.hypot(*(piece.samples[-1] - piece.samples[0])))
        if length < wanted - SLACK:
            found.append(f"straight: {length:.2f} at an end, {wanted:.2f} wanted")
    return found


def stays_outside(plan: Plan, cable) -> bool:
    """Say whether a cable must keep off channels: chosen so, of a class that does, or too thick for them."""
    area = plan.conductors[cable.conductor].area
    if cable.way != "choose":
        return cable.way == "outside"
    return cable.cable_class in ("ac", "pv") or (
        area is not None and area > plan.rules.limits["channel-largest-conductor"].value
    )


def _may_pass_over(plan: Plan, cable, name: str) -> bool:
    """Say whether a cable may pass over a thing: common practice, no source."""
    diameter, limits = plan.conductors[cable.conductor].outside_diameter, plan.rules.limits
    if "thin-over-component" not in limits or diameter >= limits["thin-over-component"].value:
        return False
    if name in plan.channels:
        return plan.channels[name].cover
    kind = plan.kinds[plan.components[name].kind]
    opened = any(each.face == "front" for each in kind.keep_clear)
    studs = any(each.sort == "stud" for each in kind.terminals)
    return not (opened or studs or kind.heat or kind.cooling.exhaust) and kind.depth + diameter <= NEAR_BOARD


def _lies_on(plan: Plan, thing: Thing, piece: Piece, wanted: float, over) -> bool:
    """Say whether a thing is passed over and a piece crosses it from side to side, what lies beside it likewise."""
    if (
        thing.name not in over
        or math.isfinite(piece.radius)
        or _off(piece.begins, round(piece.begins / 90) * 90) > 0.01
    ):
        return False
    line, across = LineString(piece.samples[[0, -1]]), _towards(piece.begins + 90)
    lengths = [
        translate(line, *(share * (wanted - SLACK) * across)).intersection(thing.shape).length for share in (-1, 0, 1)
    ]
    if max(lengths) - min(lengths) > SLACK:
        return False
    if thing.name in plan.channels:
        return lengths[1] <= plan.channels[thing.name].width + SLACK
    component = plan.components[thing.name]
    ends = [TerminalEnd(component.id, each.id) for each in plan.kinds[component.kind].terminals]
    return all(line.distance(Point(_terminal_at(plan, each)[0])) >= wanted - SLACK for each in ends)


def _too_near(plan: Plan, cable, pieces: list[Piece], ends, over=()) -> list[str]:
    half = plan.conductors[cable.conductor].outside_diameter / 2
    outside, found = bool(over) or stays_outside(plan, cable), []
    in_channels = shapely.union_all([] if outside else list(channel_shapes(plan).values()))
    for thing in things_of(plan, channels=outside):
        for number, piece in enumerate(pieces):
            spared = _over_edges(ends, number, len(pieces), half) if thing.sort == "edge" else in_channels
            near = LineString(piece.samples).difference(spared)
            wanted = _wanted(thing, half + thing.clearance, number, len(pieces), ends)
            if wanted is None or near.is_empty or _lies_on(plan, thing, piece, wanted, over):
                continue
            if wanted == 0.0:
                lies_in = near.intersection(thing.shape.buffer(-SLACK)).length
                if lies_in > SLACK:
                    found.append(f"{thing.sort}: runs {lies_in:.1f} over {thing.name}, which stands by its end")
            elif near.distance(thing.shape) < wanted - SLACK:
                found.append(f"{thing.sort}: {near.distance(thing.shape):.2f} from {thing.name}, {wanted:.2f} wanted")
    return found


def _wanted(thing: Thing, wanted: float, number: int, count: int, ends) -> float | None:
    """Return how near a piece's centre line may come, none where nothing is asked."""
    for end, from_end in ((ends[0], number), (ends[1], count - 1 - number)):
        if from_end <= 1 and thing.sort == "body" and thing.name == end.owner:
            return None
        over_edge = thing.sort == "edge" and end.over_edge
        if from_end == 0 and not over_edge and thing.shape.distance(Point(end.at)) < wanted - SLACK / 2:
            return 0.0
    return wanted


def _over_edges(ends, number: int, count: int, half: float):
    """Return where a piece, as a first leg, may come over the edge."""
    over = [end for end, from_end in ((ends[0], number), (ends[1], count - 1 - number)) if not from_end]
    return shapely.union_all([over_edge_of(end, half) for end in over if end.over_edge])


def over_edge_of(end: EndThere, half: float) -> Polygon:
    """Return where the first leg of an end over an edge is not yet clear of that edge."""
    return Point(end.at).buffer(half + SLACK)


def crosses_itself(way) -> bool:
    """Say whether a way's centre line crosses itself."""
    points = np.concatenate([piece.samples for piece in bent(way.points, way.radius)])
    keep = np.hypot(*np.diff(points, axis=0).T) > 1e-3
    return not LineString(points[np.append(True, keep)]).is_simple


def length_of(points, radius: float) -> float:
    """Return the length of the bent centre line: each bend saves R (2 tan(t/2) - t) of its legs."""
    corners = [np.array(each, dtype=float) for each in points]
    length = sum(float(np.hypot(*(b - a))) for a, b in pairwise(corners))
    headings = [_heading(a, b) for a, b in pairwise(corners)]
    for before, after in pairwise(headings):
        turn = math.radians(_off(before, after))
        length -= radius * (2 * math.tan(turn / 2) - turn)
    return length
