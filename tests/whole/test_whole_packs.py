"""``witnessmark packs``: situations are tried, a folder of one's own begins sound, its changes are listed."""

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from witnessmark.assembly.situation import read_situation
from witnessmark.assembly.situations import run_situations, try_situation
from witnessmark.packs import read, scenario_texts
from witnessmark.problems import Refusal


def run(*words: str, status: int = 0) -> subprocess.CompletedProcess[str]:
    result = subprocess.run(
        [sys.executable, "-m", "witnessmark", "packs", *words], capture_output=True, text=True, check=False
    )
    assert result.returncode == status, f"{words} ended with {result.returncode}:\n{result.stdout}\n{result.stderr}"
    assert "Traceback" not in result.stderr
    return result


def ask(*words: str, status: int = 0) -> dict[str, Any]:
    document = json.loads(run(*words, "--json", status=status).stdout)
    assert isinstance(document, dict)
    return document


def test_every_situation_comes_out_as_expected() -> None:
    tried, problems = run_situations()
    assert problems == []
    assert tried == len(scenario_texts())


def test_a_wrong_expectation_and_a_wrong_file_are_told(tmp_path: Path) -> None:
    shown = tmp_path / "own"
    run("start", str(shown), "--firm", 'A "firm" of ours')
    file = shown / "scenarios" / "slow-drain.toml"
    text = file.read_text(encoding="utf-8")
    file.write_text(text.replace('write_up = ["k.sink"]', "write_up = []"), encoding="utf-8")
    told = run("check", "--overlay", str(shown), status=1)
    assert "WM917" in told.stderr
    assert "came ['k.sink']" in told.stderr
    for old, new in (("[house]", "[hose]"), ('kind = "x"', ""), ("09:10", "9 o'clock"), ("saw", "seen"),
                     ('"sink at kitchen"', '"snk at kitchen"'), ("sink.our-slow-drain", "sink.none")):  # fmt: skip
        file.write_text(text.replace(old, new, 1), encoding="utf-8")
        assert (old not in text) or run("check", "--overlay", str(shown), status=1).stderr


def test_a_folder_of_ones_own_begins_sound_and_is_never_overwritten(tmp_path: Path) -> None:
    own = tmp_path / "own"
    written = ask("start", str(own))["files"]
    assert all(Path(file).is_file() for file in written)
    assert ask("check", "--overlay", str(own))["sound"] is True
    rows = {(row["table"], row["added"]) for row in ask("changes", "--overlay", str(own))["changes"]}
    assert rows == {("condition", True), ("procedure", True), ("translation", True)}
    before = {file: Path(file).read_bytes() for file in written}
    assert "WM918" in run("start", str(own), status=2).stderr
    assert {file: Path(file).read_bytes() for file in written} == before


def test_a_corrected_duty_wins_wherever_it_is_shown(tmp_path: Path) -> None:
    duty = read().rulebooks["us.wa.308-408c"].duties[0]
    row = (
        'pack = "own.law"\nversion = "1"\nsource = "the text, read today"\ntag = "seen"\nin_force = "2026-01-01"\n'
        f'corrects = "us.wa.308-408c"\n[[duty]]\nid = "{duty.id}"\nsection = "{duty.section}"\nsystem = "{duty.system}"\n'
        f'verb = "{duty.verb}"\nmodality = "{duty.modality}"\nwords = "as the law now says"\n'
    )
    (tmp_path / "law.toml").write_text(row, encoding="utf-8")
    (change,) = ask("changes", "--overlay", str(tmp_path))["changes"]
    assert (change["id"], change["tag"]) == (duty.id, "seen")
    shown = ask("show", duty.id, "--overlay", str(tmp_path))["found"][0]
    assert shown["row"]["words"] == "as the law now says"
    assert shown["stands_in_for"][0]["row"]["words"] == duty.words


def test_a_situation_is_judged_as_the_visit_would_be() -> None:
    text = b"""
title = "an oven left on"
rulebook = "us.wa.308-408c"
date = "2026-05-04"
[house]
places = { k = "kitchen" }
things = { "k.range" = "range at k" }
[[act]]
at = "09:10"
act = "ran"
thing = "k.range"
part = "oven"
what = "set to bake"
left = "on"
[expect]
still_on = ["k.range"]
make_sure = []
"""
    packs = read()
    assert try_situation(read_situation("x", text, packs), packs) == []
    (wrong,) = try_situation(read_situation("x", text.replace(b'["k.range"]', b"[]"), packs), packs)
    assert wrong.number == "WM917"


GOOD = (
    'title = "t"\nrulebook = "us.wa.308-408c"\ndate = "2026-05-04"\n[house]\nplaces = { k = "kitchen" }\n'
    'things = { "k.sink" = "sink at k" }\n[[act]]\nat = "09:10"\nact = "saw"\nthing = "k.sink"\nwhat = "drips"\n'
    'state = "adverse"\n[expect]\nwrite_up = ["k.sink"]\n[expect.deadline]\ncompleted = "2026-05-04"\ndue = ""\n'
)


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ('title = "t"', "title = 5"), ("[house]\n", "[[house]]\n"), ('{ k = "kitchen" }', '["kitchen"]'),
        ('"sink at k"', "5"), ('"sink at k"', '"sink at z"'), ('"09:10"', "9"), ('act = "saw"\n', ""), ('"saw"', '"seen"'),
        ('"saw"', "[1]"), ('thing = "k.sink"', "thing = 7"), ('["k.sink"]', "5"), ('["k.sink"]', "[5]"),
        ('"2026-05-04"\ndue', '"some day"\ndue'), ('due = ""', 'due = "soon"'), ('due = ""', 'dew = ""'),
        ('date = "2026-05-04"', 'date = "May"'), ("write_up", "writeup"), ("[expect]", "[expected]"), ('"us.wa.308-408c"', '"us.zz"'),
        ('state = "adverse"', 'state = "adverse"\ncondition = ["x"]'), ("title", "\x00"),
    ],
)  # fmt: skip
def test_a_situation_that_is_no_situation_is_refused_by_number(old: str, new: str) -> None:
    packs = read()
    assert try_situation(read_situation("x", GOOD.encode(), packs), packs) == []
    assert old in GOOD
    with pytest.raises(Refusal) as refused:
        read_situation("x", GOOD.replace(old, new, 1).encode(), packs)
    assert {problem.number for problem in refused.value.problems} <= {"WM902", "WM904", "WM916"}
