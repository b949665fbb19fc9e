"""Answers the questions of the browser proof; run by CPython and by Python in WebAssembly on the same source files.

``answers`` takes plain JSON data and gives plain JSON data, so that both can be compared to the byte.
"""

from __future__ import annotations

import importlib
import json
import pkgutil
import struct
from dataclasses import replace
from datetime import timedelta
from hashlib import sha256
from pathlib import Path
from typing import Any

from witnessmark.gauges import evaluate, gauges
from witnessmark.journal.acts import Sealed
from witnessmark.journal.canonical import encode
from witnessmark.journal.chain import check_chains
from witnessmark.journal.codec import hash_of, to_line, to_plain
from witnessmark.journal.ed25519 import verify
from witnessmark.journal.entry import Unread
from witnessmark.journal.fold import Fact, Record, fold, problems_of
from witnessmark.journal.identity import Ids, is_id, new_id
from witnessmark.journal.job_codec import facts_hash, job_from_toml, job_to_toml
from witnessmark.journal.lines import read_lines, write_lines
from witnessmark.journal.merge import merge
from witnessmark.journal.moment import instant, text_of
from witnessmark.journal.pen import Pen
from witnessmark.journal.schema import schema_files
from witnessmark.journal.seal import check_seal, root_of
from witnessmark.judging import draft_findings, standing
from witnessmark.packs import read as read_packs
from witnessmark.problems import Problem, Refusal

#: The packages that must run in a phone's browser.
PACKAGES = ("units", "journal", "packs", "views", "judging", "listening", "gauges")


def answers(questions: dict[str, Any]) -> dict[str, Any]:
    """What the code says to each question."""
    entries, problems = read_lines(questions["journal"].encode(), "journal.jsonl")
    return {
        "imported": imported(),
        "canonical": [encode(value).decode() for value in questions["values"]],
        "numbers": [encode(struct.unpack(">d", bytes.fromhex(bits))[0]).decode() for bits in questions["doubles"]],
        "refused": [refusal(value) for value in questions["refused"]],
        "times": [text_of(instant(text) + timedelta(microseconds=1)) for text in questions["times"]],
        "journal": digest(write_lines(entries)),
        "journal problems": told(problems),
        "hashes": [hash_of(entry) for entry in entries],
        "plain": digest(encode([to_plain(entry) for entry in entries])),
        "damaged": [told(read_lines(line.encode(), "line")[1]) for line in questions["damaged"]],
        "folds": [folded(fold(entries[k:] + entries[:k:2])) for k in questions["cuts"]],
        "merged": digest(write_lines(merge(entries[::2], entries[::-1])[0])),
        "chains": [told(check_chains(entries[:k] + entries[k + 1 :])) for k in questions["cuts"]],
        "changed": told(check_chains([replace(entries[0], by="X"), *entries[1:]], instant(questions["times"][0]))),
        "root": root_of(entries)[0],
        "seals": [
            told(check_seal(entry, [one for n, one in enumerate(entries) if n != k], questions["facts hash"]))
            for entry in entries
            if isinstance(entry.body, Sealed)
            for k in (-1, *questions["cuts"])
        ],
        "signatures": [verify(*(bytes.fromhex(part) for part in row)) for row in questions["signatures"]],
        "facts": facts_hash(questions["job"].encode()),
        "job": job_to_toml(job_from_toml(questions["job"].encode(), "job.toml")).decode(),
        "schemas": {name: digest(data) for name, data in schema_files().items()},
        "ids": [Ids(lambda bits: 2**bits // 3).new(7), is_id(new_id())],
        "written": written(questions),
        "standing": judged(questions, fold(entries)),
        "gauges": measured(),
    }


def measured() -> dict[str, Any]:
    """The value of every gauge's example, to nine figures: mathematical libraries differ in the last."""
    found = {}
    for name, one in gauges().items():
        answer = evaluate(name, one.example)
        value = "" if answer.value is None else f"{float(answer.value):.9g} {answer.unit}"
        found[name] = [value, [also.name for also in answer.also], answer.verdict and answer.verdict.outcome]
    return found


def imported() -> list[str]:
    """Every module of the packages, imported."""
    names = []
    for package in PACKAGES:
        root = importlib.import_module(f"witnessmark.{package}")
        names += [f"witnessmark.{package}"]
        names += [info.name for info in pkgutil.walk_packages(root.__path__, f"{root.__name__}.")]
    for name in names:
        importlib.import_module(name)
    return sorted(names)


def digest(data: bytes) -> str:
    return sha256(data).hexdigest()


def told(problems: list[Problem]) -> list[str]:
    return [str(problem) for problem in problems]


def refusal(text: str) -> str:
    try:
        return encode(json.loads(text)).decode()
    except Refusal as refused:
        return str(refused)


def folded(record: Record) -> str:
    """The digest of everything that holds."""
    return digest(
        encode(
            {
                "facts": [fact(one) for one in record.facts],
                "drafts": [fact(one) for one in record.drafts],
                "dismissed": [[fact(one.fact), one.by, one.why] for one in record.dismissed],
                "waiting": [entry.id for entry in record.waiting],
                "unread": [entry.id for entry in record.unread],
                "conflicts": [[one.of, list(one.amendments)] for one in record.conflicts],
                "entries": [entry.hash for entry in record.entries.values()],
                "problems": told(problems_of(record)),
            }
        )
    )


def fact(one: Fact) -> list[object]:
    body = to_line(replace(one.entry, act=one.act, v=one.v, body=one.body, hash="")).decode()
    return [one.id, body, one.place, one.component, one.at, list(one.media), list(one.amended_by), one.accepted_by]


def written(questions: dict[str, Any]) -> list[str]:
    """Lines that a pen writes after the journal: the same, given the same clock and ids."""
    entries, _ = read_lines(questions["journal"].encode(), "journal.jsonl")
    last = entries[-1]
    now = instant(last.logged)
    pen = Pen(last.job, "I. Example", "browser", now=lambda: now, ids=Ids(lambda bits: 2**bits // 5))
    bodies = [entry.body for entry in entries if not isinstance(entry.body, Unread)]
    return [to_line(pen.write(body)).decode() for body in bodies[:20]]


def judged(questions: dict[str, Any], record: Record) -> str:
    """The digest of where the visit stands under the shipped packs."""
    packs = read_packs()
    job = job_from_toml(questions["job"].encode(), "job.toml")
    stands = standing(record, packs, job, instant(questions["times"][0]))
    return digest(repr((packs.files, stands, draft_findings(record, packs, stands))).encode())


if __name__ == "__main__":
    Path("/answers.json").write_text(json.dumps(answers(json.loads(Path("/questions.json").read_text()))))
