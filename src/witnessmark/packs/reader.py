"""Which packs there are: the shipped ones and the user's overlays, read, joined and checked."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path
from types import MappingProxyType
from typing import Protocol, cast

from witnessmark.packs import messages
from witnessmark.packs.contents import Contents, read_contents
from witnessmark.packs.corrections import correct
from witnessmark.packs.faults import Report
from witnessmark.packs.law import Rulebook
from witnessmark.packs.model import Override, PackFile, Packs, Provenance
from witnessmark.packs.references import check_rows
from witnessmark.packs.terms import TABLES
from witnessmark.problems import Problem, Refusal

__all__ = ["check", "parse", "read", "scenario_texts", "shipped_texts"]

#: The folder that holds situations to try the packs on, not packs.
_SCENARIOS = "scenarios"


class _Row(Protocol):
    """What every row has."""

    @property
    def id(self) -> str:
        """Its id, unique in its table."""

    @property
    def provenance(self) -> Provenance:
        """Where it comes from."""


class _Join:
    """Rows of all files by table and id; a later layer stands in for an earlier one, never a file for its neighbour."""

    def __init__(self, report: Report) -> None:
        self.report = report
        self.tables: dict[str, dict[str, _Row]] = {name: {} for name in (*TABLES, "rulebook")}
        self.files: list[PackFile] = []
        self.overrides: list[Override] = []

    def _add(self, table: str, row: _Row, layer: dict[tuple[str, str], _Row]) -> None:
        where = f"{row.provenance.file}: [[{table}]] {row.id}"
        first = layer.get((table, row.id))
        if first is not None:
            self.report(messages.DUPLICATE_ID, where, f"the other is in {first.provenance.file}")
            return
        earlier = self.tables[table].get(row.id)
        if earlier is not None:
            self.overrides.append(Override(row.id, earlier.provenance, row.provenance, table, earlier))
        layer[(table, row.id)] = row
        self.tables[table][row.id] = row

    def layer(self, texts: Mapping[str, bytes], *, overlay: bool) -> None:
        """Add the files of one folder of packs, in the order of their paths."""
        rows: dict[tuple[str, str], _Row] = {}
        packs: dict[str, str] = {}
        for path in sorted(texts):
            contents = read_contents(path, texts[path], self.report, overlay=overlay)
            if contents is None:
                continue
            pack = contents.file.id
            if pack in packs:
                self.report(messages.DUPLICATE_ID, path, f"{packs[pack]} is pack {pack} too")
            packs[pack] = path
            self.files.append(contents.file)
            self._rows(contents, rows)

    def _rows(self, contents: Contents, layer: dict[tuple[str, str], _Row]) -> None:
        for table, rows in contents.rows.items():
            for row in rows:
                self._add(table, cast("_Row", row), layer)
        if contents.rulebook is not None:
            self._add("rulebook", contents.rulebook, layer)
        if contents.corrects:
            self._correct(contents)

    def _correct(self, contents: Contents) -> None:
        """Lay the rows of a law in an overlay over the rulebook they correct: each stands in for the one it names."""
        book = self.tables["rulebook"].get(contents.corrects)
        if not isinstance(book, Rulebook):
            near = self.report.nearest(contents.corrects, self.tables["rulebook"])
            self.report(
                messages.UNKNOWN_REFERENCE,
                f"{contents.file.path}, key 'corrects'",
                f"no rulebook {contents.corrects!r}{near}",
            )
            return
        corrected, replaced = correct(book, contents.law)
        self.overrides += [Override(old.id, old.provenance, new.provenance, "duty", old) for old, new in replaced]
        self.tables["rulebook"][book.id] = corrected

    def packs(self) -> Packs:
        """Everything joined."""
        fields = {name: attribute for name, (_, attribute) in TABLES.items()} | {"rulebook": "rulebooks"}
        held: dict[str, object] = {fields[t]: MappingProxyType(rows) for t, rows in self.tables.items()}
        return Packs(files=tuple(self.files), overrides=tuple(self.overrides), **held)  # type: ignore[arg-type]  # each table holds rows of its own class


def parse(texts: Mapping[str, bytes], overlay_texts: Sequence[Mapping[str, bytes]] = ()) -> tuple[Packs, list[Problem]]:
    """The packs in *texts* (path to bytes) with each of *overlay_texts* laid over, and every problem met.

    Touches no file system. A row with a problem of its own is left out of the packs; the rest is there.
    """
    report = Report()
    join = _Join(report)
    join.layer(texts, overlay=False)
    for overlay in overlay_texts:
        join.layer(overlay, overlay=True)
    packs = join.packs()
    return packs, report.problems + check_rows(packs)


def _walk(folder: Traversable, prefix: str) -> Iterator[tuple[str, Traversable]]:
    for entry in sorted(folder.iterdir(), key=lambda e: e.name):
        if entry.is_dir():
            yield from _walk(entry, f"{prefix}{entry.name}/")
        elif entry.name.endswith(".toml"):
            yield f"{prefix}{entry.name}", entry


@cache
def _shipped_files() -> Mapping[str, bytes]:
    return MappingProxyType({path: entry.read_bytes() for path, entry in _walk(files(__package__) / "data", "")})


@cache
def shipped_texts() -> Mapping[str, bytes]:
    """The pack files that come with the program, path below ``packs/data`` to bytes."""
    return MappingProxyType({p: text for p, text in _shipped_files().items() if not p.startswith(f"{_SCENARIOS}/")})


def scenario_texts(overlays: Sequence[Path] = ()) -> dict[str, bytes]:
    """The situation files of the shipped packs and of folders called ``scenarios`` in *overlays*, path to bytes."""
    texts = {path: text for path, text in _shipped_files().items() if path.startswith(f"{_SCENARIOS}/")}
    for folder in overlays:
        texts |= {
            str(p): p.read_bytes()
            for p in sorted(Path(folder).rglob("*.toml"))
            if _SCENARIOS in p.relative_to(folder).parts
        }
    return texts


def _overlay(folder: Path, report: Report) -> dict[str, bytes]:
    """The pack files of the user's *folder* (or the one file it names)."""
    everything = [folder] if folder.is_file() else sorted(folder.rglob("*.toml")) if folder.is_dir() else []
    found = [path for path in everything if _SCENARIOS not in path.relative_to(folder).parts]
    texts: dict[str, bytes] = {}
    for path in found:
        try:
            texts[str(path)] = path.read_bytes()
        except OSError as error:
            report(messages.UNREADABLE, str(path), error.strerror or type(error).__name__)
    if not found:
        report(messages.NO_OVERLAY, str(folder))
    return texts


def _everything(overlays: Sequence[Path]) -> tuple[Packs, list[Problem]]:
    report = Report()
    texts = [_overlay(Path(folder), report) for folder in overlays]
    packs, problems = parse(shipped_texts(), texts)
    return packs, report.problems + problems


@cache
def _shipped() -> tuple[Packs, list[Problem]]:
    return parse(shipped_texts())


def read(overlays: Sequence[Path] = ()) -> Packs:
    """The shipped packs with the folders *overlays* laid over them, later ones last.

    Raises Refusal with every problem when any file falls short; then nothing is used.
    """
    packs, problems = _everything(overlays) if overlays else _shipped()
    if problems:
        raise Refusal(*problems)
    return packs


def check(overlays: Sequence[Path] = ()) -> list[Problem]:
    """Every problem of the shipped packs with *overlays*; empty when all is in order."""
    return list((_everything(overlays) if overlays else _shipped())[1])
