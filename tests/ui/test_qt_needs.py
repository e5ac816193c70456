"""What the window needs is said before Qt is imported."""

import pytest

from boardplan.ui.qt_needs import missing_for_window

ALL_THERE = {"platform": "linux", "loads": lambda _name: True}


def test_no_screen_is_said_in_plain_words():
    assert "no screen" in missing_for_window({}, **ALL_THERE)


@pytest.mark.parametrize(
    "environment",
    [{"DISPLAY": ":0"}, {"WAYLAND_DISPLAY": "wayland-0"}, {"QT_QPA_PLATFORM": "offscreen"}],
    ids=lambda each: next(iter(each)),
)
def test_nothing_is_missing(environment):
    assert missing_for_window(environment, **ALL_THERE) == ""


def test_missing_libraries_become_one_line_to_type():
    words = missing_for_window(
        {"DISPLAY": ":0"}, "linux", lambda name: name not in {"libEGL.so.1", "libxcb-cursor.so.0"}
    )
    assert words.endswith("sudo apt-get install -y --no-install-recommends libegl1 libxcb-cursor0")


def test_x11_libraries_are_not_asked_for_offscreen():
    assert missing_for_window({"QT_QPA_PLATFORM": "offscreen"}, "linux", lambda name: "xcb" not in name) == ""


def test_other_systems_bring_their_own():
    assert missing_for_window({}, "darwin", lambda _name: False) == ""
