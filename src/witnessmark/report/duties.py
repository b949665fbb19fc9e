"""What was inspected and how, in the law's own order of duties: met, excused or open, and by what."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import groupby

from witnessmark.journal.fold import Fact, Record
from witnessmark.journal.job import Job
from witnessmark.judging.model import DutyCoverage, Standing, SubjectCoverage
from witnessmark.packs.model import Duty, Packs, Rulebook
from witnessmark.report.letter import DutyLine, NotAsked, SubjectLine, SystemDuties, Term
from witnessmark.report.naming import Names, sentence
from witnessmark.report.tongue import Tongue
from witnessmark.report.wording import SURENESS

__all__ = ["beyond_visit_of", "duties_of", "law_of", "not_asked_of", "not_required_of", "terms_of"]

_HOW = {
    "listed": "seen", "saw": "seen", "absent": "looked for, not there", "ran": "operated", "stopped": "operated",
    "read": "measured", "identified": "described", "took": "pictured", "skipped": "not inspected",
    "found": "reported", "doubted": "in doubt", "settled": "settled", "placed": "visited",
}  # fmt: skip
_SAYS = {"met": "Met.", "excused": "Excused.", "open": "Open.", "not asked": "Not asked."}
_NOT_DEMANDED = frozenset({"may", "not_required"})


def _note(duty: Duty) -> str:
    return SURENESS.get(duty.provenance.tag, duty.provenance.tag)


def _how(entries: tuple[str, ...], facts: Mapping[str, Fact], tongue: Tongue) -> str:
    ways = dict.fromkeys(_HOW[facts[e].act] for e in entries if e in facts and facts[e].act in _HOW)
    return tongue.join([tongue.say(way) for way in ways])


def _subject(row: SubjectCoverage, facts: Mapping[str, Fact], tongue: Tongue) -> SubjectLine:
    return SubjectLine(row.words, tongue.say(row.status), _how(row.entries, facts, tongue), row.entries, row.why)


def _line(row: DutyCoverage, facts: Mapping[str, Fact], tongue: Tongue) -> DutyLine:
    duty = row.duty
    says = tongue.say(_SAYS[row.status]) if row.status in _SAYS else sentence(row.status)
    if row.why:
        says = f"{says} {sentence(row.why)}"
    subjects = tuple(_subject(subject, facts, tongue) for subject in row.subjects if subject.status != "not asked")
    return DutyLine(duty.id, duty.section, sentence(duty.words), tongue.say(row.status), says, subjects, _note(duty))


def _listed(duty: Duty) -> DutyLine:
    words = sentence(duty.words)
    if duty.modality == "shall_not":
        words = f"Never: {duty.words[:1].lower()}{words[1:]}"
    return DutyLine(duty.id, duty.section, words, "", "", (), _note(duty))


def _rulebook(job: Job, packs: Packs) -> Rulebook | None:
    return packs.rulebooks.get(job.rulebook)


def _order(job: Job, packs: Packs) -> Mapping[str, int]:
    rulebook = _rulebook(job, packs)
    return {duty.id: i for i, duty in enumerate(rulebook.duties)} if rulebook else {}


def _in_order(standing: Standing, job: Job, packs: Packs) -> list[DutyCoverage]:
    order = _order(job, packs)
    return sorted(standing.duties, key=lambda row: order.get(row.duty.id, len(order)))


def duties_of(job: Job, record: Record, names: Names, standing: Standing) -> tuple[SystemDuties, ...]:
    """The duties that apply to this house, in the order of the law, by the system each is about."""
    facts = {fact.id: fact for fact in record.facts}
    rows = [row for row in _in_order(standing, job, names.packs) if row.status != "not asked"]
    return tuple(
        SystemDuties(
            system,
            names.system(system),
            tuple(_line(row, facts, names.tongue) for row in group),
        )
        for system, group in groupby(rows, key=lambda row: row.duty.system)
    )


def not_asked_of(job: Job, packs: Packs, standing: Standing) -> tuple[NotAsked, ...]:
    """What the law asks only where a house has it, and this one has not, by the reason."""
    rows = _in_order(standing, job, packs)
    whole = [(row.duty, row.duty.words, row.why) for row in rows if row.status == "not asked"]
    parts = [
        (row.duty, subject.words, subject.why)
        for row in rows
        if row.status != "not asked"
        for subject in row.subjects
        if subject.status == "not asked"
    ]
    by_why: dict[str, list[str]] = {}
    for duty, words, why in whole + parts:
        reason = sentence(why.removeprefix("not asked: "))
        by_why.setdefault(reason, []).append(f"{duty.section} {words}".strip().rstrip("."))
    return tuple(NotAsked(why, tuple(dict.fromkeys(words))) for why, words in by_why.items())


def beyond_visit_of(job: Job, packs: Packs, standing: Standing) -> tuple[DutyLine, ...]:
    """Duties of the law that no visit can meet: agreement, delivery, keeping of records, conduct."""
    rulebook, judged = _rulebook(job, packs), {row.duty.id for row in standing.duties}
    return tuple(
        _listed(duty)
        for duty in (rulebook.duties if rulebook else ())
        if duty.id not in judged
        and duty.modality not in _NOT_DEMANDED
        and duty.verb not in {"define", "notreq"}
        and not duty.tracked
    )


def not_required_of(job: Job, packs: Packs) -> tuple[DutyLine, ...]:
    """What the law expressly does not ask of an inspection."""
    rulebook = _rulebook(job, packs)
    return tuple(
        _listed(duty)
        for duty in (rulebook.duties if rulebook else ())
        if duty.modality != "shall_not" and (duty.verb == "notreq" or duty.modality == "not_required")
    )


def terms_of(job: Job, packs: Packs) -> tuple[Term, ...]:
    """Words as the law means them, paraphrased, with their section."""
    rulebook = _rulebook(job, packs)
    if rulebook is None:
        return ()
    rows = [
        Term(row.term, sentence(row.words), row.section, SURENESS.get(row.tag, row.tag)) for row in rulebook.definitions
    ]
    rows += [
        Term(duty.id, sentence(duty.words), duty.section, _note(duty))
        for duty in rulebook.duties
        if duty.verb == "define" and not rulebook.definitions
    ]
    return tuple(rows)


def law_of(job: Job, packs: Packs) -> tuple[str, ...]:
    """Which law the visit was made under: name, citation, period, and when its text was last checked."""
    rulebook = _rulebook(job, packs)
    if rulebook is None:
        return (
            f"The law named for this job ({job.rulebook or 'none'}) is not among the packs; its duties are not listed.",
        )
    until = f" until {rulebook.effective_to}" if rulebook.effective_to else ""
    since = f", in force from {rulebook.effective_from}{until}" if rulebook.effective_from else ""
    lines = [f"{rulebook.name} ({rulebook.citation}){since}."]
    if rulebook.verified:
        lines.append(sentence(f"text checked: {rulebook.verified}"))
    if rulebook.deliver:
        lines.append(sentence(f"the report is to be delivered {rulebook.deliver}"))
    if rulebook.retain_years:
        lines.append(f"The record is to be kept {rulebook.retain_years} years.")
    if rulebook.note:
        lines.append(sentence(rulebook.note))
    return tuple(lines)
