"""Own shelf: the kinds that a person has measured, each a file of its own, beside those that come with the program."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import lru_cache
from pathlib import Path
from typing import Literal

from pydantic import ValidationError

from boardplan.files.faults import BadFile, Fault
from boardplan.files.json_text import json_lines, read_json
from boardplan.files.own_folders import settings_folder
from boardplan.files.record_faults import faults_of
from boardplan.files.record_types import Record
from boardplan.files.shelf_build import kind_faults, kind_from, kind_plain
from boardplan.files.shelf_file import bundled_shelf
from boardplan.files.shelf_records import KindRecord
from boardplan.files.whole_file import write_whole
from boardplan.model.component_kind import ComponentKind
from boardplan.model.shelf import Shelf

FORMAT, VERSION = "boardplan-kind", 1
_LARGEST_FILE = 4_000_000
ENDING = ".kind.json"


class KindFileRecord(Record):
    """A file that holds one kind."""

    format: Literal["boardplan-kind"]
    version: Literal[1]
    kind: KindRecord


@dataclass(frozen=True, slots=True)
class OwnShelf:
    """The kinds of a person's own by id, and the files that can't be read, each with what is wrong with it."""

    kinds: dict[str, ComponentKind]
    bad: tuple[BadFile, ...] = ()


def own_shelf_folder() -> Path:
    """Return where a person's own kinds are kept; it need not be there yet."""
    return settings_folder() / "shelf"


def read_kind(path: Path) -> ComponentKind:
    """Return the kind of a file. Raises BadFile with every fault."""
    try:
        if path.stat().st_size > _LARGEST_FILE:
            raise BadFile(path, [Fault("", "expected a kind; this file is larger than 4 MB")])
        data, faults = read_json(path.read_bytes().decode("utf-8-sig"))
    except OSError as error:
        raise BadFile(path, [Fault("", f"can't be read: {error.strerror or error}")]) from error
    except UnicodeDecodeError as error:
        raise BadFile(path, [Fault(f"byte {error.start}", "expected text in UTF-8")]) from error
    if faults:
        raise BadFile(path, faults)
    if isinstance(data, dict) and isinstance(data.get("version"), int) and data["version"] > VERSION:
        raise BadFile(path, [Fault("version", f"expected at most {VERSION}; this one needs a newer boardplan")])
    try:
        record = KindFileRecord.model_validate(data)
    except ValidationError as error:
        raise BadFile(path, faults_of(error, data)) from None
    faults = [Fault(f"kind.{field}", words) for field, words in kind_faults(record.kind)]
    if faults:
        raise BadFile(path, faults)
    return kind_from(record.kind)


def write_kind(kind: ComponentKind, path: Path) -> None:
    """Write a kind to a file, whole or not at all. Raises OSError."""
    data = {"format": FORMAT, "version": VERSION, "kind": kind_plain(kind)}
    write_whole(path, json_lines(data).encode())


def read_own_shelf(folder: Path) -> OwnShelf:
    """Return the kinds in a folder; a file that can't be read is named and left alone."""
    kinds: dict[str, ComponentKind] = {}
    bad = []
    for path in sorted(folder.glob(f"*{ENDING}")):
        try:
            kind = read_kind(path)
        except BadFile as fault:
            bad.append(fault)
        else:
            kinds[kind.id] = kind
    return OwnShelf(kinds, tuple(bad))


def keep_kind(kind: ComponentKind, folder: Path) -> Path:
    """Keep a kind on a person's own shelf and return its file; one of the same id gives way. Raises OSError."""
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / f"{kind.id}{ENDING}"
    write_kind(kind, path)
    return path


def drop_kind(kind_id: str, folder: Path) -> None:
    """Take a kind off a person's own shelf; boards that have it keep it. Raises OSError."""
    (folder / f"{kind_id}{ENDING}").unlink(missing_ok=True)


def shelf_in_reach() -> Shelf:
    """Return what comes with the program and a person's own kinds; read anew where a file of those has changed."""
    folder = own_shelf_folder()
    try:
        files = tuple((path.name, path.stat().st_mtime_ns) for path in sorted(folder.glob(f"*{ENDING}")))
    except OSError:
        files = ()
    return _in_reach(folder, files)


@lru_cache(maxsize=2)
def _in_reach(folder: Path, files: tuple[tuple[str, int], ...]) -> Shelf:
    return whole_shelf(read_own_shelf(folder).kinds.values()) if files else bundled_shelf()


def unfit_words(kind: ComponentKind) -> str:
    """Return why a kind can't be kept in a file, as something in it is too long or too large; nothing where it can."""
    plain = kind_plain(kind)
    try:
        record = KindRecord.model_validate(plain)
    except ValidationError as error:
        return "; ".join(str(each) for each in faults_of(error, plain))
    return "; ".join(f"{field}: {words}" for field, words in kind_faults(record))


def whole_shelf(own: Iterable[ComponentKind]) -> Shelf:
    """Return what comes with the program with a person's own kinds before it; own ones win where ids are the same."""
    bundled = bundled_shelf()
    kinds = {each.id: each for each in own}
    rest = {key: kind for key, kind in bundled.kinds.items() if key not in kinds}
    return replace(bundled, kinds={**kinds, **rest})
