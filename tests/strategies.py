"""Hypothesis generators: points, lines and plans with everything in them, and ways to spoil a job file."""

import copy
from dataclasses import replace

from boards import library_bus
from hypothesis import strategies as st

from boardplan.editing.cable_edits import connect
from boardplan.editing.channel_edits import SECTIONS, draw_channel
from boardplan.editing.component_edits import place_component
from boardplan.editing.refused import EditRefused
from boardplan.editing.survey_edits import Sheet, add_board, add_exit, add_fixing, add_framing, new_plan
from boardplan.files.shelf_file import bundled_shelf
from boardplan.geometry.point import Box, Point
from boardplan.model.board import Fabric, Material
from boardplan.model.cable import ExitEnd, Leg, Loop, Lug, OffBoardEnd, TerminalEnd
from boardplan.model.fuse import Fuse
from boardplan.model.fuse_place import places_on
from boardplan.model.supply import Supply

coordinates = st.floats(-2000, 2000).map(lambda value: round(value, 3))
halves = st.integers(-200, 3000).map(lambda value: value / 2)
points = st.builds(Point, coordinates, coordinates)
places = st.builds(Point, halves, halves)
turns = st.sampled_from((0.0, 90.0, 180.0, 270.0))
trusts = st.sampled_from((None, "measured", "customer", "photo", "estimated"))
figures = st.sampled_from((None, 0.5, 40.0, 1000.0))
texts = st.text(st.characters(codec="utf-8", exclude_categories=("Cs",)), max_size=20)


@st.composite
def boxes(draw):
    left, bottom = draw(coordinates), draw(coordinates)
    width, height = draw(st.floats(1, 500)), draw(st.floats(1, 500))
    return Box(left, bottom, left + width, bottom + height)


@st.composite
def square_lines(draw):
    """A line of two to five points that goes straight across and straight up in turn."""
    at = draw(places)
    line = [at]
    across = draw(st.booleans())
    for length in draw(st.lists(st.integers(1, 400), min_size=1, max_size=4)):
        at = at.moved(length, 0) if across else at.moved(0, length)
        line.append(at)
        across = not across
    return tuple(line)


@st.composite
def sheets(draw):
    return Sheet(
        width=draw(st.integers(200, 1500)),
        height=draw(st.integers(200, 1500)),
        thickness=draw(st.sampled_from((12.0, 15.0, 18.0, 18.3))),
        material=Material("plywood", draw(st.sampled_from((None, 11.0, 12.0)))),
        fabric=draw(st.sampled_from((None, Fabric(2.0)))),
    )


@st.composite
def plans(draw, most_components=5):
    """A job with one or two boards, components of the shelf, channels, exits, fixings, framing and cables."""
    shelf = bundled_shelf()
    plan = new_plan("Made up", draw(sheets()), library_bus().rules)
    if draw(st.booleans()):
        plan, _ = add_board(plan, draw(sheets()), draw(texts))
    boards = st.sampled_from(list(plan.boards))
    for kind in draw(st.lists(st.sampled_from(list(shelf.kinds.values())), max_size=most_components)):
        plan, _ = place_component(plan, kind, shelf.fasteners, draw(boards), draw(places), turn=draw(turns))
    plan = plan.with_things([draw(with_fuses(plan, each)) for each in plan.components.values()])
    for line in draw(st.lists(square_lines(), max_size=2)):
        fastener = draw(st.sampled_from((None, shelf.fasteners["#8x16 washer"])))
        plan, _ = draw_channel(plan, draw(boards), line, draw(st.sampled_from(SECTIONS)), fastener)
    for at in draw(st.lists(places, max_size=3)):
        plan, _ = add_exit(plan, draw(boards), at, draw(texts), through=draw(st.sampled_from(("edge", "hole"))))
        plan, _ = add_fixing(plan, draw(boards), at, 9.0)
    if draw(st.booleans()):
        plan, _ = add_framing(plan, draw(boards), draw(st.sampled_from(("upright", "level"))), draw(halves), 40.0)
    said = [*plan.framing.values(), *plan.exits.values(), *plan.boards.values()]
    plan = plan.with_things([replace(each, trust=draw(trusts)) for each in said])
    for _ in range(draw(st.integers(0, 4))):
        plan = draw(with_a_cable(plan))
    marks = draw(st.lists(supplies(), max_size=2, unique_by=lambda each: each.part))
    return replace(plan, supply={each.part: each for each in marks})


def supplies():
    """Marks of where parts come from, on parts that a job may need."""
    keys = ("unit shunt-500a", "cable 70 red", "fastener #8x19", "Sealant", "no such part")
    states = st.sampled_from(("stock", "bought", "ordered", "customer"))
    return st.builds(Supply, st.sampled_from(keys), states, st.none() | st.integers(0, 20).map(float), note=texts)


@st.composite
def with_fuses(draw, plan, component):
    """The component with something known of some of its fuses, if it has any."""
    places = [each.place for each in places_on(component, plan.kind_of(component))]
    known = draw(st.lists(st.sampled_from(places), unique=True, max_size=3)) if places else []
    fuses = (Fuse(each, draw(texts), draw(figures), draw(figures), draw(figures), draw(texts)) for each in known)
    return replace(component, fuses=tuple(fuses))


def ends_of(plan):
    """All terminals and exits a cable may end at."""
    ends = [
        TerminalEnd(component.id, terminal.id)
        for component in plan.components.values()
        for terminal in plan.kind_of(component).terminals
    ]
    ends += [ExitEnd(each) for each in plan.exits]
    legs = (Leg(400, "measured"), Leg(120.5, "photo", "bend"))
    ends += [OffBoardEnd(each, "battery", legs, lug=lug) for each in plan.exits for lug in (None, Lug("M8"))]
    return ends


@st.composite
def with_a_cable(draw, plan):
    ends = ends_of(plan)
    if len(ends) < 2:
        return plan
    start, end = draw(st.sampled_from(ends)), draw(st.sampled_from(ends))
    conductor = draw(st.sampled_from(list(bundled_shelf().conductors.values())))
    try:
        plan, cable = connect(plan, start, end, conductor, "red", draw(st.sampled_from(("dc", "ac", "pv", "signal"))))
    except EditRefused:
        return plan
    pins = tuple(draw(st.lists(places, max_size=2)))
    joined = replace(plan.cables[cable], pins=pins, count=draw(st.integers(1, 3)))
    loops = st.sampled_from((None, Loop("service"), Loop("drip", 80.5)))
    looped = replace(joined, start=replace(joined.start, loop=draw(loops)), end=replace(joined.end, loop=draw(loops)))
    return plan.with_things([looped])


def _groups(data, path=()):
    """Yield the path of every group and list of plain data."""
    if isinstance(data, dict):
        yield path
        for key, value in data.items():
            yield from _groups(value, (*path, key))
    elif isinstance(data, list):
        yield path
        for index, value in enumerate(data):
            yield from _groups(value, (*path, index))


def _at(data, path):
    for step in path:
        data = data[step]
    return data


SLIPS = (
    None,
    True,
    "",
    "no such thing",
    "A'B\"C",
    -1,
    0,
    1e9,
    -7.5,
    float("nan"),
    float("inf"),
    10**400,
    [],
    {},
    [[]],
    {"a": {"b": [{}]}},
    [1, 2],
    ["x", None],
    "1e5",
    "\ud83d",
    "\x00",
)


@st.composite
def spoiled(draw, data):
    """A copy of a job file's data with one to three slips: fields lost, renamed, of another sort, out of range."""
    data = copy.deepcopy(data)
    for _ in range(draw(st.integers(1, 3))):
        path = draw(st.sampled_from(list(_groups(data))))
        group = _at(data, path)
        if not group:
            continue
        key = draw(st.sampled_from(list(group) if isinstance(group, dict) else list(range(len(group)))))
        match draw(st.sampled_from(("lose", "rename", "replace", "replace", "replace", "double"))):
            case "lose":
                del group[key]
            case "rename" if isinstance(group, dict):
                group[f"{key}_"] = group.pop(key)
            case "double" if isinstance(group, list):
                group.append(copy.deepcopy(group[key]))
            case _:
                group[key] = draw(st.sampled_from(SLIPS))
    return data
