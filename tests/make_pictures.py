"""Make the pictures of the README from the program itself: python tests/make_pictures.py [FOLDER].

With a folder, every sample is taken there too: each step, light and dark, at two sizes of window.
"""

import os
import sys
from itertools import product
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QSettings
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from boardplan.bundled import data_dir
from boardplan.ui.app import dress
from boardplan.ui.main_window import MainWindow
from boardplan.ui.preferences import Preferences

SIZES = ((1280, 800), (1920, 1080))
SELECTED = {"library-bus": "W07", "lookout-cabin": "INV1", "honey-trailer": "RW1"}


def take(job: Path, theme: str, size: tuple[int, int], step: str, selected: str | None) -> object:
    """Return a picture of the window on a job."""
    QSettings.setDefaultFormat(QSettings.Format.IniFormat)
    window = MainWindow(Preferences(QSettings(os.devnull, QSettings.Format.IniFormat)))
    window.choose_theme(theme)
    window.resize(*size)
    window.show()
    window.files.open_sample(job)
    window.open_desk().go_to(step)
    QTest.qWait(60)
    if selected:
        window.open_desk().select(selected)
    window.fit()
    QTest.qWait(120)
    picture = window.grab()
    window.clear_bench()
    window.close()
    window.deleteLater()
    return picture


def main() -> None:
    """Take the pictures."""
    app = QApplication.instance() or QApplication(["boardplan"])
    dress(app)
    samples = data_dir("sample_boards")
    picture = take(samples / "library-bus.json", "light", SIZES[0], "wire", "W07")
    picture.save(str(data_dir("assets") / "pictures" / "window.png"))
    if len(sys.argv) > 1:
        folder = Path(sys.argv[1])
        folder.mkdir(parents=True, exist_ok=True)
        for (name, selected), theme, size, step in product(
            SELECTED.items(), ("light", "dark"), SIZES, ("survey", "place", "wire", "pack")
        ):
            chosen = selected if step in ("place", "wire") else None
            picture = take(samples / f"{name}.json", theme, size, step, chosen)
            picture.save(str(folder / f"{name}-{theme}-{size[0]}x{size[1]}-{step}.png"))


if __name__ == "__main__":
    main()
