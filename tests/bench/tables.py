"""Print every table of what is measured, one after the other: python tests/bench/tables.py [FOLDER] [--only NAME ...].

FOLDER holds public data sets that don't come with the program, each in a folder of its own: `dubins`,
`euclid_paths` and `cutting_stock`; without them those tables are left out. Each names what it is held against.
"""

import argparse
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

HERE = Path(__file__).parent


@dataclass(frozen=True)
class Table:
    """One script that prints a table; `data` are the folders of public data it needs, by its options if it has any."""

    name: str
    heading: str
    script: str
    data: tuple[tuple[str, str], ...] = ()


TABLES = (
    Table(
        "published-paths",
        "Published shortest paths: two poses; points among polygons",
        "published_paths.py",
        (("--dubins", "dubins"), ("--euclid", "euclid_paths")),
    ),
    Table("random-boards", "300 random boards: every way sampled, lengths against a slow search", "random_boards.py"),
    Table("shared-channels", "Channels shared by many cables, against a proven bound", "shared_channels.py"),
    Table(
        "cutting",
        "Cables cut from reels, channels from lengths, against published optima and proven bounds",
        "cutting.py",
        (("", "cutting_stock"),),
    ),
    Table("tiling", "Sheets of random boards, against plain grids", "tiling.py"),
    Table("pack", "A whole pack of the crowded board, against as many pages of empty tables", "pack.py"),
    Table("kill-pack", "A pack killed at 50 random moments", "kill_pack.py"),
    Table("many-cables", "From 75 to 1,200 cables at equal density", "many_cables.py"),
    Table("waits", "What users wait for on the crowded board", "all_benches.py"),
    Table("allowed-region", "100 boards: allowed regions against the checks, place by place", "allowed_region.py"),
    Table("recheck", "A review after one move against a whole one", "recheck.py"),
    Table("drag", "Real mouse events over the crowded board", "drag.py"),
)


def main() -> int:
    """Run each table's script; return how many failed."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("data", nargs="?", type=Path, help="a folder of public data sets")
    parser.add_argument("--only", nargs="+", choices=[each.name for each in TABLES], help="print these alone")
    wanted = parser.parse_args()
    failed = 0
    for each in TABLES:
        if wanted.only and each.name not in wanted.only:
            continue
        print(f"\n== {each.heading} ({each.script})", flush=True)
        folders = [(option, wanted.data / name) for option, name in each.data] if wanted.data else []
        if each.data and not folders:
            print("left out: give the folder of the public data sets")
            continue
        options = [word for option, folder in folders for word in (option, str(folder)) if word]
        failed += subprocess.run([sys.executable, str(HERE / each.script), *options], check=False).returncode != 0
    return failed


if __name__ == "__main__":
    sys.exit(main())
