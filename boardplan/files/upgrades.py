"""Upgrades: one small function for each older version of the job file."""

from collections.abc import Callable
from typing import Any

from boardplan.files.faults import Fault
from boardplan.files.job_records import FORMAT, VERSION

UPGRADES: dict[int, Callable[[dict[str, Any]], dict[str, Any]]] = {}
"""From a version to the function that makes its data one version newer; version 1 is the first."""


def upgraded(data: Any) -> tuple[Any, list[Fault]]:
    """Return the data in today's version, or why it can't be: another format, a newer version."""
    if not isinstance(data, dict) or data.get("format") != FORMAT:
        return data, [Fault("format", f'expected a job file with "format": "{FORMAT}"')]
    version = data.get("version")
    if not isinstance(version, int) or isinstance(version, bool) or version < 1:
        return data, [Fault("version", f"expected a whole number from 1 to {VERSION}")]
    if version > VERSION:
        return data, [Fault("version", f"expected at most {VERSION}; version {version} needs a newer boardplan")]
    while version < VERSION:
        data = UPGRADES[version](data)
        version += 1
    return data, []
