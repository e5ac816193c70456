"""Channel parts: covers to pack flat, one spare length, and what the cutting plan says is bought."""

import math
from collections.abc import Iterator

from boardplan.output.cutting.channel_pieces import ChannelPiece, channel_pieces
from boardplan.output.parts.part import Part, Use, named
from boardplan.output.parts.shop import Shop


def channel_key(width: float, height: float) -> str:
    """Return the key of a section of channel."""
    return f"channel {width:g}x{height:g}"


def channel_parts(shop: Shop) -> Iterator[Part]:
    """Yield the channels by section, then the covers of each, and a length of the main section to spare."""
    pieces = channel_pieces(shop.plan)
    sections: dict[tuple[float, float], list[ChannelPiece]] = {}
    for each in pieces:
        sections.setdefault((each.width, each.height), []).append(each)
    for (width, height), those in sections.items():
        yield from _section(shop, width, height, those)
    if sections:
        main = max(sections, key=lambda each: (_length(sections[each], "base"), each))
        yield _spare(shop, *main)


def _length(pieces: list[ChannelPiece], part: str) -> float:
    return math.fsum(each.length for each in pieces if each.part == part)


def _section(shop: Shop, width: float, height: float, pieces: list[ChannelPiece]) -> Iterator[Part]:
    words, key = f"Slotted channel {width:g} x {height:g} with cover", channel_key(width, height)
    bases = [each for each in pieces if each.part == "base"]
    covers = [each for each in pieces if each.part == "cover"]
    uses = tuple(Use(each.channel, each.length / 1000, each.board) for each in bases)
    on_sale = any((each.width, each.height) == (width, height) for each in shop.plan.stock.channels)
    yield shop.part(
        key, "channels", words, uses, unit="m", size=f"{width:g} x {height:g} mm", packed=False,
        note=f"longest piece {max(each.length for each in bases):g} mm",
        question="" if on_sale else "in which lengths is it sold? one length more of the main section to spare",
    )  # fmt: skip
    if covers:
        count: dict[tuple[str, str], int] = {}
        for each in covers:
            count[each.channel, each.board] = count.get((each.channel, each.board), 0) + 1
        fitted = tuple(Use(channel, n, board) for (channel, board), n in count.items())
        names = named([f"{each.name} {each.length:g} mm" for each in covers])
        yield shop.part(
            key, "channels", f"Covers {width:g} x {height:g}", fitted, note=f"cut in the shop, packed flat: {names}",
            bought=False, own="made",
        )  # fmt: skip


def _spare(shop: Shop, width: float, height: float) -> Part:
    lengths = sorted({each.length for each in shop.plan.stock.channels if (each.width, each.height) == (width, height)})
    size = f" of {lengths[-1] / 1000:g} m" if lengths else ""
    return Part(
        channel_key(width, height), "channels", f"Channel {width:g} x {height:g}, one length{size} with cover", 0.0,
        shop.spare("channels", 1), "length", bought=False, size=f"{width:g} x {height:g} mm",
        question="" if lengths else "how long are the lengths it is sold in?",
    )  # fmt: skip
