"""Words that must not stand in the tree: addresses of registries, paths of a machine, swallowed failures."""

import re
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]

# Spelt in pieces, so that this file does not hold what it forbids.
FORBIDDEN = {
    "a registry's host": re.compile(
        "|".join(re.escape(a + b) for a, b in [("pypi", ".org"), ("pythonhosted", ".org"), ("registry.npm", "js"), ("deb.", "debian")])
    ),
    "a path of a machine": re.compile("/" + "(?:work|root|farm)" + "/[a-z.]"),
    "a swallowed failure": re.compile(r"\|\|" + r" *true\b"),
    "a skipped guard": re.compile(r"--" + r"no-verify\b"),
}  # fmt: skip


def tracked() -> list[Path]:
    listing = subprocess.run(["git", "ls-files", "-z"], cwd=ROOT, capture_output=True, check=True).stdout.decode()
    return [ROOT / name for name in listing.split("\0") if name]


def offences(name: str, text: str) -> list[str]:
    return [
        f"{name}:{number}: {what}: {line.strip()[:80]}"
        for number, line in enumerate(text.splitlines(), 1)
        for what, pattern in FORBIDDEN.items()
        if pattern.search(line)
    ]


def test_no_forbidden_words() -> None:
    found = []
    for path in tracked():
        if not path.is_file():
            continue
        try:
            text = path.read_text(encoding="utf-8")
        except UnicodeDecodeError:
            continue
        found += offences(str(path.relative_to(ROOT)), text)
    assert not found, "\n".join(found)


@pytest.mark.parametrize(
    "line", ["https://files.pythonhosted" + ".org/x", "cd /work" + "/main", "make test ||" + " true"]
)
def test_the_guard_bites(line: str) -> None:
    assert offences("planted", line)
