"""Apart: which things of a plan may look different from before, so that only those are looked at again."""

from collections.abc import Iterable, Mapping
from typing import TypeAlias

from boardplan.editing.known import Known
from boardplan.model.plan import Plan

Seen: TypeAlias = tuple[Plan, Known]


class Apart:
    """What is seen compared with what was seen before, by which object each thing is."""

    def __init__(self, before: Seen, now: Seen) -> None:
        """Compare a plan and what is known of it with those before."""
        self._before, self._now = before, now
        self._found: dict[str, tuple[str, ...]] = {}
        (old, _), (new, _) = before, now
        grounds = ("boards", "kinds", "conductors", "rules")
        self._everything = any(getattr(old, name) is not getattr(new, name) for name in grounds)
        self._rekinded = any(
            (was := old.components.get(name)) is not None and was.kind != each.kind
            for name, each in new.components.items()
            if was_other(old.components, name, each)
        )

    def ids(self, collection: str) -> tuple[str, ...]:
        """Return the things of a collection that may look different."""
        if collection not in self._found:
            self._found[collection] = tuple(self._look(collection))
        return self._found[collection]

    def _look(self, collection: str) -> Iterable[str]:
        (old, was_known), (new, known) = self._before, self._now
        things, were = getattr(new, collection), getattr(old, collection)
        if self._everything or (collection == "cables" and self._rekinded):
            return tuple(things)
        found = {name for name, each in things.items() if were.get(name) is not each} if things is not were else set()
        if collection == "cables":
            for now, before in ((known.drawn, was_known.drawn), (known.clamps, was_known.clamps)):
                found |= {name for name, each in now.items() if was_other(before, name, each)} & things.keys()
                found |= (before.keys() - now.keys()) & things.keys()
        if collection == "channels":
            found |= {name for name, each in known.fills.items() if was_other(was_known.fills, name, each)}
            found &= things.keys()
        return found


def was_other(before: Mapping[str, object], name: str, now: object) -> bool:
    """Say whether something by a name was another object before, or was not there."""
    return before.get(name) is not now
