"""The pages of docs/packs are those that the packs make, and name every table and key."""

from pathlib import Path

import pytest

from witnessmark.packs import pages, read
from witnessmark.packs.model import VERBS
from witnessmark.packs.terms import TABLES

DOCS = Path(__file__).resolve().parents[2] / "docs" / "packs"
WRITE = "write the pages anew: python -c 'from tests.packs.test_packs_pages import write; write()'"


def write() -> None:
    for name, text in pages(read()).items():
        (DOCS / name).write_text(text, encoding="utf-8")


@pytest.mark.parametrize("name", sorted(pages(read())))
def test_pages_are_current(name: str) -> None:
    assert (DOCS / name).read_text(encoding="utf-8") == pages(read())[name], WRITE


def test_no_page_is_left_over() -> None:
    assert {p.name for p in DOCS.glob("*.md")} == {"README.md", *pages(read())}


def test_every_table_and_verb_is_told() -> None:
    keys = (DOCS / "keys.md").read_text(encoding="utf-8")
    told = (DOCS / "README.md").read_text(encoding="utf-8")
    assert all(f"[[{table}]]" in keys for table in TABLES)
    assert all(f"`{verb}`" in told for verb in VERBS)


def test_every_duty_is_on_its_page() -> None:
    for book in read().rulebooks.values():
        text = (DOCS / f"{book.id}.md").read_text(encoding="utf-8")
        for duty in book.duties:
            assert f"### {duty.id} " in text
            assert duty.words in text
            assert duty.provenance.source in text
