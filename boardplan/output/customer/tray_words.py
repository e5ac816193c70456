"""Tray words: what a customer must know to build a battery tray, as blocks; where nobody knows it, a question."""

from collections.abc import Iterator

from boardplan.geometry.units import length_text, tidy_number
from boardplan.model.job import Units
from boardplan.model.rule_set import RuleSet
from boardplan.model.tray import Tray, TrayExit, TrayFixing
from boardplan.output.customer.tray_size import (
    Gap,
    InsideSum,
    between_gap,
    built_over,
    inside_of,
    lid_gap,
    over_of,
    pull_newton,
    side_gap,
    sides,
)
from boardplan.output.drawn.blocks import Block, Row
from boardplan.output.drawn.dimensions import at_least_text, dimension_text

FOOTER = (
    "Sizes for building only, no electrical drawing. The battery's own sheet and local rules win over this. "
    "Not sure? Ask before you cut."
)
_LEAD = 19.0
_KG_IN_POUND = 0.45359237
"""Exact, by the international agreement of 1959."""


def tray_blocks(tray: Tray, rules: RuleSet, units: Units) -> list[Block]:
    """Return all that is said and asked of a tray, in the customer's units."""
    return [
        Block("Inside size", list(_inside_rows(tray, rules, units)), _LEAD),
        Block("Batteries", list(_battery_rows(tray, units)), _LEAD),
        Block("Load", list(_load_rows(tray, units)), _LEAD),
        Block("Holding it down", list(_holding_rows(tray, units)), _LEAD),
        Block("Cable exits", list(_exit_rows(tray, units)), _LEAD),
        Block("How it is made", list(_making_rows(tray, units)), _LEAD),
        Block("Air, heat and way in", list(_air_rows(tray, units)), _LEAD),
        Block("As built", list(_built_rows(tray, rules, units)), _LEAD),
        Block("Before we come", list(_end_rows(tray)), _LEAD),
    ]


def _known(words: str, lead: str, question: str) -> Row:
    """Return a row that says what is known, or asks."""
    return Row(words, lead) if words else Row(question, lead, blank=True)


def _mass(kg: float, units: Units) -> str:
    return f"{tidy_number(kg / _KG_IN_POUND)} lb ({tidy_number(kg)} kg)" if units == "inch" else f"{tidy_number(kg)} kg"


def _sum_words(inside: InsideSum, units: Units) -> str:
    """Return a sum as it is worked out, such as 4 x 190 + 3 x 20 + 2 x 10 = 840.

    Fractions of an inch are each rounded, so sums in inches carry those in mm beside them; a total is rounded up.
    """
    total = inside.total
    if total is None:
        return ""
    own = _one_sum(inside, total, units)
    return own if units == "mm" else f"{own} in ({_one_sum(inside, total, 'mm')} mm)"


def _one_sum(inside: InsideSum, total: float, units: Units) -> str:
    parts = [
        f"{f'{term.count} x ' if term.count > 1 else ''}{dimension_text(term.each or 0, units)}"
        for term in inside.terms
    ]
    return f"{' + '.join(parts)} = {at_least_text(total, units)}"


def _inside_rows(tray: Tray, rules: RuleSet, units: Units) -> Iterator[Row]:
    inside = inside_of(tray, rules)
    for each in (inside.length, inside.width, inside.height):
        yield _known(_sum_words(each, units), each.name, f"not known: {', '.join(each.missing)}?")
    over = length_text(over_of(units), units)
    yield Row(f"inside +{over}, never smaller", "tolerance", bold=True)
    gaps = {"side gap": side_gap(tray, rules), "between": between_gap(tray, rules), "above posts": lid_gap(tray)}
    for name, gap in gaps.items():
        yield _known(_gap_words(gap, units), name, "What does the battery's sheet ask?")


def _gap_words(gap: Gap, units: Units) -> str:
    return "" if gap.value is None else f"{length_text(gap.value, units)}, {gap.source}"


def _battery_rows(tray: Tray, units: Units) -> Iterator[Row]:
    battery, count = tray.battery, tray.count
    laid = f"{count}: {tray.columns} across, {tray.rows} deep" if count is not None else ""
    yield _known(laid, "number", "How many, and in how many rows?")
    measures = (battery.length, battery.width, battery.height)
    size = " x ".join("____" if each is None else dimension_text(each, units) for each in measures)
    unit = "in" if units == "inch" else "mm"
    yield Row(f"L x W x H {size} {unit}", "each", blank=None in measures)
    yield _known("" if battery.mass is None else _mass(battery.mass, units), "weighs", "What does one weigh?")
    posts = f"towards the {battery.terminals}" if battery.terminals else ""
    yield _known(posts, "posts", "Which side are the posts on?")
    plus = battery.plus.replace("-", " ") if battery.plus else ""
    yield _known(plus, "plus corner", "At which corner is plus?")


def _load_rows(tray: Tray, units: Units) -> Iterator[Row]:
    count, each = tray.count, tray.battery.mass
    batteries = f"{count} x {_mass(each, units)} = {_mass(count * each, units)}" if count and each else ""
    yield _known(batteries, "batteries", "What do all batteries weigh?")
    yield _known("" if tray.mass is None else _mass(tray.mass, units), "with tray", "And with tray and hold-down?")
    yield Row(_centre_words(tray, units) or "not known yet", "centre of mass")
    yield _pull_row(tray, units)


def _centre_words(tray: Tray, units: Units) -> str:
    if None in sides(tray) or tray.battery.height is None or tray.count is None:
        return ""
    high = dimension_text(tray.battery.height / 2, units)
    unit = "in" if units == "inch" else "mm"
    return f"middle of the tray, {high} {unit} above its floor, taking each battery's at its own middle"


def _pull_row(tray: Tray, units: Units) -> Row:
    if tray.craft == "boat":
        pull = pull_newton(tray)
        here = f": {tidy_number(pull, 0)} N for this battery" if pull is not None else ""
        moves = "1 in (25 mm)" if units == "inch" else "25 mm (1 in)"
        small = "3/8 in (10 mm)" if units == "inch" else "10 mm"
        words = (
            f"each battery moves no more than {moves} in any direction under 400 N (90 lb) or twice its weight, "
            f"whichever is less{here} (33 CFR 183.420); {small} under twice its weight where ISO 10133 holds (5.2)"
        )
        return Row(f"{words}. {tray.pull}".strip(), "must stand")
    asked = {
        "vehicle": "What pull does the local rule ask, braking and sideways?",
        "building": "What does the local rule ask, such as for earthquakes?",
        None: "Boat, vehicle or building? What pull does the rule there ask?",
    }[tray.craft]
    return _known(tray.pull, "must stand", asked)


def _holding_rows(tray: Tray, units: Units) -> Iterator[Row]:
    yield _known(tray.hold_down, "hold-down", "Straps or bars: which, and where?")
    if tray.straps:
        places = ", ".join(dimension_text(each, units) for each in tray.straps)
        yield Row(f"{places} from the inside left", "they cross at")
    yield Row("clear of posts and vents; insulated where they pass over live parts")
    groups: dict[tuple[str, str], list[str]] = {}
    for fixing in tray.fixings:
        at = _place(fixing, units)
        groups.setdefault((fixing.bolt or "bolt ____", fixing.into or "____"), []).append(at)
    for (bolt, into), fixed in groups.items():
        yield Row(f"{bolt} into {into} at {', '.join(fixed)}", "fixed")
    if not tray.fixings:
        yield Row("Which bolts, how far apart, into which member?", "fixed", blank=True)
    yield Row("into the structure, never into a floor skin only", bold=True)


def _place(fixing: TrayFixing, units: Units) -> str:
    at = fixing.at
    return f"X {dimension_text(at.x, units)} Y {dimension_text(at.y, units)}" if at else "place ____"


def _exit_rows(tray: Tray, units: Units) -> Iterator[Row]:
    for each in tray.exits:
        yield Row(_exit_words(each, units), each.name)
    if not tray.exits:
        yield Row("Where do the cables leave, how wide is each hole?", "exits", blank=True)
    yield _known(tray.first_clamp, "first clamp", "Where is the first clamp?")
    yield _known(tray.fuses, "fuses, bus", "Where is room for the fuses and the bus of the tray?")


def _exit_words(each: TrayExit, units: Units) -> str:
    along = "____" if each.along is None else dimension_text(each.along, units)
    high = "____" if each.height is None else dimension_text(each.height, units)
    wide = "____" if each.diameter is None else dimension_text(each.diameter, units)
    start = "front" if each.wall in ("left", "right") else "left"
    edge, towards = each.edge or "edge trim or gland ____", each.towards or "leaving towards ____"
    wall = f"{each.wall} wall" if each.wall else "wall ____"
    return f"{wall}, {along} from the inside {start}, {high} above the floor, hole {wide}; {edge}; {towards}"


def _making_rows(tray: Tray, units: Units) -> Iterator[Row]:
    yield _known("" if tray.lip is None else length_text(tray.lip, units), "lip", _lip_question(tray, units))
    yield _known(tray.drain, "drain", "A drain, or none?")
    yield _known(tray.liner, "liner", "Which liner?")
    yield _known(tray.material, "material", "Which material, how thick?")
    yield _known(tray.coating, "coating", "Which coating, against acid, condensation and galvanic corrosion?")


def _lip_question(tray: Tray, units: Units) -> str:
    if tray.battery.height is None:
        return "How high is the lip?"
    low, high = (length_text(tray.battery.height / share, units) for share in (4, 3))
    return f"How high? 1/4 to 1/3 of the battery, {low} to {high}, is common practice, no source."


def _air_rows(tray: Tray, units: Units) -> Iterator[Row]:
    yield _known(tray.ventilation, "vents", "Which openings, how large, leading where?")
    yield Row("kept apart from living space, fuel and heat")
    yield _known(tray.sensor, "sensor", "Where does the temperature sensor sit?")
    least = _battery_profile(tray, units)
    yield _known(tray.lift, "way in", f"How wide and high are doors and hatches? One battery{least} and two hands.")


def _battery_profile(tray: Tray, units: Units) -> str:
    size = (tray.battery.length, tray.battery.width, tray.battery.height)
    return "" if None in size else f", {' x '.join(dimension_text(each or 0, units) for each in size)},"


def _built_rows(tray: Tray, rules: RuleSet, units: Units) -> Iterator[Row]:
    """Yield what was measured in the tray that is there, and whether it holds what is needed; else lines to fill in."""
    built, inside = tray.built, inside_of(tray, rules)
    if built is None:
        yield Row("Measure inside at both ends and write the smaller:")
        yield Row("", "length", blank=True)
        yield Row("", "width", blank=True)
        yield Row("", "free height", blank=True)
        return
    said = " ".join(each for each in (built.by, built.date) if each)
    yield Row(said or "not said", "measured by")
    measured = ((inside.length, built.length), (inside.width, built.width), (inside.height, built.height))
    for needed, has in measured:
        if has is None:
            yield Row("", needed.name, blank=True)
        else:
            words, fits = _built_text(needed, has, units)
            yield Row(words, needed.name, bold=not fits)


def _built_text(needed: InsideSum, has: float, units: Units) -> tuple[str, bool]:
    """Return what a measured inside comes to, and whether it holds what is needed; height may be more than needed."""
    own, over = length_text(has, units), built_over(needed.total, has)
    if over is None:
        return f"{own}; what is needed is not known yet", False
    if over < 0:
        return f"{own}: {_shade(-over, units)} TOO SMALL, ask before anything goes in", False
    if needed.name != "free height" and over > over_of(units):
        return f"{own}: {_shade(over, units)} more than needed, pack it out and measure the cables' way again", False
    return f"{own}: holds the {length_text(needed.total or 0, units)} needed", True


def _shade(length: float, units: Units) -> str:
    """Return a small difference, in mm where a tape in inches can't show it."""
    return length_text(length, units if dimension_text(length, units) != "0" else "mm")


def _end_rows(tray: Tray) -> Iterator[Row]:
    yield _known(tray.finished_by, "finished by", "Finished before which day?")
    yield Row(tray.photo or "of the inside, with a tape in the picture", "photo")
    yield Row("", "built by", blank=True)
    yield Row("", "date, signed", blank=True)
