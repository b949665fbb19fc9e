"""What is the vote trained on? Narrations with their gold, and statements written with their labels.

A narration that has a source (``narrations/written``) is cut where its gold says that statements begin, and every line
of the source gives its labels. An older narration is cut as the listener cuts it; a statement has the labels of the
records whose evidence it shares, lies in a what-if, or gives nothing.

The files in ``statements`` hold one statement a line under a heading with its label::

    [adverse]
    the top step is loose
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from pathlib import Path
from typing import Any

from narrate.source import Said, read_source
from witnessmark.listening import Line, read_narration
from witnessmark.listening.clauses import Clause
from witnessmark.listening.focus import Scene
from witnessmark.listening.lexicon import Lexicon, lexicon
from witnessmark.listening.places import HOUSE
from witnessmark.listening.statements import Spoken, spoken, statement
from witnessmark.listening.subjects import about
from witnessmark.listening.votes import LABELS
from witnessmark.listening.votes_features import features
from witnessmark.packs.model import Packs

__all__ = ["Example", "UnlabelledError", "longest_run", "of_narration", "of_statements", "plain", "read_statements"]

_OF_KIND = {
    "defect": "adverse", "fine": "sound", "measured": "measured", "identified": "identified", "described": "described",
    "limited": "limited", "doubt": "doubt",
}  # fmt: skip
_LEFT = {"running": "on", "off": "off", None: "operated"}
#: Evidence is looked for within so many seconds of its record.
_WITHIN = 12.0


class UnlabelledError(Exception):
    """A line of a file of statements that stands under no known label."""


@dataclass(frozen=True, slots=True)
class Example:
    """The features of a statement and its labels, each an equal share of it."""

    features: tuple[str, ...]
    labels: tuple[str, ...]


def _label(record: dict[str, Any]) -> str:
    return _LEFT[record["state_after"]] if record["kind"] == "operated" else _OF_KIND[record["kind"]]


def _labels(said: Said) -> tuple[str, ...]:
    if said.sort == "taken back":
        return ()
    if said.sort == "hypothetical":
        return ("aside",)
    return tuple(dict.fromkeys(_label(r) for r in said.records)) or ("talk",)


def _examples(
    said: Spoken, rows: Iterable[tuple[Clause, tuple[str, ...]]], known: Lexicon, *, alone: bool
) -> Iterator[Example]:
    before: str | None = None
    for clause, labels in rows:
        if clause.end <= clause.start:
            continue
        st = statement(said, clause, Scene(known, HOUSE))
        about(st)
        if labels:
            yield Example(tuple(features(st, None if alone else before)), labels)
        before = labels[0] if labels else None


def _at_words(said: Spoken, firsts: Sequence[int]) -> list[int]:
    """The tokens at which the words with these indexes begin."""
    made, at = [], 0
    for first in firsts:
        while at < len(said.tokens) and said.tokens[at].first < first:
            at += 1
        made.append(at)
    return [*made, len(said.tokens)]


def of_narration(path: Path, packs: Packs) -> list[Example]:
    """The examples of a narration (its ``.jsonl``, with the gold beside it)."""
    known = lexicon(packs)
    said = spoken(read_narration(path).lines, known)
    gold = json.loads(path.with_name(f"{path.stem}.gold.json").read_text(encoding="utf-8"))
    source = path.parent / "written" / f"{path.stem}.txt"
    if source.exists() and "boundaries" in gold:
        at = _at_words(said, gold["boundaries"])
        clauses = [Clause(a, b) for a, b in pairwise(at)]
        return list(_examples(said, zip(clauses, map(_labels, read_source(source)), strict=True), known, alone=False))
    return list(_examples(said, ((c, _by_evidence(said, c, gold)) for c in said.clauses), known, alone=False))


def plain(text: str) -> list[str]:
    """The words of a text, letters and digits alone."""
    return ["".join(ch for ch in w.lower() if ch.isalnum()) for w in text.split()]


def _by_evidence(said: Spoken, clause: Clause, gold: dict[str, Any]) -> tuple[str, ...]:
    first, last = said.tokens[clause.start].first, said.tokens[clause.end - 1].last
    start = said.words[first].start
    words = [w for word in said.words[first : last + 1] for w in plain(word.text)]
    if any(a <= start <= b for a, b in gold["hypothetical_spans"]):
        return ("aside",)
    if any(abs(row["t"] - start) <= 1.0 for row in gold["superseded"]):
        return ()
    labels = []
    for record in gold["records"]:
        if abs(record["t"] - start) > _WITHIN:
            continue
        wanted = plain(record.get("evidence") or "")
        run = longest_run(words, wanted)
        if run >= min(3, len(wanted), len(words)) and 2 * run >= min(len(words), len(wanted)):
            labels.append(_label(record))
    return tuple(dict.fromkeys(labels)) or ("talk",)


def longest_run(one: Sequence[str], other: Sequence[str]) -> int:
    """How many words in a row two texts share."""
    best = 0
    for i in range(len(one)):
        for j in range(len(other)):
            n = 0
            while i + n < len(one) and j + n < len(other) and one[i + n] == other[j + n]:
                n += 1
            best = max(best, n)
    return best


def read_statements(path: Path) -> list[tuple[str, str]]:
    """(label, words) of a file of statements.

    Raises:
        UnlabelledError: with file and line.
    """
    made: list[tuple[str, str]] = []
    label = ""
    for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
        text = line.strip()
        if not text or text.startswith("#"):
            continue
        if text.startswith("["):
            label = text.strip("[]")
        elif label in LABELS:
            made.append((label, text))
        if label not in LABELS:
            raise UnlabelledError(f"{path.name}, line {number}: {label!r} is no label; they are {', '.join(LABELS)}")
    return made


def of_statements(rows: Sequence[tuple[str, str]], packs: Packs) -> list[Example]:
    """The examples of labelled statements, each by itself."""
    known = lexicon(packs)
    made: list[Example] = []
    for label, text in rows:
        said = spoken((Line(0.0, 5.0, text),), known)
        if said.tokens:
            whole = replace(said, clauses=[Clause(0, len(said.tokens))])
            made += _examples(whole, [(whole.clauses[0], (label,))], known, alone=True)
    return made
