"""The shape of the project: layers, no Qt outside the window, quick start, small pieces."""

import ast
import os
import subprocess
import sys
from pathlib import Path

import pytest
from boards import SAMPLES

import boardplan

PACKAGE = Path(boardplan.__file__).parent
ROOT = PACKAGE.parent
MODULES = sorted(PACKAGE.rglob("*.py"))


def module_name(path):
    parts = path.relative_to(ROOT).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


QT_FREE = [
    module_name(each) for each in MODULES if "ui" not in each.relative_to(PACKAGE).parts and each.stem != "__main__"
]

BLOCK_QT = """
import sys
class Blocked:
    def find_spec(self, name, path=None, target=None):
        if name.split('.')[0] in {'PySide6', 'shiboken6'}:
            raise ImportError(name + ' is blocked')
sys.meta_path.insert(0, Blocked())
"""


def python(code, *arguments):
    return subprocess.run([sys.executable, "-c", code, *arguments], capture_output=True, text=True, check=False)


def test_everything_but_the_window_imports_with_qt_blocked():
    code = BLOCK_QT + "\n".join(f"import {name}" for name in QT_FREE)
    result = python(code)
    assert result.returncode == 0, result.stderr


@pytest.mark.parametrize(
    "arguments",
    [["check"], ["check", "--json"], ["cables", "--json"], ["cables", "--csv"], ["holes"], ["holes", "--json"]],
    ids=" ".join,
)
def test_commands_work_with_qt_blocked(arguments):
    code = BLOCK_QT + "from boardplan.__main__ import main\nraise SystemExit(main())"
    result = python(code, arguments[0], str(SAMPLES / "library-bus.json"), *arguments[1:])
    assert result.returncode == 0, result.stderr
    assert result.stdout


def test_pack_works_with_qt_blocked(tmp_path):
    code = BLOCK_QT + "from boardplan.__main__ import main\nraise SystemExit(main())"
    result = python(code, "pack", str(SAMPLES / "library-bus.json"), "--to", str(tmp_path / "pack"))
    assert result.returncode == 0, result.stderr
    assert (tmp_path / "pack" / "pack.json").is_file()


def test_help_starts_without_heavy_libraries():
    code = (
        "import sys; from boardplan.cli.commands import run_command; run_command(['help']);"
        "heavy = ('shapely', 'numpy', 'reportlab', 'pydantic', 'PySide6', 'ezdxf', 'xlsxwriter', 'pypdfium2');"
        "print([name for name in heavy if name in sys.modules])"
    )
    assert python(code).stdout.splitlines()[-1] == "[]"


@pytest.mark.parametrize(
    ("only", "needed"),
    [
        ("findings", {"reportlab"}),
        ("dxf", {"ezdxf", "reportlab"}),
        ("svg", {"reportlab"}),
        ("workbook", {"reportlab", "xlsxwriter"}),
        ("picture", {"pypdfium2", "reportlab"}),
    ],
)
def test_a_paper_loads_no_library_of_another(only, needed, tmp_path):
    """reportlab measures the words of every paper."""
    code = (
        "import sys; from boardplan.cli.commands import run_command; run_command(sys.argv[1:]);"
        "print(sorted({'ezdxf', 'xlsxwriter', 'pypdfium2', 'reportlab'} & set(sys.modules)))"
    )
    job, folder = str(SAMPLES / "library-bus.json"), str(tmp_path / "pack")
    told = python(code, "pack", job, "--to", folder, "--only", only)
    assert told.stdout.splitlines()[-1] == str(sorted(needed)), told.stderr


def test_opening_a_job_needs_no_library_that_writes_papers():
    code = (
        "import sys; from boardplan.editing.session import Session; from pathlib import Path;"
        "Session.open(Path(sys.argv[1]));"
        "print(sorted({'ezdxf', 'xlsxwriter', 'pypdfium2', 'reportlab'} & set(sys.modules)))"
    )
    assert python(code, str(SAMPLES / "library-bus.json")).stdout.strip() == "[]"


def test_packages_hold_nothing_but_a_docstring():
    for path in PACKAGE.rglob("__init__.py"):
        body = ast.parse(path.read_text()).body
        allowed = 2 if path.parent == PACKAGE else 1  # the version stands in the first
        assert len(body) <= allowed, path
        assert ast.get_docstring(ast.parse(path.read_text())), path


@pytest.mark.parametrize("path", MODULES, ids=module_name)
def test_modules_say_what_they_are_for_and_stay_small(path):
    text = path.read_text()
    assert ast.get_docstring(ast.parse(text)), "a module opens with what it is for"
    assert len(text.splitlines()) <= 450, "past about 300 lines ask whether two ideas live here; 450 is the end"


def test_no_file_of_a_pack_hangs_on_the_order_of_a_set(tmp_path):
    """Python orders sets anew in every process; these two orders once gave different DXF files."""
    code = "from boardplan.__main__ import main\nraise SystemExit(main())"
    job, written = str(SAMPLES / "honey-trailer.json"), []
    for seed in ("3", "4"):
        folder = tmp_path / seed
        own = {**os.environ, "PYTHONHASHSEED": seed}
        arguments = ("pack", job, "--to", str(folder), "--only", "dxf,svg,workbook,load-out,tests")
        subprocess.run([sys.executable, "-c", code, *arguments], capture_output=True, env=own, check=True)
        written.append({path.name: path.read_bytes() for path in folder.iterdir()})
    assert written[0] == written[1]
