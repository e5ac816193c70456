"""Parts command: what goes along to a job by box, and what is bought for it."""

import argparse
from collections.abc import Callable
from pathlib import Path

from boardplan.cli.shell import FINE, WrongUse, say, say_json


def add_parts_command(add: Callable[..., argparse.ArgumentParser]) -> None:
    """Add the parser of the command below."""
    words = "list every part to pack or to buy"
    parts = add("parts", help=words, description=words)
    parts.add_argument("file", type=Path, help="a job file")
    shape = parts.add_mutually_exclusive_group()
    shape.add_argument("--json", action="store_true", help="as JSON; see: boardplan help json")
    shape.add_argument("--csv", action="store_true", help="as CSV")
    parts.add_argument("--buy", action="store_true", help="what to buy by counter, instead of what to pack by box")


def list_parts(chosen: argparse.Namespace) -> int:
    """Run the command. Raises WrongUse where the job's rule set says nothing of loading, and BadFile."""
    from boardplan.checks.review import review_of  # noqa: PLC0415 - late, for a quick start
    from boardplan.cli.text import buying_lines, packing_lines  # noqa: PLC0415
    from boardplan.files.plan_file import load_plan  # noqa: PLC0415
    from boardplan.output.load_out.load_out_list import load_out_listing  # noqa: PLC0415
    from boardplan.output.materials.materials_list import material_listing  # noqa: PLC0415
    from boardplan.output.parts.parts_list import parts_list  # noqa: PLC0415
    from boardplan.output.records import part_records  # noqa: PLC0415

    review = review_of(load_plan(chosen.file))
    parts = parts_list(review)
    if chosen.json:
        say_json(part_records(review))
        return FINE
    if parts is None:
        rules = review.plan.rules
        raise WrongUse(f"{chosen.file}: rule set {rules.id}, edition {rules.edition}, says nothing of loading")
    if chosen.csv:
        say((material_listing if chosen.buy else load_out_listing)(parts).csv)
    else:
        say("\n".join((buying_lines if chosen.buy else packing_lines)(parts)))
    return FINE
