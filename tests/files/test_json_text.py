import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boardplan.files.json_text import json_lines, read_json

plain = st.recursive(
    st.none()
    | st.booleans()
    | st.integers(-(10**9), 10**9)
    | st.floats(allow_nan=False, allow_infinity=False)
    | st.text(),
    lambda inner: st.lists(inner) | st.dictionaries(st.text(), inner),
    max_leaves=20,
)


@given(plain)
def test_what_is_written_reads_the_same(value):
    text = json_lines(value)
    assert json.loads(text) == value
    data, faults = read_json(text)
    assert (data, faults) == (value, [])


@given(plain)
def test_a_line_is_no_wider_than_it_must_be(value):
    lines = json_lines(value).splitlines()
    deep = [line for line in lines if len(line) - len(line.lstrip()) > 4 and len(line) > 112]
    assert all(line.lstrip()[0] not in "[{" for line in deep)


def test_small_groups_share_a_line_and_large_ones_stay_open():
    text = json_lines({"boards": [{"id": "A", "size": [1300, 880]}], "note": "⌀ 3"})
    assert text == '{\n  "boards": [\n    {"id": "A", "size": [1300, 880]}\n  ],\n  "note": "⌀ 3"\n}\n'


@pytest.mark.parametrize(
    ("text", "path", "words"),
    [
        ("{", "line 1, column 2", "expected JSON: expecting property name"),
        ('{"a": 1,\n "b": }', "line 2, column 7", "expected JSON: expecting value"),
        ("", "line 1, column 1", "expected JSON"),
        ('{"a": 1, "a": 2}', "a", "a field given twice in one group"),
        ("[" * 100_000, "", "nested too deeply"),
        ("9" * 5000, "", "expected JSON"),
    ],
)
def test_slips_of_form(text, path, words):
    _, faults = read_json(text)
    assert faults[0].path == path
    assert words in faults[0].expected


def test_every_field_given_twice_is_told():
    _, faults = read_json('{"a": 1, "a": 2, "b": {"c": 1, "c": 1, "c": 2}}')
    assert sorted(fault.path for fault in faults) == ["a", "c"]
