"""Shut-off papers: the card of a pack, and what it says as plain values."""

from collections.abc import Iterator
from typing import Any

from boardplan.model.plan import Plan
from boardplan.output.making import Making, PackFile
from boardplan.output.shut_off.shut_off_card import ORDER, CardPaper, shut_off_card
from boardplan.output.shut_off.shut_off_steps import (
    emergency_steps,
    off_steps,
    on_steps,
    questions,
    shut_offs_of,
    warnings,
)


def shut_off_papers(making: Making) -> Iterator[PackFile]:
    """Yield the card."""
    shared = CardPaper(making.plan, making.office, making.stops, making.fonts.width)
    yield PackFile("shut-off-card.pdf", "Shut-off card", (shut_off_card(shared),))


def shut_off_records(plan: Plan) -> dict[str, Any]:
    """Return what the card says as plain values for JSON."""
    job = shut_offs_of(plan)
    return {
        "order": ORDER,
        "emergency": [{"number": number, "words": words} for number, words in emergency_steps(plan, job)],
        "warnings": list(warnings(job)),
        "off": list(off_steps(job)),
        "on": list(on_steps(job)),
        "marked": list(job.marked),
        "questions": list(questions(job)),
    }
