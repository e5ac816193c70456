"""Word desk: puts blocks of words on a board that is cut in sheets, where they cover nothing that matters."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from boardplan.geometry.point import Box, Point
from boardplan.output.printing.lettering import Measure, TextLine
from boardplan.output.template.free_places import WORDS, FreePlaces, common_box, places_from_middle
from boardplan.output.template.word_block import Block, Inscription, block_of
from boardplan.output.template.word_places import outside

_OFF_SHEET = 12.0
"""How bad it is for words to reach past the sheet of what they name; per mm²."""


@dataclass(frozen=True, slots=True)
class WordDesk:
    """The sheets of a board as rectangles, what of each is on no other, and what is drawn already."""

    rects: tuple[Box, ...]
    own: tuple[Box, ...]
    places: FreePlaces
    measure: Measure

    def block(self, *lines: TextLine) -> Block:
        """Return lines as a block."""
        return block_of(lines, self.measure)

    def beside(self, candidates: Iterable[tuple[Box, float]], of: Point) -> Box:
        """Return the best place for words about a point, on a sheet that shows both, and take it."""
        shown = [rect for rect in self.own if rect.holds(of)] or [rect for rect in self.rects if rect.holds(of)]
        rects = [rect.grown(-1) for rect in shown] or list(self.rects)

        def judged() -> Iterator[tuple[Box, float]]:
            for box, own in candidates:
                yield box, own + _OFF_SHEET * min(outside(box, rect) for rect in rects)

        found = self.places.best(judged())
        if found is None:
            raise ValueError("no candidates were given")
        self.places.take(found[0], WORDS)
        return found[0]

    def first(self, spots: Iterable[Box]) -> Box | None:
        """Return the first place that is as good as free and take it, none where all cover something."""
        found = self.places.best(((box, 0.01 * index) for index, box in enumerate(spots)), rising=True)
        if found is None or found[1] >= WORDS:
            return None
        self.places.take(found[0], WORDS)
        return found[0]

    def within(self, block: Block, room: Box) -> Iterator[Inscription]:
        """Yield words about a room once on each sheet that shows enough of it, near the middle of what it shows."""
        for rect in self.own:
            shown = common_box(room, rect)
            if shown is None:
                continue
            box = self.first(places_from_middle(shown, block.width, block.height, 4.0))
            if box:
                yield block.at(box)
