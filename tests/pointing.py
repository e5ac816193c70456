"""Pointing: pointer events as a hand would make them, for driving tools without a window."""

from boardplan.editing.tools.gesture import Pointer, run
from boardplan.geometry.point import Point


def move(x, y, **more):
    return Pointer("move", Point(x, y), **more)


def held(x, y, **more):
    """A move with the left button down."""
    return Pointer("move", Point(x, y), button="left", **more)


def press(x, y, button="left", **more):
    return Pointer("press", Point(x, y), button=button, **more)


def release(x, y, button="left", **more):
    return Pointer("release", Point(x, y), button=button, **more)


def double(x, y, **more):
    return Pointer("double", Point(x, y), button="left", **more)


def key(name, x=0, y=0, **more):
    return Pointer("key", Point(x, y), key=name, **more)


def click(x, y, **more):
    return press(x, y, **more), release(x, y, **more)


def drag(start, *places, **more):
    """Press, go from place to place, let go at the last one."""
    return press(*start, **more), *(held(*place, **more) for place in places), release(*places[-1], **more)


def done(gesture, *events):
    """What a gesture leaves after events; it must end with the last of them."""
    shown, result = run(gesture, events)
    assert result is not None, "the gesture waits for more"
    assert len(shown) == len(events), "the gesture ended early"
    return result


def shown(gesture, *events):
    """What a gesture shows after the last of the events; it must still be going on."""
    found, result = run(gesture, events)
    assert result is None, "the gesture has ended"
    return found[-1]
