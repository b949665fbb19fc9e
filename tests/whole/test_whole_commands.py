"""The commands on real folders: what is asked for is done, what goes wrong is numbered, and stored data stays as it was."""

import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

COMMAND = [sys.executable, "-m", "witnessmark"]


def run(*words: str, status: int = 0, **environment: str) -> subprocess.CompletedProcess[str]:
    result = subprocess.run(
        [*COMMAND, *words], capture_output=True, text=True, check=False, env={**os.environ, **environment}
    )
    assert result.returncode == status, f"{words} ended with {result.returncode}:\n{result.stdout}\n{result.stderr}"
    assert "Traceback" not in result.stderr
    return result


def ask(*words: str, status: int = 0) -> dict[str, Any]:
    document = json.loads(run(*words, "--json", status=status).stdout)
    assert isinstance(document, dict)
    return document


@pytest.fixture
def job(tmp_path: Path) -> str:
    folder = tmp_path / "job"
    run("new", str(folder), "--address", "1 Invented Road", "--inspector", "N. N.", "--rulebook", "us.wa.308-408c",
        "--year-built", "1968", "--date", "2026-10-14")  # fmt: skip
    return str(folder)


def tree(folder: str) -> dict[str, bytes]:
    return {str(p.relative_to(folder)): p.read_bytes() for p in Path(folder).rglob("*") if p.is_file()}


AT = "at=2026-10-14T09:30:00-07:00"


def test_what_is_left_on_is_counted_and_closed(job: str) -> None:
    run(
        "note", job, "ran", "component=kitchen.range", "kind=range", "part=oven", "what=oven set to bake", "left=on", AT
    )
    stands = ask("standing", job, status=1)
    assert [run_["component"] for run_ in stands["running"]] == ["kitchen.range"]
    assert any(end["sort"] == "still on" for end in stands["loose_ends"])
    run("note", job, "stopped", "component=kitchen.range", "part=oven", "at=2026-10-14T10:00:00-07:00")
    stands = ask("standing", job, status=1)
    assert stands["running"] == []
    assert not any(end["sort"] == "still on" for end in stands["loose_ends"])


def test_an_amendment_keeps_what_was_written(job: str) -> None:
    written = ask("note", job, "read", "measure=water-pressure", "value=88psi", "kind=hose-bib", AT)["entries"][0]
    run("note", job, "amended", f"of={written[-8:]}", "why=read the dial again", "value=78psi")
    assert "88" in (Path(job) / "journal.jsonl").read_text()
    verdicts = [row["verdict"] for row in ask("standing", job, status=1)["readings"]]
    assert "beyond" not in verdicts


def test_a_reading_beyond_its_criterion_must_be_written_up(job: str) -> None:
    # 80 psi: the highest static pressure of UPC 608.2 and IRC P2903.3.1, as cited in the criterion.
    run("note", job, "read", "measure=water-pressure", "value=88psi", "kind=hose-bib", "component=north.hose-bib", AT)
    stands = ask("standing", job, status=1)
    beyond = [row for row in stands["readings"] if row["verdict"] == "beyond"]
    assert beyond
    assert "80" in beyond[0]["words"]
    assert any(end["sort"] == "write up" for end in stands["loose_ends"])


@pytest.mark.parametrize(
    ("words", "number"),
    [
        (("note", "JOB", "flew"), "WM902"),
        (("note", "JOB", "saw", "colour=red"), "WM903"),
        (("note", "JOB", "saw", "sure=perhaps"), "WM904"),
        (("note", "JOB", "accepted", "of=deadbeef"), "WM905"),
        (("note", "JOB", "saw", "kind=no-such-kind"), "WM913"),
        (("note", "JOB", "read", "measure=water-pressure", "value=88"), "WM102"),
        (("note", "JOB", "saw", "what=x", "at=yesterday"), "WM2"),
        (("listen", "MISSING.vtt"), "WM6"),
        (("look", "MISSING.jpg"), "WM7"),
        (("standing", "NOWHERE"), "WM301"),
        (("verify", "NOWHERE"), "WM301"),
        (("report", "NOWHERE"), "WM301"),
        (("report", "JOB"), "WM909"),
        (("new", "JOB"), "WM344"),
        (("new", "OTHER", "--rulebook", "us.xx"), "WM913"),
        (("new", "OTHER", "--date", "14/10/2026"), "WM912"),
        (("packs", "show", "no-such-row"), "WM415"),
    ],
)
def test_wrong_use_is_numbered_and_changes_nothing(
    job: str, tmp_path: Path, words: tuple[str, ...], number: str
) -> None:
    before = tree(job)
    names = {"JOB": job, "NOWHERE": str(tmp_path / "nowhere"), "OTHER": str(tmp_path / "other")}
    result = run(*(names.get(word, word) for word in words), status=2)
    assert number in result.stderr
    assert "What to do:" in result.stderr
    assert tree(job) == before


def test_json_is_one_document_also_when_refused(job: str) -> None:
    document = ask("note", job, "flew", status=2)
    assert document["problems"][0]["number"] == "WM902"


def test_a_table_of_readings_is_taken_whole_or_not_at_all(job: str, tmp_path: Path) -> None:
    table = tmp_path / "readings.csv"
    head = "at,place,component,kind,measure,value,unit\n"
    good = "2026-10-14T09:30:00-07:00,kitchen,kitchen.range,range,oven-temperature,362,degF\n"
    table.write_text(head + good + good.replace("362", "hot"))
    before = tree(job)
    result = run("note", job, "--from", str(table), status=2)
    assert "WM907" in result.stderr
    assert ":3" in result.stderr
    assert tree(job) == before
    table.write_text(head + good)
    assert len(ask("note", job, "--from", str(table))["entries"]) == 3  # the place, the component, the reading


@pytest.mark.parametrize("table", [b"", b"a,b\n1,2\n", b"at,place\n\xff\xfe", b'at,"x\n'])
def test_garbage_tables_are_refused(job: str, tmp_path: Path, table: bytes) -> None:
    path = tmp_path / "garbage.csv"
    path.write_bytes(table)
    before = tree(job)
    assert "WM907" in run("note", job, "--from", str(path), status=2).stderr
    assert tree(job) == before


def test_a_changed_byte_is_found_and_named(job: str) -> None:
    entry = ask("note", job, "saw", "what=loose handrail", "state=adverse", AT)["entries"][0]
    run("verify", job)
    journal = Path(job) / "journal.jsonl"
    journal.write_bytes(journal.read_bytes().replace(b"loose", b"solid"))
    result = run("verify", job, status=1)
    assert "journal.jsonl" in result.stderr
    assert entry in result.stderr or "line 1" in result.stderr


def test_issuing_is_refused_while_ends_are_loose(job: str, tmp_path: Path) -> None:
    run("note", job, "arrived", AT)
    result = run("report", job, "--issue", "--key", str(tmp_path / "key.pem"), status=2)
    assert "WM908" in result.stderr
    assert not (tmp_path / "key.pem").exists()


def test_a_draft_report_says_so(job: str) -> None:
    run("note", job, "arrived", AT)
    made = ask("report", job, "--date", "2026-10-14T20:00:00-07:00", status=1)
    assert made["draft"] is True
    assert "Draft: not issued" in Path(made["html"]).read_text(encoding="utf-8")
    assert Path(made["pdf"]).read_bytes().startswith(b"%PDF")


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_completion_is_printed(shell: str) -> None:
    assert "_WITNESSMARK_COMPLETE" in run("shell", shell).stdout


def test_packs_are_sound_and_shown() -> None:
    assert ask("packs", "check")["sound"] is True
    shown = run("packs", "show", "WA-014").stdout
    assert "308-408C-070" in shown
    assert "seen" in shown


def test_an_overlay_wins_and_says_so(tmp_path: Path) -> None:
    overlay = tmp_path / "firm"
    overlay.mkdir()
    (overlay / "own.toml").write_text(
        'pack = "firm"\nversion = "1"\nsource = "our meter\'s manual"\ntag = "seen"\nin_force = "2026-01-01"\n'
        '[[trade]]\nid = "electrician"\nwords = "an electrician licensed in this state"\n'
    )
    shown = run("packs", "show", "electrician", "--overlay", str(overlay)).stdout
    assert "licensed in this state" in shown
    (overlay / "own.toml").write_text("pack = \n")
    assert "WM4" in run("packs", "check", "--overlay", str(overlay), status=1).stderr


def test_help_teaches() -> None:
    for words in ((), ("note",), ("listen",), ("standing",), ("report",)):
        text = run(*words, "--help").stdout
        assert len(text.split()) > 60


def test_a_broken_pipe_is_no_failure_of_ours(job: str) -> None:
    run("note", job, "arrived", AT)
    piped = subprocess.run(  # noqa: S602 - a pipe is what is tested
        f"{sys.executable} -m witnessmark packs | head -n 1",
        shell=True,
        capture_output=True,
        text=True,
        check=False,
    )
    assert "Traceback" not in piped.stderr


def test_an_entry_from_the_future_is_told_and_kept(job: str) -> None:
    told = run("note", job, "saw", "what=loose handrail", "at=2131-01-01T00:00:00-07:00")
    assert "WM224" in told.stderr
    result = run("verify", job, status=1)
    assert "WM224" in result.stderr
    assert b"2131-01-01" in (Path(job) / "journal.jsonl").read_bytes()


def test_what_the_law_wants_in_the_report_is_told(tmp_path: Path) -> None:
    folder = str(tmp_path / "texas")
    run("new", folder, "--address", "1 Invented Road", "--inspector", "N. N.", "--rulebook", "us.tx.535-r",
        "--year-built", "1968", "--date", "2026-05-04")  # fmt: skip
    run("note", folder, "placed", "place=attic", "name=attic", "sort=attic", "at=2026-05-04T09:00:00-05:00")
    run(
        "note",
        folder,
        "skipped",
        "place=attic",
        "what=the attic",
        "reason=stored-items",
        "at=2026-05-04T09:10:00-05:00",
    )
    run("note", folder, "left", "at=2026-05-04T12:00:00-05:00")
    told = ask("standing", folder, "--law", "--paid", "2026-05-07", status=1)["law"]
    assert told["due"]["day"] == "2026-05-09"
    (left_out,) = told["departures"]
    assert left_out["what"] == "the attic"
    assert left_out["client_told"] is False
    marks = {f"{row['group'].partition('.')[0]}.{row['number']}": row["marks"] for row in told["form"]["items"]}
    assert marks["I.D"] == ["NI"]
    assert marks["I.A"] == []
    assert told["form"]["provenance"] == "memory"
    words = run("standing", folder, "--law", status=1).stdout
    assert "What us.tx.535-r wants in the report" in words
    assert "Left out: the attic" in words
    assert "I.A not told yet; " in words
    assert "I.D NI; " in words
    assert "not known yet" in words
    under = ask("standing", folder, "--under", "us.ny.197", "--under", "baseline", status=1)["under"]
    assert set(under) == {"us.ny.197", "baseline"}
    assert "WM913" in run("standing", folder, "--under", "us.zz", status=2).stderr


def test_a_draft_tells_its_value_once_and_in_the_units_of_a_report(tmp_path: Path) -> None:
    talk = tmp_path / "talk.txt"
    talk.write_text(
        "[0:10] the stair handrail is thirty three and a half inches high\n[0:20] outlets three of them are dead\n"
        "[0:30] furnace was made in nineteen ninety eight\n",
        encoding="utf-8",
    )
    told = run("listen", str(talk)).stdout
    assert "handrail height 33 1/2 in\n" in told
    assert "no power 3 (adverse)\n" in told
    assert "made 1998\n" in told
