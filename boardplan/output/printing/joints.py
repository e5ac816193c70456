"""Joints: where two sheets of a template are laid over each other."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from boardplan.geometry.point import Box
from boardplan.output.printing.pages import OVERLAP, Tile

_NOISE = 1e-6


@dataclass(frozen=True, slots=True)
class Joint:
    """Two tiles and the part they share: a strip as wide as the overlap; `upright` where it runs up."""

    first: Tile
    second: Tile
    shared: Box
    upright: bool

    @property
    def length(self) -> float:
        """How long the strip is."""
        return self.shared.height if self.upright else self.shared.width


def joints_of(tiles: Sequence[Tile]) -> Iterator[Joint]:
    """Yield the joints of tiles; the corner where two touch only aslant is none."""
    for index, first in enumerate(tiles):
        for second in tiles[index + 1 :]:
            a, b = first.rect, second.rect
            shared = Box(max(a.left, b.left), max(a.bottom, b.bottom), min(a.right, b.right), min(a.top, b.top))
            if min(shared.width, shared.height) > 0 and max(shared.width, shared.height) > OVERLAP + _NOISE:
                yield Joint(first, second, shared, upright=shared.height > shared.width)


def own_parts(tiles: Sequence[Tile]) -> list[Box]:
    """Return of each tile what it shares with no neighbour: words there are on one sheet only."""
    parts = {id(tile): tile.rect for tile in tiles}
    for joint in joints_of(tiles):
        for tile, other in ((joint.first, joint.second), (joint.second, joint.first)):
            parts[id(tile)] = _without(parts[id(tile)], other.rect, upright=joint.upright)
    return [parts[id(tile)] for tile in tiles]


def _without(part: Box, other: Box, *, upright: bool) -> Box:
    """Return a part of a tile less the strip along the side on which another tile lies."""
    if upright:
        if other.centre.x > part.centre.x:
            return part._replace(right=min(part.right, other.left))
        return part._replace(left=max(part.left, other.right))
    if other.centre.y > part.centre.y:
        return part._replace(top=min(part.top, other.bottom))
    return part._replace(bottom=max(part.bottom, other.top))
