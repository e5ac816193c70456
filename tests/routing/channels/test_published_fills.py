"""Areas and numbers of cables against published fills: conduits, wireways, ducts, trunking.

Diameters and areas are those of NEC (NFPA 70) Chapter 9: Table 1 (53 % for one conductor, 31 % for two, 40 % for
more), Table 4 Article 358 (EMT, inside area), Table 5 (THHN, THWN: approximate diameter and area), Note 7 (of equal
conductors one more from 0.8 of it on). The numbers are those of Informative Annex C, Table C.1.
"""

import math

import pytest

from boardplan.routing.channels.channel_fill import ChannelFill, Section, how_many_fit, jacket_area

INCH = 25.4  # mm
EMT = {"1/2": 0.304, "3/4": 0.533, "1": 0.864, "1-1/4": 1.496, "1-1/2": 2.036, "2": 3.356}  # in², Table 4
THHN = {  # AWG: diameter in in, area in in², Table 5
    "14": (0.111, 0.0097),
    "12": (0.130, 0.0133),
    "10": (0.164, 0.0211),
    "8": (0.216, 0.0366),
    "6": (0.254, 0.0507),
    "4": (0.324, 0.0824),
    "3": (0.352, 0.0973),
    "2": (0.384, 0.1158),
    "1": (0.446, 0.1562),
    "1/0": (0.486, 0.1855),
    "2/0": (0.532, 0.2223),
    "3/0": (0.584, 0.2679),
    "4/0": (0.642, 0.3237),
}
ANNEX_C = {  # AWG: most conductors in EMT 1/2 ... 2, Table C.1
    "14": (12, 22, 35, 61, 84, 138),
    "12": (9, 16, 26, 45, 61, 101),
    "10": (5, 10, 16, 28, 38, 63),
    "8": (3, 6, 9, 16, 22, 36),
    "6": (2, 4, 7, 12, 16, 26),
    "4": (1, 2, 4, 7, 10, 16),
    "3": (1, 1, 3, 6, 8, 13),
    "2": (1, 1, 3, 5, 7, 11),
    "1": (1, 1, 1, 4, 5, 8),
}
ENTRIES = [(gauge, size, most) for gauge, row in ANNEX_C.items() for size, most in zip(EMT, row, strict=True)]


def in_conduit(inside, area):
    """Return how many equal conductors a conduit holds by Table 1 and Note 7."""
    shares = ((0.40, 3, 10**6), (0.31, 2, 2), (0.53, 1, 1))  # of the inside, for how many at least and at most
    for share, least, most in shares:
        fit = min(how_many_fit(share * inside, area, up_from=0.8), most)
        if fit >= least:
            return fit
    return 0


@pytest.mark.parametrize("gauge", THHN)
def test_areas_over_the_jacket_are_those_of_table_5(gauge):
    diameter, area = THHN[gauge]
    assert jacket_area(diameter * INCH) == pytest.approx(area * INCH**2, abs=0.00005 * INCH**2)


def test_there_are_54_entries():
    assert len(ENTRIES) == 54


@pytest.mark.parametrize(("gauge", "size", "most"), ENTRIES)
def test_conduits_hold_what_annex_c_says(gauge, size, most):
    assert in_conduit(EMT[size], THHN[gauge][1]) == most
    assert in_conduit(EMT[size] * INCH**2, THHN[gauge][1] * INCH**2) == most


def test_one_more_counts_from_eight_tenths_of_it_on():
    # Annex C, 12 AWG in EMT 1: 0.4 x 0.864 / 0.0133 = 25.98, so 26 by Note 7; cut off it would be 25
    assert how_many_fit(0.4 * 0.864, 0.0133) == 25
    assert how_many_fit(0.4 * 0.864, 0.0133, up_from=0.8) == 26
    assert [how_many_fit(each, 1.0, up_from=0.8) for each in (2.79, 2.8, 2.81)] == [2, 3, 3]


@pytest.mark.parametrize(
    ("inside", "percent", "gauge", "most"),
    [
        (16 * INCH**2, 20, "12", 240),  # NEC 376.22(A), a 4 x 4 in wireway: 0.2 x 16 / 0.0133 = 240.6
        (16 * INCH**2, 20, "2/0", 14),  # the same with 0.2223 in²: 14.39
        (40 * 60, 20, "10", 35),  # NEC 376.22(A), a duct 40 x 60 mm: 0.2 x 2400 / 13.613 = 35.3
        (40 * 60, 50, "10", 88),  # NFPA 79 13.5.2, 50 %: 88.1
    ],
)
def test_wireways_and_ducts_hold_what_their_rule_says(inside, percent, gauge, most):
    area = THHN[gauge][1] * INCH**2
    assert how_many_fit(inside * percent / 100, area) == most
    empty = ChannelFill("RW1", 500.0, inside, (), None, (0, 0))
    assert empty.more_that_fit(math.sqrt(area * 4 / math.pi), percent) == most


def test_a_space_factor_of_45_percent():
    # BS 7671 practice (On-Site Guide), 45 % of the inside, in a trunking of 50 x 50 mm with conductors of 4.3 mm over
    # all: 0.45 x 2500 / (pi/4 x 4.3²) = 77.5
    assert how_many_fit(0.45 * 50 * 50, jacket_area(4.3)) == 77


def test_what_lies_in_a_channel_takes_of_its_room():
    held = Section(0.0, 500.0, ("W1",), 100.0, 100 / 24, 1)
    fill = ChannelFill("RW1", 500.0, 2400.0, (held,), held, (0, 0))
    area = jacket_area(4.0)
    assert fill.more_that_fit(4.0, 45) == math.floor((0.45 * 2400 - 100) / area)
    assert fill.more_that_fit(4.0, 4) == 0  # fuller than that already
