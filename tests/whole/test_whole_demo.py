"""The demo, end to end: raw inputs in, a standing with loose ends, a sealed and verified report out."""

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

pytestmark = pytest.mark.xdist_group("demo")


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Any]:
    folder = tmp_path_factory.mktemp("demo") / "job"
    command = [sys.executable, "-m", "witnessmark", "demo", str(folder), "--json"]
    result = subprocess.run(command, capture_output=True, text=True, check=False)
    assert result.returncode == 0, result.stderr
    document: dict[str, Any] = json.loads(result.stdout)
    return document


def entries(built: dict[str, Any]) -> list[dict[str, Any]]:
    return [json.loads(line) for line in (Path(built["folder"]) / "journal.jsonl").read_bytes().splitlines()]


def test_the_raw_inputs_are_as_large_as_a_visit(built: dict[str, Any]) -> None:
    acts = [entry["act"] for entry in entries(built)]
    media = [entry for entry in entries(built) if entry["act"] == "took"]
    assert acts.count("read") >= 40
    assert sum(entry["body"].get("sort", "photo") == "photo" for entry in media) >= 30
    assert sum(entry["body"].get("sort") == "thermal" for entry in media) == 4


def test_ends_were_loose_on_leaving_and_every_sort_was_shown(built: dict[str, Any]) -> None:
    assert {"still on", "make sure", "write up", "name it", "say why"} <= set(built["on_leaving"])
    assert built["on_leaving"]["still on"] >= 2


def test_every_duty_is_met_excused_or_not_asked(built: dict[str, Any]) -> None:
    assert "open" not in built["duties"]
    assert built["duties"]["met"] >= 30


def test_the_report_is_issued_and_says_that_all_is_invented(built: dict[str, Any]) -> None:
    assert built["draft"] is False
    html = Path(built["html"]).read_text(encoding="utf-8")
    assert "Draft: not issued" not in html
    assert "Invented for demonstration" in html
    pages = PdfReader(built["pdf"]).pages
    assert "Quillback Lane" in pages[0].extract_text()
    assert all("Invented for demonstration" in page.extract_text() for page in pages[:5])


def test_the_sealed_job_verifies_and_one_changed_photo_is_named(built: dict[str, Any]) -> None:
    verify = [sys.executable, "-m", "witnessmark", "verify", built["folder"], "--json"]
    assert subprocess.run(verify, capture_output=True, check=False).returncode == 0
    photo = min((Path(built["folder"]) / "media").rglob("*.jpg"))
    original = photo.read_bytes()
    photo.chmod(0o644)
    try:
        photo.write_bytes(original[:-1] + bytes([original[-1] ^ 1]))
        result = subprocess.run(verify, capture_output=True, text=True, check=False)
        assert result.returncode == 1
        assert photo.name in result.stderr
    finally:
        photo.write_bytes(original)


@pytest.mark.parametrize(
    ("picture", "words"),
    [
        ("p02.jpg", "oven"), ("p05.jpg", "soil"), ("p09.jpg", "ledger"), ("p16.jpg", "trap"), ("p23.jpg", "ceiling"),
        ("p28.jpg", "too small"), ("p32.jpg", "breaker lug"), ("p35.jpg", "duct"), ("t04.tif", "warm"),
    ],
)  # fmt: skip
def test_a_picture_is_tied_to_what_was_said_of_it(built: dict[str, Any], picture: str, words: str) -> None:
    record = {entry["id"]: entry for entry in entries(built)}
    took = next(e for e in record.values() if e["act"] == "took" and e["body"]["name"] == picture)
    assert words in record[took["body"]["speaks_of"][0]]["source"]["words"]


def test_a_tie_by_time_never_says_what_a_picture_shows(built: dict[str, Any]) -> None:
    assert all("shows" not in entry["body"] for entry in entries(built) if entry["act"] == "took")


def test_a_folder_that_is_no_demo_is_not_replaced(tmp_path: Path) -> None:
    (tmp_path / "letters.txt").write_text("keep me")
    command = [sys.executable, "-m", "witnessmark", "demo", str(tmp_path), "--replace"]
    result = subprocess.run(command, capture_output=True, text=True, check=False)
    assert result.returncode == 2
    assert "WM920" in result.stderr
    assert (tmp_path / "letters.txt").read_text() == "keep me"


def test_an_earlier_demo_is_replaced_only_when_asked(built: dict[str, Any]) -> None:
    command = [sys.executable, "-m", "witnessmark", "demo", built["folder"]]
    result = subprocess.run(command, capture_output=True, text=True, check=False)
    assert result.returncode == 2
    assert "WM922" in result.stderr
    assert Path(built["html"]).exists()
