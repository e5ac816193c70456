"""Kill the program while it writes a pack over an older one, and look: python tests/bench/kill_pack.py.

After each kill the folder must hold the old pack or the new one, whole: every file that its contents name, each as it
was written when nobody killed anything. The next pack must clear away what was left beside it. Prints the tally.
"""

import argparse
import hashlib
import json
import os
import random
import signal
import subprocess
import sys
import tempfile
import time
from collections import Counter
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
OLD_PAPER, NEW_PAPER = "roll-914", "roll-1067"


def command(job: Path, folder: Path, paper: str) -> list[str]:
    """Return the command that writes a pack."""
    return [sys.executable, "-m", "boardplan", "pack", str(job), "--to", str(folder), "--paper", paper]


def environment() -> dict[str, str]:
    """Return the environment in which this checkout is run."""
    return {**os.environ, "PYTHONPATH": str(ROOT)}


def pack(job: Path, folder: Path, paper: str) -> float:
    """Write a pack and return how long it took."""
    start = time.perf_counter()
    subprocess.run(command(job, folder, paper), check=True, env=environment(), stdout=subprocess.DEVNULL)
    return time.perf_counter() - start


def killed_after(job: Path, folder: Path, seconds: float) -> bool:
    """Begin a pack and kill it after a time; say whether it was still at work."""
    work = subprocess.Popen(
        command(job, folder, NEW_PAPER), env=environment(), stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
    )
    try:
        work.wait(seconds)
    except subprocess.TimeoutExpired:
        work.send_signal(signal.SIGKILL)
        work.wait()
        return True
    return False


def digest(folder: Path) -> str:
    """Return what tells the files of a folder from all others, names and bytes; nothing where there is no folder."""
    if not folder.is_dir():
        return "no folder"
    whole = hashlib.sha256()
    for path in sorted(folder.iterdir()):
        whole.update(f"{path.name} {path.stat().st_size} ".encode() + path.read_bytes())
    return whole.hexdigest()


def is_whole(folder: Path) -> bool:
    """Say whether a folder holds just the files that its own contents name."""
    contents = json.loads((folder / "pack.json").read_text(encoding="utf-8"))
    return {path.name for path in folder.iterdir()} == {"pack.json", *(each["file"] for each in contents["files"])}


def tally(job: Path, times: int, seed: int, base: Path) -> tuple[Counter[str], int]:
    """Kill a pack so many times and return what was there after, and how many were killed at work."""
    chance, folder = random.Random(seed), base / "papers"
    took = min(pack(job, base / "new", NEW_PAPER) for _ in range(3))
    pack(job, folder, OLD_PAPER)
    packs = {digest(base / "new"): "new", digest(folder): "old"}
    found, at_work = Counter[str](), 0
    for _ in range(times):
        # half of them near the end, where one folder takes the place of the other
        share = chance.uniform(0, 1) if chance.random() < 0.5 else chance.uniform(0.75, 1.05)
        at_work += killed_after(job, folder, took * share)
        state = packs.get(digest(folder), "a mix, or none")
        found[state if state == "a mix, or none" or is_whole(folder) else "not whole"] += 1
        if state != "old":
            pack(job, folder, OLD_PAPER)
    pack(job, folder, OLD_PAPER)
    left = [path.name for path in base.iterdir() if path.name not in {"papers", "new"}]
    found["left beside it after the next pack"] = len(left)
    return found, at_work


def main() -> int:
    """Print the tally; return 1 where anything but a whole pack was found."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("job", nargs="?", type=Path, default=ROOT / "sample_boards" / "library-bus.json")
    parser.add_argument("--times", type=int, default=50)
    parser.add_argument("--seed", type=int, default=1)
    wanted = parser.parse_args()
    with tempfile.TemporaryDirectory() as base:
        found, at_work = tally(wanted.job, wanted.times, wanted.seed, Path(base))
    print(f"killed {wanted.times} times, {at_work} of them at work: old pack {found['old']}, new pack {found['new']}")
    bad = {words: found[words] for words in ("a mix, or none", "not whole", "left beside it after the next pack")}
    print(", ".join(f"{words}: {count}" for words, count in bad.items()))
    return int(any(bad.values()))


if __name__ == "__main__":
    sys.exit(main())
