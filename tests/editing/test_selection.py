from boardplan.editing.selection import Selection


def test_the_one_picked_last_is_active():
    selection = Selection().toggled("A").toggled("B").toggled("C")
    assert selection.active == "C"
    assert selection.toggled("C").active == "B"
    assert selection.toggled("B").ids == ("A", "C")
    assert Selection().active is None


def test_only_and_kept():
    selection = Selection(("A",)).only("B", "C", "B")
    assert selection.ids == ("B", "C")
    assert "B" in selection
    assert "A" not in selection
    assert selection.kept_in({"C", "D"}).ids == ("C",)
