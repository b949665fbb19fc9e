"""Seals: what they cover, that later entries do not break them, and that every change is named."""

from __future__ import annotations

import dataclasses
import json
from datetime import timedelta
from hashlib import sha256

import pytest
import rfc8785
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey, Ed25519PublicKey
from hypothesis import given, settings
from hypothesis import strategies as st

from visit_builder import START, build_visit
from witnessmark.journal.acts import Head, PackUsed, Saw, Sealed
from witnessmark.journal.codec import to_line, with_hash
from witnessmark.journal.entry import Entry
from witnessmark.journal.pen import Pen
from witnessmark.journal.seal import check_seal, message_of, root_of, seal
from witnessmark.problems import Refusal

VISIT = build_visit(60, seed=21)
PHONE = [entry for entry in VISIT if entry.device == "phone-a"]
TABLET = [entry for entry in VISIT if entry.device == "tablet-b"]
FACTS = sha256(b"facts").hexdigest()
PACKS = [PackUsed("kinds", "1", "ab" * 32), PackUsed("criteria", "2", "cd" * 32)]


class Key:
    """Signs with the library."""

    def __init__(self, seed: bytes = b"key") -> None:
        self._key = Ed25519PrivateKey.from_private_bytes(sha256(seed).digest())

    def public_key(self) -> str:
        return self._key.public_key().public_bytes_raw().hex()

    def sign(self, message: bytes) -> str:
        return self._key.sign(message).hex()


KEY = Key()


def on(entry: Entry) -> Pen:
    return Pen(entry.job, entry.by, entry.device, entry.n, entry.hash, now=lambda: START + timedelta(hours=5))


def sealed_entry(entries: list[Entry], after: Entry = PHONE[-1]) -> Entry:
    return on(after).write(seal(entries, facts=FACTS, packs=PACKS, report="ef" * 32, signer=KEY, edition=1, why=None))


SEAL = sealed_entry(VISIT)


def details(entry: Entry, entries: list[Entry], facts: str | None = None) -> list[tuple[str, str, tuple[str, ...]]]:
    return [(p.number, p.detail, p.entries) for p in check_seal(entry, entries, facts)]


def test_the_root_is_what_its_definition_says() -> None:
    root, heads = root_of(VISIT)
    expected = [
        {"device": chain[-1].device, "first": 1, "hash": chain[-1].hash, "n": len(chain)} for chain in (PHONE, TABLET)
    ]
    assert heads == tuple(Head(row["device"], row["n"], row["hash"]) for row in expected)  # type: ignore[arg-type] # as built
    assert root == sha256(rfc8785.dumps(expected)).hexdigest()  # type: ignore[arg-type] # as built
    assert root_of(VISIT[::-1] + VISIT) == (root, heads)
    assert root_of([])[1] == ()


def test_what_is_signed_is_what_its_definition_says() -> None:
    body = json.loads(to_line(SEAL))["body"]
    signature = body.pop("signature")
    message = rfc8785.dumps({"act": "sealed", "body": body, "v": 1})
    assert isinstance(SEAL.body, Sealed)
    assert message_of(SEAL.body) == message
    Ed25519PublicKey.from_public_bytes(bytes.fromhex(body["key"])).verify(bytes.fromhex(signature), message)
    assert [pack["id"] for pack in body["packs"]] == ["criteria", "kinds"]


def test_a_record_as_sealed_matches_in_any_order_and_with_anything_later() -> None:
    assert check_seal(SEAL, VISIT, FACTS, key=KEY.public_key()) == []
    later = on(SEAL).write(Saw("asked about afterwards"))
    other = on(TABLET[-1]).write(Saw("on the other device"))
    fork = on(PHONE[3]).write(Saw("from a backup"))
    assert check_seal(SEAL, [*VISIT[::-1], SEAL, later, other, fork], FACTS) == []


def test_a_missing_entry_is_named() -> None:
    (problem,) = details(SEAL, [entry for entry in VISIT if entry is not PHONE[4]])
    assert problem[0] == "WM241"
    assert "number 5 was sealed" in problem[1]
    assert "no entry is there" in problem[1]
    assert "numbers 1 to 4" in problem[1]
    assert len(details(SEAL, [])) == 2


def test_the_missing_last_entry_is_named() -> None:
    (problem,) = check_seal(SEAL, [entry for entry in VISIT if entry is not TABLET[-1]])
    assert problem.where.endswith("device tablet-b")
    assert f"number {len(TABLET)} " in problem.detail


@given(st.integers(0, len(VISIT) - 1))
@settings(max_examples=30, deadline=None)
def test_any_changed_entry_is_named_whether_its_hash_was_made_to_fit_or_not(which: int) -> None:
    changed = dataclasses.replace(VISIT[which], by="Someone else")
    for forged in (changed, with_hash(dataclasses.replace(changed, hash=""))):
        (problem,) = check_seal(SEAL, [*VISIT[:which], forged, *VISIT[which + 1 :]])
        assert problem.number == "WM241"
        assert problem.entries == (forged.id,)
        assert f"number {forged.n}" in problem.detail
        assert problem.where.endswith(f"device {forged.device}")


def test_a_gap_at_sealing_stays_a_gap_and_only_what_went_missing_later_is_named() -> None:
    gapped = [entry for entry in VISIT if entry not in PHONE[3:6]]
    entry = sealed_entry(gapped)
    assert isinstance(entry.body, Sealed)
    assert [(head.device, head.first, head.n) for head in entry.body.heads] == [
        ("phone-a", 1, 3), ("phone-a", 7, len(PHONE)), ("tablet-b", 1, len(TABLET)),
    ]  # fmt: skip
    assert check_seal(entry, gapped) == []
    assert check_seal(entry, VISIT) == []  # what was missing has come
    (problem,) = details(entry, [one for one in gapped if one is not PHONE[6]])
    assert "number 7 was sealed" in problem[1]


def test_a_run_ends_where_the_count_does_not_follow() -> None:
    forged = dataclasses.replace(on(PHONE[3]).write(Saw("its number jumps")), n=PHONE[3].n + 5, hash="")
    forged = with_hash(forged)
    _, heads = root_of([*PHONE[:4], forged])
    assert heads == (Head("phone-a", forged.n, forged.hash, forged.n),)


def test_both_branches_of_a_fork_are_sealed() -> None:
    pen = on(PHONE[3])
    branch = [pen.write(Saw("from a backup")) for _ in range(2)]
    entry = sealed_entry([*VISIT, *branch])
    assert check_seal(entry, [*VISIT, *branch]) == []
    (problem,) = details(entry, [*VISIT, branch[1]])
    assert "number 5 was sealed" in problem[1]
    assert problem[2] == (PHONE[4].id,)


def test_other_facts_are_named() -> None:
    assert [row[0] for row in details(SEAL, VISIT, sha256(b"other").hexdigest())] == ["WM243"]


CHANGES: list[tuple[dict[str, object], set[str]]] = [
    ({"root": "0" * 64}, {"WM240", "WM242"}),
    ({"heads": ()}, {"WM240", "WM242"}),
    ({"facts": "0" * 64}, {"WM242", "WM243"}),
    ({"packs": ()}, {"WM242"}),
    ({"report": None}, {"WM242"}),
    ({"edition": 2}, {"WM242"}),
    ({"why": "because"}, {"WM242"}),
    ({"key": Key(b"other").public_key()}, {"WM242"}),
    ({"key": "not hex"}, {"WM242"}),
    ({"signature": "0" * 128}, {"WM242"}),
    ({"signature": ""}, {"WM242"}),
]


@pytest.mark.parametrize(("change", "numbers"), CHANGES, ids=[next(iter(change)) for change, _ in CHANGES])
def test_a_changed_seal_is_named(change: dict[str, object], numbers: set[str]) -> None:
    assert isinstance(SEAL.body, Sealed)
    forged = dataclasses.replace(SEAL, body=dataclasses.replace(SEAL.body, **change))  # type: ignore[arg-type] # as listed
    assert {problem.number for problem in check_seal(forged, VISIT, FACTS)} == numbers


def test_a_seal_by_another_key_is_named_when_the_key_is_known() -> None:
    (problem,) = check_seal(SEAL, VISIT, key=Key(b"other").public_key())
    assert problem.number == "WM242"


def test_only_a_seal_can_be_checked() -> None:
    assert [row[0] for row in details(VISIT[0], VISIT)] == ["WM244"]


def test_a_record_that_vouches_for_nothing_is_not_sealed() -> None:
    changed = dataclasses.replace(PHONE[0], by="Someone else")
    for entries in ([], [changed, *PHONE[1:]], [*VISIT, *build_visit(30, seed=22)], [*VISIT, with_hash(changed)]):
        with pytest.raises(Refusal) as caught:
            seal(entries, facts=FACTS, packs=PACKS, report=None, signer=KEY)
        assert {problem.number for problem in caught.value.problems} == {"WM245"}
