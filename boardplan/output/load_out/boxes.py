"""Boxes: which part goes into which box, none heavier than the shop's limit as far as things are weighed."""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from boardplan.model.load_out import BoxRule, PartCategory
from boardplan.output.parts.part import Part
from boardplan.output.parts.part_words import kilograms
from boardplan.output.parts.parts_list import PartsList
from boardplan.output.parts.units import lift_words

LOOSE = "loose"


@dataclass(frozen=True, slots=True)
class PackedBox:
    """A box by its number, or things carried loose; `load` says when it goes into the van, nought if it never does."""

    number: str
    name: str
    load: int
    parts: tuple[Part, ...]
    lift: str

    @property
    def weight(self) -> float:
        """What is weighed of it, in kg; what a board carries is in the board's own weight."""
        return math.fsum(each.weight or 0.0 for each in self.parts if not each.on_board)

    @property
    def unweighed(self) -> tuple[str, ...]:
        """The parts in it that nobody weighed."""
        return tuple(each.words for each in self.parts if kilograms(each) == "?" and not each.on_board)

    @property
    def title(self) -> str:
        """Its number and name, in words."""
        if not self.load:
            return self.name
        return f"Loose: {self.name}" if self.number == LOOSE else f"Box {self.number}: {self.name}"


def boxes_of(parts: PartsList) -> tuple[PackedBox, ...]:
    """Return the boxes in the order in which they are wanted on site; they are loaded the other way round."""
    filled = [each for rule in parts.shop.rules.boxes for each in _filled(parts, rule)]
    in_van = sum(rule.van for rule, _ in filled)
    boxes: list[PackedBox] = []
    number = 0
    for index, (rule, those) in enumerate(filled):
        loose = rule.loose or any(_too_heavy(parts, each) for each in those)
        number += not loose
        load = in_van - sum(each.van for each, _ in filled[:index]) if rule.van else 0
        boxes.append(_box(parts, LOOSE if loose else str(number), rule.name, load, those))
    return tuple(boxes)


def _box(parts: PartsList, number: str, name: str, load: int, those: tuple[Part, ...]) -> PackedBox:
    """Return a box, and who carries it as far as its things are weighed."""
    box = PackedBox(number, name, load, those, "")
    if number == LOOSE:
        return box
    unweighed = len(box.unweighed)
    return replace(box, lift=f"? {unweighed} not weighed" if unweighed else lift_words(parts.shop, box.weight))


def _filled(parts: PartsList, rule: BoxRule) -> Iterator[tuple[BoxRule, tuple[Part, ...]]]:
    """Yield the contents of a box, in as many boxes as its weight asks for."""
    those = [each for name in rule.categories for each in parts.parts if each.packed and _category(each) == name]
    if rule.loose:
        if those:
            yield rule, tuple(those)
        return
    for each in _shared_out(parts, those):
        yield rule, tuple(each)


def _category(part: Part) -> PartCategory:
    """Return the category of a part; what a board carries goes with the boards."""
    return "boards" if part.on_board else part.category


def _shared_out(parts: PartsList, those: Sequence[Part]) -> Iterator[list[Part]]:
    """Yield parts in boxes, in their order: a new box where the next part would make one too heavy."""
    fitting = [each for each in those if not _too_heavy(parts, each)]
    box: list[Part] = []
    weight = 0.0
    for each in fitting:
        own = 0.0 if each.on_board else each.weight or 0.0
        if box and weight + own > parts.shop.rules.heaviest_box:
            yield box
            box, weight = [], 0.0
        box.append(each)
        weight += own
    if box:
        yield box
    heavy = [each for each in those if _too_heavy(parts, each)]
    if heavy:
        yield heavy


def _too_heavy(parts: PartsList, part: Part) -> bool:
    return not part.on_board and part.weight is not None and part.weight > parts.shop.rules.heaviest_box


def hazardous(boxes: Iterable[PackedBox]) -> list[tuple[PackedBox, Part]]:
    """Return what needs a note for the transport, with its box."""
    return [(box, part) for box in boxes for part in box.parts if part.hazard]
