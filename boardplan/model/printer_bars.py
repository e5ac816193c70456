"""Printer bars: how far a printer is out on a paper, by two bars of a sheet that it printed and a person measured."""

from dataclasses import dataclass
from typing import NamedTuple

LEAST, MOST = 0.97, 1.03
"""Factors past these are no printer's own error but a wrong setting (common practice, no source)."""
MUCH = 0.005
"""A correction of more than this share is more than printers usually need (common practice, no source)."""
ALIKE, SCALED = 0.002, 0.01
"""Both bars out by more than the second share, and alike within the first: no roller, no heat and no damp does that
along both sides of a sheet, a print setting does (common practice, no source)."""
WITHIN = 0.3
"""A bar that reads true within this, in mm, is true (common practice, no source)."""
_SLIP = 1e-9
_PLACES = 4


class Factors(NamedTuple):
    """What lengths are multiplied by: along the short side of the paper, or across a roll, and along the long side."""

    short: float = 1.0
    long: float = 1.0


@dataclass(frozen=True, slots=True)
class PrintedBar:
    """A bar: the `length` it stands for and what a rule `measured`, in mm; `drawn_at` is the factor it was drawn at."""

    length: float
    measured: float
    drawn_at: float = 1.0

    @property
    def share(self) -> float:
        """By which share it came out too long, or too short where negative."""
        return self.measured / self.length - 1

    @property
    def true(self) -> bool:
        """Whether it reads true within 0.3 mm."""
        return abs(self.measured - self.length) <= WITHIN + _SLIP

    @property
    def plausible(self) -> bool:
        """Whether a printer can be that far out, by this print alone and with what was corrected before."""
        needed = self.length / self.measured
        return all(LEAST - _SLIP <= each <= MOST + _SLIP for each in (needed, self.drawn_at * needed))

    @property
    def corrected(self) -> float:
        """The factor at which it should come out true, in hundredths of a percent: what is written is what is drawn.

        factor = length / measured, times the one that the measured sheet was drawn at (common practice, no source).
        """
        return round(self.drawn_at * self.length / self.measured, _PLACES)


@dataclass(frozen=True, slots=True)
class PrinterBars:
    """What was last measured of a printer on a paper: the bar along the paper's short side and the one along its long.

    `finer` asks to correct bars too that are true within 0.3 mm.
    """

    printer: str
    paper: str
    short: PrintedBar
    long: PrintedBar
    finer: bool = False

    @property
    def scaled(self) -> bool:
        """Whether a print setting has most likely scaled the sheet: both bars are out by much, and alike."""
        shares = self.short.share, self.long.share
        return min(map(abs, shares)) > SCALED + _SLIP and abs(shares[0] - shares[1]) <= ALIKE + _SLIP

    @property
    def plausible(self) -> bool:
        """Whether the printer can be corrected at all."""
        return self.short.plausible and self.long.plausible and not self.scaled

    @property
    def ready(self) -> bool:
        """Whether the sheet that was measured is true within 0.3 mm as it stands, so that its factors hold."""
        return self.plausible and self.short.true and self.long.true and not self.finer

    @property
    def factors(self) -> Factors:
        """What to draw at from now on: a true bar's factor stays, and nothing is corrected that can't be right."""
        return Factors(self._factor(self.short), self._factor(self.long))

    def _factor(self, bar: PrintedBar) -> float:
        stays = not self.plausible or (bar.true and not self.finer)
        return bar.drawn_at if stays else bar.corrected

    def error_over(self, length: float) -> float | None:
        """Return how much is at most wrong over a length in mm; none while that is not known, before a true print."""
        return max(abs(self.short.share), abs(self.long.share)) * length if self.ready else None
