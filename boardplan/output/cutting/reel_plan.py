"""Reel plan: what to cut from which reel, offcut or length of channel for a plan, conductor by conductor."""

import math
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from boardplan.geometry.units import tidy_number
from boardplan.model.plan import Plan
from boardplan.model.stock import CableStock, ChannelStock
from boardplan.output.cutting.channel_pieces import ChannelPiece, channel_pieces
from boardplan.output.cutting.cutting_plan import Bar, CuttingPlan, Piece, cutting_plan
from boardplan.routing.lengths.length_sum import CutLength
from boardplan.routing.lengths.reels import reel_needs


@dataclass(frozen=True, slots=True)
class CutGroup:
    """All pieces of one sort: `title` names the sort, `about` says of each piece what a helper needs to know.

    `plan` is none where no stock is given: somebody has to say what is at hand. `open_ones` have no length yet,
    `not_final` one that must not be cut yet; `matched` are the groups by piece. `cut` is the loss of a cut,
    `longest_bar` what the longest piece may be at most, both in mm.
    """

    title: str
    pieces: tuple[Piece, ...]
    about: Mapping[str, str]
    cut: float
    plan: CuttingPlan | None
    open_ones: tuple[str, ...] = ()
    not_final: frozenset[str] = frozenset()
    matched: Mapping[str, str] = field(default_factory=dict)
    channel: bool = False
    longest_bar: float = 0.0

    @property
    def split(self) -> tuple[str, ...]:
        """The matched groups whose pieces come from several bars."""
        bars: dict[str, set[int]] = {}
        for index, bar in enumerate(self.plan.bars if self.plan else ()):
            for piece in bar.pieces:
                if piece.name in self.matched:
                    bars.setdefault(self.matched[piece.name], set()).add(index)
        return tuple(sorted(name for name, those in bars.items() if len(those) > 1))

    @property
    def total(self) -> float:
        """The pieces with a cut each, in mm."""
        return math.fsum(each.length + self.cut for each in self.pieces)

    @property
    def longest(self) -> float:
        """The longest piece in mm."""
        return max((each.length for each in self.pieces), default=0.0)


def cut_groups(plan: Plan, lengths: Mapping[str, CutLength]) -> tuple[CutGroup, ...]:
    """Return the cables by conductor and colour, the largest first, then the bases and the covers by section."""
    return (*_cable_groups(plan, lengths), *_channel_groups(plan))


def cut_from(groups: Iterable[CutGroup]) -> dict[str, tuple[str, ...]]:
    """Return from which reels or offcuts the pieces of each cable are cut; what is missing is not there."""
    found: dict[str, dict[str, None]] = {}
    for group in groups:
        for bar in group.plan.bars if group.plan and not group.channel else ():
            for piece in bar.pieces:
                found.setdefault(piece.name, {})[bar.words] = None
    return {name: tuple(bars) for name, bars in found.items()}


def _cable_groups(plan: Plan, lengths: Mapping[str, CutLength]) -> Iterator[CutGroup]:
    for need in reel_needs(plan, lengths):
        cables = [
            each
            for each in plan.cables.values()
            if (each.conductor, each.colour) == (need.conductor, need.colour) and lengths[each.id].cut is not None
        ]
        stock = [each for each in plan.stock.cables if (each.conductor, each.colour) == (need.conductor, need.colour)]
        pieces = [Piece(each.id, lengths[each.id].cut or 0.0) for each in cables for _ in range(each.count)]
        yield CutGroup(
            title=f"{plan.conductors[need.conductor].name}, {need.colour}",
            pieces=tuple(pieces),
            about={each.id: " > ".join(end.place for end in lengths[each.id].ends) for each in cables},
            cut=plan.stock.cable_cut,
            plan=_planned(pieces, _bars(stock, "reel"), plan.stock.cable_cut),
            longest_bar=max((each.length for each in stock), default=0.0),
            open_ones=need.open,
            not_final=frozenset(each.id for each in cables if not lengths[each.id].final),
            matched={each.id: each.group for each in cables if each.group},
        )


def _channel_groups(plan: Plan) -> Iterator[CutGroup]:
    pieces = channel_pieces(plan)
    for width, height in sorted({(each.width, each.height) for each in pieces}, reverse=True):
        stock = [each for each in plan.stock.channels if (each.width, each.height) == (width, height)]
        for part, words in (("base", "bases"), ("cover", "covers")):
            those = [each for each in pieces if (each.width, each.height, each.part) == (width, height, part)]
            if those:
                yield _channel_group(plan, f"Channel {width:g} x {height:g}, {words}", those, stock)


def _channel_group(plan: Plan, title: str, those: list[ChannelPiece], stock: list[ChannelStock]) -> CutGroup:
    """Return the pieces of a section; a blade takes more of the length where it cuts at a slant."""
    steepest = max(end.degrees for each in those for end in each.ends)
    cut = math.ceil(plan.stock.channel_cut / math.cos(math.radians(steepest)) * 10 - 1e-6) / 10
    pieces = [Piece(each.name, each.length) for each in those]
    return CutGroup(
        title=title,
        channel=True,
        pieces=tuple(pieces),
        about={each.name: _end_words(each) for each in those},
        cut=cut,
        plan=_planned(pieces, _bars(stock, "length"), cut),
        longest_bar=max((each.length for each in stock), default=0.0),
    )


def _end_words(piece: ChannelPiece) -> str:
    first, second = (each.words for each in piece.ends)
    return f"both ends {first}" if first == second else f"end 1 {first}; end 2 {second}"


def _bars(stock: Iterable[CableStock | ChannelStock], word: str) -> list[Bar]:
    """Return stock by name; what has none is called by its length."""
    return [Bar(each.name or f"{word} of {metres(each.length)}", each.length, each.count) for each in stock]


def _planned(pieces: list[Piece], bars: list[Bar], cut: float) -> CuttingPlan | None:
    return cutting_plan(pieces, bars, cut) if bars and pieces else None


def metres(length: float) -> str:
    """Return a length in mm as metres, to the millimetre.

    >>> metres(25_000), metres(2351.5)
    ('25 m', '2.3515 m')
    """
    return f"{tidy_number(length / 1000, 4)} m"


def shortage_words(group: CutGroup) -> str:
    """Return what is missing and why, exactly, and whether that is proven; nothing where all fits."""
    plan = group.plan
    if plan is None or not plan.missing:
        return ""
    counts = Counter(each.name for each in plan.missing)
    names = [f"{name} ({count} pieces)" if count > 1 else name for name, count in counts.items()]
    verb = "don't fit" if len(plan.missing) > 1 else "doesn't fit"
    words = f"{metres(plan.missing_length)} of {group.title} are missing: {_listed(names)} {verb} on what is left"
    too_long = [*dict.fromkeys(each.name for each in plan.missing if each.length > group.longest_bar)]
    if too_long:
        ask = ": where may it be joined?" if group.channel else ""
        return f"{words}; longer than anything at hand: {_listed(too_long)}{ask}"
    if plan.could_find > 0:
        return f"{words}; another choice could leave out {metres(plan.could_find)} less at most"
    return f"{words}; no other choice leaves out less"


def _listed(names: Sequence[str]) -> str:
    return f"{', '.join(names[:-1])} and {names[-1]}" if len(names) > 1 else names[0]


def proof_words(group: CutGroup) -> str:
    """Return how many bars are used, and whether that is proven to be the least."""
    plan = group.plan
    if plan is None:
        return f"no {'length' if group.channel else 'reel'} is given: what is at hand?"
    count = len(plan.bars)
    if not count:
        return "nothing can be cut from what is at hand"
    one, several = ("length", "lengths") if group.channel else ("reel or offcut", "reels or offcuts")
    used = f"{count} {one if count == 1 else several}"
    if plan.could_save <= 0:
        return f"{used}, proven least"
    return f"{used}, at most {plan.could_save} more could be saved"


def not_needed(plan: Plan) -> tuple[str, ...]:
    """Return the stock of sorts that no piece of the plan is cut from, in words."""
    cables = {(each.conductor, each.colour) for each in plan.cables.values()}
    sections = {(each.width, each.height) for each in plan.channels.values()}
    words = [
        f"{each.conductor} {each.colour} {metres(each.length)}"
        for each in plan.stock.cables
        if (each.conductor, each.colour) not in cables
    ]
    words += [
        f"channel {each.width:g} x {each.height:g} {metres(each.length)}"
        for each in plan.stock.channels
        if (each.width, each.height) not in sections
    ]
    return tuple(words)
