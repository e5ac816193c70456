"""What the tests of this folder read, each made once."""

from dataclasses import dataclass, field
from typing import Any

import pytest
from output.exchange.drilled_boards import plan_named

from boardplan.checks.review import review_of
from boardplan.output.making import Making
from boardplan.output.papers import files_of
from boardplan.output.printing.pages import PAPERS
from boardplan.output.printing.printer_correction import Printing
from boardplan.output.records import hole_records


@dataclass
class Made:
    """A making, what `holes --json` says of it, and its files by name."""

    making: Making
    holes: dict[str, Any]
    files: dict[str, bytes] = field(default_factory=dict)

    def holes_on(self, board):
        return [each for each in self.holes["holes"] if each["board"] == board]

    def all_on(self, board):
        """The holes of a board and the screws of its clamps."""
        return self.holes_on(board) + [each for each in self.holes["clamp_screws"] if each["board"] == board]

    def boards(self, sort):
        """Each board's id and file of a sort."""
        found = files_of(self.making, [sort])
        for board, each in zip(self.making.plan.boards, found, strict=True):
            yield board, self.data(each)

    def data(self, file):
        if file.name not in self.files:
            self.files[file.name] = file.data()
        return self.files[file.name]


@pytest.fixture(scope="session")
def made():
    """A function name -> Made."""
    done: dict[str, Made] = {}

    def by_name(name):
        if name not in done:
            done[name] = make(plan_named(name))
        return done[name]

    return by_name


def make(plan):
    review = review_of(plan)
    return Made(Making(review, Printing(PAPERS["a4"])), hole_records(plan, review.clamps))
