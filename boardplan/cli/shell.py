"""Shell: what every command shares: its exit codes, how it speaks, and a command line that can't be carried out."""

import json
import sys

FINE, STOPS, UNUSABLE = 0, 1, 2
"""Exit codes: fine; findings that stop; input that can't be used."""


class WrongUse(Exception):  # noqa: N818 - what happened
    """A command line that can't be carried out."""


def say(text: str) -> None:
    """Write a text to stdout, ended by a newline."""
    sys.stdout.write(text if text.endswith("\n") else f"{text}\n")


def say_json(value: object) -> None:
    """Write a value to stdout as JSON."""
    say(json.dumps(value, ensure_ascii=False, indent=1))
