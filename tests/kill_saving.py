"""Kills the program at random moments of editing and saving, and counts what is lost.

    python tests/kill_saving.py [--times 300] [--seed 1] [--together 4]

Each time a program of its own edits a job every few milliseconds and saves it now and then, as the window does it, and
is killed in the middle of that. Then the job file must be whole, what was kept aside must be whole, and the newer of
them may miss at most the last ten seconds of work. Prints a tally; exit code 1 where anything is wrong.
"""

import argparse
import os
import random
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from collections import Counter
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

from boardplan.bundled import data_dir
from boardplan.editing.component_edits import set_label
from boardplan.editing.session import Session
from boardplan.files.faults import BadFile
from boardplan.files.plan_file import before_of, load_plan
from boardplan.files.rescue import left_behind, rescued_plan

MAY_MISS = 10.0
"""Seconds of work that may be lost at most."""


def edit_and_save(file: Path, seed: int) -> None:
    """Edit for ever: the label of a component says when it was edited; told on stdout once it is done."""
    from PySide6.QtCore import QCoreApplication, QTimer  # noqa: PLC0415

    from boardplan.ui.safety.keeping import Keeping  # noqa: PLC0415

    app = QCoreApplication([])
    chance = random.Random(seed)
    session = Session.open(file)
    keeping = Keeping(session, app)
    component = next(iter(session.plan.components))

    def edit() -> None:
        words = f"{time.monotonic():.3f}"
        session.commit(set_label(session.committed_plan, component, words), "Name it")
        if chance.random() < 0.004:
            session.save()
        sys.stdout.write(f"{words}\n")
        sys.stdout.flush()

    timer = QTimer()
    timer.timeout.connect(edit)
    timer.start(20)
    app.exec()
    keeping.close()


def one_kill(folder: Path, seed: int) -> str:
    """Return what became of one program that was killed: "fine", or what went wrong."""
    chance = random.Random(seed)
    file, state = folder / "bus.json", folder / "state"
    shutil.copy(data_dir("sample_boards") / "library-bus.json", file)
    own = {**os.environ, "XDG_STATE_HOME": str(state), "QT_QPA_PLATFORM": "offscreen"}
    worker = subprocess.Popen(
        [sys.executable, __file__, "--edit", str(file), "--seed", str(seed)],
        stdout=subprocess.PIPE, text=True, env=own,
    )  # fmt: skip
    try:
        first = worker.stdout.readline()  # it edits
        time.sleep(chance.uniform(0.0, 15.0))
        worker.send_signal(signal.SIGKILL)
        told = [line for line in worker.stdout.read().splitlines() if line]
    finally:
        worker.kill()
        worker.wait()
        worker.stdout.close()
    times = [float(line) for line in (first, *told)]
    return _verdict(file, state / "boardplan" / "rescue", times)


def _verdict(file: Path, rescue: Path, times: list[float]) -> str:
    try:
        found = [load_plan(file)]
        if before_of(file).exists():
            load_plan(before_of(file))
        found += [rescued_plan(left) for left in left_behind(rescue)]
    except BadFile as bad:
        return f"broken file: {bad}"
    lost = times[-1] - max(_time_of(plan, times[0]) for plan in found)
    return "fine" if lost <= MAY_MISS else f"{lost:.1f} s of work are lost"


def _time_of(plan, begun: float) -> float:
    """Return when a plan was edited last; one that never was is as old as the first edit."""
    label = next(iter(plan.components.values())).label
    return float(label) if label else begun


def _in_a_folder(seed: int) -> str:
    with tempfile.TemporaryDirectory() as folder:
        return one_kill(Path(folder), seed)


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--times", type=int, default=300)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--together", type=int, default=4, help="how many at a time")
    parser.add_argument("--edit", type=Path, help=argparse.SUPPRESS)
    chosen = parser.parse_args()
    if chosen.edit:
        edit_and_save(chosen.edit, chosen.seed)
        return 0
    with ThreadPoolExecutor(chosen.together) as pool:
        tally = Counter(pool.map(_in_a_folder, range(chosen.seed, chosen.seed + chosen.times)))
    for words, count in tally.most_common():
        print(f"{count:5} {words}")  # noqa: T201
    return 0 if set(tally) == {"fine"} else 1


if __name__ == "__main__":
    sys.exit(main())
