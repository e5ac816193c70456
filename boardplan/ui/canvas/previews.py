"""Previews: the unfinished plan of a gesture; where that takes too long to review, the review goes elsewhere."""

import time
from collections.abc import Iterator, Mapping

from boardplan.editing.session import Session
from boardplan.model.plan import Plan
from boardplan.routing.route import Way
from boardplan.ui import reviewing
from boardplan.ui.desk import Desk


class LatestWays(Mapping[str, Way]):
    """The ways known last: a gesture that waits for a press sees what a review has brought meanwhile."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def __getitem__(self, name: str) -> Way:  # noqa: D105
        return self._session.known.ways[name]

    def __iter__(self) -> Iterator[str]:  # noqa: D105
        return iter(self._session.known.ways)

    def __len__(self) -> int:  # noqa: D105
        return len(self._session.known.ways)


def preview(desk: Desk, plan: Plan | None) -> None:
    """Preview a plan through the session, with none the committed one."""
    began = time.perf_counter()
    desk.session.preview(plan)
    if plan is not None and time.perf_counter() - began > reviewing.SLOW:
        desk.reviewing.begin()
