"""Closing the record for a report: what a seal covers, what is signed, and whether the record still matches it.

Definition, version 1. The *heads* are the entries that no entry of their device follows (by ``prev``); a chain that
is whole has one, its last. Each head states the device, its number ``n``, its hash, and ``first``: the number at
which the unbroken run that ends in it begins. Heads are ordered by (device, n, hash), text by code points. The *root*
is the SHA-256 of the canonical JSON of the list of heads, each as an object of ``device``, ``first``, ``hash`` and
``n``. As every hash covers the one before it, the root fixes every entry down to ``first``. The seal's own entry is
written afterwards and is not covered, nor is anything else that comes later, so later entries never break a seal.

What is signed is the canonical JSON of ``{"act": "sealed", "body": …, "v": 1}``, where the body is that of the entry
without its ``signature``; so the signature covers root, heads, packs, facts, report, key, edition and reason.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from hashlib import sha256

from witnessmark.journal import ed25519, messages
from witnessmark.journal.acts import Head, PackUsed, Sealed
from witnessmark.journal.canonical import encode
from witnessmark.journal.chain import check_chains, positions
from witnessmark.journal.codec import hash_of
from witnessmark.journal.entry import Entry
from witnessmark.journal.ports import Signer
from witnessmark.journal.shapes import shape_of
from witnessmark.problems import Problem, Refusal

__all__ = ["check_seal", "message_of", "root_of", "seal"]


def root_of(entries: Iterable[Entry]) -> tuple[str, tuple[Head, ...]]:
    """The root (hex) over all chains of the entries, and the heads it is made of."""
    heads: list[Head] = []
    for device, chain in positions(entries).items():
        by_hash = {entry.hash: entry for held in chain.values() for entry in held}
        followed = {entry.prev for entry in by_hash.values()}
        heads += [
            Head(device, entry.n, hash_, _run(entry, by_hash)[-1].n)
            for hash_, entry in by_hash.items()
            if hash_ not in followed
        ]
    heads.sort(key=lambda head: (head.device, head.n, head.hash))
    return _root(heads), tuple(heads)


def message_of(sealed: Sealed) -> bytes:
    """The canonical bytes that are signed; whatever ``signature`` holds."""
    body = shape_of(Sealed).write(replace(sealed, signature=""), "sealed")
    return encode({"act": "sealed", "v": 1, "body": body})


def seal(
    entries: Iterable[Entry],
    *,
    facts: str,
    packs: Sequence[PackUsed],
    report: str | None,
    signer: Signer,
    edition: int = 1,
    why: str | None = None,
) -> Sealed:
    """The seal over the entries as they are now, signed; the caller writes it as the next entry.

    Args:
        entries: the whole record. Gaps and forks can be sealed, as nothing can be taken back; ``check_chains`` tells
            of them before and after.
        facts: SHA-256 (hex) of the job's facts as stored.
        packs: the packs the report was judged by.
        report: SHA-256 (hex) of the report's record, where there is one.
        signer: signs with Ed25519.
        edition: counts the reports issued for this job, from 1.
        why: why there is a further edition.

    Raises:
        Refusal: WM245 when there is nothing to seal, when entries of several jobs are mixed, or when some entry's
            content does not match its hash.
    """
    record = list(entries)
    if not record:
        raise Refusal(messages.SEAL_UNSAFE.at("seal", "there are no entries"))
    unsafe = {messages.CONTENT_CHANGED.number, messages.SAME_ID.number, messages.OTHER_JOB.number}
    refused = [problem for problem in check_chains(record) if problem.number in unsafe]
    if refused:
        raise Refusal(
            *(messages.SEAL_UNSAFE.at(p.where, f"{p.number} {p.message.what}", entries=p.entries) for p in refused)
        )
    root, heads = root_of(record)
    unsigned = Sealed(
        root=root,
        heads=heads,
        packs=tuple(sorted(packs, key=lambda pack: (pack.id, pack.version, pack.hash))),
        facts=facts,
        report=report,
        key=signer.public_key(),
        edition=edition,
        why=why,
    )
    return replace(unsigned, signature=signer.sign(message_of(unsigned)))


def check_seal(
    entry: Entry,
    entries: Iterable[Entry],
    facts_hash: str | None = None,
    *,
    key: str | None = None,
    rehash: bool = True,
) -> list[Problem]:
    """Exactly what does not match the seal; empty when the record is as it was sealed.

    Re-hashes every entry that the seal covers.

    Args:
        entry: the entry that holds the seal.
        entries: the record; what came after the seal does not matter.
        facts_hash: SHA-256 (hex) of the job's facts as they are now; not checked when None.
        key: the public key (hex) that must have signed; any key when None.
        rehash: False when the entries were just read from their lines, which checks each hash (``from_line``).
    """
    where = f"seal {entry.id}"
    sealed = entry.body
    if not isinstance(sealed, Sealed):
        return [messages.NOT_A_SEAL.at(f"entry {entry.id}", f"its act is {entry.act}", entries=(entry.id,))]
    problems: list[Problem] = []
    if _root(sealed.heads) != sealed.root:
        problems.append(messages.SEAL_ROOT.at(where, f"it holds {sealed.root}", entries=(entry.id,)))
    problems += _signature(sealed, where, entry.id, key)
    if facts_hash is not None and facts_hash != sealed.facts:
        detail = f"sealed {sealed.facts}, now {facts_hash}"
        problems.append(messages.SEAL_FACTS.at(where, detail, entries=(entry.id,)))
    chains = positions(entries)
    for head in sealed.heads:
        problems += _covered(head, chains.get(head.device, {}), where, rehash=rehash)
    return problems


def _root(heads: Iterable[Head]) -> str:
    shape = shape_of(Head)
    return sha256(encode([shape.write(head, "head") for head in heads])).hexdigest()


def _run(last: Entry, by_hash: Mapping[str, Entry]) -> list[Entry]:
    """The entry and those before it, as far back as each is there."""
    run = [last]
    while (before := by_hash.get(run[-1].prev)) is not None and before.n == run[-1].n - 1:
        run.append(before)
    return run


def _signature(sealed: Sealed, where: str, id_: str, key: str | None) -> list[Problem]:
    if not sealed.signature:
        return [messages.SEAL_SIGNATURE.at(where, "it bears no signature", entries=(id_,))]
    if key is not None and key != sealed.key:
        return [messages.SEAL_SIGNATURE.at(where, f"signed with {sealed.key}, not with {key}", entries=(id_,))]
    try:
        good = ed25519.verify(bytes.fromhex(sealed.key), message_of(sealed), bytes.fromhex(sealed.signature))
    except ValueError:
        return [messages.SEAL_SIGNATURE.at(where, "key or signature is not hex", entries=(id_,))]
    if good:
        return []
    return [messages.SEAL_SIGNATURE.at(where, f"key {sealed.key}", entries=(id_,))]


def _covered(head: Head, chain: Mapping[int, Sequence[Entry]], where: str, *, rehash: bool) -> list[Problem]:
    """Follow the chain from the head down, re-hashing; an entry that is not there ends the walk."""
    where = f"{where}, device {head.device}"
    problems: list[Problem] = []
    expected = head.hash
    for n in range(head.n, head.first - 1, -1):
        held = chain.get(n, ())
        entry = next((one for one in held if one.hash == expected), None)
        if entry is None:
            ids = tuple(one.id for one in held)
            what = f"entry {' and '.join(ids)} stands there with another hash" if held else "no entry is there"
            detail = f"number {n} was sealed with hash {expected}; {what}"
            if n > head.first:
                detail += f"; numbers {head.first} to {n - 1} cannot be followed past it"
            return [*problems, messages.SEAL_ENTRIES.at(where, detail, entries=ids)]
        if rehash and not _has_own_hash(entry):
            detail = f"number {n}, entry {entry.id}, no longer has the content it was sealed with"
            problems.append(messages.SEAL_ENTRIES.at(where, detail, entries=(entry.id,)))
        expected = entry.prev
    return problems


def _has_own_hash(entry: Entry) -> bool:
    try:
        return hash_of(entry) == entry.hash
    except Refusal:
        return False
