"""JSON text: plain data as lines that read well in a diff; JSON read with every slip noticed."""

import json
from typing import Any

from boardplan.files.faults import Fault

_WIDTH = 110


def json_lines(value: Any) -> str:
    """Return JSON with whatever fits on a line on one line, in the order given, ended by a newline."""
    return _block(value, 0) + "\n"


def _block(value: Any, indent: int) -> str:
    flat = json.dumps(value, ensure_ascii=False, allow_nan=False)
    is_branch = isinstance(value, (dict, list)) and value
    if not is_branch or (indent > 2 and len(flat) + indent <= _WIDTH):  # noqa: PLR2004 - top groups stay open
        return flat
    pad = " " * (indent + 2)
    if isinstance(value, dict):
        names = {key: json.dumps(key, ensure_ascii=False) for key in value}
        rows = [f"{pad}{names[key]}: {_block(each, indent + 2)}" for key, each in value.items()]
        return "{\n" + ",\n".join(rows) + "\n" + " " * indent + "}"
    rows = [pad + _block(each, indent + 2) for each in value]
    return "[\n" + ",\n".join(rows) + "\n" + " " * indent + "]"


def read_json(text: str) -> tuple[Any, list[Fault]]:
    """Return the data of a JSON text and the faults of its form: bad syntax, a field given twice."""
    doubled: list[str] = []

    def group(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
        data = dict(pairs)
        if len(data) < len(pairs):
            names = [name for name, _ in pairs]
            doubled.extend(sorted({name for name in names if names.count(name) > 1}))
        return data

    try:
        data = json.loads(text, object_pairs_hook=group)
    except json.JSONDecodeError as error:
        return None, [Fault(f"line {error.lineno}, column {error.colno}", f"expected JSON: {error.msg.lower()}")]
    except RecursionError:
        return None, [Fault("", "expected a job file; this one is nested too deeply")]
    except ValueError as error:
        return None, [Fault("", f"expected JSON: {error}")]
    return data, [Fault(name, "a field given twice in one group") for name in doubled]
