"""Sheet note: what the marks of clamps and retainers mean, in a block on the sheets that show them."""

import re
from collections.abc import Sequence

from boardplan.output.printing.lettering import FINE, TextLine
from boardplan.output.printing.pages import Tile
from boardplan.output.template.clamp_mark import clamp_note
from boardplan.output.template.free_places import LINE, WORDS, places_within
from boardplan.output.template.retainer_mark import retainer_note
from boardplan.output.template.template_set import TemplateSet
from boardplan.output.template.word_block import Inscription, block_of

_PITCH = 5.0
_MOST_COVERED = 20 * LINE
"""A few lines may run under the block."""
_PART = re.compile(r"(?<=\.) +|  +| (?=\()")
"""Where a line may end: after a sentence, before brackets; what belongs together stays in one line."""


def note_sentences(shared: TemplateSet, tile: Tile) -> list[str]:
    """Return what the marks on a sheet need said."""
    template = shared.template
    clamps = clamp_note(template.plan, template.board, template.clamps, tile.rect)
    return [each for each in (clamps, retainer_note(template.retainers, tile.rect)) if each]


def sheet_note(shared: TemplateSet, tile: Tile, sentences: Sequence[str]) -> Inscription | None:
    """Return sentences as a block low on the sheet where nothing that matters is covered, none without room."""
    if not sentences:
        return None
    lines: list[TextLine] = [(line, FINE, False, "ink") for each in sentences for line in _PART.split(each)]
    block, places, rect = block_of(lines, shared.measure), shared.template.places, tile.rect.grown(-3)
    spots = ((box, 0.02 * (box.bottom - rect.bottom)) for box in places_within(rect, block.width, block.height, _PITCH))
    found = places.best(spots, rising=True)
    if found is None or found[1] - 0.02 * (found[0].bottom - rect.bottom) > _MOST_COVERED:
        return None
    places.take(found[0], WORDS)
    return block.at(found[0])
