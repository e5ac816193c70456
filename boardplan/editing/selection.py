"""Selection: the ids of what is selected, and the active one among them."""

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Selection:
    """What is selected, in the order it was picked; the last one is active."""

    ids: tuple[str, ...] = ()

    @property
    def active(self) -> str | None:
        """The id picked last."""
        return self.ids[-1] if self.ids else None

    def __contains__(self, thing_id: str) -> bool:
        """Say whether a thing is selected."""
        return thing_id in self.ids

    def only(self, *ids: str) -> "Selection":
        """Return a selection of just these."""
        return Selection(tuple(dict.fromkeys(ids)))

    def toggled(self, thing_id: str) -> "Selection":
        """Return the selection with a thing put in, or taken out if it was in."""
        rest = tuple(each for each in self.ids if each != thing_id)
        return Selection(rest if thing_id in self.ids else (*rest, thing_id))

    def kept_in(self, ids: Iterable[str]) -> "Selection":
        """Return the selection without ids that are gone."""
        alive = set(ids)
        return Selection(tuple(each for each in self.ids if each in alive))
