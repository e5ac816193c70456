from boardplan.files.shelf_file import bundled_shelf


def test_families_come_once_in_the_order_of_the_shelf():
    shelf = bundled_shelf()
    families = shelf.families()
    assert len(families) == len(set(families))
    assert next(kind.family for kind in shelf.kinds.values()) == families[0]
    assert {kind.family for kind in shelf.kinds.values()} == set(families)


def test_a_terminal_by_its_name():
    kind = bundled_shelf().kinds["fused-busbar-5-way"]
    assert kind.terminal("MAIN").size == "M10"
    assert kind.terminal("NONE") is None
    assert (kind.box.width, kind.box.height) == (372, 128)
