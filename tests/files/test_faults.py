import pytest

from boardplan.files.faults import BadFile, Fault
from boardplan.files.record_faults import path_text

DATA = {"components": [{"id": "INV1", "at": [1, 2]}, {"at": [3, 4]}], "job": {"title": "x"}}


@pytest.mark.parametrize(
    ("location", "text"),
    [
        ((), ""),
        (("job", "title"), "job.title"),
        (("components", 0), "components[0] 'INV1'"),
        (("components", 0, "at", 1), "components[0] 'INV1'.at[1]"),
        (("components", 1, "at", 1), "components[1].at[1]"),
        (("components", 7, "at"), "components[7].at"),
        (("nothing", "here"), "nothing.here"),
    ],
)
def test_a_path_in_words(location, text):
    assert path_text(location, DATA) == text


def test_a_fault_is_a_line():
    assert str(Fault("job.title", "missing; it must be given")) == "job.title: missing; it must be given"
    assert str(Fault("", "expected JSON")) == "expected JSON"


def test_a_bad_file_says_all_of_it():
    bad = BadFile("a.json", [Fault("job", "missing"), Fault("boards", "missing")])
    assert str(bad) == "a.json: job: missing\na.json: boards: missing"
    assert len(bad.faults) == 2
