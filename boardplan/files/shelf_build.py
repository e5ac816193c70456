"""Shelf build: between records of kinds, conductors and fasteners and the model's values."""

from collections.abc import Iterator
from typing import Any

from boardplan.files.rings import ring_fault, turned_counter_clockwise
from boardplan.files.shelf_records import (
    ArtRecord,
    ChannelSectionRecord,
    ConductorRecord,
    FastenerRecord,
    HoleRecord,
    KindRecord,
    LugRecord,
    TerminalRecord,
)
from boardplan.geometry.point import Box, Point
from boardplan.model.board import Ring
from boardplan.model.channel_section import ChannelSection
from boardplan.model.component_kind import (
    ArtShape,
    ComponentKind,
    Cooling,
    KeepClear,
    MountingHole,
    Terminal,
)
from boardplan.model.conductor import AngledLug, Conductor, LugMeasures
from boardplan.model.fastener import Fastener

_EXIT_DEGREES = {"right": 0.0, "up": 90.0, "left": 180.0, "down": 270.0}
_EXIT_WORDS = {degrees: word for word, degrees in _EXIT_DEGREES.items()}


def ring_from(size: list[float] | None, outline: list[list[float]] | None) -> Ring:
    """Return the ring of an outline, or of a plain rectangle from its lower left."""
    if size is not None:
        return Box(0.0, 0.0, float(size[0]), float(size[1])).corners()
    return turned_counter_clockwise(points_from(outline or []))


def points_from(pairs: list[list[float]]) -> Ring:
    """Return points of pairs of numbers."""
    return tuple(Point(float(x), float(y)) for x, y in pairs)


def kind_faults(record: KindRecord) -> Iterator[tuple[str, str]]:
    """Yield what is wrong with a kind beyond the shape of its record: field and what was expected."""
    if record.outline is not None:
        fault = ring_fault(points_from(record.outline))
        if fault:
            yield "outline", fault


def kind_from(record: KindRecord, family: str = "") -> ComponentKind:
    """Return the component kind of a record."""
    turns = None if record.allowed_turns == "any" else tuple(float(turn) % 360 for turn in record.allowed_turns)
    return ComponentKind(
        id=record.id,
        name=record.name,
        family=record.family or family,
        prefix=record.prefix,
        outline=ring_from(record.size, record.outline),
        depth=record.depth,
        mass=record.mass,
        flange=record.flange,
        fastener=record.fastener,
        holes=tuple(_hole_from(each) for each in record.holes),
        terminals=tuple(_terminal_from(each) for each in record.terminals),
        keep_clear=tuple(KeepClear(each.face, each.distance, each.reason, each.demanded) for each in record.keep_clear),
        allowed_turns=turns,
        cooling=Cooling(tuple(record.cooling.intake), tuple(record.cooling.exhaust)),
        heat=record.heat,
        heat_sensitive=record.heat_sensitive,
        stage=record.stage,
        non_combustible_backing=record.non_combustible_backing,
        data_state=record.data_state,
        note=record.note,
        art=tuple(_art_from(each) for each in record.art),
    )


def _hole_from(record: HoleRecord) -> MountingHole:
    return MountingHole(Point(*record.at), record.shape, record.length, record.direction, record.drop)


def _terminal_from(record: TerminalRecord) -> Terminal:
    # "any" is none
    exit_degrees = _EXIT_DEGREES.get(record.exit) if isinstance(record.exit, str) else record.exit
    return Terminal(
        id=record.id,
        position=Point(*record.at),
        z=record.z,
        sort=record.sort,
        size=record.size,
        exit=None if exit_degrees is None else exit_degrees % 360,
        pole=record.pole,
        usable_thread=record.usable_thread,
        least_conductor=record.least_conductor,
        largest_conductor=record.largest_conductor,
        torque=record.torque,
        faces=record.faces,
        tail=record.tail,
        pad=record.pad,
    )


def _art_from(record: ArtRecord) -> ArtShape:
    points = points_from(record.points) if record.points is not None else (Point(*(record.at or (0.0, 0.0))),)
    return ArtShape(
        shape=record.shape,
        tone=record.tone,
        points=points,
        size=Point(*(record.size or (0.0, 0.0))),
        radius=record.radius,
        width=record.width,
        text=record.text,
        relief=record.relief,
        count=record.count,
        step=Point(*record.step),
    )


def conductor_from(record: ConductorRecord) -> Conductor:
    """Return the conductor of a record."""
    return Conductor(
        id=record.id,
        name=record.name,
        area=record.area,
        outside_diameter=record.outside_diameter,
        construction=record.construction,
        cores=record.cores,
        mass_per_m=record.mass_per_m,
        strip=record.strip,
        lug=_lug_from(record.lug) if record.lug else None,
        stock_lengths=tuple(record.stock_lengths),
    )


def _lug_from(record: LugRecord) -> LugMeasures:
    angled = tuple(AngledLug(each.form, each.stop, each.barrel, each.rise) for each in record.angled)
    return LugMeasures(record.stop, record.barrel, record.strip, record.palm_width, record.palm_thickness, angled)


def fastener_from(record: FastenerRecord) -> Fastener:
    """Return the fastener of a record."""
    return Fastener(**record.model_dump())


def channel_section_from(record: ChannelSectionRecord) -> ChannelSection:
    """Return the channel section of a record."""
    return ChannelSection(record.id, record.name, *record.outside, *record.inside)


def ring_fields(ring: Ring) -> dict[str, Any]:
    """Return an outline as fields: a size where it is a plain rectangle from its lower left."""
    width, height = ring[2] if len(ring) == 4 else (0.0, 0.0)  # noqa: PLR2004 - a rectangle
    if width > 0 and height > 0 and ring == Box(0.0, 0.0, width, height).corners():
        return {"size": [width, height]}
    return {"outline": [list(point) for point in ring]}


def kind_plain(kind: ComponentKind) -> dict[str, Any]:
    """Return a kind as the plain fields of a record."""
    turns = "any" if kind.allowed_turns is None else list(kind.allowed_turns)
    return {
        "id": kind.id,
        "name": kind.name,
        "family": kind.family,
        "prefix": kind.prefix,
        **ring_fields(kind.outline),
        "depth": kind.depth,
        "mass": kind.mass,
        "flange": kind.flange,
        "fastener": kind.fastener,
        "holes": [_hole_plain(hole) for hole in kind.holes],
        "terminals": [_terminal_plain(terminal) for terminal in kind.terminals],
        "keep_clear": [
            {"face": each.face, "distance": each.distance, "reason": each.reason, "demanded": each.demanded}
            for each in kind.keep_clear
        ],
        "allowed_turns": turns,
        "cooling": {"intake": list(kind.cooling.intake), "exhaust": list(kind.cooling.exhaust)},
        "heat": kind.heat,
        "heat_sensitive": kind.heat_sensitive,
        "stage": kind.stage,
        "non_combustible_backing": kind.non_combustible_backing,
        "data_state": kind.data_state,
        "note": kind.note,
        "art": [_art_plain(shape) for shape in kind.art],
    }


def _hole_plain(hole: MountingHole) -> dict[str, Any]:
    return {
        "at": list(hole.position),
        "shape": hole.shape,
        "length": hole.length,
        "direction": hole.direction,
        "drop": hole.drop,
    }


def _terminal_plain(terminal: Terminal) -> dict[str, Any]:
    exit_word = "any" if terminal.exit is None else _EXIT_WORDS.get(terminal.exit, terminal.exit)
    return {
        "id": terminal.id,
        "at": list(terminal.position),
        "z": terminal.z,
        "sort": terminal.sort,
        "size": terminal.size,
        "exit": exit_word,
        "pole": terminal.pole,
        "usable_thread": terminal.usable_thread,
        "least_conductor": terminal.least_conductor,
        "largest_conductor": terminal.largest_conductor,
        "torque": terminal.torque,
        "faces": terminal.faces,
        "tail": terminal.tail,
        "pad": terminal.pad,
    }


def _art_plain(shape: ArtShape) -> dict[str, Any]:
    many = shape.shape in {"line", "polygon"}
    return {
        "shape": shape.shape,
        "tone": shape.tone,
        "at": None if many else list(shape.points[0]),
        "size": list(shape.size) if shape.shape == "rect" else None,
        "points": [list(point) for point in shape.points] if many else None,
        "radius": shape.radius,
        "width": shape.width,
        "text": shape.text,
        "relief": shape.relief,
        "count": shape.count,
        "step": list(shape.step),
    }


def conductor_plain(conductor: Conductor) -> dict[str, Any]:
    """Return a conductor as the plain fields of a record."""
    lug = conductor.lug
    return {
        "id": conductor.id,
        "name": conductor.name,
        "area": conductor.area,
        "outside_diameter": conductor.outside_diameter,
        "construction": conductor.construction,
        "cores": conductor.cores,
        "mass_per_m": conductor.mass_per_m,
        "strip": conductor.strip,
        "lug": lug
        and {
            "stop": lug.stop,
            "barrel": lug.barrel,
            "strip": lug.strip,
            "palm_width": lug.palm_width,
            "palm_thickness": lug.palm_thickness,
            "angled": [
                {"form": each.form, "stop": each.stop, "barrel": each.barrel, "rise": each.rise} for each in lug.angled
            ],
        },
        "stock_lengths": list(conductor.stock_lengths),
    }


def fastener_plain(fastener: Fastener) -> dict[str, Any]:
    """Return a fastener as the plain fields of a record."""
    return {
        "id": fastener.id,
        "name": fastener.name,
        "hole": fastener.hole,
        "bit": fastener.bit,
        "thread": fastener.thread,
        "length": fastener.length,
        "head_diameter": fastener.head_diameter,
        "flange_diameter": fastener.flange_diameter,
        "source": fastener.source,
    }
