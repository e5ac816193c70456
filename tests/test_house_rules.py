"""House rules that no linter knows: a table of patterns and the advice for whoever trips over one."""

import re
from pathlib import Path

import pytest

import boardplan

ROOT = Path(boardplan.__file__).parent.parent
CODE = sorted((ROOT / "boardplan").rglob("*.py"))
TEXTS = [*CODE, *sorted((ROOT / "assets").rglob("*.md")), ROOT / "README.md", ROOT / "DEVELOPERS.md"]

RULES = (
    (r"\bcompliant\b", TEXTS, "say 'no finding under rule set X, edition Y'"),
    (r"\bTODO\b|\bFIXME\b|\bXXX\b", CODE, "finish it, or write it in the change list"),
    (r"\bprint\(", CODE, "write to sys.stdout in the command line, nowhere else"),
    (r"from (\.|\.\.)\w* import", CODE, "absolute imports"),
    (r"\btr\(\s*f[\"']", CODE, "words for translation hold no f-string: it would never match"),
    (r"\bfootprint\b|\bschematic\b|\bnetlist\b|\bratsnest\b", TEXTS, "use the installer's words"),
)


@pytest.mark.parametrize(("pattern", "files", "advice"), RULES, ids=[rule[0] for rule in RULES])
def test_house_rule(pattern, files, advice):
    hits = [
        f"{path.relative_to(ROOT)}:{number}: {line.strip()}"
        for path in files
        for number, line in enumerate(path.read_text().splitlines(), start=1)
        if re.search(pattern, line)
    ]
    assert not hits, f"{advice}: {hits}"


def test_top_level_holds_just_what_belongs_there():
    allowed = {"README.md", "DEVELOPERS.md", "pyproject.toml", "boardplan", "assets", "tests", "sample_boards"}
    made = {"job-pack", "dist", "build"}
    found = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")} - made
    assert found == allowed
