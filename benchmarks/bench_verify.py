"""Checking a whole job folder against the plain ``sha256sum`` of coreutils over the same files, in the same run.

    python benchmarks/bench_verify.py [--entries 5000] [--photos 300] [--bytes 1200000] [--rounds 5]

The aim: no less than half of the speed of ``sha256sum``, though every journal line is also parsed, brought to its
canonical form, hashed and held against its chain, and the seal against all of it. Rounds alternate, and the best of
each counts, because other programs share the machine. Files are read from the cache of the system in both cases.
"""

from __future__ import annotations

import argparse
import os
import subprocess
import sys
import tempfile
import time
from datetime import UTC, datetime, timedelta
from pathlib import Path

from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from witnessmark.journal.acts import Body, Count, Listed, Placed, Ran, Read, Saw, Took
from witnessmark.journal.entry import Entry, Source
from witnessmark.journal.job import Job
from witnessmark.journal.job_codec import facts_hash
from witnessmark.journal.pen import Pen
from witnessmark.journal.seal import seal
from witnessmark.stores import FolderJournal, LocalMedia, new_job_folder, read_facts, verify_folder

JOB = "5f0c1f4e-3f5a-4c67-9d3e-2b8f6a1c0d11"


class Key:
    """A signer with a key of its own."""

    def __init__(self) -> None:
        self._key = Ed25519PrivateKey.generate()

    def public_key(self) -> str:
        return self._key.public_key().public_bytes_raw().hex()

    def sign(self, message: bytes) -> str:
        return self._key.sign(message).hex()


def make_job(folder: Path, entries: int, photos: int, size: int) -> None:
    new_job_folder(folder, Job(id=JOB, address="1 Invented Lane", invented=True))
    media = LocalMedia(folder / "media")
    hashes = [media.put(os.urandom(size), ".jpg") for _ in range(photos)]
    clock = datetime(2026, 3, 14, 9, 0, tzinfo=UTC)

    def now() -> datetime:
        nonlocal clock
        clock += timedelta(seconds=2)
        return clock

    pens = [Pen(JOB, "inspector", device, now=now) for device in ("phone", "tablet")]
    spoken = Source("speech", "walk.wav", "1204.5", "1209.0", "moisture behind the tub reads about thirty one percent")
    made: list[Entry] = []
    for number in range(entries - 1):
        bodies: tuple[Body, ...] = (
            Placed(name="Hall bathroom", sort="room", storey="first"),
            Listed(kind="bathtub", label="hall bathroom tub"),
            Saw(what="grout cracked at the inside corner", state="adverse", part="grout", count=Count(4, 12, 1)),
            Ran(what="filled the tub to the overflow", procedure="fill-and-drain", left="filled", found="empty"),
            Read(measure="moisture", value="31", unit="%", spot="behind the tub, left of the valve", about=True),
        )
        pen = pens[number % 7 == 0]
        photo = hashes.pop() if hashes and number % 10 == 0 else None
        body = Took(name=f"IMG_{number:04}.jpg", mime="image/jpeg") if photo else bodies[number % len(bodies)]
        made.append(pen.write(body, place="bath-2", component="tub-1", media=(photo,) if photo else (), source=spoken))
    closing = seal(made, facts=facts_hash(read_facts(folder)), packs=[], report=None, signer=Key())
    FolderJournal(folder).append([*made, pens[0].write(closing)])


def sha256sum(folder: Path) -> float:
    files = sorted(str(path) for path in folder.rglob("*") if path.is_file())
    started = time.perf_counter()
    subprocess.run(["sha256sum", "--", *files], check=True, stdout=subprocess.DEVNULL)
    return time.perf_counter() - started


def verify(folder: Path) -> float:
    started = time.perf_counter()
    result = verify_folder(folder)
    seconds = time.perf_counter() - started
    assert result.sound, [str(problem) for problem in result.problems]
    return seconds


def main() -> int:
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--entries", type=int, default=5000)
    parser.add_argument("--photos", type=int, default=300)
    parser.add_argument("--bytes", type=int, default=1_200_000)
    parser.add_argument("--rounds", type=int, default=5)
    given = parser.parse_args()
    with tempfile.TemporaryDirectory() as temporary:
        folder = Path(temporary) / "job"
        make_job(folder, given.entries, given.photos, given.bytes)
        size = sum(path.stat().st_size for path in folder.rglob("*") if path.is_file())
        rounds = [(sha256sum(folder), verify(folder)) for _ in range(given.rounds)]
    baseline, ours = min(a for a, _ in rounds), min(b for _, b in rounds)
    speed = size / 1e6
    sys.stdout.write(
        f"{given.entries:,} entries, {given.photos} photos of {given.bytes:,} bytes, {speed:.1f} MB in all\n"
        f"sha256sum  {baseline:.3f} s  {speed / baseline:6.0f} MB/s\n"
        f"verify     {ours:.3f} s  {speed / ours:6.0f} MB/s\n"
        f"ratio      {baseline / ours:.2f} of the speed of sha256sum (aim: at least 0.50)\n"
    )
    return 0 if baseline / ours >= 0.5 else 1


if __name__ == "__main__":
    sys.exit(main())
