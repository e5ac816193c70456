"""Sheet sizes against the standards that define them."""

import pytest

from boardplan.geometry.units import points_from_mm
from boardplan.output.printing.paper import PAPERS, list_paper

ISO_216 = {"a0": (841, 1189), "a1": (594, 841), "a2": (420, 594), "a3": (297, 420), "a4": (210, 297)}
ASME_Y14_1_INCH = {
    "letter": (8.5, 11),
    "tabloid": (11, 17),
    "ansi-c": (17, 22),
    "ansi-d": (22, 34),
    "ansi-e": (34, 44),
}


@pytest.mark.parametrize(("paper", "size"), ISO_216.items())
def test_a_series_is_that_of_iso_216(paper, size):
    assert (PAPERS[paper].width, PAPERS[paper].height) == size


@pytest.mark.parametrize(("paper", "size"), ASME_Y14_1_INCH.items())
def test_american_sheets_are_those_of_asme_y14_1(paper, size):
    assert (PAPERS[paper].width, PAPERS[paper].height) == pytest.approx([25.4 * each for each in size])


def test_a4_and_letter_in_points():
    """A4 is 595.2756 x 841.8898 points (ISO 216 by 72/25.4), Letter 612 x 792 (ISO 32000-1)."""
    a4, letter = PAPERS["a4"], PAPERS["letter"]
    assert [points_from_mm(each) for each in (a4.width, a4.height)] == pytest.approx([595.2756, 841.8898], abs=5e-5)
    assert [points_from_mm(each) for each in (letter.width, letter.height)] == pytest.approx([612, 792])


def test_a_millimetre_in_points():
    """72/25.4: the inch is 25.4 mm by the agreement of 1959, a unit of a page 1/72 inch (ISO 32000-1, 8.3.2.3)."""
    assert points_from_mm(1) == pytest.approx(2.834645669, abs=1e-9)
    assert points_from_mm(100) == pytest.approx(283.4646, abs=5e-5)


@pytest.mark.parametrize(
    ("paper", "units", "lists"),
    [
        ("a3", "mm", "a4"),
        ("a0", "inch", "a4"),
        ("tabloid", "mm", "letter"),
        ("roll-914", "mm", "a4"),
        ("roll-914", "inch", "letter"),
    ],
)
def test_lists_are_printed_on_office_paper(paper, units, lists):
    assert list_paper(PAPERS[paper], units).id == lists
