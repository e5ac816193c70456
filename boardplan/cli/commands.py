"""Commands: what can be asked for from a shell, each with its exit code."""

import argparse
import sys
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

from boardplan import __version__
from boardplan.bundled import data_dir
from boardplan.cli.label_option import label_stock_named
from boardplan.cli.paper_option import paper_lines, papers_named
from boardplan.cli.parts_command import add_parts_command, list_parts
from boardplan.cli.printer_commands import (
    add_printer_commands,
    enter_measured_bars,
    list_printers,
    paper_named,
    printing_named,
    write_calibration_sheet,
)
from boardplan.cli.shell import FINE, STOPS, UNUSABLE, WrongUse, say, say_json
from boardplan.files.faults import BadFile
from boardplan.model.plan import Plan

if TYPE_CHECKING:
    from boardplan.routing.supports.clamp_holes import Clamps


def run_command(arguments: Sequence[str]) -> int:
    """Run one command and return its exit code; the reason for a refusal goes to stderr."""
    try:
        chosen = _parser().parse_args(arguments)
        return COMMANDS[chosen.command](chosen)
    except BadFile as bad:
        return _refused(f"{bad.file}: {fault}" for fault in bad.faults)
    except WrongUse as wrong:
        return _refused([str(wrong)])
    except BrokenPipeError:
        sys.stderr.close()  # whoever read our output has gone away
        return FINE
    except OSError as error:
        return _refused([f"{error.filename or 'file'}: {error.strerror or error}"])


class _Parser(argparse.ArgumentParser):
    def error(self, message: str) -> NoReturn:
        raise WrongUse(f"{self.prog}: {message}\n{self.format_usage().strip()}")


def _refused(lines: Iterable[str]) -> int:
    sys.stderr.write("".join(f"{line}\n" for line in lines))
    return UNUSABLE


def _parser() -> _Parser:
    parser = _Parser(
        prog="boardplan",
        description="Plan, check and print the equipment board of an off-grid power system.",
        epilog="boardplan FILE opens the window on a job; boardplan alone opens it with nothing.",
    )
    parser.add_argument("--version", action="version", version=f"boardplan {__version__}")
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND", parser_class=_Parser)
    for name, words in (
        ("check", "say what is wrong with a job"),
        ("cables", "list every cable with its cut length"),
        ("holes", "list every hole to drill"),
    ):
        command = commands.add_parser(name, help=words, description=words)
        command.add_argument("file", type=Path, help="a job file")
        shape = command.add_mutually_exclusive_group()
        shape.add_argument("--json", action="store_true", help="as JSON; see: boardplan help json")
        if name != "check":
            shape.add_argument("--csv", action="store_true", help="as CSV")
        if name == "cables":
            shape.add_argument("--sum", metavar="CABLE", help="how the length of one cable comes about, line by line")
            shape.add_argument(
                "--free", metavar="CABLE", help="what would give a cable without a way one; takes a while"
            )
    add_parts_command(commands.add_parser)
    pack = commands.add_parser("pack", help="write all papers of a job", description="write all papers of a job")
    pack.add_argument("file", type=Path, help="a job file")
    pack.add_argument("--to", type=Path, required=True, metavar="DIR", help="the folder to write")
    pack.add_argument("--paper", default="a4", help="paper of the template: a4, letter, a3, roll-914 ... (default a4)")
    pack.add_argument("--printer", metavar="NAME", help="the printer of the template; see: boardplan calibration-sheet")
    pack.add_argument(
        "--labels", metavar="STOCK", help="label stock: a name, or a TOML file of its measures (default: cut by hand)"
    )
    pack.add_argument(
        "--only", metavar="PAPERS", help="these papers alone, with commas between; see: boardplan help papers"
    )
    add_printer_commands(commands.add_parser)
    shelf = commands.add_parser("shelf", help="list the component kinds", description="list the component kinds")
    shelf.add_argument("--json", action="store_true", help="as JSON, with everything that is known of each kind")
    commands.add_parser("schema", help="print the JSON Schema of the job file", description="print the JSON Schema")
    helps = commands.add_parser("help", help="explain: json, files, papers, exchange", description="explain a topic")
    helps.add_argument("topic", nargs="?", choices=("json", "files", "papers", "exchange"), help="what to explain")
    return parser


def _plan(chosen: argparse.Namespace) -> Plan:
    from boardplan.files.plan_file import load_plan  # noqa: PLC0415 - late, for a quick start

    return load_plan(chosen.file)


def _check(chosen: argparse.Namespace) -> int:
    from boardplan.checks.review import review_of  # noqa: PLC0415
    from boardplan.cli.text import finding_lines, verdict  # noqa: PLC0415
    from boardplan.output.findings.finding_records import finding_records  # noqa: PLC0415

    review = review_of(_plan(chosen))
    if chosen.json:
        say_json(finding_records(review))
    else:
        say("\n".join([*finding_lines(review.findings), verdict(review)]))
    return STOPS if review.stops else FINE


def _cables(chosen: argparse.Namespace) -> int:
    from boardplan.cli.text import cable_lines, sum_lines  # noqa: PLC0415
    from boardplan.output.cables.cut_list import cut_listing  # noqa: PLC0415
    from boardplan.output.records import cable_records  # noqa: PLC0415
    from boardplan.routing.channels.channel_fill import channel_fills  # noqa: PLC0415
    from boardplan.routing.find_route import find_routes  # noqa: PLC0415
    from boardplan.routing.lengths.cut_length import cut_lengths  # noqa: PLC0415
    from boardplan.routing.supports.clamps import clamps_of  # noqa: PLC0415

    plan = _plan(chosen)
    for option, named in (("--sum", chosen.sum), ("--free", chosen.free)):
        if named is not None and named not in plan.cables:
            raise WrongUse(f"{option}: there is no cable '{named}' in {chosen.file}")
    ways = find_routes(plan)
    if chosen.free is not None:
        from boardplan.cli.text import freed_lines  # noqa: PLC0415

        say("\n".join(freed_lines(plan, chosen.free, ways[chosen.free])))
        return FINE
    lengths = cut_lengths(plan, ways)
    if chosen.json:
        say_json(cable_records(plan, ways, lengths, channel_fills(plan, ways)))
    elif chosen.csv:
        say(cut_listing(plan, lengths, clamps_of(plan, ways)).csv)
    elif chosen.sum is not None:
        say("\n".join(sum_lines(lengths[chosen.sum])))
    else:
        from boardplan.routing.sharing.left import saving_left  # noqa: PLC0415

        say("\n".join([*cable_lines(plan, lengths), f"Channels: {saving_left(plan, ways).sentence}."]))
    return FINE


def _holes(chosen: argparse.Namespace) -> int:
    from boardplan.cli.text import hole_lines  # noqa: PLC0415
    from boardplan.output.holes.hole_schedule import hole_listing  # noqa: PLC0415
    from boardplan.output.records import hole_records  # noqa: PLC0415

    plan = _plan(chosen)
    clamps = _clamps_with_screws(plan)
    if chosen.json:
        say_json(hole_records(plan, clamps))
    elif chosen.csv:
        say(hole_listing(plan, clamps).csv)
    else:
        say("\n".join(hole_lines(plan, clamps)))
    return FINE


def _clamps_with_screws(plan: Plan) -> "Clamps":
    """Return the clamps of a job whose rule set names their screw; no way is looked for where none does."""
    if not plan.rules.fasteners:
        return {}
    from boardplan.routing.find_route import find_routes  # noqa: PLC0415
    from boardplan.routing.supports.clamps import clamps_of  # noqa: PLC0415

    return clamps_of(plan, find_routes(plan))


def _pack(chosen: argparse.Namespace) -> int:
    from boardplan.checks.review import review_of  # noqa: PLC0415
    from boardplan.cli.text import pack_lines, verdict  # noqa: PLC0415
    from boardplan.output.making import Making  # noqa: PLC0415
    from boardplan.output.pack import PackRefused, write_pack  # noqa: PLC0415

    printing = printing_named(chosen.printer, paper_named(chosen.paper))
    stock = label_stock_named(chosen.labels)
    review = review_of(_plan(chosen))
    try:
        written = write_pack(Making(review, printing, stock), chosen.to, chosen=papers_named(chosen.only))
    except PackRefused as refused:
        raise WrongUse(str(refused)) from None
    say("\n".join([*pack_lines(written, chosen.to), written["printing"]["words"], verdict(review)]))
    return STOPS if review.stops else FINE


def _shelf(chosen: argparse.Namespace) -> int:
    from boardplan.cli.text import columns  # noqa: PLC0415
    from boardplan.files.shelf_build import kind_plain  # noqa: PLC0415
    from boardplan.files.shelf_file import bundled_shelf  # noqa: PLC0415

    shelf = bundled_shelf()
    if chosen.json:
        say_json([kind_plain(kind) for kind in shelf.kinds.values()])
        return FINE
    rows = [
        (kind.id, kind.family, f"{kind.box.width:g} x {kind.box.height:g} x {kind.depth:g}", kind.name)
        for kind in shelf.kinds.values()
    ]
    say("\n".join(columns(("id", "family", "W x H x D mm", "name"), rows)))
    say("\nAll sizes are invented and typical. Measure your own.")
    return FINE


def _schema(_: argparse.Namespace) -> int:
    from boardplan.files.plan_file import job_schema  # noqa: PLC0415

    say_json(job_schema())
    return FINE


def _help(chosen: argparse.Namespace) -> int:
    topics = {"json": "json-shapes.md", "files": "job-file.md", "exchange": "exchange-files.md"}
    if chosen.topic is None:
        say(_parser().format_help())
    elif chosen.topic == "papers":
        say("\n".join(paper_lines()))
    else:
        say((data_dir("assets") / "manual" / topics[chosen.topic]).read_text(encoding="utf-8"))
    return FINE


COMMANDS: dict[str, Callable[[argparse.Namespace], int]] = {
    "check": _check,
    "cables": _cables,
    "holes": _holes,
    "parts": list_parts,
    "pack": _pack,
    "calibration-sheet": write_calibration_sheet,
    "measured-bars": enter_measured_bars,
    "printers": list_printers,
    "shelf": _shelf,
    "schema": _schema,
    "help": _help,
}
