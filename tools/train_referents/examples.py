"""What is the ranking trained on? The statements of a narration, as the listener cuts them, beside the gold records in them.

A candidate is right when its label names the component of such a record. The narration is heard with the weights given,
so that later statements are met in the discourse that those weights lead to.
"""

from __future__ import annotations

import difflib
import json
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from narrate.source import read_source
from train_votes.examples import longest_run, plain
from witnessmark.listening import read_narration
from witnessmark.listening.listener import listened
from witnessmark.listening.referents import Weighed, best
from witnessmark.packs.model import Packs

__all__ = ["Example", "of_narration", "same_component"]

_SMALL = frozenset({"the", "a", "of", "main", "kitchen", "hall", "master", "bathroom"})
_ALIKE = 0.6
#: Evidence is looked for within so many seconds of its record, in runs of so many words.
_WITHIN, _RUN = 12.0, 3


@dataclass(frozen=True, slots=True)
class Example:
    """The features of each candidate, and which of them are right; the rules' choice is the first."""

    features: tuple[tuple[str, ...], ...]
    right: tuple[bool, ...]

    def chosen(self, weights: Mapping[str, float]) -> int:
        """The candidate that these weights choose."""
        return best(self.features, weights)


def same_component(label: str, component: str) -> bool:
    """Whether two plain names are of the same thing: they share a word, or look alike."""
    one, other = ({w.rstrip("s") for w in re.findall(r"[a-z]+", text.lower())} - _SMALL for text in (label, component))
    return bool(one & other) or difflib.SequenceMatcher(None, label.lower(), component.lower()).ratio() > _ALIKE


def of_narration(path: Path, packs: Packs, weights: Mapping[str, float]) -> list[Example]:
    """The examples of a narration (its ``.jsonl``, with the gold beside it)."""
    weighed: list[Weighed] = []
    listened(read_narration(path), packs, weights=weights, watch=weighed.append)
    gold = json.loads(path.with_name(f"{path.stem}.gold.json").read_text(encoding="utf-8"))
    source = path.parent / "written" / f"{path.stem}.txt"
    spans = _spans(source, gold) if source.exists() and "boundaries" in gold else None
    made: dict[tuple[int, int], Example] = {}
    for row in weighed:
        st = row.statement
        at = (st.tokens[0].first, st.tokens[-1].last)
        components = _within(spans, *at) if spans is not None else _by_evidence(row, gold)
        if components:
            right = tuple(any(same_component(one.thing.label, c) for c in components) for one in row.candidates)
            made[at] = Example(tuple(map(tuple, row.features)), right)
    return list(made.values())


def _spans(source: Path, gold: dict[str, Any]) -> list[tuple[int, int, list[str]]]:
    starts = [*gold["boundaries"], 1 << 40]
    return [
        (starts[i], starts[i + 1], [r["component"] for r in said.records])
        for i, said in enumerate(read_source(source))
        if said.sort != "taken back" and said.records
    ]


def _within(spans: Sequence[tuple[int, int, list[str]]], first: int, last: int) -> list[str]:
    """The components of the gold statements of which at least half is in these words, or the other way round."""
    found: list[str] = []
    for start, end, components in spans:
        shared = min(last + 1, end) - max(first, start)
        if shared > 0 and 2 * shared >= min(last + 1 - first, end - start):
            found += components
    return found


def _by_evidence(row: Weighed, gold: dict[str, Any]) -> list[str]:
    st = row.statement
    words = [w for word in st.words[st.tokens[0].first : st.tokens[-1].last + 1] for w in plain(word.text)]
    found = []
    for record in gold["records"]:
        wanted = plain(record.get("evidence") or "") if abs(record["t"] - st.start) <= _WITHIN else []
        if not wanted:
            continue
        run = longest_run(words, wanted)
        if run >= min(_RUN, len(wanted), len(words)) and 2 * run >= min(len(words), len(wanted)):
            found.append(record["component"])
    return found
