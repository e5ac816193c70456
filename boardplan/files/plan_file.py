"""Plan file: a job file to a plan and back; whole or not at all, and every fault at once."""

import hashlib
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from boardplan.files.faults import BadFile, Fault
from boardplan.files.job_build import join_faults, plan_from, record_faults
from boardplan.files.job_plain import job_plain
from boardplan.files.job_records import JobFileRecord
from boardplan.files.json_text import json_lines, read_json
from boardplan.files.record_faults import faults_of
from boardplan.files.rule_set_file import find_rule_set
from boardplan.files.upgrades import upgraded
from boardplan.files.whole_file import write_whole
from boardplan.model.plan import Plan

_LARGEST_FILE = 64_000_000


def load_plan(path: Path | str) -> Plan:
    """Return the plan of a job file. Raises BadFile with every fault, each with its place."""
    try:
        content = _content(Path(path))
        return plan_of_text(content)
    except BadFile as bad:
        raise BadFile(path, bad.faults) from None


def _content(path: Path) -> str:
    try:
        if path.stat().st_size > _LARGEST_FILE:
            raise BadFile(path, [Fault("", "expected a job file; this one is larger than 64 MB")])
        return path.read_bytes().decode("utf-8-sig")
    except OSError as error:
        raise BadFile(path, [Fault("", f"can't be read: {error.strerror or error}")]) from error
    except UnicodeDecodeError as error:
        raise BadFile(path, [Fault(f"byte {error.start}", "expected text in UTF-8")]) from error


def plan_of_text(text: str) -> Plan:
    """Return the plan a job file's text means. Raises BadFile (without a file's name)."""
    data, faults = read_json(text)
    if faults:
        raise BadFile("", faults)
    return plan_of_upgraded(data)


def plan_of_upgraded(data: Any) -> Plan:
    """Return the plan of a job file's data, in whatever version. Raises BadFile (without a file's name)."""
    data, faults = upgraded(data)
    if faults:
        raise BadFile("", faults)
    return plan_of_data(data)


def plan_of_data(data: Any) -> Plan:
    """Return the plan of a job file's data, in today's version. Raises BadFile."""
    try:
        record = JobFileRecord.model_validate(data)
    except ValidationError as error:
        raise BadFile("", faults_of(error, data)) from None
    faults = list(record_faults(record))
    wanted = record.job.rule_set
    rules = find_rule_set(wanted.id, wanted.edition)
    if rules is None:
        faults.append(Fault("job.rule_set", f"there is no rule set '{wanted.id}' in edition '{wanted.edition}'"))
    if rules is None or faults:
        raise BadFile("", faults)
    plan = plan_from(record, rules)
    faults = list(join_faults(plan, record))
    if faults:
        raise BadFile("", faults)
    return plan


def plan_text(plan: Plan) -> str:
    """Return a plan as the text of its job file."""
    return json_lines(job_plain(plan))


def save_plan(plan: Plan, path: Path | str, *, keep_before: bool = False) -> str:
    """Write a plan to a job file, whole or not at all, and return the file's stamp. Raises OSError.

    What the file held before is kept beside it where that is asked for, see `before_of`.
    """
    content, target = plan_text(plan).encode(), Path(path).resolve()
    if keep_before and target.exists() and (before := target.read_bytes()) != content:
        write_whole(before_of(target), before)
    write_whole(target, content)
    return stamp_of(content)


def stamp_of(content: bytes) -> str:
    """Return what tells a file's content from any other."""
    return hashlib.sha256(content).hexdigest()


def file_stamp(path: Path) -> str:
    """Return the stamp of a file as it is now, "" where it can't be read."""
    try:
        return stamp_of(path.read_bytes())
    except OSError:
        return ""


def before_of(path: Path) -> Path:
    """Return where the version before the last one saved is kept.

    >>> before_of(Path("library-bus.json")).name
    'library-bus.before.json'
    """
    return path.with_name(f"{path.stem}.before{path.suffix}")


def job_schema() -> dict[str, Any]:
    """Return the JSON Schema of the job file."""
    schema = JobFileRecord.model_json_schema()
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "boardplan job file, version 1",
        **{key: value for key, value in schema.items() if key != "title"},
    }
