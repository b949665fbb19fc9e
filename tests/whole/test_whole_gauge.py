"""``witnessmark gauge``: lists, explains, answers, refuses, reads files, holds against limits; in words and as JSON."""

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from witnessmark.gauges import FAMILIES, gauges


def run(*words: str, status: int = 0, typed: str = "") -> subprocess.CompletedProcess[str]:
    result = subprocess.run(
        [sys.executable, "-m", "witnessmark", "gauge", *words], capture_output=True, text=True, check=False, input=typed
    )
    assert result.returncode == status, f"{words} ended with {result.returncode}:\n{result.stdout}\n{result.stderr}"
    assert "Traceback" not in result.stderr
    return result


def ask(*words: str, status: int = 0) -> dict[str, Any]:
    document = json.loads(run(*words, "--json", status=status).stdout)
    assert isinstance(document, dict)
    return document


EMC = ("wood-emc", "temperature=70F", "humidity=50%")


def test_the_list_names_every_gauge_under_its_family() -> None:
    text = run().stdout
    for title in FAMILIES.values():
        assert title in text
    for name in gauges():
        assert f"  {name} " in text
    assert {row["name"] for row in ask()["gauges"]} == set(gauges())


def test_help_says_how_each_input_is_measured() -> None:
    text = run("wood-emc", "--help").stdout
    for words in ("temperature of the air", "quarter of an hour", "temperature=70F", "Known error", "Never use it"):
        assert words in text


def test_an_answer_in_words_says_source_error_and_what_it_must_not_claim() -> None:
    text = run(*EMC).stdout
    assert text.startswith("Moisture content that wood comes to")
    for words in ("9.242 %", "either way", "Wood Handbook", "Never use this to claim", "Caution:"):
        assert words in text


def test_an_answer_as_json_is_one_document() -> None:
    document = ask(*EMC)
    assert document["value"] == pytest.approx(9.242, abs=0.001)
    assert document["unit"] == "%"
    assert json.loads(run("--json", *EMC).stdout) == document


def test_a_limit_given_decides_the_exit_status() -> None:
    assert ask(*EMC, "--at-most", "8%", "--says", "a flooring sheet", status=1)["verdict"]["outcome"] == "beyond"
    assert ask(*EMC, "--at-most", "9.5%")["verdict"]["outcome"] == "close"
    assert ask(*EMC, "--at-least", "5%", "--at-most", "12%")["verdict"]["outcome"] == "within"
    text = run(*EMC, "--at-most", "8%", "--says", "a flooring sheet", status=1).stdout
    assert "a flooring sheet" in text


@pytest.mark.parametrize(
    ("words", "number"),
    [
        (("wood-emm", "temperature=70F"), "WM001"),
        (("wood-emc", "temprature=70F", "humidity=50%"), "WM002"),
        (("wood-emc", "temperature=70F"), "WM003"),
        (("wood-emc", "temperature=5psi", "humidity=50%"), "WM004"),
        (("wood-emc", "temperature=70F", "humidity=150%"), "WM006"),
        (("wood-emc", "temperature=70", "humidity=50%"), "WM102"),
        ((*EMC, "--at-most", "8psi"), "WM104"),
        ((*EMC, "--criterion", "no-such-limit"), "WM913"),
    ],
)
def test_what_cannot_be_is_refused_with_its_right_form(words: tuple[str, ...], number: str) -> None:
    result = run(*words, status=2)
    assert number in result.stderr
    assert result.stdout == ""
    assert {p["number"] for p in ask(*words, status=2)["problems"]} == {number}
    if number in {"WM003", "WM004", "WM102"} and "--at-most" not in words:
        assert "such as" in result.stderr


def test_the_missing_unit_message_shows_the_right_form() -> None:
    assert "such as temperature=70F" in run("wood-emc", "temperature=70", "humidity=50%", status=2).stderr


def test_not_key_value_and_unreadable_files_are_wrong_use(tmp_path: Path) -> None:
    assert "KEY=VALUE" in run("wood-emc", "70F", status=2).stderr
    assert "cannot be read" in run("wood-emc", f"temperature=@{tmp_path}/none.csv", "humidity=50%", status=2).stderr
    (tmp_path / "t.txt").write_text("70F\n", encoding="utf-8")
    assert "9.242" in run("wood-emc", f"temperature=@{tmp_path}/t.txt", "humidity=50%").stdout
    assert "9.242" in run("wood-emc", "temperature=@-", "humidity=50%", typed="70F\n").stdout
    (tmp_path / "bytes").write_bytes(b"\xff\xfe\x00\x9f")
    run("wood-emc", f"temperature=@{tmp_path}/bytes", "humidity=50%", status=2)


def test_every_gauge_runs_its_example_from_the_command() -> None:
    """In one process: the command itself is run above."""
    from click.testing import CliRunner

    from witnessmark.cli.main import main

    for name, one in gauges().items():
        typed = [f"{key}={text}" for key, text in one.example.items()]
        result = CliRunner().invoke(main, ["gauge", name, *typed])
        assert result.exit_code in {0, 1}, f"{name}: {result.output}"
        assert one.title in result.output
        assert CliRunner().invoke(main, ["gauge", name, "--help"]).exit_code == 0
        document = json.loads(CliRunner().invoke(main, ["gauge", name, *typed, "--json"]).stdout)
        assert document["gauge"] == name
