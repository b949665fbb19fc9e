"""A report with three hundred photos against the bare decoding of the same photos, in the same run; and its preview.

    python benchmarks/bench_report.py [--photos 300] [--rounds 3] [--keep FOLDER]

The photos are generated, 12 megapixels and about 3.3 MB each, as a telephone writes them. The baseline decodes each at a
quarter of its size, the cheapest way there is to look at it, in two processes. The report is made in a process of its own
from the demo's record and these photos: folded, judged, composed, pictures prepared, page and PDF written. Aims: at most
1.5 times the baseline, under 1.2 GB of memory with all its processes, a PDF under 40 MB, and under 0.5 s for page and PDF
once one finding has changed. Rounds alternate, and the best of each counts, because other programs share the machine.

Seconds of processor stand beside: they tell the same ratio on a machine that has other work to do.

``pytest benchmarks`` runs a tenth of it and prints the same ratios.
"""

from __future__ import annotations

import argparse
import hashlib
import json
import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from concurrent.futures import ProcessPoolExecutor
from dataclasses import asdict, dataclass, replace
from datetime import timedelta
from pathlib import Path
from threading import Event, Thread

import numpy as np
import pytest
from PIL import Image
from pytest_benchmark.fixture import BenchmarkFixture

from witnessmark.assembly import open_job, read_packs
from witnessmark.demo.run import run_demo
from witnessmark.journal.acts import Took
from witnessmark.journal.fold import fold
from witnessmark.journal.moment import instant
from witnessmark.journal.pen import Pen
from witnessmark.judging import standing
from witnessmark.report import Letter, begin_pdf, compose, prepare, write_html, write_pdf
from witnessmark.report.preview import Preview

WIDE, HIGH = 4032, 3024
CORES = 2
#: Aims.
RATIO, MEMORY, SIZE, AGAIN = 1.5, 1.2e9, 40e6, 0.5


@dataclass(frozen=True)
class Figures:
    """What one report took: seconds, bytes; and the size of its PDF."""

    seconds: float
    cpu: float
    memory: int
    pdf: int
    parts: dict[str, float]


def surface() -> np.ndarray:
    """A surface with coarse and fine structure and a little noise, larger than a photo so that photos are cut from it."""
    drawn = np.random.default_rng(7)
    high, wide = HIGH + 512, WIDE + 512
    whole = drawn.normal(120, 4, (high, wide, 1)).astype(np.float32).repeat(3, axis=2)
    for cell, depth in ((512, 70), (128, 40), (32, 25), (8, 14), (2, 8)):
        small = drawn.integers(0, 255, (high // cell + 2, wide // cell + 2, 3), dtype=np.uint8)
        large = Image.fromarray(small).resize((small.shape[1] * cell, small.shape[0] * cell), Image.Resampling.BICUBIC)
        whole += (np.asarray(large, dtype=np.float32)[:high, :wide] - 127) * depth / 127
    return np.clip(whole, 0, 255).astype(np.uint8)


def make_photos(folder: Path, count: int) -> list[Path]:
    """The photos; those that lie there already are kept."""
    folder.mkdir(parents=True, exist_ok=True)
    paths = [folder / f"{number:03}.jpg" for number in range(count)]
    if missing := [path for path in paths if not path.exists()]:
        whole = surface()
        for path in missing:
            x, y = int(path.stem) * 37 % 500, int(path.stem) * 91 % 500
            Image.fromarray(whole[y : y + HIGH, x : x + WIDE]).save(path, quality=90)
    return paths


def decode(path: Path) -> float:
    """The baseline: the decoder's own quarter scale and nothing else. Seconds of processor it took."""
    started = time.process_time()
    with Image.open(path) as image:
        image.draft(None, (image.width // 4, image.height // 4))
        image.load()
        assert image.width == WIDE // 4
    return time.process_time() - started


def bare(pool: ProcessPoolExecutor, photos: list[Path]) -> tuple[float, float]:
    """Seconds by the clock, and of processor."""
    started = time.perf_counter()
    used = sum(pool.map(decode, photos, chunksize=8))
    return time.perf_counter() - started, used


def letter_with(job_folder: Path, photos: list[Path], hashes: dict[str, Path]) -> Callable[[], Letter]:
    """Everything read; what is returned folds, judges and composes."""
    job, packs = open_job(job_folder), read_packs()
    entries, _ = job.entries()
    last = instant(max(entry.logged for entry in entries))
    began = instant(entries[0].at)
    place = next(entry.place for entry in entries if entry.act == "saw" and entry.place)
    pen = Pen(job.job.id, job.job.inspector, "camera", now=lambda: last)
    took = [
        pen.write(
            Took("photo", path.name, "image/jpeg", f"generated surface {number}"),
            at=(began + timedelta(seconds=20 * number)).isoformat(),
            place=place,
            media=(sha256,),
        )
        for number, (sha256, path) in enumerate(hashes.items())
    ]
    assert len(took) == len(photos)

    def make() -> Letter:
        record = fold([*entries, *took])
        stands = standing(record, packs, job.job, last)
        return compose(
            job.job, record, packs, stands, media=lambda sha256: hashes.get(sha256) or job.media.path(sha256), issued=last
        )  # fmt: skip

    return make


def write(make: Callable[[], Letter], out: Path) -> tuple[Letter, dict[str, float]]:
    """The report, with the seconds of each part."""
    parts: dict[str, float] = {}
    last = time.perf_counter()

    def done(part: str) -> None:
        nonlocal last
        now = time.perf_counter()
        parts[part], last = now - last, now

    letter = make()
    done("compose")
    begun = begin_pdf(letter)
    ready = prepare(letter, out / "pictures")
    done("pictures, beside pages")
    write_html(letter, out, prepared=ready)
    done("page")
    met = write_pdf(letter, out / "report.pdf", prepared=ready, begun=begun)
    done("PDF")
    assert met == (), met
    return letter, parts


def report_here(job_folder: Path, photos: list[Path], out: Path) -> None:
    """In a process of its own: the report, its figures on standard output."""
    hashes = {hashlib.sha256(path.read_bytes()).hexdigest(): path for path in photos}
    make = letter_with(job_folder, photos, hashes)
    started, used = time.perf_counter(), time.process_time()
    _, parts = write(make, out)
    seconds, cpu = time.perf_counter() - started, time.process_time() - used
    size = (out / "report.pdf").stat().st_size
    sys.stdout.write(json.dumps(asdict(Figures(seconds, cpu, 0, size, parts))))


def resident(process: int) -> int:
    """Bytes that a process and all that it started hold, as the kernel says; shared pages count once for each."""
    total = 0
    try:
        total += int(Path(f"/proc/{process}/statm").read_text().split()[1]) * os.sysconf("SC_PAGE_SIZE")
        children = [path.read_text().split() for path in Path(f"/proc/{process}/task").glob("*/children")]
    except (OSError, IndexError):
        return total
    return total + sum(resident(int(child)) for row in children for child in row)


def report_apart(job_folder: Path, photos: list[Path], out: Path) -> Figures:
    """The report in a fresh process, its memory watched from here."""
    command = [sys.executable, __file__, "--here", str(job_folder), str(out), *map(str, photos)]
    process = subprocess.Popen(command, stdout=subprocess.PIPE, text=True)
    most, over = 0, Event()

    def watch() -> None:
        nonlocal most
        while not over.wait(0.02):
            most = max(most, resident(process.pid))

    watcher = Thread(target=watch)
    watcher.start()
    said, _ = process.communicate()
    over.set()
    watcher.join()
    assert process.returncode == 0
    return replace(Figures(**json.loads(said)), memory=most)


def with_a_change(letter: Letter, number: int) -> Letter:
    """One finding in the middle says more."""
    groups = list(letter.stakes)
    group = max(groups, key=lambda one: len(one.findings))
    findings = list(group.findings)
    at = len(findings) // 2
    findings[at] = replace(findings[at], seen=f"{findings[at].seen} It was looked at {number} times more.")
    groups[groups.index(group)] = replace(group, findings=tuple(findings))
    return replace(letter, stakes=tuple(groups))


def used_by(process: int | None) -> float:
    """Seconds of processor that a process has had, as the kernel says."""
    fields = Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


def previews(letter: Letter, out: Path, changes: int) -> list[tuple[float, float]]:
    """Seconds by the clock and of processor: the first preview, and those after one change each."""
    times = []
    with Preview(out) as preview:
        for number in range(changes + 1):
            shown = with_a_change(letter, number) if number else letter
            used = used_by(preview.process) if number else 0.0
            started = time.perf_counter()
            preview.render(shown)
            times.append((time.perf_counter() - started, used_by(preview.process) - used))
    return times


@dataclass(frozen=True)
class Measured:
    """The best of each; previews of the demo's letter and of the one with the photos."""

    baseline: float
    baseline_cpu: float
    report: Figures
    previews: dict[str, list[tuple[float, float]]]

    @property
    def ratio(self) -> float:
        return self.report.seconds / self.baseline

    @property
    def again(self) -> dict[str, float]:
        return {name: min(seconds for seconds, _ in times[1:]) for name, times in self.previews.items()}

    def told(self, photos: int) -> str:
        report = self.report
        parts = ", ".join(f"{part} {seconds:.2f}" for part, seconds in report.parts.items())
        lines = [
            f"{photos} photos of {WIDE} x {HIGH} pixels; the record of the demo",
            f"bare decoding at a quarter, {CORES} processes  {self.baseline:6.2f} s   ({self.baseline_cpu:.1f} s of processor)",
            f"report: page and PDF                     {report.seconds:6.2f} s   ({report.cpu:.1f} s of processor; {parts})",
            f"ratio                                    {self.ratio:6.2f}     (of processor {report.cpu / self.baseline_cpu:.2f}; aim: at most {RATIO})",
            f"memory, all processes                    {report.memory / 1e6:6.0f} MB  (aim: under {MEMORY / 1e6:.0f})",
            f"PDF                                      {report.pdf / 1e6:6.1f} MB  (aim: under {SIZE / 1e6:.0f})",
        ]
        for name, times in self.previews.items():
            (first, _), *later = times
            lines.append(
                f"preview, {name:6}: first {first:5.2f} s, one finding changed "
                f"{', '.join(f'{seconds:.2f}' for seconds, _ in later)} s (aim: under {AGAIN}; of processor "
                f"{min(cpu for _, cpu in later):.2f})"
            )
        return "\n".join(lines) + "\n"


def measure(folder: Path, photos: list[Path], rounds: int) -> Measured:
    job_folder = folder / "job"
    run_demo(job_folder, tell=lambda _line: None)
    with ProcessPoolExecutor(CORES) as pool:
        bare(pool, photos[:4])
        pairs = [(bare(pool, photos), report_apart(job_folder, photos, folder / f"out-{n}")) for n in range(rounds)]
    hashes = {hashlib.sha256(path.read_bytes()).hexdigest(): path for path in photos}
    shown = {
        "demo": previews(letter_with(job_folder, [], {})(), folder / "preview-demo", 6),
        "photos": previews(letter_with(job_folder, photos, hashes)(), folder / f"out-{rounds - 1}", 6),
    }
    best = min((figures for _, figures in pairs), key=lambda figures: figures.seconds)
    best = replace(
        best,
        memory=max(figures.memory for _, figures in pairs),
        cpu=min(figures.cpu for _, figures in pairs),
    )
    return Measured(min(s for (s, _), _ in pairs), min(cpu for (_, cpu), _ in pairs), best, shown)


@pytest.fixture(scope="module")
def few(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, list[Path]]:
    """A job and a tenth of the photos."""
    folder = tmp_path_factory.mktemp("report")
    run_demo(folder / "job", tell=lambda _line: None)
    return folder, make_photos(folder / "photos", 30)


def test_a_report_beside_the_decoding_of_its_photos(few: tuple[Path, list[Path]], benchmark: BenchmarkFixture) -> None:
    folder, photos = few
    with ProcessPoolExecutor(CORES) as pool:
        bare(pool, photos[:4])
        baseline, baseline_cpu = map(min, zip(*(bare(pool, photos) for _ in range(2)), strict=True))
    number = iter(range(99))
    made: list[Figures] = []
    benchmark.pedantic(  # type: ignore[no-untyped-call] # the library gives it no types
        lambda: made.append(report_apart(folder / "job", photos, folder / f"out-{next(number)}")), rounds=2
    )
    seconds, cpu = min(one.seconds for one in made), min(one.cpu for one in made)
    memory, size = max(one.memory for one in made), made[0].pdf
    sys.stdout.write(
        f"\n{len(photos)} photos: decoding {baseline:.2f} s, report {seconds:.2f} s, ratio {seconds / baseline:.2f} "
        f"(of processor {cpu / baseline_cpu:.2f}; the text weighs more than so few photos), {memory / 1e6:.0f} MB, "
        f"PDF {size / 1e6:.1f} MB\n"
    )
    assert memory < MEMORY
    assert size < SIZE


def test_a_preview_after_one_change(few: tuple[Path, list[Path]], benchmark: BenchmarkFixture) -> None:
    folder, photos = few
    hashes = {hashlib.sha256(path.read_bytes()).hexdigest(): path for path in photos}
    letter = letter_with(folder / "job", photos, hashes)()
    with Preview(folder / "preview") as preview:
        started = time.perf_counter()
        preview.render(letter)
        first = time.perf_counter() - started
        numbers = iter(range(1, 99))
        benchmark.pedantic(  # type: ignore[no-untyped-call] # the library gives it no types
            preview.render, setup=lambda: ((with_a_change(letter, next(numbers)),), {}), rounds=6
        )
    assert benchmark.stats is not None
    least = benchmark.stats.stats.min
    sys.stdout.write(
        f"\npreview: first {first:.2f} s, one finding changed {least:.2f} s (aim: under {AGAIN}), "
        f"ratio {least / first:.2f}\n"
    )
    assert least < first


def main() -> int:
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--photos", type=int, default=300)
    parser.add_argument("--rounds", type=int, default=3)
    parser.add_argument("--keep", type=Path, help="Folder for the photos, to use them again.")
    parser.add_argument("--here", nargs="+", help=argparse.SUPPRESS)
    given = parser.parse_args()
    if given.here:
        job_folder, out, *paths = map(Path, given.here)
        report_here(job_folder, paths, out)
        return 0
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        photos = make_photos(given.keep or folder / "photos", given.photos)
        measured = measure(folder, photos, given.rounds)
    sys.stdout.write(measured.told(len(photos)))
    report = measured.report
    held = measured.ratio <= RATIO and report.memory < MEMORY and report.pdf < SIZE
    return 0 if held and max(measured.again.values()) < AGAIN else 1


if __name__ == "__main__":
    sys.exit(main())
