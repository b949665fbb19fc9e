"""The text that is learned from: narrations whose statements are known, and walks written one statement a line."""

from __future__ import annotations

import hashlib
import json
import random
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from witnessmark.listening import Line, Narration, read_narration
from witnessmark.listening.boundaries import features
from witnessmark.listening.lexicon import Lexicon
from witnessmark.listening.statements import rule_cuts

__all__ = ["Example", "from_narrations", "from_packs", "from_statements", "from_text", "hash_of"]

HERE = Path(__file__).parent
NARRATIONS = HERE.parents[1] / "tests" / "listening" / "narrations"
TEXT = HERE / "text"
STATEMENTS = HERE.parent / "train_votes" / "statements"
#: How many single statements make one walk.
_TOGETHER = 150
#: As the words of a line are counted (``listening.words``), within one written word.
_PIECES = re.compile(r"[^\W_]+(?:[.,/]\d+)*(?:['’][^\W\d_]+)*")
_WORD, _FEWEST, _MOST = 0.38, 3, 12


@dataclass(frozen=True, slots=True)
class Example:
    """One narration: what is true of each place, and whether a statement begins there."""

    name: str
    places: tuple[tuple[tuple[str, ...], bool], ...]


def _example(name: str, lines: Sequence[Line], begins: set[int], lexicon: Lexicon) -> Example:
    """*begins* are written words (counted over all lines) with which a statement begins."""
    around = rule_cuts(lines, lexicon)
    firsts: set[int] = set()
    written = piece = 0
    for line in lines:
        for word in line.text.split():
            if written in begins:
                firsts.add(piece)
            piece += max(1, len(_PIECES.findall(word)))
            written += 1
    tokens = around.tokens
    gold = {
        i for i in range(1, len(tokens)) if any(x in firsts for x in range(tokens[i - 1].last + 1, tokens[i].first + 1))
    }
    return Example(name, tuple((tuple(found), place in gold) for place, found in features(around)))


def from_narrations(lexicon: Lexicon) -> Iterator[Example]:
    """The development narrations whose gold says where statements begin; never those kept for validation."""
    for file in sorted(NARRATIONS.glob("*.gold.json")):
        gold = json.loads(file.read_text(encoding="utf-8"))
        if "boundaries" in gold:
            name = file.name.removesuffix(".gold.json")
            lines = read_narration(NARRATIONS / f"{name}.jsonl").lines
            yield _example(name, lines, set(gold["boundaries"]), lexicon)


def from_text(lexicon: Lexicon) -> Iterator[Example]:
    """The walks written for this, each cut into captions in two ways."""
    for file in sorted(TEXT.glob("*.txt")):
        statements = [line.strip() for line in file.read_text(encoding="utf-8").splitlines() if line.strip()]
        for way in (1, 2):
            lines, begins = _captioned(statements, f"{file.stem} {way}")
            yield _example(f"{file.stem} {way}", lines, begins, lexicon)


def from_statements(lexicon: Lexicon) -> Iterator[Example]:
    """The single statements written for the votes, in a drawn order: where one ends, another begins."""
    rows = [
        line.strip()
        for file in sorted(STATEMENTS.glob("*.txt"))
        for line in file.read_text(encoding="utf-8").splitlines()
        if line.strip() and line[0] not in "#["
    ]
    random.Random(7).shuffle(rows)  # noqa: S311 - an order, no secret
    for at in range(0, len(rows), _TOGETHER):
        lines, begins = _captioned(rows[at : at + _TOGETHER], f"statements {at}")
        yield _example(f"statements {at}", lines, begins, lexicon)


def from_packs(lexicon: Lexicon) -> Iterator[Example]:
    """The spoken forms of the packs' conditions, in a drawn order: each is a statement, and nothing begins inside it."""
    rows = sorted({form for condition in lexicon.packs.conditions.values() for form in condition.spoken})
    random.Random(3).shuffle(rows)  # noqa: S311 - an order, no secret
    for at in range(0, len(rows), _TOGETHER):
        lines, begins = _captioned(rows[at : at + _TOGETHER], f"packs {at}")
        yield _example(f"packs {at}", lines, begins, lexicon)


def _captioned(statements: Sequence[str], seed: str) -> tuple[tuple[Line, ...], set[int]]:
    rng = random.Random(seed)  # noqa: S311 - rhythm, no secret
    lines: list[Line] = []
    begins: set[int] = set()
    held: list[str] = []
    at, count, room = 0.0, 0, rng.randint(_FEWEST, _MOST)
    for statement in statements:
        begins.add(count)
        for word in statement.split():
            held.append(word)
            count += 1
            if len(held) == room:
                at = _close(lines, held, at, rng)
                held, room = [], rng.randint(_FEWEST, _MOST)
    if held:
        _close(lines, held, at, rng)
    return Narration("text", tuple(lines)).lines, begins


def _close(lines: list[Line], held: list[str], at: float, rng: random.Random) -> float:
    end = at + len(held) * _WORD
    lines.append(Line(at, end, " ".join(held), timed_end=False))
    return end + rng.choice((0.0, 0.0, 0.3, 1.0))


def hash_of() -> str:
    """The SHA-256 over every file that is learned from, so that the weights can say what they know."""
    made = hashlib.sha256()
    files = [
        *NARRATIONS.glob("*.jsonl"),
        *NARRATIONS.glob("*.gold.json"),
        *TEXT.glob("*.txt"),
        *STATEMENTS.glob("*.txt"),
    ]
    for file in sorted(files):
        made.update(file.name.encode() + b"\0" + file.read_bytes())
    return made.hexdigest()
