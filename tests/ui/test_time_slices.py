"""Work spread over the pauses between events: bands of the wall drawn again, pictures of cables made."""

from PySide6.QtCore import QRect, QRectF
from PySide6.QtGui import QRegion

from boardplan.ui.canvas import waiting_pictures
from boardplan.ui.canvas.painter import Ready
from boardplan.ui.canvas.redrawing import BAND, Redrawing
from boardplan.ui.canvas.waiting_pictures import WaitingPictures


def region(boxes):
    found = QRegion()
    for box in boxes:
        found = found.united(box.toRect() if isinstance(box, QRectF) else box)
    return found


def redrawing(qapp, scale):
    drawn = []
    made = Redrawing(drawn.append, qapp)
    made.scale = scale
    return made, drawn


def test_what_is_no_higher_than_a_band_is_drawn_at_once(qapp):
    made, drawn = redrawing(qapp, 1.0)
    made.owe([QRect(0, 0, 3000, 40), QRect(0, 100, 30, 40)])
    assert drawn == []
    made.draw_band()
    assert region(drawn) == region([QRect(0, 0, 3000, 40), QRect(0, 100, 30, 40)])
    made.draw_band()
    assert len(drawn) == 2


def test_what_reaches_far_is_drawn_band_by_band_until_all_of_it_is(qapp, qtbot):
    made, drawn = redrawing(qapp, 0.5)
    owed = [QRect(0, 0, 20, 3000), QRect(500, 1000, 2000, 30), QRect(40, 2990, 100, 10)]
    made.owe(owed)
    made.draw_band()
    assert 0 < max(box.bottom() for box in drawn) <= BAND / 0.5
    qtbot.waitUntil(lambda: region(drawn) == region(owed), timeout=5000)
    qtbot.wait(20)
    assert sum(box.width() * box.height() for box in drawn) == 20 * 3000 + 2000 * 30 + 100 * 10


def test_what_is_owed_meanwhile_is_drawn_as_well(qapp, qtbot):
    made, drawn = redrawing(qapp, 1.0)
    made.owe([QRect(0, 0, 10, 1000)])
    made.draw_band()
    made.owe([QRect(0, 0, 10, 50)])
    qtbot.waitUntil(lambda: region(drawn) == region([QRect(0, 0, 10, 1000)]), timeout=5000)
    assert len([box for box in drawn if box.top() == 0]) == 2


def test_all_is_drawn_at_once_where_the_scale_is_not_known(qapp):
    made, drawn = redrawing(qapp, 0.0)
    made.owe([QRect(0, 0, 10, 100_000)])
    made.draw_band()
    assert drawn == [QRectF(0, 0, 10, 100_000)]


class Sight:
    """A sight whose pictures count how often they are made."""

    def __init__(self):
        self.made = []

    def ready(self, _plan, source, theme):
        self.made.append((source, theme))
        return Ready((), QRectF())


class Item:
    """An item that keeps what it was shown."""

    def __init__(self, sight):
        self.sight, self.shown = sight, []

    def scene(self):
        return self

    def show_ready(self, source, _ready):
        self.shown.append(source)


def waiting(qapp, count):
    paid, sight = [], Sight()
    held = WaitingPictures(lambda: paid.append(True), qapp)
    return held, [Item(sight) for _ in range(count)], sight, paid


def test_pictures_are_made_in_slices_and_shown_all_at_once(qapp, monkeypatch):
    held, items, sight, paid = waiting(qapp, 5)
    clock = iter(range(1000))
    monkeypatch.setattr(waiting_pictures.time, "perf_counter", lambda: next(clock) / 2)
    held.begin(None, "light", all_now=True)
    for number, item in enumerate(items):
        held.owe(item, (number,))
    held.pay(seconds=1.2)
    made = len(sight.made)
    assert 0 < made < 5
    assert not any(item.shown for item in items)
    assert paid == []
    held.pay(seconds=100)
    assert [source for source, _ in sight.made] == [(number,) for number in range(5)]
    assert [item.shown for item in items] == [[(number,)] for number in range(5)]
    assert paid == [True]


def test_pauses_pay_what_is_owed(qapp, qtbot):
    held, items, _, paid = waiting(qapp, 3)
    held.begin(None, "light", all_now=True)
    for item in items:
        held.owe(item, ("new",))
    held.pay(seconds=0)
    qtbot.waitUntil(lambda: paid == [True], timeout=5000)
    assert all(item.shown == [("new",)] for item in items)


def test_a_picture_that_is_forgotten_is_neither_made_nor_shown(qapp):
    held, (one, other), sight, _ = waiting(qapp, 2)
    held.begin(None, "light", all_now=True)
    held.owe(one, ("old",))
    held.owe(other, ("kept",))
    held.forget(one)
    held.pay(seconds=100)
    assert [source for source, _ in sight.made] == [("kept",)]
    assert (one.shown, other.shown) == ([], [("kept",)])


def test_another_theme_has_pictures_made_already_made_again(qapp, monkeypatch):
    held, (one, other), sight, _ = waiting(qapp, 2)
    held.begin(None, "light", all_now=True)
    held.owe(one, ("one",))
    held.owe(other, ("other",))
    clock = iter(range(1000))
    monkeypatch.setattr(waiting_pictures.time, "perf_counter", lambda: float(next(clock)))
    held.pay(seconds=1.5)
    assert sight.made == [(("one",), "light")]
    held.begin(None, "dark", all_now=True)
    assert sorted(sight.made[1:]) == [(("one",), "dark"), (("other",), "dark")]
    assert one.shown == [("one",)]
