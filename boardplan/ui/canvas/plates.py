"""Plates: where the references of small components are written, so that none lies over another or under a sign."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from boardplan.geometry.point import Box, Point

HEIGHT = 16.0
_OVERHANG = 6.0
"""How far a plate that was shifted may stand out over its body, in px."""
_STEPS = (0.0, 0.5, -0.5, 1.05, -1.05, 2.1, -2.1)


@dataclass(frozen=True, slots=True)
class Plate:
    """A plate where it would lie on its own and the body it names, both in px, y up."""

    key: str
    box: Box
    body: Box


def settled(plates: Iterable[Plate], signs: Sequence[Box]) -> Mapping[str, Point | None]:
    """Return how far each plate is shifted, in px; none where it is left out because a larger body's lies there.

    >>> low, high = Box(0, 0, 40, 16), Box(0, 10, 40, 26)
    >>> settled([Plate("A", low, low.grown(40)), Plate("B", high, high.grown(2))], ())["B"] is None
    True
    """
    found: dict[str, Point | None] = {}
    taken: list[Box] = []
    for plate in sorted(plates, key=lambda each: -each.body.width * each.body.height):
        shift = _first_free(plate, taken, signs)
        found[plate.key] = shift
        if shift is not None:
            taken.append(plate.box.moved(*shift))
    return found


def _first_free(plate: Plate, taken: Sequence[Box], signs: Sequence[Box]) -> Point | None:
    if _free(plate.box, taken) and _free(plate.box, signs):
        return Point(0.0, 0.0)
    shifts = _shifts(plate)
    free = [each for each in shifts if _free(plate.box.moved(*each), taken)]
    clear = (each for each in free if _free(plate.box.moved(*each), signs))
    return next(clear, free[0] if free else None)


def _shifts(plate: Plate) -> list[Point]:
    """Return the places a plate may go to, the nearest first: where it is, and all over its body."""
    across, up, room = plate.box.width, plate.box.height, plate.body.grown(_OVERHANG)
    every = (Point(dx * across, dy * up) for dx in _STEPS for dy in _STEPS)
    inside = [each for each in every if each == (0.0, 0.0) or _within(plate.box.moved(*each), room)]
    return sorted(inside, key=lambda each: abs(each.x) + abs(each.y))


def _within(box: Box, room: Box) -> bool:
    return room.left <= box.left and box.right <= room.right and room.bottom <= box.bottom and box.top <= room.top


def _free(box: Box, others: Iterable[Box]) -> bool:
    return not any(
        box.left < each.right and each.left < box.right and box.bottom < each.top and each.bottom < box.top
        for each in others
    )
