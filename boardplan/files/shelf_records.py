"""Shelf records: component kinds, conductors and fasteners as they stand in a file."""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from boardplan.files.record_types import (
    PREFIX_PATTERN,
    Degrees,
    FaceRecord,
    Gap,
    Id,
    Length,
    LineRecord,
    Pair,
    Positive,
    Record,
    SheetRing,
    SheetSize,
    Size,
    StageRecord,
    Text,
)

ExitRecord = Literal["left", "right", "up", "down", "any"] | Degrees


class HoleRecord(Record):
    """A mounting hole: where the screw goes, and its shape in the flange."""

    at: Pair
    shape: Literal["round", "slot", "keyhole"] = "round"
    length: Gap = 0.0
    direction: Degrees = 0.0
    drop: Gap = 0.0


class TerminalRecord(Record):
    """A terminal: where, how high off the board, what sort and size, which way the cable leaves."""

    id: Id
    at: Pair
    z: Gap
    sort: Literal["stud", "clamp", "gland", "plug", "blade"]
    size: Text = ""
    exit: ExitRecord = "any"
    pole: Literal["", "+", "-", "L", "L1", "L2", "N", "PE", "signal"] = ""
    usable_thread: Length | None = None
    least_conductor: Positive | None = None
    largest_conductor: Positive | None = None
    torque: Positive | None = None
    faces: FaceRecord = "front"
    tail: Gap | None = None
    pad: Positive | None = None


class KeepClearRecord(Record):
    """Room beside a face and what it is for."""

    face: FaceRecord
    distance: Gap
    reason: Literal["air", "hands", "cover", "fuse pull", "handle", "lift-off", "gland"]
    demanded: bool = False


class CoolingRecord(Record):
    """Faces that air goes in and out by."""

    intake: list[FaceRecord] = []
    exhaust: list[FaceRecord] = []


class ArtRecord(Record):
    """One shape of the front view; `width` is that of a line or an edge, or the height of a text's capitals."""

    shape: Literal["rect", "disc", "line", "polygon", "text"]
    tone: Literal[
        "graphite",
        "stone",
        "bone",
        "brass",
        "copper",
        "steel",
        "glass",
        "shadow",
        "red",
        "amber",
        "green",
        "slate",
        "ink",
    ]
    at: Pair | None = None
    size: Size | None = None
    points: LineRecord | None = None
    radius: Gap = 0.0
    width: Length = 1.0
    text: Annotated[str, Field(max_length=40)] = ""
    relief: Literal["", "raised", "sunk"] = ""
    count: Annotated[int, Field(ge=1, le=200)] = 1
    step: Pair = [0.0, 0.0]

    @model_validator(mode="after")
    def has_what_it_needs(self) -> Self:
        """Refuse a shape that can't be drawn."""
        if self.shape in {"line", "polygon"}:
            if self.points is None:
                raise ValueError(f"a {self.shape} needs points")
        elif self.at is None:
            raise ValueError(f"a {self.shape} needs at = [x, y]")
        if self.shape == "rect" and self.size is None:
            raise ValueError("a rect needs size = [width, height]")
        if self.shape == "disc" and not self.radius:
            raise ValueError("a disc needs a radius")
        return self


class KindRecord(Record):
    """A component kind; its outline as a ring, or a size for a plain rectangle from its lower left."""

    id: Id
    name: Annotated[str, Field(min_length=1, max_length=120)]
    family: Text = ""
    prefix: Annotated[str, Field(pattern=PREFIX_PATTERN)] = "X"
    size: SheetSize | None = None
    outline: SheetRing | None = None
    depth: Length
    mass: Positive | None = None
    flange: Gap | None = None
    fastener: Text = ""
    holes: list[HoleRecord] = []
    terminals: list[TerminalRecord] = []
    keep_clear: list[KeepClearRecord] = []
    allowed_turns: list[Degrees] | Literal["any"] = "any"
    cooling: CoolingRecord = CoolingRecord()
    heat: Gap | None = None
    heat_sensitive: bool = False
    stage: StageRecord = "shop"
    non_combustible_backing: bool | None = None
    data_state: Literal["typical", "from sheet", "checked", "used"] = "typical"
    note: Text = ""
    art: list[ArtRecord] = []

    @model_validator(mode="after")
    def has_an_outline_and_distinct_terminals(self) -> Self:
        """Refuse a kind without a shape, or with a terminal named twice."""
        if (self.size is None) == (self.outline is None):
            raise ValueError("expected either size = [width, height] or an outline, and not both")
        names = [each.id for each in self.terminals]
        doubled = sorted({name for name in names if names.count(name) > 1})
        if doubled:
            raise ValueError(f"terminal named twice: {', '.join(doubled)}")
        return self


class AngledLugRecord(Record):
    """Measures of an angled lug; see `boardplan.model.conductor.AngledLug`."""

    form: Literal["45", "90"]
    stop: Gap
    barrel: Gap
    rise: Gap


class LugRecord(Record):
    """Measures of a lug; see `boardplan.model.conductor.LugMeasures`."""

    stop: Gap
    barrel: Gap
    strip: Gap
    palm_width: Gap
    palm_thickness: Gap
    angled: list[AngledLugRecord] = []

    @model_validator(mode="after")
    def has_each_angle_once(self) -> Self:
        """Refuse two measures of one lug."""
        forms = [each.form for each in self.angled]
        if len(set(forms)) < len(forms):
            raise ValueError("expected each form of angled lug once")
        return self


class ConductorRecord(Record):
    """A sort of cable on the reel."""

    id: Id
    name: Text
    area: Positive | None = None
    outside_diameter: Annotated[float, Field(gt=0, le=200)]
    construction: Literal["fine-strand", "stiff", "sheathed", "data"] = "fine-strand"
    cores: Annotated[int, Field(ge=1, le=100)] = 1
    mass_per_m: Positive | None = None
    strip: Gap | None = None
    lug: LugRecord | None = None
    stock_lengths: list[Length] = []


class FastenerRecord(Record):
    """A screw or bolt and the hole it wants."""

    id: Id
    name: Text
    hole: Literal["pilot", "t-nut", "through"]
    bit: Annotated[float, Field(gt=0, le=200)]
    thread: Annotated[float, Field(gt=0, le=100)]
    length: Length | None = None
    head_diameter: Length | None = None
    flange_diameter: Length | None = None
    source: Text = ""


class ChannelSectionRecord(Record):
    """A section of wire channel: width and height outside and inside."""

    id: Id
    name: Annotated[str, Field(min_length=1, max_length=120)]
    outside: Size
    inside: Size

    @model_validator(mode="after")
    def is_larger_outside(self) -> Self:
        """Refuse a channel without walls."""
        if any(within >= without for within, without in zip(self.inside, self.outside, strict=True)):
            raise ValueError("expected inside = [width, height] less than outside")
        return self


class ShelfFileRecord(Record):
    """One file of the shelf: a family of kinds, or conductors, fasteners or channel sections."""

    family: Text = ""
    kind: list[KindRecord] = []
    conductor: list[ConductorRecord] = []
    fastener: list[FastenerRecord] = []
    channel_section: list[ChannelSectionRecord] = []
