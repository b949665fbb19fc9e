"""Docs cannot drift: generated pages say what the code says now, links lead somewhere, commands in the README work."""

import os
import re
import shlex
import subprocess
import sys
from pathlib import Path

import pytest

from generated_pages import messages, pages
from witnessmark import packs
from witnessmark.cli.main import main
from witnessmark.journal.acts import ACTS

ROOT = Path(__file__).resolve().parents[2]
DOCS = ROOT / "docs"
PAGES = pages()
LINK = re.compile(r"\]\((?!https?:|#|mailto:)([^)#\s]+)")


@pytest.mark.parametrize("name", PAGES)
def test_a_generated_page_is_current(name: str) -> None:
    path = DOCS / name
    assert path.exists(), f"docs/{name} is missing; run: make docs"
    assert path.read_text(encoding="utf-8") == PAGES[name], f"docs/{name} has drifted; run: make docs"


def test_everything_a_user_meets_is_in_the_docs() -> None:
    commands, acts, problems = PAGES["commands.md"], PAGES["acts.md"], PAGES["problems.md"]
    assert all(f"## witnessmark {name}\n" in commands for name in main.commands)
    assert all(f"## {act} (" in acts for act in ACTS)
    assert all(message.number in problems for rows in messages().values() for message in rows)
    assert all(f"`{file.id}`" in PAGES["pack-files.md"] for file in packs.read().files)


def test_settings_are_in_the_docs() -> None:
    sources = "\n".join(path.read_text(encoding="utf-8") for path in (ROOT / "src").rglob("*.py"))
    settings = set(re.findall(r"\bWITNESSMARK_[A-Z]+\b", sources)) - {"WITNESSMARK_COMPLETE"}
    written = "\n".join(path.read_text(encoding="utf-8") for path in DOCS.rglob("*.md"))
    assert {name for name in settings if name not in written} == set()


def test_links_lead_somewhere() -> None:
    broken = [
        f"{page.relative_to(ROOT)} -> {target}"
        for page in [*ROOT.glob("*.md"), *DOCS.rglob("*.md")]
        for target in LINK.findall(page.read_text(encoding="utf-8"))
        if not (page.parent / target).exists()
    ]
    assert broken == []


def test_decisions_are_listed() -> None:
    listed = (DOCS / "decisions" / "README.md").read_text(encoding="utf-8")
    missing = [page.name for page in (DOCS / "decisions").glob("[0-9]*.md") if page.name not in listed]
    assert missing == []


def test_the_commands_of_the_readme_do_what_it_says(tmp_path: Path) -> None:
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    blocks = re.findall(r"```sh\n(.*?)```", text, re.DOTALL)
    lines = [line for block in blocks for line in block.splitlines() if line.startswith("witnessmark ")]
    assert len(lines) >= 5
    for line in lines:
        words = [sys.executable, "-m", *shlex.split(line, comments=True)]
        result = subprocess.run(words, cwd=tmp_path, capture_output=True, text=True, check=False, env=os.environ)
        expected = 1 if " standing " in line else 0  # the text says why the standing of that job ends with 1
        assert result.returncode == expected, f"{line}\n{result.stdout}\n{result.stderr}"
