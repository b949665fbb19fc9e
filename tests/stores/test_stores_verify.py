"""Verification names exactly what does not match, and changes nothing."""

import shutil
import subprocess
from collections.abc import Callable
from hashlib import sha256
from pathlib import Path

import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from witnessmark.journal import Entry, Job, PackUsed, Pen, Saw, Sealed, Took, facts_hash, from_line, seal, to_line
from witnessmark.problems import Problem, Refusal
from witnessmark.stores import FolderJournal, LocalMedia, new_job_folder, read_facts, verify_folder, write_job

JOB = Job(id="5f0c1f4e-3f5a-4c67-9d3e-2b8f6a1c0d11", address="1 Invented Lane", invented=True)
PACKS = {"witnessmark.kinds": "aa" * 32, "witnessmark.criteria": "bb" * 32}
VERSIONS = {"witnessmark.kinds": "1.0", "witnessmark.criteria": "1.0"}


class Key:
    def __init__(self) -> None:
        self._key = Ed25519PrivateKey.generate()

    def public_key(self) -> str:
        return self._key.public_key().public_bytes_raw().hex()

    def sign(self, message: bytes) -> str:
        return self._key.sign(message).hex()


def sealed(folder: Path, edition: int = 1) -> Entry:
    """Seal the job as it is now."""
    store = FolderJournal(folder)
    closing = seal(
        store.read()[0],
        facts=facts_hash(read_facts(folder)),
        packs=[PackUsed(id_, VERSIONS[id_], hash_) for id_, hash_ in PACKS.items()],
        report=None,
        signer=Key(),
        edition=edition,
    )
    entry = Pen(JOB.id, "inspector", "phone", *store.head("phone")).write(closing)
    store.append([entry])
    return entry


@pytest.fixture
def job(tmp_path: Path) -> Path:
    folder = tmp_path / "job"
    new_job_folder(folder, JOB)
    media = LocalMedia(folder / "media")
    pen = Pen(JOB.id, "inspector", "phone")
    entries = []
    for number in range(4):
        digest = media.put(b"photo %d" % number * 1000, ".jpg")
        entries += [pen.write(Took(name=f"{number}.jpg"), media=(digest,)), pen.write(Saw(what="soot"))]
    FolderJournal(folder).append(entries)
    sealed(folder)
    return folder


def numbers(problems: tuple[Problem, ...]) -> list[str]:
    return [problem.number for problem in problems]


def photo(folder: Path) -> Path:
    return next(iter(LocalMedia(folder / "media").files().values()))


def rewrite(folder: Path, change: Callable[[list[bytes]], list[bytes]]) -> None:
    path = folder / "journal.jsonl"
    path.write_bytes(b"".join(change(path.read_bytes().splitlines(keepends=True))))


def test_a_sound_job(job: Path) -> None:
    before = {path: path.read_bytes() for path in job.rglob("*") if path.is_file()}
    result = verify_folder(job, PACKS)
    assert result.sound
    assert (result.problems, result.notes) == ((), ())
    assert (result.entries, result.seals, result.media) == (9, 1, 4)
    assert result.size == sum(len(content) for path, content in before.items() if path.name != "journal.lock")
    assert result.seconds > 0
    assert {path: path.read_bytes() for path in job.rglob("*") if path.is_file()} == before


def test_the_names_of_media_are_what_sha256sum_says(job: Path) -> None:
    """Against coreutils: everybody can check the photos without this program."""
    if shutil.which("sha256sum") is None:
        pytest.skip("coreutils is not here")
    files = sorted(LocalMedia(job / "media").files().values())
    said = subprocess.run(["sha256sum", *map(str, files)], capture_output=True, text=True, check=True).stdout
    assert [line.split()[0] for line in said.splitlines()] == [path.stem for path in files]


def test_a_missing_photo(job: Path) -> None:
    path = photo(job)
    path.unlink()
    result = verify_folder(job)
    assert numbers(result.problems) == ["WM330"]
    assert path.stem in result.problems[0].where
    taken = [entry.id for entry in FolderJournal(job).read()[0] if path.stem in entry.media]
    assert result.problems[0].entries == tuple(taken)
    assert result.media == 3


def test_an_altered_photo(job: Path) -> None:
    path = photo(job)
    content = bytearray(path.read_bytes())
    content[500] ^= 1
    path.write_bytes(content)
    result = verify_folder(job)
    assert numbers(result.problems) == ["WM331"]
    assert result.problems[0].where == str(path)
    assert sha256(content).hexdigest() in result.problems[0].detail
    assert len(result.problems[0].entries) == 1


def test_a_photo_that_no_entry_names_is_a_note(job: Path) -> None:
    digest = LocalMedia(job / "media").put(b"extra", ".png")
    result = verify_folder(job)
    assert result.sound
    assert numbers(result.notes) == ["WM332"]
    assert digest in result.notes[0].where


def test_stray_files_among_the_media_are_notes(job: Path) -> None:
    (job / "media" / "notes.txt").write_bytes(b"x")
    (job / "media" / ".incoming-0123").write_bytes(b"half")
    result = verify_folder(job)
    assert result.sound
    assert numbers(result.notes) == ["WM334", "WM334"]


@pytest.mark.parametrize("line", range(9))
def test_a_changed_line(job: Path, line: int) -> None:
    """Any byte of any line: the line is named, and so is the seal that covered it."""
    rewrite(
        job,
        lambda lines: [*lines[:line], lines[line].replace(b'"by":"inspector"', b'"by":"somebody"'), *lines[line + 1 :]],
    )
    result = verify_folder(job)
    told = numbers(result.problems)
    assert "WM205" in told
    assert f"line {line + 1}" in result.problems[0].where
    assert ("WM241" in told) == (line < 8)
    assert ("WM220" in told) == (line < 8), "the chain has a gap where the line was"


def test_a_line_rewritten_with_a_fitting_hash(job: Path) -> None:
    """Whoever changes a line and its hash breaks the chain and the seal."""

    def forge(lines: list[bytes]) -> list[bytes]:
        entry = from_line(lines[1].strip(), "line 2")
        assert isinstance(entry, Entry)
        own = sha256(
            lines[1].strip().replace(b"soot", b"dust").replace(b'"hash":"%b",' % entry.hash.encode(), b"")
        ).hexdigest()
        lines[1] = lines[1].replace(b"soot", b"dust").replace(entry.hash.encode(), own.encode())
        return lines

    rewrite(job, forge)
    told = numbers(verify_folder(job).problems)
    assert "WM222" in told
    assert "WM241" in told
    assert "WM205" not in told


def test_removed_lines(job: Path) -> None:
    rewrite(job, lambda lines: lines[:2] + lines[3:])
    assert set(numbers(verify_folder(job).problems)) == {"WM220", "WM241"}


def test_lines_removed_from_the_end_with_the_seal(job: Path) -> None:
    """What came last leaves no gap; then a photo of it is told as named by no entry."""
    rewrite(job, lambda lines: lines[:6])
    result = verify_folder(job)
    assert result.sound
    assert numbers(result.notes) == ["WM332"]


def test_a_forged_seal(job: Path) -> None:
    entries = FolderJournal(job).read()[0]
    body = entries[-1].body
    assert isinstance(body, Sealed)
    line = to_line(entries[-1])
    forged = line.replace(body.signature[:8].encode(), b"00000000" if body.signature[:8] != "00000000" else b"11111111")
    own = sha256(forged.replace(b'"hash":"%b",' % entries[-1].hash.encode(), b"")).hexdigest()
    rewrite(job, lambda lines: [*lines[:-1], forged.replace(entries[-1].hash.encode(), own.encode()) + b"\n"])
    assert numbers(verify_folder(job).problems) == ["WM242"]


def test_changed_facts(job: Path) -> None:
    (job / "job.toml").write_bytes(read_facts(job) + b"# a remark\n")
    assert numbers(verify_folder(job).problems) == ["WM243"]


def test_facts_changed_for_a_later_edition_are_a_note(job: Path) -> None:
    write_job(job, Job(id=JOB.id, address="2 Invented Lane", invented=True))
    sealed(job, edition=2)
    result = verify_folder(job, PACKS)
    assert result.sound
    assert result.seals == 2
    assert numbers(result.notes) == ["WM243"]


def test_missing_and_unreadable_facts(job: Path) -> None:
    (job / "job.toml").write_bytes(b"address = ")
    assert numbers(verify_folder(job).problems) == ["WM250"]
    (job / "job.toml").unlink()
    assert numbers(verify_folder(job).problems) == ["WM340"]


def test_packs(job: Path) -> None:
    other = PACKS | {"witnessmark.kinds": "cc" * 32}
    result = verify_folder(job, other)
    assert numbers(result.problems) == ["WM342"]
    assert "witnessmark.kinds" in result.problems[0].where
    assert numbers(verify_folder(job, other, packs_versions=VERSIONS).problems) == ["WM342"], (
        "same version, other content"
    )
    newer = verify_folder(job, other, packs_versions=VERSIONS | {"witnessmark.kinds": "1.1"})
    assert newer.sound
    assert numbers(newer.notes) == ["WM342"]
    assert numbers(verify_folder(job, {}).problems) == ["WM343", "WM343"]
    assert verify_folder(job, None).sound


def test_no_journal(job: Path) -> None:
    (job / "journal.jsonl").unlink()
    result = verify_folder(job)
    assert numbers(result.problems) == ["WM341"]
    assert numbers(result.notes) == ["WM332"] * 4
    (job / "journal.jsonl").mkdir()
    assert numbers(verify_folder(job).problems) == ["WM302"]


def test_no_folder(tmp_path: Path) -> None:
    with pytest.raises(Refusal) as refusal:
        verify_folder(tmp_path / "nowhere")
    assert numbers(refusal.value.problems) == ["WM301"]


def test_an_act_of_a_newer_release_is_a_note(job: Path) -> None:
    store = FolderJournal(job)
    line = to_line(Pen(JOB.id, "inspector", "drone").write(Saw(what="roof")))
    entry = from_line(line, "line")
    assert isinstance(entry, Entry)
    newer = line.replace(b'"act":"saw"', b'"act":"flew"')
    own = sha256(newer.replace(b'"hash":"%b",' % entry.hash.encode(), b"")).hexdigest()
    flown = from_line(newer.replace(entry.hash.encode(), own.encode()), "line")
    assert isinstance(flown, Entry)
    store.append([flown])
    result = verify_folder(job)
    assert result.sound
    assert numbers(result.notes) == ["WM207"]


def test_what_was_moved_out_of_the_journal_is_a_note(job: Path) -> None:
    with (job / "journal.jsonl").open("ab") as journal:
        journal.write(b"torn")
    assert numbers(verify_folder(job).problems) == ["WM310"]
    store = FolderJournal(job)
    store.append([Pen(JOB.id, "inspector", "phone", *store.head("phone")).write(Saw(what="soot"))])
    result = verify_folder(job)
    assert result.sound
    assert numbers(result.notes) == ["WM311"]
    assert "journal.torn-" in result.notes[0].detail


def test_everything_wrong_at_once(job: Path) -> None:
    """One damage hides no other."""
    path = photo(job)
    path.write_bytes(b"edited")
    other = next(p for p in LocalMedia(job / "media").files().values() if p != path)
    other.unlink()
    (job / "job.toml").write_bytes(b"\xff")
    rewrite(job, lambda lines: [*lines, b"garbage\n", b"torn"])
    assert numbers(verify_folder(job).problems) == ["WM250", "WM201", "WM310", "WM331", "WM330"]


def test_progress_goes_up_to_the_whole(job: Path) -> None:
    calls: list[tuple[int, int]] = []
    result = verify_folder(job, progress=lambda done, total: calls.append((done, total)))
    assert [done for done, _ in calls] == sorted(done for done, _ in calls)
    assert calls[-1] == (result.size, result.size)
    assert len({total for _, total in calls}) == 1
