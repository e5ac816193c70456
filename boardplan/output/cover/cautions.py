"""Cautions: which of the trade's usual warnings a job asks for, chosen by what the job holds."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from boardplan.checks.review import Review
from boardplan.geometry.units import tidy_number
from boardplan.model.cable import Cable, OffBoardEnd
from boardplan.model.component import Component
from boardplan.model.plan import Plan
from boardplan.model.weights import weights_of

ALONE = 23.0
"""What one person lifts at best, in kg: the load constant of NIOSH publication 94-110 (51 lb)."""
FOOTER = (
    "Positions and lengths only: this sheet sizes no cable and no fuse. Equipment instructions and local rules win; "
    "a competent, licensed person approves the electrical design."
)
_FEW = 6


@dataclass(frozen=True, slots=True)
class Caution:
    """A warning in words, and what of the job asks for it."""

    key: str
    words: str


def cautions_of(review: Review, *, template: bool) -> tuple[Caution, ...]:
    """Return the cautions of a job, the gravest first; `template` says whether a drilling template is beside."""
    plan = review.plan
    found = [Caution(key, words) for key, chosen in _CHOSEN for words in chosen(plan)]
    if template:
        words = "Before drilling: measure both bars on each sheet. Not 100.0 mm within 0.3 mm? Stop."
        found.insert(0, Caution("bars", words))
    return tuple(found)


def _names(things: Iterable[str]) -> str:
    names = list(things)
    more = len(names) - _FEW
    return ", ".join(names[:_FEW]) + (f" and {more} more" if more > 0 else "")


def _of_family(plan: Plan, family: str) -> list[str]:
    return [each.id for each in plan.components.values() if plan.kind_of(each).family == family]


def _cables(plan: Plan, sort: str) -> list[Cable]:
    return [each for each in plan.cables.values() if each.cable_class == sort]


def _old_sheets(plan: Plan) -> Iterator[str]:
    dated = f" of {plan.job.date}" if plan.job.date else ""
    yield f"Revision {plan.job.revision}{dated} only: throw older sheets away, never mix revisions."


def _behind(plan: Plan) -> Iterator[str]:
    if plan.components or plan.fixings:
        yield "Before drilling: what is behind? Tank, pipe, cable, skin, window."


def _shut_off(plan: Plan) -> Iterator[str]:
    shut_offs = _of_family(plan, "Shut-offs")
    if shut_offs:
        yield f"Emergency shut-off: {_names(shut_offs)}. Keep it clear and within reach."


def _pv(plan: Plan) -> Iterator[str]:
    cables, switches = _cables(plan, "pv"), _of_family(plan, "PV disconnects")
    if cables or switches:
        opened = f" {_names(switches)} open: the wires up to there stay live." if switches else ""
        yield f"PV conductors are live in daylight: cover or disconnect at the array, never under load.{opened}"


def _battery(plan: Plan) -> Iterator[str]:
    if _cables(plan, "dc"):
        yield (
            "Before any work on the board disconnect the batteries and cover their terminals; no rings, watch or "
            "chains; insulated tools."
        )
        yield "Check polarity at both ends before the first nut; the main fuse goes in last, after polarity is proved."


def _capacitors(plan: Plan) -> Iterator[str]:
    units = _of_family(plan, "Inverter/chargers")
    if units:
        yield f"Capacitors of {_names(units)} hold charge: wait and measure; pre-charge before the shut-off is closed."


def _mains(plan: Plan) -> Iterator[str]:
    if _cables(plan, "ac"):
        yield "AC work by a licensed person only; RCD or GFCI tested on ____________."
        yield "Neutral and earth are bonded in one place only, as the designer states."


def _lift(plan: Plan) -> Iterator[str]:
    for board in plan.boards.values():
        weights = weights_of(plan, board)
        if weights.carried > ALONE:
            least = "at least " if weights.unknown else ""
            yield f"Two-person lift: board {board.id}, {least}{tidy_number(weights.carried)} kg without cables."
    heavy = [each for each in plan.components.values() if _mass(plan, each) > ALONE]
    for component in heavy:
        yield f"Two-person lift: {component.id}, {tidy_number(_mass(plan, component))} kg. Use a ledger below it."
    for tray in plan.trays:
        if tray.battery.mass is not None and tray.battery.mass > ALONE:
            yield f"Two-person lift: each battery of {tray.id}, {tidy_number(tray.battery.mass)} kg."


def _mass(plan: Plan, component: Component) -> float:
    return plan.kind_of(component).mass or 0.0


def _pads(plan: Plan) -> Iterator[str]:
    asking = [each.id for each in plan.components.values() if plan.kind_of(each).non_combustible_backing]
    if asking:
        yield f"Non-combustible pad behind {_names(asking)}: no fabric there."


def _cooling(plan: Plan) -> Iterator[str]:
    asking = [
        each.id
        for each in plan.components.values()
        if any(clear.reason == "air" and clear.distance > 0 for clear in plan.kind_of(each).keep_clear)
    ]
    if asking:
        yield f"Keep the space round {_names(asking)} free: they need it for cooling."


def _trays(plan: Plan) -> Iterator[str]:
    if plan.trays:
        yield "Batteries: hold-down, terminal covers, ventilation."
    if any((tray.count or 0) > 1 for tray in plan.trays):
        yield "Never join batteries in parallel at different voltages: the battery's sheet says within how much."


def _matched(plan: Plan) -> Iterator[str]:
    groups = {each.group for each in plan.cables.values() if each.group}
    if groups:
        yield f"Matched cables ({_names(sorted(groups))}): do not trim one alone."


def _torque(plan: Plan) -> Iterator[str]:
    if any(each.sort == "stud" for one in plan.components.values() for each in plan.kind_of(one).terminals):
        yield "Torque from the component's own sheet, never from memory; mark after tightening."


def _estimated(plan: Plan) -> Iterator[str]:
    guessed = [
        cable.id
        for cable in plan.cables.values()
        if any(leg.trust == "estimated" for end in cable.ends if isinstance(end, OffBoardEnd) for leg in end.legs)
    ]
    if guessed:
        yield f"Estimated on the way of {_names(guessed)}: measure on site before cutting."


_CHOSEN: tuple[tuple[str, Callable[[Plan], Iterator[str]]], ...] = (
    ("behind", _behind),
    ("shut-off", _shut_off),
    ("pv", _pv),
    ("battery", _battery),
    ("capacitors", _capacitors),
    ("mains", _mains),
    ("lift", _lift),
    ("pads", _pads),
    ("cooling", _cooling),
    ("trays", _trays),
    ("matched", _matched),
    ("torque", _torque),
    ("estimated", _estimated),
    ("revision", _old_sheets),
)
"""Each caution by a key, and how a job is asked whether it needs it."""
