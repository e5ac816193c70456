"""Tray questions: what is asked of a battery tray, section by section, each answer by its path in the tray."""

from typing import TypeAlias

from boardplan.ui.controls.lines import LineColumn

_WALLS = (("not said", None), ("left", "left"), ("front", "front"), ("right", "right"), ("back", "back"))
_CORNERS = (
    ("not said", None), ("front left", "front-left"), ("front right", "front-right"), ("back left", "back-left"),
    ("back right", "back-right"),
)  # fmt: skip
_CRAFT = (("not said", None), ("boat", "boat"), ("vehicle", "vehicle"), ("building", "building"))
_UNITS = (("as the job", None), ("millimetres", "mm"), ("inches", "inch"))
_ALONG = (("not said", None), ("long side", "length"), ("short side", "width"))

Section: TypeAlias = tuple[str, tuple[tuple[str, LineColumn], ...]]
"""A heading, and each question below it with the path of its answer."""

STANDING = "How they stand, seen from above"
SECTIONS: tuple[Section, ...] = (
    (
        "The tray",
        (
            ("id", LineColumn("reference", "text")),
            ("name", LineColumn("name", "text")),
            ("place", LineColumn("where it goes", "text")),
            ("finished_by", LineColumn("finished by", "text", "year-month-day")),
            ("craft", LineColumn("built into a", "choice", choices=_CRAFT)),
            ("units", LineColumn("customer measures in", "choice", choices=_UNITS)),
        ),
    ),
    (
        "One battery, from its own sheet",
        (
            ("battery.length", LineColumn("length", "length", "?")),
            ("battery.width", LineColumn("width", "length", "?")),
            ("battery.height", LineColumn("height over posts", "length", "?")),
            ("battery.mass", LineColumn("mass kg", "number", "?")),
            ("battery.terminals", LineColumn("posts nearest to the", "choice", choices=_WALLS)),
            ("battery.plus", LineColumn("plus post at", "choice", choices=_CORNERS)),
        ),
    ),
    (
        STANDING,
        (
            ("columns", LineColumn("across", "whole", "?")),
            ("rows", LineColumn("deep", "whole", "?")),
            ("along", LineColumn("left to right lies its", "choice", choices=_ALONG)),
            ("gaps.side", LineColumn("gap to the sides", "length", "?")),
            ("gaps.between", LineColumn("gap between", "length", "?")),
            ("gaps.lid", LineColumn("room above posts", "length", "?")),
        ),
    ),
    (
        "How it is made and held",
        (
            ("material", LineColumn("material", "text")),
            ("coating", LineColumn("coating", "text")),
            ("lip", LineColumn("lip", "length", "?")),
            ("liner", LineColumn("liner", "text")),
            ("drain", LineColumn("drain", "text")),
            ("mass", LineColumn("loaded, mass kg", "number", "?")),
            ("hold_down", LineColumn("hold-down", "text")),
            ("pull", LineColumn("pull the rule asks", "text")),
        ),
    ),
    (
        "Air, heat and way in",
        (
            ("ventilation", LineColumn("ventilation", "text")),
            ("sensor", LineColumn("sensor", "text")),
            ("fuses", LineColumn("fuses", "text")),
            ("first_clamp", LineColumn("first clamp", "text")),
            ("lift", LineColumn("way in and lifting", "text")),
            ("photo", LineColumn("photo", "text")),
        ),
    ),
)

BUILT: Section = (
    "As built, measured inside",
    (
        ("built.length", LineColumn("length inside", "length", "not measured")),
        ("built.width", LineColumn("width inside", "length", "not measured")),
        ("built.height", LineColumn("height inside", "length", "not measured")),
        ("built.date", LineColumn("measured on", "text", "year-month-day")),
        ("built.by", LineColumn("measured by", "text")),
    ),
)

EXIT_COLUMNS = (
    LineColumn("name", "text", stretch=2),
    LineColumn("wall", "choice", choices=_WALLS, stretch=2),
    LineColumn("along it", "length", "?", stretch=2),
    LineColumn("above floor", "length", "?", stretch=2),
    LineColumn("hole", "length", "?", stretch=2),
    LineColumn("edge", "text", stretch=2),
    LineColumn("towards", "text", stretch=2),
)
FIXING_COLUMNS = (
    LineColumn("from the left", "length", "?"),
    LineColumn("from the front", "length", "?"),
    LineColumn("bolt", "text"),
    LineColumn("into", "text", stretch=2),
)
STRAP_COLUMNS = (LineColumn("from the inside left", "length", "?"),)
