"""Hold the time of a whole pack against as many pages of empty tables: python tests/bench/pack.py [JOB FILE].

Without a file it is the crowded board. The tables are drawn by the PDF library alone, 30 rows by 8 columns a page, and
written to a file; the review is made before and is in neither. A ratio of the same run, asserted nowhere.
"""

import argparse
import tempfile
import time
from pathlib import Path

from crowded_board import crowded_plan
from reportlab.lib.pagesizes import A4
from reportlab.platypus import PageBreak, SimpleDocTemplate, Table

from boardplan.checks.review import review_of
from boardplan.files.plan_file import load_plan
from boardplan.output.making import Making
from boardplan.output.pack import write_pack
from boardplan.output.printing.paper import PAPERS
from boardplan.output.printing.printer_correction import Printing

ROWS, COLUMNS = 30, 8
_GRID = [("GRID", (0, 0), (-1, -1), 0.25, "#000000")]


def empty_tables(path: Path, pages: int) -> float:
    """Write pages of empty tables and return how long it took."""
    start = time.perf_counter()
    story: list[object] = []
    for _ in range(pages):
        story += [Table([[""] * COLUMNS] * ROWS, colWidths=60, rowHeights=20, style=_GRID), PageBreak()]
    SimpleDocTemplate(str(path), pagesize=A4).build(story)
    return time.perf_counter() - start


def main() -> None:
    """Print a row for each paper."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("job", nargs="?", type=Path)
    parser.add_argument("--papers", nargs="+", default=["roll-914", "a3"], choices=sorted(PAPERS))
    wanted = parser.parse_args()
    plan = load_plan(wanted.job) if wanted.job else crowded_plan()
    review = review_of(plan)
    print(f"{plan.job.title}: {len(plan.components)} components, {len(plan.cables)} cables")
    print(f"{'paper':<10}{'pages':>8}{'pack s':>10}{'tables s':>10}{'ratio':>8}{'ms a page':>11}")
    for name in wanted.papers:
        with tempfile.TemporaryDirectory() as folder:
            start = time.perf_counter()
            contents = write_pack(Making(review, Printing(PAPERS[name])), Path(folder) / "pack")
            took = time.perf_counter() - start
            pages = sum(each.get("sheets", 0) for each in contents["files"])
            tables = empty_tables(Path(folder) / "tables.pdf", pages)
        print(f"{name:<10}{pages:>8}{took:>10.1f}{tables:>10.2f}{took / tables:>8.1f}{1000 * took / pages:>11.0f}")


if __name__ == "__main__":
    main()
