"""Job records: the job file as plain groups of fields, one class for each group."""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from boardplan.files.record_types import (
    DATE_PATTERN,
    REVISION_PATTERN,
    Coordinate,
    CutLoss,
    Degrees,
    Gap,
    Id,
    Length,
    LineRecord,
    Pair,
    Positive,
    Record,
    ReelLength,
    RingRecord,
    SheetRing,
    SheetSize,
    Size,
    StageRecord,
    Text,
    TrustRecord,
)
from boardplan.files.shelf_records import ConductorRecord, FastenerRecord, KindRecord
from boardplan.files.tray_records import TrayRecord

FORMAT = "boardplan-job"
VERSION = 1


class RuleSetName(Record):
    """The rule set a job is checked under."""

    id: Id
    edition: Text


class JobRecord(Record):
    """What every sheet carries."""

    title: Annotated[str, Field(min_length=1, max_length=120)]
    number: Text = ""
    customer: Text = ""
    place: Text = ""
    units: Literal["mm", "inch"] = "mm"
    revision: Annotated[str, Field(pattern=REVISION_PATTERN)] = "A"
    date: Annotated[str, Field(pattern=DATE_PATTERN)] = ""
    drawn_by: Text = ""
    rule_set: RuleSetName


class MaterialRecord(Record):
    """The sheet's material, kg/m²."""

    name: Text
    mass_per_area: Positive | None = None


class FabricRecord(Record):
    """The covering."""

    thickness: Gap
    wrap: Gap = 60.0
    mass_per_area: Gap = 0.5


class SidesRecord(Record):
    """A measure for each side."""

    left: Gap
    bottom: Gap
    right: Gap
    top: Gap


class DatumRecord(Record):
    """Where dimensions run from."""

    corner: Literal["lower-left", "lower-right", "upper-left", "upper-right"] = "lower-left"
    edge: Literal["bare", "covered"] = "bare"


class CompartmentRecord(SidesRecord):
    """The gaps round the board and the depth in front of its face."""

    depth: Length | None = None
    trust: TrustRecord | None = None


class BoardRecord(Record):
    """A board; its outline as a ring, or a size for a plain rectangle."""

    id: Id
    name: Text = ""
    size: SheetSize | None = None
    outline: SheetRing | None = None
    cutouts: list[SheetRing] = []
    position: Pair = [0.0, 0.0]
    thickness: Length = 18.0
    material: MaterialRecord
    fabric: FabricRecord | None = None
    edge_margins: SidesRecord
    lip: SidesRecord = SidesRecord(left=0.0, bottom=0.0, right=0.0, top=0.0)
    stand_off: Gap | None = None
    datum: DatumRecord = DatumRecord()
    compartment: CompartmentRecord | None = None
    trust: TrustRecord | None = None

    @model_validator(mode="after")
    def has_an_outline(self) -> Self:
        """Refuse a board without a shape."""
        if (self.size is None) == (self.outline is None):
            raise ValueError("expected either size = [width, height] or an outline, and not both")
        return self


class FramingRecord(Record):
    """A member of the wall behind a board."""

    id: Id
    board: Id
    direction: Literal["upright", "level"]
    centre: Coordinate
    width: Length
    start: Coordinate | None = None
    end: Coordinate | None = None
    material: Text = ""
    trust: TrustRecord | None = None


class BackPartRecord(Record):
    """A part on the back."""

    id: Id
    board: Id
    name: Text
    outline: RingRecord


class NoGoBoxRecord(Record):
    """Space that must stay empty."""

    id: Id
    board: Id
    name: Text
    x: Coordinate
    y: Coordinate
    width: Length
    height: Length
    from_z: Coordinate = 0.0
    to_z: Coordinate = 1000.0
    trust: TrustRecord | None = None


class ExitPlaceRecord(Record):
    """Where cables leave a board."""

    id: Id
    board: Id
    name: Text
    at: Pair
    through: Literal["edge", "hole"] = "edge"
    diameter: Length | None = None
    trust: TrustRecord | None = None


class FixingRecord(Record):
    """A screw or bolt into the framing."""

    id: Id
    board: Id
    at: Pair
    diameter: Length
    fastener: Text = ""


class FuseRecord(Record):
    """What is known of the fuse in a place of a component, or of a breaker; nothing is filled in."""

    place: Text = ""
    type: Text = ""
    rating_a: Annotated[float, Field(gt=0, le=10_000)] | None = None
    voltage_v: Annotated[float, Field(gt=0, le=10_000)] | None = None
    breaking_capacity_ka: Annotated[float, Field(gt=0, le=1_000)] | None = None
    spare: Text = ""
    note: Text = ""


class ComponentRecord(Record):
    """A placed component."""

    id: Id
    kind: Id
    board: Id
    at: Pair
    turn: Degrees = 0.0
    label: Text = ""
    stage: StageRecord | None = None
    locked: bool = False
    fuses: Annotated[list[FuseRecord], Field(max_length=100)] = []


class ScrewsRecord(Record):
    """How a channel is screwed down."""

    first: Gap = 40.0
    pitch: Length = 400.0
    fastener: Text = ""


class ChannelRecord(Record):
    """A run of wire channel."""

    id: Id
    board: Id
    line: LineRecord
    outside: Size
    inside: Size
    cover: bool = True
    screws: ScrewsRecord = ScrewsRecord()
    dividers: list[Gap] = []

    @model_validator(mode="after")
    def fits_into_itself(self) -> Self:
        """Refuse a channel that is wider inside than outside."""
        if self.inside[0] > self.outside[0] or self.inside[1] > self.outside[1]:
            raise ValueError("expected the inside no larger than the outside")
        return self


class LegRecord(Record):
    """A stretch away from the board."""

    length: Gap
    trust: TrustRecord
    note: Text = ""


class EndLugRecord(Record):
    """The lug wanted at an end."""

    stud: Text
    form: Literal["straight", "45", "90"] = "straight"
    clocking: Degrees = 0.0


class EndRecord(Record):
    """An end: component and terminal; or an exit; or away from the board by an exit and legs."""

    component: Id | None = None
    terminal: Id | None = None
    lug: EndLugRecord | None = None
    stage: StageRecord | None = None
    exit: Id | None = None
    off_board: Text | None = None
    legs: Annotated[list[LegRecord], Field(max_length=200)] | None = None
    rope: Length | None = None
    loop: Literal["service", "drip"] | None = None
    loop_length: Length | None = None

    @model_validator(mode="after")
    def is_one_of_three(self) -> Self:
        """Refuse an end that is two things at once, or none."""
        given = {name for name in type(self).model_fields if getattr(self, name) is not None}
        given -= {"loop", "loop_length"}
        for needed, allowed in (
            ({"component", "terminal"}, {"lug", "stage"}),
            ({"off_board", "exit", "legs"}, {"rope", "lug"}),
            ({"exit"}, set()),
        ):
            if needed <= given <= needed | allowed:
                return self
        raise ValueError("expected component and terminal; or exit; or off_board, exit and legs")

    @model_validator(mode="after")
    def has_a_loop_to_measure(self) -> Self:
        """Refuse the length of a loop that isn't there."""
        if self.loop_length is not None and self.loop is None:
            raise ValueError('expected loop = "service" or "drip" beside loop_length')
        return self


class CableRecord(Record):
    """A cable."""

    id: Id
    start: EndRecord = Field(alias="from")
    end: EndRecord = Field(alias="to")
    conductor: Id
    colour: Text
    cable_class: Literal["dc", "ac", "pv", "signal"] = Field(alias="class")
    way: Literal["channel", "outside", "choose"] = "choose"
    pins: Annotated[list[Pair], Field(max_length=200)] = []
    count: Annotated[int, Field(ge=1, le=1000)] = 1
    slack: Literal["jumper", "large", "small", "off-board", "signal"] | None = None
    group: Text = ""
    label: Text = ""


class AcceptanceRecord(Record):
    """A finding accepted by a person."""

    finding: Text
    things: list[Id]
    name: Annotated[str, Field(min_length=1, max_length=120)]
    reason: Annotated[str, Field(min_length=1, max_length=2000)]
    date: Annotated[str, Field(pattern=DATE_PATTERN)] = ""
    measured: Annotated[float, Field(ge=-1e6, le=1e6)] | None = None


class CableStockRecord(Record):
    """A reel or an offcut at hand; null for any number of them."""

    conductor: Id
    colour: Text
    length: ReelLength
    count: Annotated[int, Field(ge=1, le=1000)] | None = 1
    name: Text = ""


class ChannelStockRecord(Record):
    """Lengths of channel at hand or on sale; any number of them if none is given."""

    outside: Size
    length: Length
    count: Annotated[int, Field(ge=1, le=1000)] | None = None
    name: Text = ""


class StockRecord(Record):
    """What cables and channels are cut from, and what each cut takes."""

    cables: Annotated[list[CableStockRecord], Field(max_length=1000)] = []
    channels: Annotated[list[ChannelStockRecord], Field(max_length=1000)] = []
    cable_cut: CutLoss = 3.0
    channel_cut: CutLoss = 3.0
    corners: Literal["mitred", "square"] = "mitred"


class SupplyRecord(Record):
    """Where a part comes from, by the key that the load-out list gives it."""

    part: Annotated[str, Field(min_length=1, max_length=200)]
    source: Literal["stock", "bought", "ordered", "customer"]
    count: Gap | None = None
    date: Annotated[str, Field(pattern=DATE_PATTERN)] = ""
    note: Text = ""
    substitute: Text = ""


class JobFileRecord(Record):
    """A whole job file."""

    format: Literal["boardplan-job"]
    version: Literal[1]
    job: JobRecord
    boards: Annotated[list[BoardRecord], Field(min_length=1, max_length=50)]
    framing: list[FramingRecord] = []
    back_parts: list[BackPartRecord] = []
    no_go_boxes: list[NoGoBoxRecord] = []
    exits: list[ExitPlaceRecord] = []
    fixings: list[FixingRecord] = []
    kinds: list[KindRecord] = []
    conductors: list[ConductorRecord] = []
    fasteners: list[FastenerRecord] = []
    components: Annotated[list[ComponentRecord], Field(max_length=5000)] = []
    channels: Annotated[list[ChannelRecord], Field(max_length=1000)] = []
    cables: Annotated[list[CableRecord], Field(max_length=10000)] = []
    accepted: list[AcceptanceRecord] = []
    stock: StockRecord = StockRecord()
    supply: Annotated[list[SupplyRecord], Field(max_length=5000)] = []
    trays: Annotated[list[TrayRecord], Field(max_length=50)] = []
