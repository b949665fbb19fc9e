"""The import contracts hold, and each of them bites when a breach is planted."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
SOURCE = ROOT / "src" / "witnessmark"
LINT_IMPORTS = Path(sys.executable).with_name("lint-imports")


def lint(tree: Path) -> subprocess.CompletedProcess[str]:
    # import-linter finds the package on sys.path: a copy must come before the installed one.
    return subprocess.run(
        [str(LINT_IMPORTS), "--no-cache", "--config", str(tree / "pyproject.toml")],
        cwd=tree / "src",
        env={"PYTHONPATH": str(tree / "src"), "PATH": "/usr/bin:/bin"},
        capture_output=True,
        text=True,
        check=False,
    )


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    package = tmp_path / "src" / "witnessmark"
    for file in SOURCE.rglob("*.py"):
        target = package / file.relative_to(SOURCE)
        target.parent.mkdir(parents=True, exist_ok=True)
        shutil.copy(file, target)
    return tmp_path


def test_contracts_hold(copy: Path) -> None:
    result = lint(copy)
    assert result.returncode == 0, result.stdout


BREACHES = {
    "imports go down": ("units/breach.py", "import witnessmark.journal.entry\n"),
    "siblings are independent": ("packs/breach.py", "import witnessmark.journal.entry\n"),
    "views know no judging": ("views/breach.py", "import witnessmark.judging.model\n"),
    "listening knows no report": ("listening/breach.py", "import witnessmark.report\n"),
    "nothing outside the order": ("strays/__init__.py", '"""A package that no layer names."""\n'),
    "only assembly touches stores": ("cli/breach.py", "import witnessmark.stores\n"),
    "report does not touch stores": ("demo/breach.py", "import witnessmark.stores\n"),
    "browser-safe journal": ("journal/breach.py", "import sqlite3\n"),
    "browser-safe judging": ("judging/breach.py", "import PIL\n"),
    "browser-safe listening": ("listening/breach.py", "import threading\n"),
}


@pytest.mark.parametrize("breach", BREACHES)
def test_a_planted_breach_is_caught(copy: Path, breach: str) -> None:
    file, text = BREACHES[breach]
    target = copy / "src" / "witnessmark" / file
    target.parent.mkdir(exist_ok=True)
    target.write_text(text)
    result = lint(copy)
    assert result.returncode != 0, f"no contract noticed {file}: {text}"
