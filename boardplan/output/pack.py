"""Pack: all papers of a job in one folder, whole or not at all."""

import gc
import json
from collections.abc import Callable, Collection, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from boardplan.output.exchange.geometry_audit import BadDrawing
from boardplan.output.making import Making, PackFile
from boardplan.output.pack_contents import FORMAT, pack_contents
from boardplan.output.papers import files_of
from boardplan.output.printing.pdf import pdf_of
from boardplan.output.taking_place import new_folder, put_right

CONTENTS = "pack.json"
Progress = Callable[[int, int, str], None]
"""Told how much is done, of how much, and what comes next; whatever it raises ends the work without a trace."""


class PackRefused(Exception):  # noqa: N818 - what happened, in words
    """Nothing was written: the folder holds something that is not a pack of ours, or a file would do harm."""


def write_pack(
    making: Making, folder: Path, progress: Progress | None = None, chosen: Collection[str] = ()
) -> dict[str, Any]:
    """Write the papers chosen, or all, to a folder and return what `pack.json` says.

    The papers come into being beside the folder and take its place at the end: there is never half a pack, and where
    the system can exchange two folders in one step never none.
    Raises PackRefused where the folder holds anything but an older pack, or a pack with papers that are not
    chosen, or a drawing for a machine is at fault; OSError where it can't be written.
    """
    target = folder.resolve()
    if target.parent.is_dir():
        put_right(target)
    _check_target(target)
    with _unswept():
        files = tuple(files_of(making, chosen))
        if chosen:
            _check_nothing_goes(target, files)
        with new_folder(target) as part:
            return _write_all(making, files, part, progress or _silent)


@contextmanager
def _unswept() -> Iterator[None]:
    """Look for no unused values meanwhile that hold each other: a pack leaves few, and a fifth of its time went there.

    All others go as soon as nobody holds them, as ever.
    """
    before = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if before:
            gc.enable()


def _silent(_done: int, _total: int, _words: str) -> None:
    """Tell nobody."""


def _check_target(target: Path) -> None:
    if not target.exists():
        return
    if not target.is_dir():
        raise PackRefused(f"{target} is a file; a pack needs a folder")
    names = {each.name for each in target.iterdir()}
    if names and not _is_pack(target):
        raise PackRefused(f"{target} is not empty and holds no pack of papers; choose another folder")


def _is_pack(target: Path) -> bool:
    """Say whether a folder holds a pack of ours and nothing else, so that it may be replaced."""
    try:
        contents = json.loads((target / CONTENTS).read_text(encoding="utf-8"))
        files = {each["file"] for each in contents["files"]}
    except (OSError, ValueError, KeyError, TypeError):
        return False
    ours = contents.get("format") == FORMAT
    return ours and {each.name for each in target.iterdir()} <= files | {CONTENTS}


def _check_nothing_goes(target: Path, files: Sequence[PackFile]) -> None:
    """Refuse to put a few papers in the place of a pack that holds others."""
    there = {each.name for each in target.iterdir()} if target.exists() else set()
    others = sorted(there - {each.name for each in files} - {CONTENTS})
    if others:
        raise PackRefused(f"{target} holds papers that were not chosen, such as {others[0]}; choose another folder")


def _write_all(making: Making, files: Sequence[PackFile], folder: Path, progress: Progress) -> dict[str, Any]:
    total = sum(each.steps for each in files)
    done = 0
    for each in files:
        progress(done, total, each.name)
        (folder / each.name).write_bytes(_content(making, each, (done, total), progress))
        done += each.steps
    contents = pack_contents(making, files)
    text = json.dumps(contents, ensure_ascii=False, indent=1) + "\n"
    (folder / CONTENTS).write_text(text, encoding="utf-8")
    progress(total, total, "")
    return contents


def _content(making: Making, each: PackFile, so_far: tuple[int, int], progress: Progress) -> bytes:
    done, total = so_far

    def on_page(page: int) -> None:
        progress(done + page, total, each.name)

    if each.data:
        try:
            return each.data()
        except BadDrawing as bad:
            raise PackRefused(f"{each.name} is not fit to work from: {bad}; see --only for the other papers") from bad
    title = f"{making.plan.job.title}: {each.heading[0].lower()}{each.heading[1:]}"
    return pdf_of(each.sheets, making.fonts, title, on_page)
