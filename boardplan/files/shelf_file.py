"""Shelf file: assets/shelf/*.toml to the shelf, and a shop's own files in the same format."""

from collections.abc import Iterable
from functools import cache
from pathlib import Path

from boardplan.bundled import data_dir
from boardplan.files.faults import BadFile, Fault
from boardplan.files.shelf_build import channel_section_from, conductor_from, fastener_from, kind_faults, kind_from
from boardplan.files.shelf_records import ShelfFileRecord
from boardplan.files.toml_file import read_toml
from boardplan.model.shelf import Shelf


@cache
def bundled_shelf() -> Shelf:
    """Return the shelf that comes with the program; read once. Raises BadFile."""
    folder = data_dir("assets") / "shelf"
    return read_shelf(sorted(folder.glob("*.toml")))


def read_shelf(paths: Iterable[Path]) -> Shelf:
    """Return the shelf of files, in their order. Raises BadFile, also where an id is used twice."""
    shelf = Shelf()
    for path in paths:
        added, faults = _added(shelf, _record_of(path))
        if faults:
            raise BadFile(path, faults)
        shelf = added
    return shelf


def _added(shelf: Shelf, record: ShelfFileRecord) -> tuple[Shelf, list[Fault]]:
    """Return the shelf with what a file holds, and a fault for each id that is used twice."""
    kinds = [kind_from(each, record.family) for each in record.kind]
    conductors = [conductor_from(each) for each in record.conductor]
    fasteners = [fastener_from(each) for each in record.fastener]
    sections = [channel_section_from(each) for each in record.channel_section]
    faults = [
        Fault(f"{name} '{doubled}'", "an id that is used once on the shelf")
        for name, held, ids in (
            ("kind", shelf.kinds, [each.id for each in kinds]),
            ("conductor", shelf.conductors, [each.id for each in conductors]),
            ("fastener", shelf.fasteners, [each.id for each in fasteners]),
            ("channel section", shelf.channel_sections, [each.id for each in sections]),
        )
        for doubled in sorted({each for each in ids if each in held or ids.count(each) > 1})
    ]
    return (
        Shelf(
            {**shelf.kinds, **{each.id: each for each in kinds}},
            {**shelf.conductors, **{each.id: each for each in conductors}},
            {**shelf.fasteners, **{each.id: each for each in fasteners}},
            {**shelf.channel_sections, **{each.id: each for each in sections}},
        ),
        faults,
    )


def _record_of(path: Path) -> ShelfFileRecord:
    record = read_toml(path, ShelfFileRecord)
    faults = [Fault(f"kind '{kind.id}'.{field}", fault) for kind in record.kind for field, fault in kind_faults(kind)]
    if faults:
        raise BadFile(path, faults)
    return record
