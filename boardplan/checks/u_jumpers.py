"""U jumpers: whether a jumper between two studs that look the same way has room to turn back."""

from collections.abc import Iterator

from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, where_is
from boardplan.checks.spots import CableSpot
from boardplan.routing.lengths.stiff_jumper import turning_back
from boardplan.routing.route import Route


def jumper_turns_back_tightly(site: Site, spot: CableSpot) -> Iterator[Finding]:
    """Yield a finding where a jumper's studs are too near each other for a U, or the U reaches not far enough."""
    if not site.knows("u-jumper-room") or not isinstance(spot.way, Route):
        return
    room = turning_back(site.plan, spot.cable, spot.way)
    if room is None:
        return
    for words, has, asked in (
        ("has its studs {} apart; {} is asked for two bends side by side", room.spacing, room.least_spacing),
        (
            "reaches {} from its studs; {} is asked for the lug, a bend and half the jacket",
            room.height,
            room.least_height,
        ),
    ):
        if has < asked - NOISE:
            sentence = f"Jumper {spot.id} turns back and {words.format(*site.two_lengths(has, asked))}"
            limit = site.asked("u-jumper-room", asked)
            yield site.finding("jumper-turns-back-tightly", limit, where_is(spot), sentence, has)
