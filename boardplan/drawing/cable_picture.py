"""Cable picture: a cable as thick, round and coloured as the real one, with what is on its ends."""

from collections.abc import Sequence
from dataclasses import replace

from boardplan.drawing.lug_picture import DressedEnd, holds_picture, lugs_picture, tube_strand
from boardplan.drawing.picture import Area, Picture, Strand, Words, placed_picture
from boardplan.drawing.rings import bar
from boardplan.drawing.stretch import Pieces, beside, length_of, longest_straight, stretch_of
from boardplan.drawing.tint import lightness, mixed
from boardplan.drawing.words import readable_turn, width_of
from boardplan.geometry.bends import Bend, Straight
from boardplan.geometry.placement import Placement
from boardplan.geometry.point import Point
from boardplan.model.cable import Cable, TerminalEnd
from boardplan.model.component_kind import Pole
from boardplan.model.conductor import Conductor
from boardplan.model.plan import Plan
from boardplan.routing.route import Route
from boardplan.routing.supports.clamp import Clamp

_UNKNOWN_COLOUR = "#8D9092"
_RIM = 0.7
_MOST_SIDE_BY_SIDE = 5
_LABEL_FROM_DIAMETER = 9.0
_THICK = 7.0


def cable_picture(plan: Plan, cable: Cable, route: Route, clamps: Sequence[Clamp] = ()) -> Picture:
    """Return a cable on its way, in wall coordinates; its number stands beside its clamps, not under them."""
    pieces = route.pieces
    if not pieces:
        return ()
    conductor = plan.conductors[cable.conductor]
    ends = _dressed_ends(plan, cable, pieces, conductor)
    dressed = tuple(ends.values())
    seen = _jacket(ends, pieces)
    if not seen:
        return (*lugs_picture(dressed), *holds_picture(dressed))
    colours = colours_of(plan, cable)
    return (
        *_shadow(seen, conductor, route),
        *_strands(seen, cable, conductor, colours),
        *lugs_picture(dressed),
        *(strand for end in dressed for strand in tube_strand(end)),
        *_highlight(seen, _width(cable, conductor), colours[0]),
        *holds_picture(dressed),
        *_label(cable, seen, conductor, clamps),
    )


def colours_of(plan: Plan, cable: Cable) -> tuple[str, ...]:
    """Return the colours of a cable's insulation as the rule set gives them; grey where it gives none."""
    return tuple(plan.rules.colours.get(cable.colour, _UNKNOWN_COLOUR).split("/"))


def reversed_pieces(pieces: Pieces) -> tuple[Straight | Bend, ...]:
    """Return a centre line from its other end."""
    return tuple(
        Straight(piece.end, piece.start)
        if isinstance(piece, Straight)
        else Bend(piece.end, piece.start, piece.centre, piece.radius, -piece.turn)
        for piece in reversed(pieces)
    )


def _dressed_ends(plan: Plan, cable: Cable, pieces: Pieces, conductor: Conductor) -> dict[int, DressedEnd]:
    """Return the ends that land on terminals: 0 for the first, 1 for the second."""
    found: dict[int, DressedEnd] = {}
    for index, end in enumerate(cable.ends):
        if isinstance(end, TerminalEnd):
            terminal = plan.kind_of(plan.components[end.component]).terminal(end.terminal)
            if terminal is not None:
                from_here = reversed_pieces(pieces) if index else tuple(pieces)
                found[index] = DressedEnd(terminal, from_here, conductor, _tube_colour(plan, cable, terminal.pole))
    return found


def _tube_colour(plan: Plan, cable: Cable, pole: Pole) -> str:
    """Return the colour of heat-shrink tube: that of the polarity, or else of the cable."""
    name = {"+": "red", "-": "black"}.get(pole, cable.colour)
    colour = plan.rules.colours.get(name, _UNKNOWN_COLOUR).split("/")[0]
    return mixed(colour, "#000000", 0.30) if lightness(colour) > 0.2 else mixed(colour, "#000000", 0.45)  # noqa: PLR2004


def _jacket(ends: dict[int, DressedEnd], pieces: Pieces) -> tuple[Straight | Bend, ...]:
    """Return the stretch of the centre line where the jacket is seen."""
    bare = [ends[index].bare if index in ends else 0.0 for index in (0, 1)]
    return stretch_of(pieces, bare[0], length_of(pieces) - bare[1])


def _side_by_side(cable: Cable, conductor: Conductor, colours: tuple[str, ...]) -> tuple[int, float]:
    """Return how many strands are drawn beside each other, and how thick each is."""
    if cable.count > 1:
        return min(cable.count, _MOST_SIDE_BY_SIDE), conductor.outside_diameter
    if len(colours) > 1 and conductor.cores == 2:  # noqa: PLR2004 - a twin
        return 2, conductor.outside_diameter / 2
    return 1, conductor.outside_diameter


def _width(cable: Cable, conductor: Conductor) -> float:
    return conductor.outside_diameter * (min(cable.count, _MOST_SIDE_BY_SIDE) if cable.count > 1 else 1)


def _strands(seen: Pieces, cable: Cable, conductor: Conductor, colours: tuple[str, ...]) -> Picture:
    count, thick = _side_by_side(cable, conductor, colours)
    rim = Strand(tuple(seen), mixed(colours[0], "#000000", 0.62), count * thick, round_ends=False, detail=_RIM)
    if count == 1:
        jacket = Strand(tuple(seen), colours[0], thick - 2 * _RIM, round_ends=False)
        stripes = (
            Strand(tuple(seen), each, thick * 0.3, round_ends=False, dashes=(thick * 1.5, thick))
            for each in colours[1:]
        )
        return rim, jacket, *stripes
    inner = (
        Strand(
            beside(seen, (index - (count - 1) / 2) * thick),
            colours[index % len(colours)],
            max(0.6, thick - 1.1),
            round_ends=False,
        )
        for index in range(count)
    )
    return rim, *inner


def _highlight(seen: Pieces, width: float, colour: str) -> Picture:
    """Return the light along the middle: a soft band, and on a thick cable a brighter one within it."""
    lit = mixed(colour, "#FFFFFF", 0.42)
    soft = Strand(tuple(seen), lit, width * 0.52, opacity=0.28, round_ends=False)
    bright = Strand(tuple(seen), lit, width * 0.22, opacity=0.5, round_ends=False)
    return (soft, bright) if width >= _THICK else (replace(soft, width=width * 0.3, opacity=0.5),)


def _shadow(seen: Pieces, conductor: Conductor, route: Route) -> Picture:
    if conductor.outside_diameter < _THICK or route.in_channels:
        return ()
    reach = conductor.outside_diameter * 0.22
    shade = Strand(tuple(seen), "shadow", conductor.outside_diameter * 1.1, opacity=0.24, round_ends=False)
    return placed_picture((shade,), Placement(0.0, Point(reach, -reach)))


def _label(cable: Cable, seen: Pieces, conductor: Conductor, clamps: Sequence[Clamp]) -> Picture:
    """Return a sleeve with the cable's number on its longest straight, where it's thick enough to read."""
    straight = longest_straight(seen)
    if conductor.outside_diameter < _LABEL_FROM_DIAMETER or straight is None:
        return ()
    middle, towards, length = straight
    height = min(6.5, conductor.outside_diameter * 0.4)
    width = width_of(cable.id, height) + height
    if length < width * 1.3:
        return ()
    turn = readable_turn(towards, 0)
    middle = _clear_of_clamps(middle, towards, (length - width) / 2, width, clamps)
    sleeve = bar(middle.ahead(towards + 180, width / 2), towards, width, conductor.outside_diameter + 0.6, 1.2)
    return (
        Area((sleeve,), "bone", "bone-dark", 0.5),
        Words(middle, cable.id, height, "body-ink", turn=turn, bold=True),
    )


def _clear_of_clamps(middle: Point, towards: float, most: float, width: float, clamps: Sequence[Clamp]) -> Point:
    """Return the place nearest the middle of a straight where a sleeve lies clear of all clamps, if there is one."""
    offsets = sorted((side * step for step in range(0, int(most) + 1, 5) for side in (1, -1)), key=abs)
    for offset in offsets:
        place = middle.ahead(towards, offset)
        if all(place.distance_to(clamp.at) > (width + clamp.length) / 2 for clamp in clamps):
            return place
    return middle
