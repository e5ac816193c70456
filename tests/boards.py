"""Named plans that every test shares: the sample boards."""

from functools import cache

from boardplan.bundled import data_dir
from boardplan.files.plan_file import load_plan
from boardplan.model.plan import Plan

SAMPLES = data_dir("sample_boards")


@cache
def library_bus() -> Plan:
    return load_plan(SAMPLES / "library-bus.json")


@cache
def honey_trailer() -> Plan:
    return load_plan(SAMPLES / "honey-trailer.json")


@cache
def lookout_cabin() -> Plan:
    return load_plan(SAMPLES / "lookout-cabin.json")
