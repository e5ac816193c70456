"""Tool parts: bits and hole saws from the holes, dies, strippers and sockets from the cables and studs of a job."""

from collections import Counter
from collections.abc import Iterable, Iterator
from types import MappingProxyType

from boardplan.model.fastener import Fastener
from boardplan.model.holes import Hole
from boardplan.model.load_out import PartCategory
from boardplan.model.stud_size import plain_size
from boardplan.output.holes.hole_words import nearest_drill
from boardplan.output.parts.cable_ends import WorkedEnd, is_small, worked_ends
from boardplan.output.parts.fastenings import all_holes
from boardplan.output.parts.part import Part, counted, named
from boardplan.output.parts.shop import Shop
from boardplan.routing.lengths.end_work import size_words

ACROSS_FLATS = MappingProxyType({"M4": 7, "M5": 8, "M6": 10, "M8": 13, "M10": 16, "M12": 18})
"""Widths across flats of hexagon nuts in mm: ISO 272:1982, from memory; older M10 and M12 nuts have 17 and 19."""
HEX_KEYS = MappingProxyType({"M4": 3, "M5": 4, "M6": 5, "M8": 6, "M10": 8})
"""Hex keys of socket head cap screws in mm: ISO 4762, from memory."""
_HOLE_SAWS_FROM = 14.0
"""Wider holes are sawn, in mm: common practice, no source."""


def tool_parts(shop: Shop) -> Iterator[Part]:
    """Yield the tools that this job asks for by size."""
    yield from _bits(shop, all_holes(shop))
    ends = worked_ends(shop)
    yield from _dies([each for each in ends if each.lug and not is_small(shop, each.conductor)])
    yield from _sized(
        "Cutter and stripper", sorted({each.conductor.outside_diameter for each in ends}), "jackets of {} mm"
    )
    ferrules = {each.conductor.area for each in ends if each.work.ferrule and each.conductor.area is not None}
    yield from _sized("Ferrule tool", sorted(ferrules), "{} mm²")
    yield from _sockets(shop, ends)


def _tool(words: str, note: str = "", question: str = "", category: PartCategory = "tools") -> Part:
    return Part(f"tool {words}", category, words, 1, note=note, question=question, bought=False, own="shop")


def _bits(shop: Shop, holes: Iterable[Hole]) -> Iterator[Part]:
    counts = Counter(hole.bit for hole in holes)
    for bit in sorted(each for each in counts if each is not None):
        saw = bit >= _HOLE_SAWS_FROM
        spare = 0.0 if saw else shop.spare("small-bits" if bit < shop.rules.small_bit else "bits", 1)
        words = f"{'Hole saw' if saw else 'Bit'} {bit:.1f} mm ({nearest_drill(bit)} in)"
        note = f"{counted(counts[bit], 'hole')}{'; arbor and pilot bit' if saw else ''}"
        yield Part(
            f"bit {bit:g}", "bits", words, 1, spare, note=note, bought=False, own="shop", size=f"{bit:g} mm",
        )  # fmt: skip
    if counts[None]:
        question = f"which bit? {counted(counts[None], 'hole')} without a fastener or a width"
        yield Part("bit ?", "bits", "Bits for holes of unknown width", None, None, question=question, bought=False)


def _dies(ends: list[WorkedEnd]) -> Iterator[Part]:
    """Yield a die for each size of lug."""
    sizes: dict[str, Counter[str]] = {}
    for each in sorted(ends, key=lambda one: -(one.conductor.area or 0.0)):
        sizes.setdefault(size_words(each.conductor), Counter())[each.stage] += each.cable.count
    if sizes:
        yield _tool("Press for lugs", "with the dies below")
    for size, counts in sizes.items():
        made = ", ".join(
            f"{counts[stage]} {words}" for stage, words in (("shop", "in shop"), ("site", "on site")) if counts[stage]
        )
        yield _tool(f"Press die {size}", f"{made}; press a trial piece first")


def _sized(words: str, sizes: list[float], form: str) -> Iterator[Part]:
    if sizes:
        yield _tool(words, form.format(", ".join(f"{each:g}" for each in sizes)))


def _sockets(shop: Shop, ends: list[WorkedEnd]) -> Iterator[Part]:
    """Yield what turns the nuts of studs, the bolts of units and wood screws."""
    studs = {plain_size(each.stud) for each in ends if each.stud}
    bolts = {f"M{each.thread:g}" for each in _used_fasteners(shop) if each.hole != "pilot"}
    for size in sorted(studs | bolts, key=_thread):
        what = " and ".join(words for words, sizes in (("studs", studs), ("bolts", bolts)) if size in sizes)
        width = ACROSS_FLATS.get(size)
        if width is None:
            yield _tool(f"Socket for {size}", what, "which width across flats?")
            continue
        key = f"; hex key {HEX_KEYS[size]} mm for socket heads" if size in bolts and size in HEX_KEYS else ""
        old = "; older nuts 17" if size == "M10" else "; older nuts 19" if size == "M12" else ""
        yield _tool(f"Socket {width} mm for {size}", f"{what}, nuts as ISO 272{old}{key}")
    screws = [each.name for each in _used_fasteners(shop) if each.hole == "pilot"]
    if screws:
        yield _tool("Driver bits for wood screws", f"{named(screws)}; as their heads ask, 2 of each")


def _used_fasteners(shop: Shop) -> list[Fastener]:
    names = dict.fromkeys(hole.fastener for hole in all_holes(shop))
    return [shop.plan.fasteners[name] for name in names if name in shop.plan.fasteners]


def _thread(size: str) -> tuple[float, str]:
    digits = size.removeprefix("M")
    return (float(digits) if digits.replace(".", "", 1).isdigit() else 0.0), size
