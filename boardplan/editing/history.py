"""History: the plans so far, each with the words that the Undo menu shows."""

from dataclasses import dataclass, replace

from boardplan.model.plan import Plan


@dataclass(frozen=True, slots=True)
class History:
    """Plans from the oldest to the newest and the place of the present one; no limit on their number."""

    plans: tuple[Plan, ...]
    words: tuple[str, ...] = ()
    at: int = 0

    @property
    def plan(self) -> Plan:
        """The present plan."""
        return self.plans[self.at]

    @property
    def undo_words(self) -> str | None:
        """What undoing would take back."""
        return self.words[self.at - 1] if self.at else None

    @property
    def redo_words(self) -> str | None:
        """What redoing would do again."""
        return self.words[self.at] if self.at < len(self.words) else None

    def committed(self, plan: Plan, words: str) -> "History":
        """Return the history with a new present; what had been undone is forgotten."""
        return History((*self.plans[: self.at + 1], plan), (*self.words[: self.at], words), self.at + 1)

    def undone(self) -> "History":
        """Return the history one step back, or as it is at its beginning."""
        return replace(self, at=max(0, self.at - 1))

    def redone(self) -> "History":
        """Return the history one step on, or as it is at its end."""
        return replace(self, at=min(len(self.words), self.at + 1))
