"""Label papers: labels to stick and the list of how, to read and for a spreadsheet."""

from collections.abc import Iterator

from boardplan.output.labels.label_list import FOOTER, label_listing, label_tables
from boardplan.output.labels.label_sheet import LabelSet, label_set, label_sheets, plain_stock
from boardplan.output.making import Making, PackFile, csv_file


def labels_of(making: Making) -> LabelSet:
    """Return all labels on the stock chosen, or on plain sticky paper to cut by hand where none is."""
    chosen = making.stock or plain_stock(making.office)
    return label_set(making.plan, making.review.lengths, chosen, making.fonts.width)


def label_papers(making: Making) -> Iterator[PackFile]:
    """Yield the files of the label sheet."""
    labels = labels_of(making)
    sticking = making.listed("Label sheet", label_tables(labels), FOOTER)
    pages = label_sheets(labels, making.plan, making.stops, making.fonts.width)
    yield PackFile("label-sheet.pdf", "Label sheet", (*sticking, *pages))
    yield csv_file("label-sheet.csv", label_listing(labels))
