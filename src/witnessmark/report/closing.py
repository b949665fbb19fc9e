"""How the letter ends: what was not inspected, what the report is and is not, cautions, and the seal."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from witnessmark.journal.acts import Found, Ran, Sealed, Skipped
from witnessmark.journal.fold import Record
from witnessmark.journal.job import Job
from witnessmark.packs.model import Packs
from witnessmark.problems import Problem
from witnessmark.report.letter import Seal, Statement
from witnessmark.report.naming import Names, capital, sentence
from witnessmark.report.tongue import Tongue
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

_AS_RECORDED = (
    "What people wrote or said, the texts of the law, and what readings were held against stand as they were recorded."
)


def not_inspected_of(record: Record, names: Names) -> tuple[Statement, ...]:
    """Everything that was not inspected, where, and why."""
    say = names.tongue.say
    rows = []
    for fact in record.facts:
        body = fact.body
        if not isinstance(body, Skipped):
            continue
        what = body.what or names.subject(fact) or names.place_of(fact) or say("something")
        place = names.place_of(fact)
        where = f"{capital(place)}: " if place and place.lower() not in what.lower() else ""
        why = reason_words(body, names)
        if not why and not body.words:
            why = say("no reason was recorded")
        because = say(", because {why}", why=why.rstrip(".")) if why else ""
        rows.append(Statement(sentence(f"{where}{what if where else capital(what)}{because}"), (fact.id,)))
    return tuple(rows)


def doubts_of(record: Record, names: Names) -> tuple[Statement, ...]:
    """What the inspector was not sure of, and what settled it."""
    rows = []
    for doubt in doubts(record, names.house):
        place = names.place_of(doubt.fact)
        words = sentence(f"{place}: {doubt.words}" if place else doubt.words).rstrip(".")
        if doubt.closed_by is None:
            rows.append(Statement(f"{words}. {names.tongue.say('This was not settled.')}", (doubt.fact.id,)))
            continue
        told = telling(doubt.closed_by, names)
        rows.append(Statement(f"{words}. {told}", (doubt.fact.id, doubt.closed_by.id)))
    return tuple(rows)


def scope_of(job: Job, record: Record, tongue: Tongue) -> tuple[str, ...]:
    """What this report is, and what it does not claim."""
    say = tongue.say
    lines = [say(_LOOK), say(_NO_CLAIM), say(_TRADES)]
    lines.append(say("It was written for {client}.", client=job.client or say("the client")))
    for words, rows in (
        ("Proposals that programs made from speech or pictures, which no person accepted and which are not used here: {count}.",
         record.drafts),
        ("Entries that wait for another device to be merged: {count}.", record.waiting),
        ("Entries written by a newer program and not read here: {count}.", record.unread),
        ("Entries amended in two places without knowledge of each other, of which the later amendment holds: {count}.",
         record.conflicts),
    ):  # fmt: skip
        if rows:
            lines.append(say(words, count=tongue.number(len(rows))))
    if tongue.language != "en":
        lines.append(say(_AS_RECORDED))
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
        [names.tongue.row("caution", row.id, "words", row.words) for row in packs.cautions.values() if row.id in used]
        + [capital(unknown.replace("-", " ")) for unknown in sorted(used - set(packs.cautions))]
    )


def _checked(verification: Sequence[Problem] | None, tongue: Tongue) -> tuple[str, ...]:
    if verification is None:
        return ()
    if not verification:
        return (tongue.say("When this letter was written the record was checked, and nothing in it failed to match."),)
    return tuple(
        f"{row.where}: {row.message.what}" + (f" ({row.detail})" if row.detail else "") + "." for row in verification
    )


def _replaces(seal: Sealed, tongue: Tongue) -> str:
    if seal.edition <= 1:
        return ""
    why = f": {seal.why.rstrip('.')}" if seal.why else ""
    return tongue.say(
        "This is edition {edition} of this report; it replaces the one before{why}.", edition=seal.edition, why=why
    )


def seal_of(packs: Packs, seal: Sealed | None, verification: Sequence[Problem] | None, tongue: Tongue) -> Seal:
    """The seal as printed. Without one, the packs as they are now, and no root."""
    if seal is None:
        used = tuple((file.id, file.version, file.hash) for file in packs.files)
        return Seal(0, "", "", "", "", "", "", (), used, _checked(verification, tongue))
    return Seal(
        edition=seal.edition,
        replaces=_replaces(seal, tongue),
        root=seal.root,
        key=seal.key,
        signature=seal.signature,
        facts=seal.facts,
        report=seal.report or "",
        heads=tuple((head.device, head.n, head.hash) for head in seal.heads),
        packs=tuple((pack.id, pack.version, pack.hash) for pack in seal.packs),
        checked=_checked(verification, tongue),
    )
