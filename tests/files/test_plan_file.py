import json

import pytest
from boards import SAMPLES, library_bus
from hypothesis import given, settings
from hypothesis import strategies as st
from strategies import plans, spoiled

from boardplan.files.faults import BadFile
from boardplan.files.plan_file import job_schema, load_plan, plan_of_data, plan_of_text, plan_text, save_plan
from boardplan.model.cable import Loop
from boardplan.model.conductor import AngledLug
from boardplan.model.joins import broken_joins

FILES = sorted(SAMPLES.glob("*.json"))
BUS = json.loads((SAMPLES / "library-bus.json").read_text(encoding="utf-8"))


def changed(*steps, value=..., **fields):
    """The bus job's data with a value put in at a path, taken out (...), or fields changed there."""
    data = json.loads(json.dumps(BUS))
    here = data
    for step in steps[:-1]:
        here = here[step]
    if fields:
        here[steps[-1]] |= fields
    elif value is ...:
        del here[steps[-1]]
    else:
        here[steps[-1]] = value
    return data


BROKEN = {
    "no job": (changed("job"), "job: missing"),
    "no title": (changed("job", "title"), "job.title: missing"),
    "empty title": (changed("job", "title", value=""), "job.title: expected a text"),
    "no boards": (changed("boards", value=[]), "boards: "),
    "unknown field": (changed("job", "colour", value="red"), "job.colour: not a field of this format"),
    "text for a number": (
        changed("components", 0, "at", 0, value="12"),
        "components[0] 'PV1'.at[0]: expected a number, found '12'",
    ),
    "true for a number": (changed("boards", 0, "thickness", value=True), "boards[0] 'A'.thickness: expected a number"),
    "number for a text": (
        changed("components", 0, "label", value=3),
        "components[0] 'PV1'.label: expected a text, found 3",
    ),
    "not a number": (
        changed("components", 0, "at", 1, value=float("nan")),
        "components[0] 'PV1'.at[1]: expected a finite",
    ),
    "endless": (
        changed("boards", 0, "thickness", value=float("inf")),
        "boards[0] 'A'.thickness: expected a finite number",
    ),
    "too far away": (changed("components", 0, "at", 1, value=1e6), "components[0] 'PV1'.at[1]: expected at most 50000"),
    "negative size": (
        changed("boards", 0, "size", value=[-1, 20]),
        "boards[0] 'A'.size[0]: expected more than 0",
    ),
    "three coordinates": (changed("components", 0, "at", value=[1, 2, 3]), "components[0] 'PV1'.at: "),
    "size and outline": (
        changed("boards", 0, outline=[[0, 0], [9, 0], [9, 9]]),
        "boards[0] 'A': expected either size = [width, height] or an outline, and not both",
    ),
    "outline crosses": (
        changed("boards", 0, size=None, outline=[[0, 0], [90, 90], [90, 0], [0, 90]]),
        "boards[0] 'A'.outline: expected an outline that doesn't cross",
    ),
    "unknown kind": (
        changed("components", 0, "kind", value="teapot"),
        "components[0] 'PV1'.kind: expected a component kind of this file; there is no 'teapot'",
    ),
    "unknown board": (changed("exits", 1, "board", value="Z"), "exits[1] 'X2'.board: expected a board of this file"),
    "unknown component": (changed("cables", 1, "to", "component", value="SW9"), "cables[1] 'W02'.to.component: "),
    "unknown terminal": (
        changed("cables", 1, "to", "terminal", value="OUTLET"),
        "cables[1] 'W02'.to.terminal: expected a terminal of SW1 (IN, OUT); there is no 'OUTLET'",
    ),
    "unknown exit": (changed("cables", 0, "from", "exit", value="X99"), "cables[0] 'W01'.from.exit: expected an exit"),
    "unknown conductor": (changed("cables", 0, "conductor", value="71"), "cables[0] 'W01'.conductor: "),
    "unknown fastener": (changed("kinds", 0, "fastener", value="nail"), "kinds[0] 'alternator-charger-50a'.fastener: "),
    "two things at one end": (
        changed("cables", 1, "from", exit="X1"),
        "cables[1] 'W02'.from: expected component and terminal; or exit; or off_board, exit and legs",
    ),
    "unknown class": (changed("cables", 0, "class", value="hv"), "cables[0] 'W01'.class: expected 'dc', 'ac', 'pv' or"),
    "id used twice": (
        changed("exits", 1, "id", value="X1"),
        "exits[1] 'X1'.id: an id that is used once; exits[0] has it",
    ),
    "id in two places": (
        changed("fixings", 0, "id", value="X1"),
        "fixings[0] 'X1'.id: expected an id that is used once; 'X1' is also in exits",
    ),
    "id with a quote": (changed("exits", 1, "id", value="X'1"), "exits[1] 'X'1'.id: "),
    "wider inside": (
        changed("channels", 0, "inside", value=[70, 56]),
        "channels[0] 'RW1': expected the inside no larger than the outside",
    ),
    "channel stands still": (
        changed("channels", 0, "line", value=[[40, 266], [40, 266]]),
        "channels[0] 'RW1'.line: expected a line that doesn't repeat a point",
    ),
    "unknown rule set": (changed("job", "rule_set", "id", value="mine"), "job.rule_set: there is no rule set 'mine'"),
    "another format": (changed("format", value="other"), "format: expected a job file"),
    "no version": (changed("version"), "version: expected a whole number"),
    "newer version": (changed("version", value=2), "version: expected at most 1; version 2 needs a newer boardplan"),
    "a list": ([BUS], "format: expected a job file"),
}


@pytest.mark.parametrize("name", BROKEN)
def test_a_broken_file_says_where_and_what(name):
    data, words = BROKEN[name]
    with pytest.raises(BadFile) as bad:
        plan_of_text(json.dumps(data))
    assert words in str(bad.value)


def test_all_faults_are_told_at_once():
    data = changed("components", 0, "at", 0, value="12")
    data["boards"][0]["thickness"] = -1
    data["cables"][3]["colour"] = 7
    data["job"]["weather"] = "fine"
    with pytest.raises(BadFile) as bad:
        plan_of_text(json.dumps(data))
    assert [fault.path for fault in bad.value.faults] == [
        "job.weather",
        "boards[0] 'A'.thickness",
        "components[0] 'PV1'.at[0]",
        "cables[3] 'W04'.colour",
    ]


def test_all_broken_joins_are_told_at_once():
    data = changed("components", 0, "kind", value="teapot")
    data["cables"][0]["conductor"] = "71"
    data["exits"][0]["board"] = "Z"
    with pytest.raises(BadFile) as bad:
        plan_of_text(json.dumps(data))
    assert {fault.path for fault in bad.value.faults} >= {
        "exits[0] 'X1'.board",
        "components[0] 'PV1'.kind",
        "cables[0] 'W01'.conductor",
    }


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_sample_is_written_as_it_was_read(path):
    text = path.read_text(encoding="utf-8")
    assert plan_text(plan_of_text(text)) == text


@given(plans())
@settings(max_examples=25)
def test_what_is_saved_is_what_is_loaded(plan):
    text = plan_text(plan)
    again = plan_of_text(text)
    assert again == plan
    assert plan_text(again) == text


@given(spoiled(BUS))
@settings(max_examples=200)
def test_a_spoiled_file_is_a_plan_or_a_list_of_faults(data):
    check_sound(json.dumps(data))


@given(st.data())
@settings(max_examples=100)
def test_a_torn_file_is_a_list_of_faults(data):
    text = json.dumps(BUS)
    start = data.draw(st.integers(0, len(text)))
    length = data.draw(st.integers(1, 400))
    put_in = data.draw(st.sampled_from(("", "\x00", "}", "[" * 50, '"', "NaN", "é")))
    check_sound(text[:start] + put_in + text[start + length :])


@given(
    st.recursive(
        st.none() | st.booleans() | st.floats() | st.text(max_size=5),
        lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner, max_size=3),
        max_leaves=8,
    )
)
@settings(max_examples=100)
def test_any_data_under_our_heading_is_a_plan_or_a_list_of_faults(junk):
    check_sound(json.dumps({"format": "boardplan-job", "version": 1, "job": junk, "boards": junk, "cables": [junk]}))


@pytest.mark.parametrize("text", ["", " ", "{", "nul", "[" * 100_000, '{"a": 1, "a": 2}', "1" * 5000, "\ufeff{}"])
def test_text_that_is_no_job(text):
    with pytest.raises(BadFile) as bad:
        plan_of_text(text)
    assert bad.value.faults


def check_sound(text):
    """A text is either a whole plan that can be saved again, or has faults, each with words."""
    try:
        plan, faults = plan_of_text(text), ()
    except BadFile as bad:
        plan, faults = None, bad.faults
    assert (plan is None) == bool(faults)
    assert all(str(fault) for fault in faults)
    if plan is not None:
        assert not list(broken_joins(plan))
        assert plan_of_text(plan_text(plan)) == plan


def test_a_file_that_is_not_there(tmp_path):
    with pytest.raises(BadFile, match="can't be read"):
        load_plan(tmp_path / "nothing.json")


def test_a_file_that_is_not_text(tmp_path):
    path = tmp_path / "picture.json"
    path.write_bytes(b'{"format": "\xff\xfe"}')
    with pytest.raises(BadFile, match="byte 12: expected text in UTF-8"):
        load_plan(path)


def test_a_bad_file_names_the_file(tmp_path):
    path = tmp_path / "torn.json"
    path.write_text("{", encoding="utf-8")
    with pytest.raises(BadFile) as bad:
        load_plan(path)
    assert str(bad.value).startswith(f"{path}: line 1, column 2: expected JSON")


def test_saved_and_loaded_by_name(tmp_path):
    path = tmp_path / "bus.json"
    save_plan(library_bus(), path)
    assert load_plan(path) == library_bus()
    assert path.read_bytes() == (SAMPLES / "library-bus.json").read_bytes()


def test_the_data_of_a_sample_is_a_plan():
    assert plan_of_data(BUS) == library_bus()


# A small reading of JSON Schema 2020-12: the keywords our schema uses (json-schema.org, core and validation).


def schema_faults(schema, data, root, path="$"):
    if "$ref" in schema:
        yield from schema_faults(root["$defs"][schema["$ref"].rsplit("/", 1)[1]], data, root, path)
    if "anyOf" in schema and all(list(schema_faults(each, data, root, path)) for each in schema["anyOf"]):
        yield f"{path}: none of anyOf"
    yield from _own_faults(schema, data, path)
    if isinstance(data, dict):
        yield from _group_faults(schema, data, root, path)
    if isinstance(data, list) and "items" in schema:
        for index, each in enumerate(data):
            yield from schema_faults(schema["items"], each, root, f"{path}[{index}]")


def _group_faults(schema, data, root, path):
    properties = schema.get("properties", {})
    yield from (f"{path}: no {name}" for name in schema.get("required", ()) if name not in data)
    for name, value in data.items():
        if name in properties:
            yield from schema_faults(properties[name], value, root, f"{path}.{name}")
        elif schema.get("additionalProperties") is False:
            yield f"{path}.{name}: not allowed"


TYPES = {
    "object": dict,
    "array": list,
    "string": str,
    "boolean": bool,
    "number": (int, float),
    "integer": int,
    "null": type(None),
}
KEYWORDS = {
    "minimum": lambda data, limit: data >= limit,
    "maximum": lambda data, limit: data <= limit,
    "exclusiveMinimum": lambda data, limit: data > limit,
    "minItems": lambda data, limit: len(data) >= limit,
    "maxItems": lambda data, limit: len(data) <= limit,
    "minLength": lambda data, limit: len(data) >= limit,
    "maxLength": lambda data, limit: len(data) <= limit,
    "const": lambda data, limit: data == limit,
    "enum": lambda data, limit: data in limit,
}


def _own_faults(schema, data, path):
    if "type" in schema and not isinstance(data, TYPES[schema["type"]]):
        yield f"{path}: not a {schema['type']}"
        return
    for name, holds in KEYWORDS.items():
        if name in schema and not holds(data, schema[name]):
            yield f"{path}: {name} {schema[name]}"


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_sample_is_what_the_schema_says(path):
    schema = json.loads(json.dumps(job_schema()))
    assert schema["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    assert not list(schema_faults(schema, json.loads(path.read_text(encoding="utf-8")), schema))


@pytest.mark.parametrize(
    "data", [changed("job"), changed("boards", value=[]), changed("components", 0, "at", 0, value="12"), [BUS]]
)
def test_the_schema_refuses_what_the_reader_refuses(data):
    schema = job_schema()
    assert list(schema_faults(schema, data, schema))


W07 = next(index for index, each in enumerate(BUS["cables"]) if each["id"] == "W07")
W14 = next(index for index, each in enumerate(BUS["cables"]) if each["id"] == "W14")


def test_loops_and_ropes_are_kept():
    data = changed("cables", W07, "to", loop="service", loop_length=80)
    data["cables"][W14]["to"] |= {"rope": 4800, "loop": "drip"}
    text = plan_text(plan_of_data(data))
    plan = plan_of_text(text)
    assert plan.cables["W07"].end.loop == Loop("service", 80)
    assert (plan.cables["W14"].end.loop, plan.cables["W14"].end.rope) == (Loop("drip"), 4800)
    assert plan_text(plan) == text


def test_angled_lugs_faces_and_tails_are_kept():
    data = json.loads(json.dumps(BUS))
    conductor = next(each for each in data["conductors"] if each["id"] == "70")
    conductor["lug"]["angled"] = [{"form": "90", "stop": 10, "barrel": 22, "rise": 15}]
    data["kinds"][0]["terminals"][0] |= {"faces": "left", "tail": 100}
    text = plan_text(plan_of_data(data))
    plan = plan_of_text(text)
    assert plan.conductors["70"].lug.angled == (AngledLug("90", 10, 22, 15),)
    terminal = next(iter(plan.kinds.values())).terminals[0]
    assert (terminal.faces, terminal.tail) == ("left", 100)
    assert plan_text(plan) == text


@pytest.mark.parametrize(
    ("fields", "fault"),
    [
        ({"loop": "coil"}, "loop: expected"),
        ({"loop_length": 80}, 'expected loop = "service" or "drip" beside loop_length'),
        ({"loop": "service", "loop_length": 0}, "loop_length: expected more than 0"),
        ({"rope": 4800}, "expected component and terminal; or exit"),
    ],
)
def test_a_loop_that_can_not_be_is_refused(fields, fault):
    with pytest.raises(BadFile) as refused:
        plan_of_data(changed("cables", W07, "to", **fields))
    assert fault in str(refused.value)


def test_a_lug_measured_twice_is_refused():
    data = json.loads(json.dumps(BUS))
    once = {"form": "90", "stop": 10, "barrel": 22, "rise": 15}
    next(each for each in data["conductors"] if each["id"] == "70")["lug"]["angled"] = [once, once]
    with pytest.raises(BadFile, match="expected each form of angled lug once"):
        plan_of_data(data)
