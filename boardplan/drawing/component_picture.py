"""Component picture: how a component looks from the front, to scale, in its kind's own coordinates."""

from boardplan.drawing.art_picture import LABEL_PLACE, art_picture
from boardplan.drawing.metal import HEAD_DIAMETERS, screws
from boardplan.drawing.picture import Area, Picture, Words, placed_picture
from boardplan.drawing.relief import LIGHT, cast_shadow, edges, solid
from boardplan.drawing.rings import bar, disc, inset, rectangle
from boardplan.drawing.terminal_picture import terminals_picture
from boardplan.drawing.words import width_of
from boardplan.geometry.point import Point
from boardplan.model.component_kind import ComponentKind, MountingHole
from boardplan.model.placed import Placed

_LABEL_HEIGHT = 11.0
_LEAST_LABEL_HEIGHT = 3.2
_TOO_SMALL = 26.0
"""A drawn kind that is narrower than this and has no place for its reference carries none."""


def component_picture(kind: ComponentKind, label: str = "", turn: float = 0.0) -> Picture:
    """Return a component's picture; it is lit and lettered for a body that will be turned by `turn`."""
    light = LIGHT - turn
    return (
        *cast_shadow(kind.outline, kind.depth, light),
        *solid([kind.outline], "graphite", "raised", light, 1.2),
        *(art_picture(kind.art, turn) if kind.art else _plain_body(kind, light)),
        *_mounting(kind, light),
        *terminals_picture(kind, turn),
        *(_label(kind, label, turn) if label else ()),
    )


def placed_component_picture(placed: Placed) -> Picture:
    """Return the picture of a placed component, in board coordinates."""
    component = placed.component
    own = component_picture(placed.kind, component.label or component.id, placed.placement.turn)
    return placed_picture(own, placed.placement)


def _plain_body(kind: ComponentKind, light: float) -> Picture:
    """Return a body for a kind that nobody has drawn: a lid with a seam and a quiet panel."""
    box = kind.box
    margin = min(12.0, 0.12 * box.width, 0.12 * box.height)
    lid = inset(kind.outline, margin)
    panel = rectangle(
        box.left + 2.2 * margin, box.bottom + 2.2 * margin, box.width - 4.4 * margin, box.height - 4.4 * margin, 3
    )
    return (
        *solid([lid], "stone-dark"),
        *edges([lid], ("stone", "graphite"), light, 1.2),
        Area((panel,), "stone", opacity=0.35),
    )


def _mounting(kind: ComponentKind, light: float) -> Picture:
    diameter = HEAD_DIAMETERS.get(kind.fastener.split(" ")[0].split("x")[0], 8.5)
    openings = (_opening(hole, diameter) for hole in kind.holes)
    return (
        *(Area((ring,), "shadow") for rings in openings for ring in rings),
        *screws([(hole.position, diameter) for hole in kind.holes], light),
    )


def _opening(hole: MountingHole, diameter: float) -> tuple[tuple[Point, ...], ...]:
    """Return what is seen of the hole in the flange round a screw head."""
    if hole.shape == "slot":
        length = max(hole.length, diameter) + 2
        start = hole.position.ahead(hole.direction + 180, length / 2)
        return (bar(start, hole.direction, length, diameter * 0.72, diameter * 0.36),)
    if hole.shape == "keyhole":
        entry = hole.position.ahead(270, hole.drop)
        return bar(hole.position, 270, hole.drop, diameter * 0.6), disc(entry, diameter * 0.62)
    return (disc(hole.position, diameter / 2 + 0.9, 18),)


def _label(kind: ComponentKind, label: str, turn: float) -> Picture:
    """Return the reference on a small plate, reading from below, or from the right where it's too wide for that."""
    wanted = next((shape for shape in kind.art if shape.text == LABEL_PLACE), None)
    if kind.art and wanted is None and min(kind.box.width, kind.box.height) < _TOO_SMALL:
        return ()
    at = wanted.points[0] if wanted else kind.box.centre
    box = kind.box
    across, along = (box.height, box.width) if turn % 180 == 90 else (box.width, box.height)  # noqa: PLR2004
    height = wanted.width if wanted else min(_LABEL_HEIGHT, 0.3 * min(across, along))
    level = width_of(label, height) + height * 1.4 <= across or across >= along
    room = (across if level else along) * 0.94
    height = max(_LEAST_LABEL_HEIGHT, min(height, room / (width_of(label, 1) + 1.4)))
    own = (-turn if level else 90 - turn) % 360
    width = width_of(label, height) + height * 1.1
    plate = bar(at.ahead(own + 180, width / 2), own, width, height * 1.9, height * 0.35)
    return (
        *edges([inset(plate, -0.7)], ("graphite-dark", "graphite-light"), LIGHT - turn, 0.7),
        Area((plate,), "graphite-dark"),
        Words(at, label, height, "bone-light", turn=own, bold=True),
    )
