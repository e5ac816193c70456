"""TOML file: a file written by hand, held against the record that describes it."""

import tomllib
from pathlib import Path
from typing import TypeVar

from pydantic import ValidationError

from boardplan.files.faults import BadFile, Fault
from boardplan.files.record_faults import faults_of
from boardplan.files.record_types import Record

R = TypeVar("R", bound=Record)


def read_toml(path: Path, kind: type[R]) -> R:
    """Return the record of a file. Raises BadFile where it can't be read, is no TOML or is not as the record says."""
    try:
        data = tomllib.loads(path.read_text(encoding="utf-8"))
    except OSError as error:
        raise BadFile(path, [Fault("", f"can't be read: {error.strerror or error}")]) from error
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        raise BadFile(path, [Fault("", f"expected TOML: {error}")]) from error
    try:
        return kind.model_validate(data)
    except ValidationError as error:
        raise BadFile(path, faults_of(error, data)) from None
