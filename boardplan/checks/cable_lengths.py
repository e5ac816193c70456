"""Cable lengths: whether every cable can be cut to its length, and that length is one to trust."""

from collections.abc import Iterator
from dataclasses import replace

from boardplan.checks.finding import Finding
from boardplan.checks.site import NOISE, Site, percent_text, where_is
from boardplan.checks.spots import CableSpot
from boardplan.routing.lengths.cut_length import off_board_legs
from boardplan.routing.lengths.length_sum import CutLength
from boardplan.routing.lengths.stiff_jumper import least_jumper, lug_mouths


def jumper_too_short(site: Site, spot: CableSpot) -> Iterator[Finding]:
    """Yield a finding where a jumper has too little free jacket between its two lugs to be bent in."""
    length, mouths = site.lengths.get(spot.id), lug_mouths(site.plan, spot.cable)
    if length is None or length.path is None or mouths is None or length.slack_class != "jumper":
        return
    limit, diameter = site.limit("jumper-free-jacket"), spot.conductor.outside_diameter
    free, asked = length.path - sum(mouths), limit.value * diameter
    if free < asked - NOISE:
        has, wants = site.two_lengths(free, asked)
        place = f"{has} of free jacket between its lugs" if free >= 0 else f"lugs that overlap by {site.length(-free)}"
        least = site.length(least_jumper(mouths, diameter, limit.value))
        words = (
            f"Jumper {spot.id} has {place}; {wants} of jacket is asked, so {least} from stud to stud: "
            "a link bar may do better"
        )
        yield site.finding("jumper-too-short", site.asked("jumper-free-jacket", asked), where_is(spot), words, free)


def lead_not_in_stock(site: Site, spot: CableSpot) -> Iterator[Finding]:
    """Yield a finding where no lead with moulded ends is long enough."""
    length, stock = site.lengths.get(spot.id), spot.conductor.stock_lengths
    if length is None or length.path is None or not stock or length.cut is not None:
        return
    wanted, longest = length.path + length.extra + length.slack, max(stock)
    has, wants = site.two_lengths(longest, wanted)
    words = f"Lead {spot.id} wants {wants}; the longest in stock is {has}"
    yield site.finding("lead-not-in-stock", site.asked("signal-lead-stock", wanted), where_is(spot), words, longest)


def leg_estimated(site: Site, spot: CableSpot) -> Iterator[Finding]:
    """Yield a note where a leg off the board is only estimated, or was read off a photo."""
    doubtful = [leg for leg in off_board_legs(spot.cable) if leg.trust in ("estimated", "photo")]
    if doubtful:
        legs = ", ".join(f"{site.length(leg.length)} ({leg.trust})" for leg in doubtful)
        words = f"Measure again before cutting {spot.id}: {legs}"
        yield site.finding("leg-estimated", site.limit("leg-measured"), where_is(spot), words)


def lug_not_measured(site: Site, spot: CableSpot) -> Iterator[Finding]:
    """Yield a question where a cable ends in a lug that nobody has measured."""
    length = site.lengths.get(spot.id)
    places = [end.place for end in length.ends if end.lug_unknown] if length else []
    if places:
        words = (
            f"Which lug goes on {spot.id} at {', '.join(places)}? It isn't measured, so nothing is taken off the length"
        )
        yield site.finding("lug-not-measured", site.limit("open-question"), where_is(spot), words)


def matched_surplus(site: Site) -> Iterator[Finding]:
    """Yield a note for each matched group whose shortest cable gets much longer than it needs to be."""
    grouped = [length for length in site.lengths.values() if length.group and length.cut]
    limit = site.limit("matched-surplus")
    worst: dict[str, CutLength] = {}
    for length in grouped:
        held = worst.get(length.group)
        if held is None or length.surplus > held.surplus:
            worst[length.group] = length
    for group, length in worst.items():
        if length.surplus_percent <= limit.value + NOISE:
            continue
        members = tuple(sorted(each.cable for each in site.lengths.values() if each.group == group))
        spot = site.spots[length.cable]
        shift = length.evened_by
        advice = shift.words(site.length(shift.by)) if shift else "move or turn what it joins"
        words = (
            f"In matched group {group}, {length.cable} has {site.length(length.surplus)} to lay in a bow, "
            f"{percent_text(length.surplus_percent)} of its length; "
            f"over {percent_text(limit.value)}: {advice}"
        )
        where = replace(where_is(spot), things=members)
        yield site.finding("matched-surplus", limit, where, words, length.surplus_percent)
