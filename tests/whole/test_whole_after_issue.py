"""After a report is issued: delivered, opened, translated, amended by another edition, looked at again."""

from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest


def run(*words: str, status: int = 0) -> str:
    told = subprocess.run([sys.executable, "-m", "witnessmark", *words], capture_output=True, text=True, check=False)
    assert told.returncode == status, f"{words}: {told.returncode}\n{told.stdout}\n{told.stderr}"
    return told.stdout


def ask(*words: str, status: int = 0) -> dict[str, Any]:
    document = json.loads(run(*words, "--json", status=status))
    assert isinstance(document, dict)
    return document


def data(job: str, folder: str = "report") -> dict[str, Any]:
    document = json.loads((Path(job) / folder / "report.json").read_text(encoding="utf-8"))
    assert isinstance(document, dict)
    return document


#: An invented law with one duty, so that few entries meet it.
LAW = """
pack = "rulebooks.invented"
version = "1"
source = "invented for this test"
tag = "common practice, no source"
in_force = "2020-01-01"

[rulebook]
id = "xx.1"
name = "Invented law"
jurisdiction = "xx"
citation = "XX 1"
effective_from = "2020-01-01"
verified = "invented"

[[duty]]
id = "XX-1"
section = "1(a)"
system = "appliances"
verb = "inspect"
modality = "shall"
words = "inspect the range"
source = "invented for this test"
tag = "common practice, no source"
extent = "all"
subjects = [{ words = "range", kinds = ["range"] }]
"""
AT = "at=2026-10-14T09:30:00-07:00"


@pytest.fixture(scope="module")
def issued(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[str, str, str, Path]]:
    """An issued job: its folder, the finding, the seal, and the key."""
    folder = tmp_path_factory.mktemp("after")
    job, key = str(folder / "job"), folder / "key.pem"
    (folder / "packs").mkdir()
    (folder / "packs" / "law.toml").write_text(LAW, encoding="utf-8")
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("WITNESSMARK_PACKS", str(folder / "packs"))
        yield _issue(job, key)


def _issue(job: str, key: Path) -> tuple[str, str, str, Path]:
    run(
        "new", job, "--address", "1 Invented Road", "--inspector", "N. N.", "--date", "2026-10-14", "--rulebook", "xx.1"
    )
    saw = ask("note", job, "saw", "kind=range", "place=kitchen", "what=it tips", "state=adverse", AT)["entries"][0]
    finding = ask(
        "note", job, "found", "title=Range tips", "seen=it tips", "do=fasten it", "by=carpenter", "stake=people",
        "urgency=now", f"rests_on={saw}", "place=kitchen", AT,
    )["entries"][0]  # fmt: skip
    made = ask("report", job, "--issue", "--key", str(key), "--date", "2026-10-14T18:00:00-07:00")
    assert made["edition"] == 1
    entries = [json.loads(line) for line in (Path(job) / "journal.jsonl").read_text(encoding="utf-8").splitlines()]
    (seal,) = [entry["id"] for entry in entries if entry["act"] == "sealed"]
    return job, finding, seal, key


def a_delivery_leaves_the_report_issued(issued: tuple[str, str, str, Path]) -> None:
    job, _, seal, _ = issued
    before = data(job)
    run("note", job, "settled", f"of={seal}", "state=delivered", "with_whom=the client", "how=by e-mail",
        "at=2026-10-14T19:00:00-07:00")  # fmt: skip
    made = ask("report", job)
    assert made["draft"] is False
    assert made["edition"] == 1
    assert data(job) == before, "the data whose hash was sealed are the same"
    assert ask("verify", job)["sound"] is True


def a_translation_stands_beside_it_and_cannot_be_issued(issued: tuple[str, str, str, Path]) -> None:
    job, _, _, key = issued
    before = data(job)
    ask("report", job, "--language", "es")
    assert data(job, "report-es")["language"] == "es"
    assert data(job) == before
    run("report", job, "--issue", "--language", "es", "--key", str(key), status=2)


def an_amended_finding_makes_another_edition_that_says_what_changed(issued: tuple[str, str, str, Path]) -> None:
    job, finding, _, key = issued
    run("note", job, "amended", f"of={finding}", "why=the bracket was found behind it", "title=Bracket not engaged")
    assert ask("report", job)["draft"] is True, "what is not sealed yet is a draft"
    run("report", job, "--issue", "--key", str(key), status=2)  # a second edition needs its reason
    made = ask("report", job, "--issue", "--key", str(key), "--why", "put right")
    assert made["edition"] == 2
    (edition,) = data(job)["editions"]
    assert edition["why"] == "Put right."
    assert any("The bracket was found behind it." in change["text"] for change in edition["changes"])
    assert any("was delivered" in row["text"] for row in data(job)["deliveries"])
    assert ask("verify", job)["sound"] is True


def a_second_look_answers_the_finding(issued: tuple[str, str, str, Path]) -> None:
    job, finding, _, key = issued
    run("note", job, "settled", f"of={finding}", "state=repaired", "how=pulled by hand, it holds",
        "at=2026-11-20T10:00:00-08:00")  # fmt: skip
    ask("report", job, "--issue", "--key", str(key), "--why", "the range was looked at again")
    (row,) = data(job)["answered"]
    assert (row["answer"], row["says"]) == ("repaired", "Pulled by hand, it holds.")
    assert "November 20, 2026" in row["clock"]


def test_what_becomes_of_a_report_after_it_is_issued(issued: tuple[str, str, str, Path]) -> None:
    # One after another: each step goes on from the one before.
    a_delivery_leaves_the_report_issued(issued)
    a_translation_stands_beside_it_and_cannot_be_issued(issued)
    an_amended_finding_makes_another_edition_that_says_what_changed(issued)
    a_second_look_answers_the_finding(issued)
