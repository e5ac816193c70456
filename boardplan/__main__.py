"""Start: a command from a shell, or the window."""

import sys
from pathlib import Path


def main() -> int:
    """Run what the command line asks for and return the exit code."""
    from boardplan.cli.commands import COMMANDS, run_command  # noqa: PLC0415 - start-up counts

    arguments = sys.argv[1:]
    if arguments and (arguments[0] in COMMANDS or arguments[0].startswith("-")):
        return run_command(arguments)
    if len(arguments) > 1:
        return run_command(["help"])
    return _open_window(Path(arguments[0]) if arguments else None)


def _open_window(path: Path | None) -> int:
    from boardplan.ui.qt_needs import missing_for_window  # noqa: PLC0415 - Qt only for the window

    message = missing_for_window()
    if message:
        sys.stderr.write(f"{message}\n")
        return 2
    from boardplan.ui.app import run  # noqa: PLC0415

    return run(path)


if __name__ == "__main__":
    sys.exit(main())
