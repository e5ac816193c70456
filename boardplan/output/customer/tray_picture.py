"""Tray picture: a battery tray from above and from the front, to scale, dimensioned."""

from collections.abc import Iterator
from dataclasses import dataclass

from boardplan.drawing.picture import Area, Disc, Line, Mark, Picture, Words
from boardplan.drawing.rings import hexagon
from boardplan.geometry.point import Box, Point
from boardplan.model.job import Units
from boardplan.model.rule_set import RuleSet
from boardplan.model.tray import BatteryCorner, Tray, TrayExit, Wall
from boardplan.output.customer.tray_size import between_gap, inside_of, lid_gap, over_of, side_gap, sides
from boardplan.output.drawn.dimensions import (
    Station,
    at_least_text,
    dimension_text,
    linear_level,
    linear_upright,
    running_level,
    running_upright,
)
from boardplan.output.drawn.mass_mark import mass_mark
from boardplan.output.drawn.scale import SCALES, Scaled, scale_bar
from boardplan.output.printing.lettering import FINE, Measure

_LEFT, _RIGHT, _TOP, _BELOW = 21.0, 17.0, 13.0, 18.0
_BETWEEN = 8.0
_BAR = 8.0
_STRAP = 1.8
"""Half of a strap's or bar's width on the page, in mm: nobody said how wide it is."""


@dataclass(frozen=True, slots=True)
class TrayView:
    """A tray whose batteries and gaps are known well enough to be drawn; measures in mm."""

    tray: Tray
    units: Units
    measure: Measure
    length: float
    width: float
    across: float
    deep: float
    side: float
    between: float
    height: float | None
    lid: float | None


def view_of(tray: Tray, rules: RuleSet, units: Units, measure: Measure) -> TrayView | None:
    """Return what is drawn of a tray, none while its batteries, their arrangement or the gaps are not known."""
    inside = inside_of(tray, rules)
    across, deep = sides(tray)
    between, side = between_gap(tray, rules).value, side_gap(tray, rules).value
    length, width = inside.length.total, inside.width.total
    if across is None or deep is None or length is None or width is None or side is None:
        return None
    return TrayView(
        tray,
        units,
        measure,
        length,
        width,
        across,
        deep,
        side,
        between or 0.0,
        tray.battery.height,
        lid_gap(tray).value,
    )


def view_size(view: TrayView, by: float) -> tuple[float, float]:
    """Return how large the drawing is at a scale, in mm of the page."""
    front = (_front_height(view) / by + _BETWEEN + _TOP) if view.height else 0.0
    return view.length / by + _LEFT + _RIGHT, view.width / by + _TOP + _BELOW + front + _BAR


def _front_height(view: TrayView) -> float:
    return (view.height or 0.0) + (view.lid or 0.0)


def view_scales(view: TrayView, room: tuple[float, float]) -> tuple[float, ...]:
    """Return the scales at which the drawing fits a room, the largest first."""
    sizes = ((by, view_size(view, by)) for by in SCALES[1:])
    return tuple(by for by, size in sizes if size[0] <= room[0] and size[1] <= room[1]) or SCALES[-1:]


def tray_picture(view: TrayView, by: float, upper_left: Point) -> Picture:
    """Return the drawing: the tray from above, below it from the front, and the bar of the scale."""
    left = upper_left.x + _LEFT
    above = Scaled(by, Point(left, upper_left.y - _TOP - view.width / by))
    bottom = above.at.y - _BELOW
    marks: list[Mark] = [
        Words(upper_left.moved(0, -FINE), "from above", FINE, "quiet", "start", centred=False),
        *_from_above(view, above),
    ]
    if view.height:
        front = Scaled(by, Point(left, bottom - _BETWEEN - _front_height(view) / by))
        marks.append(Words(Point(upper_left.x, bottom - FINE), "from the front", FINE, "quiet", "start", centred=False))
        marks += _from_front(view, front)
        bottom = front.at.y - _BETWEEN
    marks += scale_bar(Point(left, bottom - 3), by, view.units)
    return tuple(marks)


def batteries(view: TrayView) -> Iterator[Box]:
    """Yield where the batteries stand, from the inside left front corner, in mm."""
    for row in range(view.tray.rows or 0):
        for column in range(view.tray.columns or 0):
            x = view.side + column * (view.across + view.between)
            y = view.side + row * (view.deep + view.between)
            yield Box(x, y, x + view.across, y + view.deep)


def _from_above(view: TrayView, drawing: Scaled) -> Iterator[Mark]:
    inside = drawing.box(Box(0, 0, view.length, view.width))
    wall = inside.grown(1.0)
    yield Area((wall.corners(), inside.corners()), "#B4B4B4", "ink", 0.25)
    for battery in batteries(view):
        yield from _battery(view, drawing, battery)
    for strap in view.tray.straps:
        x = drawing.point((strap, 0)).x
        band = Box(x - _STRAP, wall.bottom - 1, x + _STRAP, wall.top + 1)
        yield Area((band.corners(),), "paper", opacity=0.7)
        for side in (-_STRAP, _STRAP):
            yield Line((Point(x + side, wall.bottom - 1), Point(x + side, wall.top + 1)), "ink", 0.25, (2.0, 1.0))
    for fixing in view.tray.fixings:
        if fixing.at:
            at = drawing.point(fixing.at)
            yield Area((hexagon(at, 2.6),), "paper", "ink", 0.3)
            yield Disc(at, 0.5, "ink")
    for number, way_out in enumerate(view.tray.exits, start=1):
        yield from _exit_above(view, drawing, way_out, number)
    for number, battery in enumerate(batteries(view), start=1):
        at = drawing.box(battery).centre
        yield Disc(at, 1.6, "paper")
        yield Words(at, str(number), FINE, "quiet")
    yield from mass_mark(drawing.point((view.length / 2, view.width / 2)))
    yield from _dimensions_above(view, drawing, inside)


def _battery(view: TrayView, drawing: Scaled, battery: Box) -> Iterator[Mark]:
    box = drawing.box(battery)
    yield Area((box.corners(),), "#F1F1F1", "ink", 0.3)
    plus, minus = poles(view.tray)
    inset = min(4.0, box.width * 0.22, box.height * 0.22)
    for corner, sign in ((plus, "+"), (minus, "−")):
        if corner:
            x = box.left + inset if corner.endswith("left") else box.right - inset
            y = box.bottom + inset if corner.startswith("front") else box.top - inset
            yield Disc(Point(x, y), 1.7, "paper", "ink", 0.25)
            yield Words(Point(x, y), sign, FINE * 1.2, "ink", bold=True)


_SIDES: dict[Wall, tuple[BatteryCorner, BatteryCorner]] = {
    "left": ("front-left", "back-left"),
    "right": ("front-right", "back-right"),
    "front": ("front-left", "front-right"),
    "back": ("back-left", "back-right"),
}


def poles(tray: Tray) -> tuple[BatteryCorner | None, BatteryCorner | None]:
    """Return the corners of plus and minus, minus at the other end of the side with the posts; none where not said."""
    plus, side = tray.battery.plus, tray.battery.terminals
    pair = _SIDES[side] if side else ()
    if plus is None or plus not in pair:
        return plus, None
    return plus, next(each for each in pair if each != plus)


def _exit_above(view: TrayView, drawing: Scaled, way_out: TrayExit, number: int) -> Iterator[Mark]:
    if way_out.wall is None or way_out.along is None:
        return
    along = way_out.along
    at, out = {
        "left": (Point(0, along), Point(-1, 0)),
        "right": (Point(view.length, along), Point(1, 0)),
        "front": (Point(along, 0), Point(0, -1)),
        "back": (Point(along, view.width), Point(0, 1)),
    }[way_out.wall]
    foot = drawing.point(at)
    half = (way_out.diameter or 0.0) / drawing.by / 2
    gap = foot.moved(out.x * 0.5, out.y * 0.5)
    ends = (gap.moved(out.y * half, out.x * half), gap.moved(-out.y * half, -out.x * half))
    yield Line(ends, "paper", 0.8)
    tip = foot.moved(out.x * 5, out.y * 5)
    yield Line((foot.moved(-out.x * 2, -out.y * 2), tip), "ink", 0.3)
    yield Area(
        ((tip, *(tip.moved(-out.x * 1.8 + side * out.y, -out.y * 1.8 + side * out.x) for side in (0.8, -0.8))),), "ink"
    )
    beside = tip.moved(-1.5 * out.x, 2.2) if out.x else tip.moved(2.6, -1.5 * out.y)
    yield Words(beside, f"E{number}", FINE, "ink", bold=True)


def _dimensions_above(view: TrayView, drawing: Scaled, inside: Box) -> Iterator[Mark]:
    units, measure = view.units, view.measure
    over = f"+{dimension_text(over_of(units), units)} / −0"
    length = f"{at_least_text(view.length, units)}  {over} inside"
    yield from linear_level(
        Point(inside.left, inside.top), Point(inside.right, inside.top), inside.top + 8, length, measure
    )
    width = f"{at_least_text(view.width, units)}  {over}"
    yield from linear_upright(
        Point(inside.right, inside.bottom), Point(inside.right, inside.top), inside.right + 14, width, measure
    )
    placed = list(batteries(view))
    edges = {x for each in placed for x in (each.left, each.right)} | {view.length}
    across = [Station(Point(drawing.point((x, 0)).x, inside.bottom), dimension_text(x, units)) for x in sorted(edges)]
    yield from running_level(Point(inside.left, inside.bottom), across, inside.bottom - 6, "below")
    levels = {y for each in placed for y in (each.bottom, each.top)} | {view.width}
    up = [Station(Point(inside.left, drawing.point((0, y)).y), dimension_text(y, units)) for y in sorted(levels)]
    yield from running_upright(Point(inside.left, inside.bottom), up, inside.left - 6.5, "left")


def _from_front(view: TrayView, drawing: Scaled) -> Iterator[Mark]:
    height = view.height or 0.0
    floor = drawing.box(Box(0, 0, view.length, 0))
    yield Area(
        (Box(floor.left - 1, floor.bottom - 1, floor.right + 1, floor.bottom).corners(),), "#B4B4B4", "ink", 0.25
    )
    for column in range(view.tray.columns or 0):
        x = view.side + column * (view.across + view.between)
        yield Area((drawing.box(Box(x, 0, x + view.across, height)).corners(),), "#F1F1F1", "ink", 0.3)
    if view.tray.lip is not None:
        lip = drawing.box(Box(0, 0, view.length, view.tray.lip))
        yield Area(
            (Box(lip.left - 1, lip.bottom - 1, lip.right + 1, lip.top).corners(),), "#D2D2D2", "ink", 0.25, opacity=0.7
        )
        yield Line((Point(lip.left - 1, lip.top), Point(lip.right + 1, lip.top)), "ink", 0.25)
    if view.lid is not None:
        top = drawing.point((0, height + view.lid)).y
        yield Line((Point(floor.left - 2, top), Point(floor.right + 2, top)), "ink", 0.35, (4, 1.5))
        yield Words(Point(floor.centre.x, top + 1), "lid, or whatever is above", FINE, "quiet", centred=False)
    for number, way_out in enumerate(view.tray.exits, start=1):
        yield from _exit_front(drawing, way_out, number)
    yield from mass_mark(drawing.point((view.length / 2, height / 2)))
    yield from _dimensions_front(view, drawing, floor)


def _exit_front(drawing: Scaled, way_out: TrayExit, number: int) -> Iterator[Mark]:
    if way_out.wall not in ("front", "back") or way_out.along is None or way_out.height is None or not way_out.diameter:
        return
    at = drawing.point((way_out.along, way_out.height))
    dashes = (1.0, 0.6) if way_out.wall == "back" else ()
    yield Disc(at, way_out.diameter / 2 / drawing.by, "paper", "ink", 0.3, dashes)
    yield Words(at.moved(0, way_out.diameter / 2 / drawing.by + 1.8), f"E{number}", FINE, "ink", bold=True)


def _dimensions_front(view: TrayView, drawing: Scaled, floor: Box) -> Iterator[Mark]:
    units, measure, height = view.units, view.measure, view.height or 0.0
    low = Point(floor.right, floor.bottom)
    levels = [("", height)] if view.lid is None else [("", height), ("", height + view.lid)]
    left = Point(floor.left, floor.bottom)
    stations = [Station(Point(left.x, drawing.point((0, each)).y), dimension_text(each, units)) for _, each in levels]
    if view.tray.lip is not None:
        lip = view.tray.lip
        stations.append(Station(Point(left.x, drawing.point((0, lip)).y), dimension_text(lip, units)))
    yield from running_upright(left, stations, left.x - 6.5, "left")
    if view.lid is not None:
        a, b = drawing.point((0, height)).y, drawing.point((0, height + view.lid)).y
        yield from linear_upright(Point(low.x, a), Point(low.x, b), low.x + 8, dimension_text(view.lid, units), measure)
