"""The shelf: every kind loads, hangs together, invents no torque; fasteners and channels against published sizes."""

import pytest
from boards import library_bus, lookout_cabin

from boardplan.files.faults import BadFile
from boardplan.files.shelf_build import kind_from, kind_plain
from boardplan.files.shelf_file import bundled_shelf, read_shelf
from boardplan.files.shelf_records import KindRecord
from boardplan.geometry.point import Box

SHELF = bundled_shelf()
KINDS = list(SHELF.kinds.values())
FAMILIES = {
    "AC distribution", "Alternator chargers", "Balancing transformers", "Batteries and trays", "Breakers", "Busbars",
    "Charge controllers", "Clamps and ledges", "Contactors and protect relays", "Converters", "Earth bars",
    "Fuse blocks", "Glands and entries", "Inverter/chargers", "Junction boxes", "Monitoring", "PV disconnects",
    "Relays", "Shunts", "Shut-offs", "Sockets",
}  # fmt: skip

each_kind = pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.id)


def boxes_of(shape):
    """Yield the box round each repetition of a shape of the front view."""
    for index in range(shape.count):
        for point in shape.points:
            x, y = point.x + shape.step.x * index, point.y + shape.step.y * index
            if shape.shape == "rect":
                yield Box(x, y, x + shape.size.x, y + shape.size.y)
            else:
                radius = shape.radius if shape.shape == "disc" else 0
                yield Box(x - radius, y - radius, x + radius, y + radius)


def test_the_shelf_is_well_stocked():
    assert len(KINDS) >= 45
    assert set(SHELF.families()) >= FAMILIES


@each_kind
def test_holes_terminals_and_art_lie_on_the_kind(kind):
    box = kind.box
    assert all(box.holds(hole.position) for hole in kind.holes)
    assert all(box.holds(terminal.position) for terminal in kind.terminals)
    for shape in kind.art:
        for around in boxes_of(shape):
            assert box.holds((around.left, around.bottom)), shape
            assert box.holds((around.right, around.top)), shape


@each_kind
def test_nothing_dangerous_is_invented(kind):
    assert all(terminal.torque is None for terminal in kind.terminals)
    assert all(terminal.usable_thread is None for terminal in kind.terminals)
    assert all(terminal.largest_conductor is None for terminal in kind.terminals)
    assert kind.data_state == "typical"
    assert "Measure your own" in kind.note


@each_kind
def test_a_kind_with_holes_names_a_fastener_of_the_shelf(kind):
    if kind.holes:
        assert kind.fastener in SHELF.fasteners
        assert kind.flange


@each_kind
def test_every_terminal_is_above_the_board_and_below_the_lid(kind):
    """Studs of a battery stand on its lid; nothing else reaches higher than its body."""
    most = kind.depth + (45 if kind.family == "Batteries and trays" else 0)
    assert all(0 < terminal.z <= most for terminal in kind.terminals)


@each_kind
def test_every_kind_is_drawn_and_survives_a_job_file(kind):
    assert kind.art
    assert kind_from(KindRecord.model_validate(kind_plain(kind))) == kind


@each_kind
def test_a_keyhole_kind_asks_for_room_to_lift_it_off(kind):
    drops = [hole.drop for hole in kind.holes if hole.shape == "keyhole"]
    room = [clear.distance for clear in kind.keep_clear if clear.face == "top" and clear.reason == "lift-off"]
    if drops:
        assert room
        assert min(room) >= max(drops)


@pytest.mark.parametrize("plan", [library_bus(), lookout_cabin()], ids=["library bus", "lookout cabin"])
def test_a_kind_of_a_sample_board_measures_as_on_the_shelf(plan):
    for name, kind in plan.kinds.items():
        shelved = SHELF.kinds[name]
        assert (kind.outline, kind.depth, kind.mass) == (shelved.outline, shelved.depth, shelved.mass)
        assert (kind.holes, kind.terminals, kind.allowed_turns) == (
            shelved.holes,
            shelved.terminals,
            shelved.allowed_turns,
        )


@pytest.mark.parametrize(
    ("fastener", "clearance"),
    [("M5 bolt", 5.5), ("M6 bolt", 6.6), ("M8 bolt", 9.0), ("M10 bolt", 11.0)],  # ISO 273:1979, medium series
)
def test_through_holes_are_those_of_iso_273(fastener, clearance):
    assert SHELF.fasteners[fastener].bit == clearance


@pytest.mark.parametrize("fastener", [each for each in SHELF.fasteners.values() if each.id.startswith("#")], ids=str)
def test_wood_screws_are_as_thick_as_their_number_says(fastener):
    """ASME B18.6.1: nominal diameter = 0.060 in + 0.013 in a number."""
    number = int(fastener.id[1:].split("x")[0].split()[0])
    assert fastener.thread == pytest.approx((0.060 + 0.013 * number) * 25.4, abs=0.05)
    assert fastener.bit < fastener.thread


def test_channel_sections_have_walls_of_some_millimetres():
    assert len(SHELF.channel_sections) >= 6
    for section in SHELF.channel_sections.values():
        assert 2 <= section.width - section.inner_width <= 6
        assert 2 <= section.height - section.inner_height <= 6
    usual = SHELF.channel_sections["60x60"]
    assert (usual.inner_width, usual.inner_height) == (56, 56)


KIND = '[[kind]]\nid = "a"\nname = "A"\nsize = [10, 10]\ndepth = 5\n'
SECTION = '[[channel_section]]\nid = "s"\nname = "S"\noutside = [40, 40]\ninside = [{}, 36]\n'


@pytest.mark.parametrize(
    ("texts", "said"),
    [
        ([KIND + KIND], "kind 'a'"),
        ([KIND, KIND], "kind 'a'"),
        ([SECTION.format(36), SECTION.format(36)], "channel section 's'"),
        ([SECTION.format(40)], "inside"),
        (["kind = 3"], "kind"),
        (["[[kind"], "TOML"),
    ],
)
def test_a_bad_file_says_what_is_wrong(tmp_path, texts, said):
    paths = []
    for number, text in enumerate(texts):
        paths.append(tmp_path / f"{number}.toml")
        paths[-1].write_text(text)
    with pytest.raises(BadFile, match=said):
        read_shelf(paths)
