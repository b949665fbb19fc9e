"""Sizes and names of files keep to the laws of CONTRIBUTING.md, and the guards bite on a planted offender."""

import ast
import re
import statistics
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
SOURCES = sorted((ROOT / "src").rglob("*.py"))
EVERY_PYTHON = sorted(p for top in ("src", "tests", "tools", "benchmarks") for p in (ROOT / top).rglob("*.py"))

MEDIAN_AT_MOST = 150
REASON_FROM = 400
NEVER_OVER = 800
REASON = re.compile(r"long because", re.IGNORECASE)
FORBIDDEN_NAMES = {"utils", "util", "helpers", "helper", "common", "misc", "manager", "managers"}


def lines(path: Path) -> int:
    return len(path.read_text(encoding="utf-8").splitlines())


def size_breaches(paths: list[Path]) -> list[str]:
    breaches = []
    for path in paths:
        count = lines(path)
        if count > NEVER_OVER:
            breaches.append(f"{path.name} has {count} lines, over {NEVER_OVER}")
        elif count > REASON_FROM:
            doc = ast.get_docstring(ast.parse(path.read_text(encoding="utf-8"))) or ""
            if not REASON.search(doc):
                breaches.append(f"{path.name} has {count} lines and its docstring does not say why it is long")
    return breaches


def name_breaches(paths: list[Path]) -> list[str]:
    return [str(p) for p in paths if FORBIDDEN_NAMES & set(p.with_suffix("").parts)]


def test_no_file_is_too_long() -> None:
    assert not size_breaches(EVERY_PYTHON)


def test_median_file_is_short() -> None:
    assert statistics.median(lines(p) for p in SOURCES) <= MEDIAN_AT_MOST


def test_no_module_is_named_for_nothing() -> None:
    assert not name_breaches([p.relative_to(ROOT) for p in EVERY_PYTHON])


@pytest.mark.parametrize(
    ("text", "breaches"),
    [
        ("x = 1\n" * 801, 1),
        ("x = 1\n" * 500, 1),
        ('"""Long because the table is printed so."""\n' + "x = 1\n" * 500, 0),
        ("x = 1\n" * 400, 0),
    ],
)
def test_the_size_guard_bites(tmp_path: Path, text: str, breaches: int) -> None:
    file = tmp_path / "planted.py"
    file.write_text(text)
    assert len(size_breaches([file])) == breaches


def test_the_name_guard_bites() -> None:
    assert name_breaches([Path("src/witnessmark/utils.py"), Path("src/witnessmark/helpers/x.py")]) != []
    assert name_breaches([Path("src/witnessmark/journal/fold.py")]) == []
