import pytest

from boardplan.files.job_records import FORMAT, VERSION
from boardplan.files.upgrades import UPGRADES, upgraded


def test_every_older_version_has_its_upgrade():
    assert set(UPGRADES) == set(range(1, VERSION))


def test_todays_version_stays_as_it_is():
    data = {"format": FORMAT, "version": VERSION, "job": {}}
    assert upgraded(data) == (data, [])


@pytest.mark.parametrize("data", [None, [], "x", {}, {"format": "other"}, {"format": None, "version": 1}])
def test_another_format_is_refused(data):
    _, faults = upgraded(data)
    assert faults[0].path == "format"


@pytest.mark.parametrize("version", [None, 0, -1, 1.0, True, "1", VERSION + 1, 10**30])
def test_no_such_version_is_refused(version):
    _, faults = upgraded({"format": FORMAT, "version": version})
    assert faults[0].path == "version"
