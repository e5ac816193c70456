"""Shelf file: assets/shelf/*.toml to the shelf, and a shop's own files in the same format."""

import tomllib
from collections.abc import Iterable
from functools import cache
from pathlib import Path

from pydantic import ValidationError

from boardplan.bundled import data_dir
from boardplan.files.faults import BadFile, Fault, faults_of
from boardplan.files.shelf_build import conductor_from, fastener_from, kind_faults, kind_from
from boardplan.files.shelf_records import ShelfFileRecord
from boardplan.model.shelf import Shelf


@cache
def bundled_shelf() -> Shelf:
    """Return the shelf that comes with the program; read once. Raises BadFile."""
    folder = data_dir("assets") / "shelf"
    return read_shelf(sorted(folder.glob("*.toml")))


def read_shelf(paths: Iterable[Path]) -> Shelf:
    """Return the shelf of files, in their order. Raises BadFile, also where an id is used twice."""
    shelf = Shelf({}, {}, {})
    for path in paths:
        record = _record_of(path)
        groups = (
            ("kind", shelf.kinds, {each.id: kind_from(each, record.family) for each in record.kind}, record.kind),
            ("conductor", shelf.conductors, {e.id: conductor_from(e) for e in record.conductor}, record.conductor),
            ("fastener", shelf.fasteners, {each.id: fastener_from(each) for each in record.fastener}, record.fastener),
        )
        faults: list[Fault] = []
        for name, held, added, records in groups:
            doubled = sorted(set(held) & set(added)) + (["(in this file)"] if len(added) < len(records) else [])
            faults += [Fault(f"{name} '{each}'", "an id that is used once on the shelf") for each in doubled]
        if faults:
            raise BadFile(path, faults)
        shelf = Shelf(
            {**shelf.kinds, **groups[0][2]}, {**shelf.conductors, **groups[1][2]}, {**shelf.fasteners, **groups[2][2]}
        )
    return shelf


def _record_of(path: Path) -> ShelfFileRecord:
    try:
        data = tomllib.loads(path.read_text(encoding="utf-8"))
    except OSError as error:
        raise BadFile(path, [Fault("", f"can't be read: {error.strerror or error}")]) from error
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        raise BadFile(path, [Fault("", f"expected TOML: {error}")]) from error
    try:
        record = ShelfFileRecord.model_validate(data)
    except ValidationError as error:
        raise BadFile(path, faults_of(error, data)) from None
    faults = [Fault(f"kind '{kind.id}'.{field}", fault) for kind in record.kind for field, fault in kind_faults(kind)]
    if faults:
        raise BadFile(path, faults)
    return record
