"""Record types: what numbers, texts and points of our files may be."""

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

LARGEST = 50_000.0
"""No board, leg or coordinate is larger than this, in mm; a larger number is a slip of the pen."""


class Record(BaseModel):
    """A group of fields of a file: no other fields, no conversions, no infinities."""

    model_config = ConfigDict(extra="forbid", strict=True, allow_inf_nan=False, frozen=True)


ID_PATTERN = r"^[^\s'\"](?:[^'\"\n\r\t]*[^\s'\"])?$"
DATE_PATTERN = r"^(\d{4}-\d{2}-\d{2})?$"
REVISION_PATTERN = r"^[A-Z]{1,2}$"
PREFIX_PATTERN = r"^[A-Z]{1,6}$"
COLOUR_PATTERN = r"^#[0-9A-Fa-f]{6}(/#[0-9A-Fa-f]{6})?$"
PATTERN_WORDS = {
    ID_PATTERN: "a name without quotes, line breaks, or blanks at its ends",
    DATE_PATTERN: "a date like 2026-11-02, or nothing",
    REVISION_PATTERN: "a revision letter like A",
    PREFIX_PATTERN: "one to six capital letters",
    COLOUR_PATTERN: "a colour like #B3312C, or two with a / between",
}
"""What each pattern asks for, in words."""

Id = Annotated[str, Field(min_length=1, max_length=60, pattern=ID_PATTERN)]
Text = Annotated[str, Field(max_length=2000)]
Coordinate = Annotated[float, Field(ge=-LARGEST, le=LARGEST)]
Length = Annotated[float, Field(gt=0, le=LARGEST)]
Gap = Annotated[float, Field(ge=0, le=LARGEST)]
ReelLength = Annotated[float, Field(gt=0, le=1_000_000)]
"""A reel of a kilometre is as long as one gets, in mm."""
CutLoss = Annotated[float, Field(ge=0, le=20)]
Positive = Annotated[float, Field(gt=0, le=1e6)]
Degrees = Annotated[float, Field(ge=-360, le=360)]
Pair = Annotated[list[Coordinate], Field(min_length=2, max_length=2)]
Size = Annotated[list[Length], Field(min_length=2, max_length=2)]
RingRecord = Annotated[list[Pair], Field(min_length=3, max_length=500)]
LineRecord = Annotated[list[Pair], Field(min_length=2, max_length=500)]
LARGEST_BOARD = 6_000.0
"""No sheet is longer than this, in mm, nor any unit on it."""
_SheetPlace = Annotated[float, Field(ge=-LARGEST_BOARD, le=LARGEST_BOARD)]
_SheetLength = Annotated[float, Field(gt=0, le=LARGEST_BOARD)]
SheetSize = Annotated[list[_SheetLength], Field(min_length=2, max_length=2)]
SheetRing = Annotated[
    list[Annotated[list[_SheetPlace], Field(min_length=2, max_length=2)]], Field(min_length=3, max_length=500)
]
FaceRecord = Literal["left", "bottom", "right", "top", "front"]
StageRecord = Literal["shop", "site"]
TrustRecord = Literal["measured", "customer", "photo", "estimated"]
