"""Rescue: unsaved work kept aside while it is worked on, and offered again when the program ended without a goodbye."""

import json
import uuid
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from boardplan.files.faults import BadFile, Fault
from boardplan.files.hold import Hold, take_hold
from boardplan.files.job_plain import job_plain
from boardplan.files.json_text import json_lines, read_json
from boardplan.files.own_folders import state_folder
from boardplan.files.plan_file import plan_of_upgraded
from boardplan.files.whole_file import sweep_parts, write_whole
from boardplan.model.plan import Plan

FORMAT, VERSION = "boardplan-rescue", 1
_KEPT, _HELD = ".rescue.json", ".held"


@dataclass(frozen=True, slots=True)
class LeftBehind:
    """Work that a program left behind: when it was kept, the job's title, its file where it has one, how to read it."""

    kept: Path
    kept_at: datetime
    title: str
    file: Path | None

    @property
    def file_saved_at(self) -> datetime | None:
        """When the job's file was written last, none where there is no such file."""
        try:
            return datetime.fromtimestamp(self.file.stat().st_mtime).astimezone() if self.file else None
        except OSError:
            return None


def rescue_folder() -> Path:
    """Return where unsaved work is kept."""
    return state_folder() / "rescue"


class Rescue:
    """A place for one open job, held until it is let go of. All of it raises OSError where the disk refuses."""

    def __init__(self, folder: Path) -> None:
        """Take a place of its own in a folder."""
        name = uuid.uuid4().hex
        self._path = folder / f"{name}{_KEPT}"
        self._hold: Hold | None = take_hold(folder / f"{name}{_HELD}")

    def keep(self, plan: Plan, file: Path | None, now: datetime) -> None:
        """Keep a plan, whole or not at all; what was kept before gives way."""
        data = {
            "format": FORMAT,
            "version": VERSION,
            "kept_at": now.isoformat(timespec="seconds"),
            "file": None if file is None else str(file.resolve()),
            "job": job_plain(plan),
        }
        write_whole(self._path, json_lines(data).encode())

    def clear(self) -> None:
        """Throw away what was kept: it is saved, or nobody wants it."""
        self._path.unlink(missing_ok=True)

    def close(self) -> None:
        """Let go of the place; what is kept there is offered from now on."""
        if self._hold is not None:
            self._hold.release()
            self._hold = None


def left_behind(folder: Path) -> tuple[LeftBehind, ...]:
    """Return the work in a folder that no running program holds, the newest first; what can't be read is left alone."""
    found = sorted(_left_behind(folder), key=lambda each: each.kept_at, reverse=True)
    return tuple(found)


def _left_behind(folder: Path) -> Iterator[LeftBehind]:
    for path in folder.glob(f"*{_KEPT}"):
        hold = take_hold(path.with_name(path.name.removesuffix(_KEPT) + _HELD))
        if hold is None:
            continue
        sweep_parts(path)
        hold.release()
        try:
            yield _head(path)
        except (OSError, ValueError, KeyError, TypeError):
            continue


def _head(path: Path) -> LeftBehind:
    data = json.loads(path.read_text(encoding="utf-8"))
    if data["format"] != FORMAT:
        raise ValueError(data["format"])
    file = data["file"]
    kept_at = datetime.fromisoformat(data["kept_at"]).astimezone()
    return LeftBehind(path, kept_at, str(data["job"]["job"]["title"]), Path(file) if file else None)


def rescued_plan(left: LeftBehind) -> Plan:
    """Return the plan that was left behind. Raises BadFile."""
    try:
        data, faults = read_json(left.kept.read_text(encoding="utf-8"))
    except (OSError, UnicodeDecodeError) as error:
        raise BadFile(left.kept, [Fault("", f"can't be read: {error}")]) from error
    if faults or not isinstance(data, dict):
        raise BadFile(left.kept, faults or [Fault("", "expected kept work")])
    if data.get("version") != VERSION:
        raise BadFile(left.kept, [Fault("version", f"expected {VERSION}; another version of boardplan kept this")])
    try:
        return plan_of_upgraded(data.get("job"))
    except BadFile as bad:
        raise BadFile(left.kept, bad.faults) from None


def throw_away(left: LeftBehind) -> None:
    """Throw away what was left behind. Raises OSError."""
    left.kept.unlink(missing_ok=True)
