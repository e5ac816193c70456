"""Parts list: every part that a job needs, with its spares and the marks of supply, and whether all of it is there."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from boardplan.checks.review import Review
from boardplan.model.supply import Supply
from boardplan.output.parts.cable_ends import end_parts
from boardplan.output.parts.cables import cable_parts
from boardplan.output.parts.channels import channel_parts
from boardplan.output.parts.fastenings import fastening_parts
from boardplan.output.parts.fuses import fuse_parts
from boardplan.output.parts.part import Part, named
from boardplan.output.parts.shop import Shop
from boardplan.output.parts.standing import standing_parts
from boardplan.output.parts.tools import tool_parts
from boardplan.output.parts.units import unit_parts


@dataclass(frozen=True, slots=True)
class PartsList:
    """All parts in the order of boxes; `ordered` are the parts that have not come, in words.

    `stray` are the marks of supply on parts that this job does not need.
    """

    shop: Shop
    parts: tuple[Part, ...]
    ordered: tuple[str, ...]
    stray: tuple[Supply, ...]

    @property
    def ready(self) -> bool:
        """Whether nothing is marked as ordered that the job needs."""
        return not self.ordered

    @property
    def unmarked(self) -> int:
        """How many bought parts nobody has said the source of."""
        return len({each.key for each in self.parts if each.bought and not each.origin})

    @property
    def ready_words(self) -> str:
        """Whether the van may leave, as far as the list knows."""
        if self.ordered:
            count = len(self.ordered)
            verb = "1 part is" if count == 1 else f"{count} parts are"
            return f"NOT READY TO LEAVE: {verb} ordered: {named(self.ordered, '; ')}"
        unmarked = self.unmarked
        if not unmarked:
            return "ready to leave as far as this list knows"
        verb = "1 part has" if unmarked == 1 else f"{unmarked} parts have"
        return f"ready to leave as far as this list knows; {verb} no mark that says where it comes from"


def parts_list(review: Review) -> PartsList | None:
    """Return all parts of a job; none under a rule set that says nothing of loading."""
    rules = review.plan.rules.load_out
    if rules is None:
        return None
    shop = Shop(review, rules)
    found = [replace(each, mark=review.plan.supply.get(each.key)) for each in _all_parts(shop)]
    keys = {each.key for each in found}
    stray = tuple(mark for key, mark in review.plan.supply.items() if key not in keys)
    return PartsList(shop, tuple(found), _ordered(found), stray)


def _all_parts(shop: Shop) -> Iterable[Part]:
    for sort in (
        unit_parts,
        cable_parts,
        end_parts,
        fuse_parts,
        fastening_parts,
        channel_parts,
        tool_parts,
        standing_parts,
    ):
        yield from sort(shop)


def _ordered(parts: Sequence[Part]) -> tuple[str, ...]:
    """Return the names of parts that have not come, each once, with the day they are promised for."""
    names: dict[str, str] = {}
    for each in parts:
        if each.mark and each.mark.state == "ordered" and each.quantity != 0:
            name = f"{each.words} (expected {each.mark.date})" if each.mark.date else each.words
            names.setdefault(each.key, name)
    return tuple(names.values())
