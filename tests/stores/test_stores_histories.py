"""Random histories: batches, repeats, openings and merges between three stores; in the end each holds the same set."""

import shutil
import tempfile
from collections.abc import Iterable
from contextlib import suppress
from pathlib import Path

from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule

from witnessmark.journal import Entry, JournalStore, Pen, Saw, check_chains, fold
from witnessmark.problems import Refusal
from witnessmark.stores import FolderJournal, MemoryJournal, RealFileSystem, SqliteJournal

JOB = "5f0c1f4e-3f5a-4c67-9d3e-2b8f6a1c0d11"
WHICH = st.sampled_from(["folder", "memory", "sqlite"])


class Dying(RealFileSystem):
    """A file system under which the program dies after so many steps, half-way through a write."""

    def __init__(self, steps: int) -> None:
        self.left = steps

    def _step(self) -> None:
        if self.left == 0:
            raise KeyboardInterrupt
        self.left -= 1

    def write(self, path: Path, chunks: Iterable[bytes]) -> None:
        data = b"".join(chunks)
        super().write(path, [data if self.left else data[: len(data) // 2]])
        self._step()

    def append(self, path: Path, data: bytes) -> None:
        super().append(path, data if self.left else data[: len(data) // 2])
        self._step()

    def sync(self, path: Path) -> None:
        self._step()
        super().sync(path)

    def sync_folder(self, path: Path) -> None:
        self._step()
        super().sync_folder(path)

    def truncate(self, path: Path, size: int) -> None:
        self._step()
        super().truncate(path, size)

    def remove(self, path: Path) -> None:
        self._step()
        super().remove(path)


class Histories(RuleBasedStateMachine):
    """Three stores of three devices; the model is a plain list of entries for each."""

    @initialize()
    def begin(self) -> None:
        self.place = Path(tempfile.mkdtemp())
        self.memory = MemoryJournal()
        self.stores: dict[str, JournalStore] = {}
        self.model: dict[str, list[Entry]] = {"folder": [], "memory": [], "sqlite": []}
        self.forked = False
        for which in self.model:
            self.open_again(which)

    def teardown(self) -> None:
        if not hasattr(self, "place"):
            return
        for which in self.model:
            for other in self.model:
                self.merge(which, other)
        sets = [{entry.id for entry in store.read()[0]} for store in self.stores.values()]
        assert sets[0] == sets[1] == sets[2]
        folds = [fold(store.read()[0]) for store in self.stores.values()]
        assert folds[0].facts == folds[1].facts == folds[2].facts
        problems = check_chains(self.stores["folder"].read()[0])
        assert {problem.number for problem in problems} <= ({"WM221"} if self.forked else set())
        shutil.rmtree(self.place)

    @rule(which=WHICH)
    def open_again(self, which: str) -> None:
        self.stores[which] = (
            FolderJournal(self.place)
            if which == "folder"
            else SqliteJournal(self.place / "journal.sqlite")
            if which == "sqlite"
            else self.memory
        )

    def pen(self, which: str, device: str) -> Pen:
        return Pen(JOB, "inspector", device, *self.stores[which].head(device))

    @rule(which=WHICH, size=st.integers(0, 4), text=st.text(max_size=5))
    def write(self, which: str, size: int, text: str) -> None:
        pen = self.pen(which, which)
        batch = [pen.write(Saw(what=text)) for _ in range(size)]
        assert self.stores[which].append(batch) == size
        self.model[which] += batch

    @rule(which=WHICH, data=st.data())
    def repeat(self, which: str, data: st.DataObject) -> None:
        kept = self.model[which]
        if kept:
            again = data.draw(st.lists(st.sampled_from(kept), max_size=4))
            assert self.stores[which].append(again) == 0

    @rule(which=WHICH)
    def clash(self, which: str) -> None:
        """A batch whose last entry takes a position that is taken: none of it is kept."""
        if not self.model[which]:
            return
        good = self.pen(which, f"{which}-spare").write(Saw(what="kept out"))
        bad = Pen(JOB, "inspector", which).write(Saw(what="too late"))
        taken = which in {entry.device for entry in self.model[which]}
        told: set[str] = set()
        try:
            self.stores[which].append([good, bad])
        except Refusal as refusal:
            told = {problem.number for problem in refusal.problems}
        else:
            self.model[which] += [good, bad]
        assert told == ({"WM321"} if taken else set())

    @rule(size=st.integers(1, 3), steps=st.integers(0, 8))
    def die_while_writing(self, size: int, steps: int) -> None:
        """The program that writes to the folder dies after some steps; the batch is there whole or not at all."""
        pen = self.pen("folder", "folder")
        batch = [pen.write(Saw(what="late")) for _ in range(size)]
        with suppress(KeyboardInterrupt):
            FolderJournal(self.place, Dying(steps)).append(batch)
        if len(self.stores["folder"].read()[0]) > len(self.model["folder"]):
            self.model["folder"] += batch

    @rule(which=WHICH, text=st.text(max_size=3))
    def write_from_an_old_copy(self, which: str, text: str) -> None:
        """A device that was restored from a backup writes on elsewhere, and its entries are brought in."""
        own = [entry for entry in self.model[which] if entry.device == which]
        if len(own) < 2:
            return
        old = own[-2]
        branch = Pen(JOB, "inspector", which, old.n, old.hash).write(Saw(what=text))
        assert self.stores[which].append([branch], forks=True) == 1
        self.model[which].append(branch)
        self.forked = True

    @rule(to=WHICH, source=WHICH)
    def merge(self, to: str, source: str) -> None:
        entries, problems = self.stores[source].read()
        assert not problems
        known = {entry.id for entry in self.model[to]}
        new = [entry for entry in entries if entry.id not in known]
        assert self.stores[to].append(entries, forks=True) == len(new)
        self.model[to] += new

    @invariant()
    def each_holds_its_model_in_order(self) -> None:
        for which, store in getattr(self, "stores", {}).items():
            assert store.read() == (self.model[which], [])


Histories.TestCase.settings = settings(max_examples=60, stateful_step_count=30, deadline=None)
TestHistories = Histories.TestCase
