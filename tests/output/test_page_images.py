"""Pages as pixels: those of the very PDF that a pack holds."""

import pytest
from boards import library_bus

from boardplan.checks.review import review_of
from boardplan.drawing.picture import Words
from boardplan.output.making import Making
from boardplan.output.page_images import PageImages
from boardplan.output.printing.page_raster import page_pixels
from boardplan.output.printing.paper import PAPERS
from boardplan.output.printing.printer_correction import Printing


@pytest.fixture(scope="module")
def images():
    return PageImages(Making(review_of(library_bus()), Printing(PAPERS["a4"])))


def test_every_sheet_of_a_paper_is_a_page(images, packs):
    pack = packs("library bus", "a4")
    pages = images.pages("holes")
    assert [page.number for page in pages] == list(range(1, len(pack.pages["hole-schedule.pdf"]) + 1))
    assert {page.count for page in pages} == {len(pages)}
    assert images.pages("holes") is pages
    assert images.file_names("holes") == ("hole-schedule.pdf", "hole-schedule.csv")


def test_a_page_looks_as_it_does_in_the_pack(images, packs):
    folder = packs("library bus", "a4").folder
    printed = page_pixels((folder / "hole-schedule.pdf").read_bytes(), 2, 891)
    assert images.image("holes", 2, 3.0) == printed
    assert (printed.width, printed.height) == pytest.approx((630, 891), abs=1)  # A4 at 3 dots to the mm
    assert len(set(printed.rgb)) > 2


def test_other_printers_and_reviews_are_other_pages(images):
    review = images.making.review
    assert images.are_of(Making(review, Printing(PAPERS["a4"])))
    assert not images.are_of(Making(review, Printing(PAPERS["letter"])))
    assert not images.are_of(Making(review_of(review.plan), Printing(PAPERS["a4"])))


def test_the_cover_looked_at_lists_the_whole_pack(images, packs):
    (page,) = packs("library bus", "a4").pages["cover.pdf"]
    (shown,) = images.pages("cover")
    drawn = "\n".join(mark.text for part in shown.sheet.parts for mark in part.picture if isinstance(mark, Words))
    assert "25 sheets" in drawn
    assert "printed alone" not in drawn
    assert "25 sheets" in page.words
