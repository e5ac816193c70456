"""Record faults: what pydantic found wrong with plain data, in our words and with the place in the file."""

from collections.abc import Sequence
from typing import Any

from pydantic import ValidationError

from boardplan.files.faults import Fault
from boardplan.files.record_types import PATTERN_WORDS

_WORDS = {
    "missing": "missing; it must be given",
    "extra_forbidden": "not a field of this format",
    "finite_number": "expected a finite number",
    "float_type": "expected a number",
    "int_type": "expected a whole number",
    "string_type": "expected a text",
    "bool_type": "expected true or false",
    "list_type": "expected a list",
    "model_type": "expected a group of fields",
    "dict_type": "expected a group of fields",
    "too_short": "expected at least {min_length} entries",
    "too_long": "expected at most {max_length} entries",
    "string_too_short": "expected a text",
    "string_too_long": "expected at most {max_length} letters",
    "greater_than": "expected more than {gt:g}",
    "greater_than_equal": "expected at least {ge:g}",
    "less_than": "expected less than {lt:g}",
    "less_than_equal": "expected at most {le:g}",
}
_SHOWN = 40


def faults_of(error: ValidationError, data: Any) -> list[Fault]:
    """Return the faults pydantic found in plain data, each with a path that names ids where there are any."""
    return [Fault(path_text(each["loc"], data), _expected(each)) for each in error.errors(include_url=False)]


def _expected(error: Any) -> str:
    kind, context = error["type"], error.get("ctx", {})
    if kind == "value_error":
        return str(context.get("error", error["msg"]))
    if kind == "literal_error":
        words = f"expected {context['expected']}"
    elif kind == "string_pattern_mismatch":
        words = f"expected {PATTERN_WORDS[context['pattern']]}"
    else:
        words = _WORDS.get(kind, "").format(**context) or _sentence(error["msg"])
    return words if kind in {"missing", "extra_forbidden"} else f"{words}, found {_shown(error['input'])}"


def _sentence(message: str) -> str:
    text = message.replace("Input should", "expected to").replace("should", "expected to")
    return text[0].lower() + text[1:]


def _shown(value: Any) -> str:
    text = repr(value)
    return text if len(text) <= _SHOWN else f"{text[: _SHOWN - 1]}…"


def path_text(location: Sequence[int | str], data: Any) -> str:
    """Return a path as words: components[3] 'INV1'.position[0]."""
    text, here = "", data
    for step in location:
        here = _step_into(here, step)
        if isinstance(step, int):
            text += f"[{step}]"
            if isinstance(here, dict) and isinstance(here.get("id"), str):
                text += f" '{here['id']}'"
        else:
            text += f".{step}" if text else step
    return text


def _step_into(here: Any, step: int | str) -> Any:
    try:
        return here[step]
    except (KeyError, IndexError, TypeError):
        return None
