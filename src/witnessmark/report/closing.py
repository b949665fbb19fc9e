"""How the letter ends: what was not inspected, what the report is and is not, cautions, and the seal."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from witnessmark.journal.acts import Found, Ran, Sealed, Skipped
from witnessmark.journal.fold import Record
from witnessmark.journal.job import Job
from witnessmark.packs.model import Packs
from witnessmark.problems import Problem
from witnessmark.report.clock import spell
from witnessmark.report.letter import Seal, Statement
from witnessmark.report.naming import Names, capital, sentence
from witnessmark.report.wording import reason_words, telling
from witnessmark.views import doubts

__all__ = ["cautions_of", "doubts_of", "not_inspected_of", "scope_of", "seal_of"]

_LOOK = (
    "This report says what was seen, done and measured on the day of the visit, where it could be seen and reached. "
    "Nothing was taken apart, and nobody can see into walls, under soil or into the future."
)
_NO_CLAIM = (
    "It makes no statement that any part of the house is free of danger, and none that the house complies with any "
    "code. Where a limit from a code or guide is named, it is named so that you can look it up; whether it is a must "
    "for this house is for the local authority to say."
)
_TRADES = (
    "Before any repair, ask the licensed trade that the finding names. Local codes and the makers’ instructions come "
    "before anything said here."
)


def not_inspected_of(record: Record, names: Names) -> tuple[Statement, ...]:
    """Everything that was not inspected, where, and why."""
    rows = []
    for fact in record.facts:
        body = fact.body
        if not isinstance(body, Skipped):
            continue
        what = body.what or names.subject(fact) or names.place_of(fact) or "something"
        place = names.place_of(fact)
        where = f"{capital(place)}: " if place and place.lower() not in what.lower() else ""
        why = reason_words(body, names.packs)
        if not why and not body.words:
            why = "no reason was recorded"
        because = f", because {why.rstrip('.')}" if why else ""
        rows.append(Statement(sentence(f"{where}{what if where else capital(what)}{because}"), (fact.id,)))
    return tuple(rows)


def doubts_of(record: Record, names: Names) -> tuple[Statement, ...]:
    """What the inspector was not sure of, and what settled it."""
    rows = []
    for doubt in doubts(record, names.house):
        place = names.place_of(doubt.fact)
        words = sentence(f"{place}: {doubt.words}" if place else doubt.words).rstrip(".")
        if doubt.closed_by is None:
            rows.append(Statement(f"{words}. This was not settled.", (doubt.fact.id,)))
            continue
        told = telling(doubt.closed_by, names)
        rows.append(Statement(f"{words}. {told}", (doubt.fact.id, doubt.closed_by.id)))
    return tuple(rows)


def scope_of(job: Job, record: Record) -> tuple[str, ...]:
    """What this report is, and what it does not claim."""
    lines = [_LOOK, _NO_CLAIM, _TRADES, f"It was written for {job.client or 'the client'}."]
    if record.drafts:
        count = len(record.drafts)
        lines.append(
            f"{capital(spell(count))} proposal{'s' * (count != 1)} made by programs from speech or pictures "
            f"{'were' if count != 1 else 'was'} not accepted by a person and {'are' if count != 1 else 'is'} not used here."
        )
    if record.waiting:
        lines.append(f"Entries that wait for another device to be merged: {spell(len(record.waiting))}.")
    if record.unread:
        lines.append(f"Entries written by a newer program and not read here: {spell(len(record.unread))}.")
    if record.conflicts:
        lines.append(
            f"Entries amended in two places without knowledge of each other: {spell(len(record.conflicts))}; "
            "the later amendment holds."
        )
    return tuple(lines)


def _ids(record: Record, names: Names) -> Iterable[str]:
    packs = names.packs
    for fact in record.facts:
        body = fact.body
        kind = packs.kinds.get(names.house.kind_of(fact))
        if kind and isinstance(body, (Found, Ran)):
            yield from kind.cautions
        if isinstance(body, Found):
            condition = packs.conditions.get(body.condition or "")
            yield from condition.cautions if condition else ()
        if isinstance(body, Ran):
            procedure = packs.procedures.get(body.procedure or "")
            yield from procedure.cautions if procedure else ()


def cautions_of(record: Record, names: Names) -> tuple[str, ...]:
    """The cautions of the packs that go with what was found and run; each once."""
    packs = names.packs
    used = set(_ids(record, names))
    return tuple(
        [caution.words for caution in packs.cautions.values() if caution.id in used]
        + [capital(unknown.replace("-", " ")) for unknown in sorted(used - set(packs.cautions))]
    )


def _checked(verification: Sequence[Problem] | None) -> tuple[str, ...]:
    if verification is None:
        return ()
    if not verification:
        return ("When this letter was written the record was checked, and nothing in it failed to match.",)
    return tuple(
        f"{row.where}: {row.message.what}" + (f" ({row.detail})" if row.detail else "") + "." for row in verification
    )


def _replaces(seal: Sealed) -> str:
    if seal.edition <= 1:
        return ""
    why = f": {seal.why.rstrip('.')}" if seal.why else ""
    return f"This is edition {seal.edition} of this report; it replaces the one before{why}."


def seal_of(packs: Packs, seal: Sealed | None, verification: Sequence[Problem] | None) -> Seal:
    """The seal as printed. Without one, the packs as they are now, and no root."""
    if seal is None:
        used = tuple((file.id, file.version, file.hash) for file in packs.files)
        return Seal(0, "", "", "", "", "", "", (), used, _checked(verification))
    return Seal(
        edition=seal.edition,
        replaces=_replaces(seal),
        root=seal.root,
        key=seal.key,
        signature=seal.signature,
        facts=seal.facts,
        report=seal.report or "",
        heads=tuple((head.device, head.n, head.hash) for head in seal.heads),
        packs=tuple((pack.id, pack.version, pack.hash) for pack in seal.packs),
        checked=_checked(verification),
    )
