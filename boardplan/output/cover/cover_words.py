"""Cover words: weights, findings, papers, cautions and the legend of a cover, as blocks for its columns."""

from collections.abc import Iterator, Sequence

from boardplan.drawing.picture import Area, Line, Picture, Strand, Words
from boardplan.drawing.rings import rectangle
from boardplan.geometry.bends import Straight
from boardplan.geometry.point import Box, Point
from boardplan.geometry.units import length_text, tidy_number
from boardplan.model.board import Board
from boardplan.model.plan import Plan
from boardplan.model.weights import Weights, weights_of
from boardplan.output.cover.cautions import cautions_of
from boardplan.output.cover.side_view import depths_of
from boardplan.output.cover.soft_picture import stage_of
from boardplan.output.drawn.blocks import Block, Row
from boardplan.output.drawn.dimensions import dimension_text, units_words
from boardplan.output.drawn.fixing_sign import fixing_sign
from boardplan.output.drawn.mass_mark import mass_mark
from boardplan.output.holes.datum import datum_words, running
from boardplan.output.making import Making, PackFile
from boardplan.output.verdict import open_counts, stop_words

_LEAD = 24.0
_FEW = 4


def sizes_block(plan: Plan, board: Board) -> Block:
    """Return the size, depths and datum of a board."""
    depths, units = depths_of(plan, board), plan.job.units
    box = board.box
    size = " x ".join(dimension_text(each, units) for each in (box.width, box.height, board.thickness))
    unit = "in" if units == "inch" else "mm"
    covering = f", covered, fabric {length_text(board.fabric.thickness, units)}" if board.fabric else ""
    stand_off = "not said" if board.stand_off is None else length_text(board.stand_off, units)
    rows = [
        Row(f"{size} {unit}", "board"),
        Row(f"{board.material.name}{covering}", "material"),
        Row(length_text(depths.thickness + depths.in_shop, units), "depth carried"),
        Row(length_text(depths.thickness + depths.finished, units), "   finished"),
        Row(stand_off, "gap behind"),
        Row(datum_words(board), "dimensions from"),
        Row(units_words(units), "all in"),
    ]
    return Block(f"Board {board.id}{f', {board.name}' if board.name else ''}", rows, _LEAD)


def weights_block(plan: Plan, board: Board) -> Block:
    """Return what a board weighs and where its centre of mass lies; what nobody weighed is named."""
    weights = weights_of(plan, board)
    bare = f"{tidy_number(weights.bare)} kg" if board.mass is not None else "____ kg: weigh it"
    rows = [
        Row(bare, "bare" if board.fabric is None else "bare, covered"),
        Row(_mass(weights.carried, weights), "carried in"),
        Row(_place(plan, board, weights.carried_centre), "   centre, C"),
        Row(_mass(weights.finished, weights), "finished"),
        Row(_place(plan, board, weights.finished_centre), "   centre, F"),
        Row("without cables and channels; carried in: with what is fitted in the shop"),
    ]
    if weights.unknown:
        rows.append(Row(f"not weighed: {', '.join(weights.unknown)}", bold=True))
    return Block("Weight", rows, _LEAD)


def _mass(mass: float, weights: Weights) -> str:
    return f"{'at least ' if weights.unknown else ''}{tidy_number(mass)} kg"


def _place(plan: Plan, board: Board, at: Point) -> str:
    units, run = plan.job.units, running(board, at)
    return f"X {dimension_text(run.x, units)}  Y {dimension_text(run.y, units)}"


def findings_block(making: Making) -> Block:
    """Return how many findings are open and accepted, and what stops the papers, in words."""
    review, plan = making.review, making.plan
    counts = open_counts(review)
    accepted = sum(not each.open for each in review.findings)
    rules = f"rule set {plan.rules.id}, edition {plan.rules.edition}"
    if not review.findings:
        return Block("Findings", [Row(f"No finding under {rules}.")])
    words = {"stop": "stop the papers", "warn": "to clear or accept", "note": "to note"}
    told = [f"{counts[each]} {words[each]}" for each in words]
    rows = [Row(f"{', '.join(told)}; {accepted} accepted by name, with a reason; under {rules}.")]
    if counts["stop"]:
        rows.insert(0, Row(stop_words(counts["stop"]), bold=True))
        rows += [Row(each.sentence, sign=_stop_sign()) for each in review.findings if each.stops]
    return Block("Findings", rows, 4.5 if counts["stop"] else 0.0, wide=counts["stop"] > 0)


def _stop_sign() -> Picture:
    return (Area((rectangle(-1.1, -1.1, 2.2, 2.2),), "ink"),)


def papers_block(cover_sheets: int, beside: Sequence[PackFile]) -> Block:
    """Return which papers belong to the pack, with how many sheets each has."""
    rows = [Row("Cover", end=_sheets(cover_sheets)), *_papers(beside)]
    if not beside:
        rows.append(Row("printed alone, without the other papers"))
    total = cover_sheets + sum(len(each.sheets) for each in beside)
    if beside:
        rows.append(Row("in all", end=_sheets(total), bold=True))
    return Block("Papers of this pack", rows)


def _papers(files: Sequence[PackFile]) -> Iterator[Row]:
    """Yield a row for each paper; a file of the same name for spreadsheets is told of beside it."""
    stems: dict[str, list[PackFile]] = {}
    for file in files:
        stems.setdefault(file.name.rpartition(".")[0], []).append(file)
    for group in stems.values():
        sheets = [_sheets(len(each.sheets)) for each in group if each.sheets]
        endings = [each.name.rpartition(".")[2].upper() for each in group if not each.sheets]
        yield Row(group[0].heading, end=", ".join([*sheets, *endings]))


def _sheets(count: int) -> str:
    return f"{count} sheet{'' if count == 1 else 's'}"


def cautions_block(making: Making) -> Block:
    """Return the cautions of a job."""
    template = any(file.tiles for file in making.beside)
    sign = (Area(((Point(-1.4, -1.1), Point(1.4, -1.1), Point(0, 1.4)),), "ink"),)
    return Block(
        "Cautions",
        [Row(each.words, sign=sign) for each in cautions_of(making.review, template=template)],
        4.5,
        54.0,
        wide=True,
    )


def legend_block(plan: Plan, boards: Sequence[Board], unnamed: Sequence[str], unmarked: Sequence[str]) -> Block:
    """Return what the lines and signs of a drawing mean, of those that are in it."""
    shown = {board.id for board in boards}
    rows = list(_component_rows(plan, shown))
    rows += [Row(words, sign=sign) for there, words, sign in _signs(plan, shown) if there]
    rows.append(Row("number and pole", sign=_tag()))
    if unnamed:
        few = len(unnamed) <= _FEW
        told = ", ".join(unnamed) if few else f"{len(unnamed)} cables"
        rows.append(Row(f"no room for the number of {told}: see the cable cut list"))
    if unmarked:
        rows.append(Row(f"no room for the references of {len(unmarked)} components: see the template"))
    return Block("Lines and signs", rows, 11.5, 29.0)


def _component_rows(plan: Plan, shown: set[str]) -> Iterator[Row]:
    stages = {stage_of(plan, each) for each in plan.components.values() if each.board in shown}
    if "shop" in stages:
        ring = rectangle(-4.5, -1.4, 9, 2.8)
        yield Row("fitted in shop", sign=(Area((ring,), "#C9C6C0", "ink", 0.22),))
    if "site" in stages:
        ring = rectangle(-4.5, -1.4, 9, 2.8)
        yield Row("fitted on site", sign=(Line(ring, "ink", 0.5, (2.2, 1.3), closed=True),))


def _signs(plan: Plan, shown: set[str]) -> Iterator[tuple[bool, str, Picture]]:
    def here(name: str) -> bool:
        return any(each.board in shown for each in getattr(plan, name).values())

    at = Point(0, 0)
    posts: Picture = (
        Area((rectangle(-4.5, -1.5, 9, 3),), "#F0F0F0"),
        *(Line((Point(-4.5, y), Point(4.5, y)), "quiet", 0.1, (0.9, 0.5)) for y in (-1.5, 1.5)),
        Line((Point(-4.5, 0), Point(4.5, 0)), "quiet", 0.1, (1.4, 0.3, 0.2, 0.3)),
    )
    yield here("framing"), "framing", posts
    yield bool(plan.cables), "cable, its colour", _cable()
    yield here("channels"), "wire channel", _channel()
    yield here("fixings"), "board fixing", fixing_sign(at)
    arrow = (Point(1.6, 0), Point(-0.8, 1), Point(-0.8, -1))
    yield here("exits"), "cable exit", (Area((arrow,), "quiet"),)
    yield here("no_go_boxes"), "kept empty", _hatched()
    yield True, "centre of mass, C carried in, F finished", mass_mark(at, radius=1.5)
    yield True, "datum corner", (Line((Point(3.5, -1.2), Point(-2, -1.2), Point(-2, 1.3)), "ink", 0.7),)


def _cable() -> Picture:
    piece = (Straight(Point(-4.5, 0), Point(4.5, 0)),)
    return Strand(piece, "#4A1512", 1.5, round_ends=False), Strand(piece, "#B3312C", 1.1, round_ends=False)


def _channel() -> Picture:
    ring = rectangle(-4.5, -1.3, 9, 2.6)
    return (Line(ring, "quiet", 0.2, closed=True), Line(rectangle(-4.5, -0.9, 9, 1.8), "line", 0.2, closed=True))


def _hatched() -> Picture:
    box = Box(-4.5, -1.4, 4.5, 1.4)
    slants = tuple(Line((Point(x, -1.4), Point(x + 2.8, 1.4)), "ink", 0.1) for x in (-4.5, -2.7, -0.9, 0.9, 1.7))
    return (*slants, Line(box.corners(), "ink", 0.2, closed=True))


def _tag() -> Picture:
    ring = rectangle(-3.2, -1.4, 6.4, 2.8, 0.6)
    return (Area((ring,), "paper", "quiet", 0.13), Words(Point(0, 0), "W1 +", 1.6, "ink"))
