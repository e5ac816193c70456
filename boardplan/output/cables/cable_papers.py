"""Cable papers: the cable cut list of a pack in its three orders - to cut, to press, to fit."""

from collections.abc import Iterator

from boardplan.output.cables.cut_list import FOOTER, cut_listing, cut_tables
from boardplan.output.cables.fit_list import fit_listing, fit_table
from boardplan.output.cables.press_list import press_listing, press_table
from boardplan.output.cables.stud_stacks import stack_tables
from boardplan.output.cutting.reel_plan import cut_from, cut_groups
from boardplan.output.making import Making, PackFile, csv_file


def cable_papers(making: Making) -> Iterator[PackFile]:
    """Yield the files of the cable cut list, with the stacks on studs and the link bars."""
    plan, review = making.plan, making.review
    lengths, clamps = review.lengths, review.clamps
    reels = cut_from(cut_groups(plan, lengths))
    cut, taken, counted, sums = cut_tables(plan, lengths, clamps, review.retainers, reels)
    orders = cut, press_table(plan, lengths), fit_table(plan, lengths, clamps)
    tables = (*orders, taken, counted, *stack_tables(plan, lengths), sums)
    sheets = making.listed("Cable cut list", tables, FOOTER, landscape=True)
    yield PackFile("cable-cut-list.pdf", "Cable cut list", sheets)
    yield csv_file("cable-cut-list.csv", cut_listing(plan, lengths, clamps, reels))
    yield csv_file("press-list.csv", press_listing(plan, lengths))
    yield csv_file("fit-list.csv", fit_listing(plan, lengths, clamps))
