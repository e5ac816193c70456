"""Cable ends: lugs, small terminals, ferrules, heat-shrink tube and glands, each with its ends and its spares."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import TypeVar

from boardplan.model.cable import Cable, CableEnd, OffBoardEnd, TerminalEnd
from boardplan.model.component_kind import Stage
from boardplan.model.conductor import Conductor
from boardplan.model.plan import Plan
from boardplan.output.parts.part import Part, Use, named
from boardplan.output.parts.shop import Shop
from boardplan.routing.lengths.end_work import EndWork, core_words, lug_measures, lug_words, size_words, tube_length

K = TypeVar("K")
_BLADES = "IEC 61210"
"""Flat quick-connect terminations, from memory."""
_MOST_USED = "lug-spare-most-used"


@dataclass(frozen=True, slots=True)
class WorkedEnd:
    """One end of a cable with the work on it; a far end that somebody described has its lug, stud and tube here."""

    cable: Cable
    conductor: Conductor
    end: CableEnd
    work: EndWork
    lug: str
    stud: str
    form: str
    tube: float | None
    board: str

    @property
    def stage(self) -> Stage:
        """Where it is pressed."""
        return "site" if self.work.raw else self.work.stage

    @property
    def asked(self) -> bool:
        """Whether somebody has to say what goes on this end."""
        moulded = bool(self.conductor.stock_lengths)
        return isinstance(self.end, OffBoardEnd) and not self.lug and not moulded

    def use(self, count: float) -> Use:
        """Return a use of so many for it."""
        return Use(self.cable.id, count, self.board, self.stage)


def worked_ends(shop: Shop) -> list[WorkedEnd]:
    """Return all ends of all cables."""
    return [
        _worked(shop.plan, cable, end, work)
        for cable in shop.plan.cables.values()
        for end, work in zip(cable.ends, shop.review.lengths[cable.id].ends, strict=True)
    ]


def _worked(plan: Plan, cable: Cable, end: CableEnd, work: EndWork) -> WorkedEnd:
    conductor = plan.conductors[cable.conductor]
    if isinstance(end, TerminalEnd):
        form = end.lug.form if end.lug else "straight"
        board = plan.components[end.component].board
        return WorkedEnd(cable, conductor, end, work, work.lug, work.stud, form, work.tube, board)
    board = plan.exits[end.exit].board
    lug = end.lug if isinstance(end, OffBoardEnd) else None
    if lug is None:
        return WorkedEnd(cable, conductor, end, work, "", "", "straight", None, board)
    measures = lug_measures(plan.rules, conductor, lug)
    tube = tube_length(plan.rules, measures.barrel) if measures else None
    return WorkedEnd(cable, conductor, end, work, lug_words(conductor, lug), lug.stud, lug.form, tube, board)


def end_parts(shop: Shop) -> Iterator[Part]:
    """Yield what goes on the ends of cables, the largest first, then what nobody said of far ends."""
    ends = sorted(worked_ends(shop), key=lambda each: (-(each.conductor.area or 0.0), each.stud, each.form))
    yield from _lugs(shop, ends)
    yield from _blades(shop, ends)
    yield from _ferrules(shop, ends)
    yield from _tubes(shop, ends)
    yield from _glands(shop, ends)
    yield from _far_ends(ends)


def _lugs(shop: Shop, ends: list[WorkedEnd]) -> Iterator[Part]:
    groups: dict[str, list[WorkedEnd]] = {}
    for each in ends:
        if each.lug:
            groups.setdefault(each.lug, []).append(each)
    counts = {name: sum(each.cable.count for each in those) for name, those in groups.items()}
    large = [name for name, those in groups.items() if not is_small(shop, those[0].conductor)]
    most_used = max(large, key=lambda name: counts[name], default="")
    for name, those in groups.items():
        uses = tuple(each.use(each.cable.count) for each in those)
        size = size_words(those[0].conductor)
        form = "" if those[0].form == "straight" else f", {those[0].form}°"
        if name not in large:
            spare = shop.spare("small-terminals", counts[name])
            words = f"Ring terminal {name}"
            yield shop.part(f"lug {name}", "small-terminals", words, uses, spare=spare, size=size, stud=those[0].stud)
            continue
        spare = shop.spare("lugs", counts[name])
        if name == most_used and shop.plan.rules.knows(_MOST_USED):
            spare = max(spare, shop.plan.rules.value(_MOST_USED))
        fine = "for fine-strand conductors" if those[0].conductor.construction == "fine-strand" else ""
        question = "" if those[0].stud else "for which stud?"
        yield shop.part(
            f"lug {name}", "lugs", f"Lug {name}", uses, spare=spare, size=f"{size}{form}", stud=those[0].stud or "?",
            note=fine, question=question,
        )  # fmt: skip


def is_small(shop: Shop, conductor: Conductor) -> bool:
    """Say whether a ring terminal is pressed on where a larger conductor has a lug."""
    area = conductor.area
    return conductor.lug is None and area is not None and area <= shop.rules.small_terminal


def _blades(shop: Shop, ends: list[WorkedEnd]) -> Iterator[Part]:
    for size, uses in _grouped(
        (core_words(each.conductor), each.use(each.cable.count)) for each in ends if each.work.blade
    ):
        words = f"Blade terminal {size}"
        spare = shop.spare("small-terminals", sum(each.count for each in uses))
        yield shop.part(f"blade {size}", "small-terminals", words, uses, spare=spare, size=size, standard=_BLADES)


def _ferrules(shop: Shop, ends: list[WorkedEnd]) -> Iterator[Part]:
    """Yield ferrules, one for each core."""
    named = (
        (core_words(each.conductor), each.use(each.cable.count * each.conductor.cores))
        for each in ends
        if each.work.ferrule
    )
    for size, uses in _grouped(named):
        spare = shop.spare("ferrules", sum(each.count for each in uses))
        yield shop.part(f"ferrule {size}", "ferrules", f"Ferrule {size}", uses, spare=spare, size=size)


def _tubes(shop: Shop, ends: list[WorkedEnd]) -> Iterator[Part]:
    """Yield heat-shrink tube in metres, by what it goes over and its colour."""
    named = (
        ((each.conductor, each.cable.colour), each.use(each.cable.count * each.tube / 1000))
        for each in ends
        if each.tube is not None
    )
    for (conductor, colour), uses in _grouped(named):
        size = size_words(conductor)
        yield shop.part(
            f"tube {size} {colour}", "tubes", f"Heat-shrink for {size}, {colour}", uses, unit="m", size=size,
            spare=shop.spare("tubes", sum(each.count for each in uses), 0.1),
            note=f"adhesive-lined, jacket {conductor.outside_diameter:g} mm; wide enough to slip over the palm",
        )  # fmt: skip
    if any(each.lug for each in ends) and not shop.plan.rules.knows("tube-over-jacket"):
        asked = f"how many metres? Edition {shop.plan.rules.edition} gives no lengths of tube"
        yield Part(
            "tube", "tubes", "Heat-shrink, each size and colour", None, None, "m", question=asked, counter="electrical"
        )


def _glands(shop: Shop, ends: list[WorkedEnd]) -> Iterator[Part]:
    named = (
        (each.conductor.outside_diameter, each.use(each.cable.count)) for each in ends if each.work.sort == "gland"
    )
    for diameter, uses in sorted(_grouped(named), key=lambda each: each[0]):
        spare = shop.spare("glands", sum(each.count for each in uses))
        words, asked = f"Gland for a cable of {diameter:g} mm", "do the components bring theirs?"
        yield shop.part(
            f"gland {diameter:g}", "glands", words, uses, spare=spare, size=f"{diameter:g} mm", question=asked
        )
    for place in shop.plan.exits.values():
        if place.through == "hole":
            size = "?" if place.diameter is None else f"{place.diameter:g} mm"
            use = Use(place.id, 1, place.board)
            words = f"Gland or grommet for a hole of {size}"
            spare = shop.spare("glands", 1)
            yield shop.part(f"exit {size}", "glands", words, (use,), spare=spare, size=size, question="which?")


def _far_ends(ends: list[WorkedEnd]) -> Iterator[Part]:
    """Yield one line of questions for the far ends that nobody described."""
    asked = [each for each in ends if each.asked]
    if asked:
        names = named([f"{each.cable.id} {each.work.place}" for each in asked], "; ")
        uses = tuple(each.use(each.cable.count) for each in asked)
        words = "Lugs, ferrules or terminals for far ends off the board"
        question = f"which, on which stud? {names}"
        yield Part("far ends", "lugs", words, None, None, uses=uses, question=question, counter="electrical")


def _grouped(pairs: Iterable[tuple[K, Use]]) -> list[tuple[K, tuple[Use, ...]]]:
    groups: dict[K, list[Use]] = {}
    for key, use in pairs:
        groups.setdefault(key, []).append(use)
    return [(key, tuple(uses)) for key, uses in groups.items()]
