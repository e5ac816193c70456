"""Label option: the label stock that a person names on the command line."""

from pathlib import Path
from typing import TYPE_CHECKING

from boardplan.cli.shell import WrongUse

if TYPE_CHECKING:
    from boardplan.model.label_stock import LabelStock


def label_stock_named(name: str | None) -> "LabelStock | None":
    """Return a label stock by its id or by its file, none where none is named. Raises WrongUse, BadFile."""
    from boardplan.files.label_stock_file import bundled_label_stocks, read_label_stock  # noqa: PLC0415

    if name is None:
        return None
    bundled = bundled_label_stocks()
    if name in bundled:
        return read_label_stock(bundled[name])
    if not name.endswith(".toml"):
        expected = ", ".join(bundled)
        raise WrongUse(f"--labels: there is no label stock '{name}'; expected {expected}, or a .toml file of measures")
    return read_label_stock(Path(name))
