"""Shop: a review beside the shop's own rules for loading, from which all parts are reckoned."""

from dataclasses import dataclass
from typing import TypedDict, Unpack

from boardplan.checks.review import Review
from boardplan.model.load_out import Counter, LoadOut, PartCategory, SpareSort
from boardplan.model.plan import Plan
from boardplan.output.parts.part import Origin, Part, Use, total


class PartFields(TypedDict, total=False):
    """What may be said of a part beside its words and its uses."""

    spare: float | None
    spare_words: str
    unit: str
    counter: Counter
    standard: str
    size: str
    stud: str
    rating: str
    mass: float | None
    note: str
    question: str
    hazard: str
    packed: bool
    bought: bool
    own: Origin


@dataclass(frozen=True, slots=True)
class Shop:
    """What parts are reckoned from."""

    review: Review
    rules: LoadOut

    @property
    def plan(self) -> Plan:
        """The plan under review."""
        return self.review.plan

    def spare(self, sort: SpareSort, needed: float, step: float = 1.0) -> float:
        """Return how much spare of a sort is taken; none where the shop has no rule for it."""
        rule = self.rules.spares.get(sort)
        return rule.spare(needed, step) if rule else 0.0

    def part(
        self, key: str, category: PartCategory, words: str, uses: tuple[Use, ...], **fields: Unpack[PartFields]
    ) -> Part:
        """Return a part of which all uses are known, with the counter and the standard of its category."""
        given: PartFields = {
            "counter": self.rules.counters.get(category, ""),
            "standard": self.rules.standards.get(category, ""),
            **fields,
        }
        return Part(key, category, words, total(uses), uses=uses, **given)
