"""Load-out tables from files: every category in one box, every number with its source, slips told."""

import pytest

from boardplan.bundled import data_dir
from boardplan.files.faults import BadFile
from boardplan.files.load_out_file import bundled_load_out, read_load_out
from boardplan.files.rule_set_file import rule_sets
from boardplan.model.load_out import PartCategory, SpareSort

TEXT = (data_dir("assets") / "load_out" / "common-practice.toml").read_text(encoding="utf-8")


def test_every_edition_names_a_table_that_is_there():
    assert [each.load_out.id for each in rule_sets()] == ["common-practice"] * len(rule_sets())


def test_every_category_goes_into_one_box_and_every_spare_has_a_source():
    table = bundled_load_out("common-practice")
    boxed = [name for box in table.boxes for name in box.categories]
    assert sorted(boxed) == sorted(PartCategory.__args__)
    assert set(table.spares) == set(SpareSort.__args__)
    assert all("common practice, no source" in each.source for each in table.spares.values())
    assert {line.category for line in table.lines} <= set(boxed)


def test_two_people_lift_two_thirds_of_their_sum():
    assert bundled_load_out("common-practice").lift.two == pytest.approx(2 / 3 * 46, abs=0.01)


@pytest.mark.parametrize(
    ("old", "new", "place"),
    [
        ("heaviest_box = 20", "heaviest_box = 0", "heaviest_box"),
        ("one = 23", 'one = "23"', "lift.one"),
        ('categories = ["safety"]', 'categories = ["safty"]', "box[0].categories"),
        ("[spares]\nlugs", "[spares]\nlgus", "spares"),
    ],
)
def test_a_slip_is_told_by_its_place(old, new, place, tmp_path):
    assert old in TEXT
    path = tmp_path / "own.toml"
    path.write_text(TEXT.replace(old, new, 1), encoding="utf-8")
    with pytest.raises(BadFile) as told:
        read_load_out(path)
    assert place in str(told.value)
