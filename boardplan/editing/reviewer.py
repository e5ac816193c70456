"""Reviewer: reviews plans in a process of its own, so that the hand on the mouse never waits for it.

Only the newest plan asked for is reviewed; what goes to and fro is what has changed since the last time.
"""

import os
import pickle
import subprocess
import sys
import threading
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any, BinaryIO

from boardplan.checks.review import Review, refreshed, review_of
from boardplan.editing.known import Known, news_of, with_news
from boardplan.editing.plan_difference import difference, with_difference
from boardplan.model.plan import Plan
from boardplan.routing.together.crossings import crossings_of

_CROSSINGS = "crossings"
"""The question for the crossings of the plan reviewed last."""
_REST = 0.3
"""Seconds in which nobody asks for a review that count as rest."""


class Reviewer:
    """Takes plans and tells what is known of the newest; `told` and `failed` are called from another thread."""

    def __init__(self, known: Known, told: Callable[[Known], None], failed: Callable[[], None]) -> None:
        """Begin from what is known already."""
        self._told, self._failed = told, failed
        self._known = known
        self._wanted: Plan | None = None
        self._closed = False
        self._change = threading.Condition()
        self.process: subprocess.Popen[bytes] | None = None
        """The other process; none before it runs."""
        self.thread = threading.Thread(target=self._work, name="reviewer", daemon=True)
        self.thread.start()

    def ask(self, plan: Plan) -> None:
        """Have a plan reviewed; one asked for before and not begun yet is forgotten."""
        with self._change:
            self._wanted = plan
            self._change.notify()

    def close(self) -> None:
        """Stop at once; nothing is told any more."""
        with self._change:
            self._closed = True
            self._change.notify()
        if self.process is not None:
            self.process.terminate()
        self.thread.join(5.0)

    def _work(self) -> None:
        try:
            with _other_process() as self.process:
                try:
                    self._talk(self.process)
                finally:
                    self.process.terminate()
        except (OSError, EOFError, pickle.UnpicklingError):
            if not self._closed:
                self._failed()

    def _talk(self, process: "subprocess.Popen[bytes]") -> None:
        """Send a whole plan, then what the plans asked for have other than the one before."""
        self._exchange(process, self._known.plan, self._known.plan)
        looked = False
        while not self._closed:
            plan = self._next(None if looked else _REST)
            if plan is not None:
                self._exchange(process, plan, difference(self._known.plan, plan))
            elif not self._closed:
                self._known = replace(self._known, crossings=self._ask(process, _CROSSINGS))
            looked = plan is None
            if not self._closed:
                self._told(self._known)

    def _exchange(self, process: "subprocess.Popen[bytes]", plan: Plan, message: object) -> None:
        self._known = with_news(self._known, plan, self._ask(process, message))

    def _ask(self, process: "subprocess.Popen[bytes]", message: object) -> Any:  # noqa: ANN401 - what it answers
        if process.stdin is None or process.stdout is None:
            raise OSError("the reviewing process has no pipes")
        _put(process.stdin, message)
        return pickle.load(process.stdout)  # noqa: S301 - our own process

    def _next(self, rest: float | None) -> Plan | None:
        """Wait for a plan to be asked for; none where nobody asked for so many seconds, or it is closed."""
        with self._change:
            if self._wanted is None and not self._closed:
                self._change.wait(rest)
            plan, self._wanted = self._wanted, None
            return None if self._closed else plan


def _other_process() -> "subprocess.Popen[bytes]":
    """Start the process that reviews, on the same interpreter and the same program."""
    root = str(Path(__file__).resolve().parents[2])
    paths = [root, *filter(None, [os.environ.get("PYTHONPATH")])]
    return subprocess.Popen(  # noqa: S603 - nothing of it comes from outside
        [sys.executable, "-c", f"from {__name__} import serve; serve()"],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        env={**os.environ, "PYTHONPATH": os.pathsep.join(paths)},
        creationflags=getattr(subprocess, "CREATE_NO_WINDOW", 0),
    )


def _put(pipe: BinaryIO | Any, message: object) -> None:  # noqa: ANN401 - what subprocess calls its pipes
    pickle.dump(message, pipe, pickle.HIGHEST_PROTOCOL)
    pipe.flush()


def serve() -> None:
    """Review a whole plan, then each difference from the one before, until the other side hangs up."""
    heard, said = sys.stdin.buffer, sys.stdout.buffer
    sys.stdout = sys.stderr  # what is said belongs to the other side alone
    try:
        plan: Plan = pickle.load(heard)  # noqa: S301 - from the program that started this process
        review: Review = review_of(plan)
        _put(said, news_of(None, review))
        while True:
            asked = pickle.load(heard)  # noqa: S301 - the same
            if asked == _CROSSINGS:
                _put(said, crossings_of(plan, review.ways))
                continue
            plan = with_difference(plan, asked)
            old, review = review, refreshed(review, plan)
            _put(said, news_of(old, review))
    except (EOFError, OSError, KeyboardInterrupt):
        return
