"""The whole letter from a job, its record, the packs and where the visit stands."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import fields, is_dataclass, replace
from datetime import datetime
from pathlib import Path

from witnessmark.journal.acts import Sealed
from witnessmark.journal.fold import Record
from witnessmark.journal.job import Job
from witnessmark.judging.model import Standing
from witnessmark.judging.scene import gather
from witnessmark.packs.model import Packs
from witnessmark.problems import Problem
from witnessmark.report.answered import answered_of
from witnessmark.report.clock import clock_of
from witnessmark.report.closing import cautions_of, doubts_of, not_inspected_of, scope_of, seal_of
from witnessmark.report.drawings import drawings_of
from witnessmark.report.duties import beyond_visit_of, duties_of, law_of, not_asked_of, not_required_of, terms_of
from witnessmark.report.editions import deliveries_of, editions_of
from witnessmark.report.evidence import evidence_of
from witnessmark.report.findings import findings_of, places_of, summary_of, systems_of
from witnessmark.report.glance import glance_of
from witnessmark.report.lawful import due_of, items_of, law_summary_of, law_texts_of, left_out_of, observed_of
from witnessmark.report.lawful_form import form_of
from witnessmark.report.letter import Finding, Letter
from witnessmark.report.messages import NO_RULEBOOK, SIGNS_REMOVED
from witnessmark.report.naming import names_of
from witnessmark.report.opening import INVENTED, draft_of, open_ends_of, opening_of
from witnessmark.report.operations import as_found_of, operations_of
from witnessmark.report.outlook import outlook_of
from witnessmark.report.printable import change_texts, printable, steers
from witnessmark.report.readings import readings_of
from witnessmark.report.showing import showing_of
from witnessmark.report.tongue import Tongue

__all__ = ["compose"]

_CITES = frozenset({"rests_on", "entry"})
#: Acts that say nothing of the house by themselves; they stand among the entries only where something rests on them.
_UNSAID = frozenset({"placed", "listed", "found", "sealed", "accepted", "dropped", "amended"})
_NOT_EVIDENCE = frozenset({"evidence", "problems", "seal", "drawings"})


def _cited(value: object) -> Iterator[str]:
    """Every entry id that any row of the letter cites."""
    if isinstance(value, tuple):
        for item in value:
            yield from _cited(item)
    elif is_dataclass(value):
        for field in fields(value):
            item = getattr(value, field.name)
            if field.name == "entry" and isinstance(value, Finding):
                continue  # the finding stands in full; it need not stand among the entries too
            if field.name in _CITES:
                yield from (item,) if isinstance(item, str) else item
            elif field.name not in _NOT_EVIDENCE:
                yield from _cited(item)


def _other_names(record: Record) -> dict[str, str]:
    """Amendments and acceptances by the entry they belong to: to cite one is to cite the entry."""
    names = {change: fact.id for fact in record.facts for change in fact.amended_by}
    return {change: base for change, base in names.items() if change != base}


def _cleaned(letter: Letter, others: Mapping[str, str]) -> Letter:
    removed: list[str] = []

    def change(text: str) -> str:
        clean = printable(others.get(text, text))
        if steers(text):
            removed.append(clean)
        return clean

    cleaned = change_texts(replace(letter, problems=()), change)
    problems = letter.problems
    if removed:
        problems += (SIGNS_REMOVED.at(letter.title, f"the first: {removed[0][:60]!r}"),)
    return replace(cleaned, problems=problems)


def compose(
    job: Job,
    record: Record,
    packs: Packs,
    standing: Standing,
    *,
    media: Callable[[str], Path | None],
    issued: datetime,
    pictures: Mapping[str, Path] | None = None,
    seal: Sealed | None = None,
    edition: tuple[int, str] | None = None,
    language: str = "en",
    verification: Sequence[Problem] | None = None,
) -> Letter:
    """The report as plain data.

    Args:
        job: the facts of the job.
        record: what now holds.
        packs: kinds, limits and the rulebook in force.
        standing: loose ends, duties and judged readings; while any of them blocks, the letter is a draft.
        media: where a file of the record lies, by its SHA-256; None when it is not there.
        issued: date and time the letter bears, with offset.
        pictures: displayable stand-ins (JPEG or PNG) by the SHA-256 of files that no page shows, such as thermal frames.
        seal: the record's seal, once there is one.
        edition: number and reason of the edition that this letter is about to be issued as, before there is its seal.
        language: in which our own words are said (``tongue.LANGUAGES``); words of people stay as they are.
        verification: problems met when the record was hashed again; None when that was not done.

    Returns:
        The letter. Same arguments, same letter. What could not be shown or cited is in ``Letter.problems``.
    """
    tongue = Tongue.of(language, packs)
    clock, names = clock_of(job.date, record, tongue), names_of(record, packs, tongue)
    scene = gather(record, packs, job, standing.at)
    showing = showing_of(record, names, clock, media, pictures or {})
    stakes = findings_of(record, names, clock, showing)
    findings = [finding for group in stakes for finding in group.findings]
    outlook = outlook_of(job, record, names)
    operations = operations_of(record, names, clock, standing)
    opening = opening_of(job, record, packs, clock=clock, issued=issued)
    problems: Iterable[Problem] = showing.problems
    if job.rulebook not in packs.rulebooks:
        problems = (*problems, NO_RULEBOOK.at("job.toml", job.rulebook or "rulebook is empty"))
    letter = Letter(
        job=job.id,
        title=tongue.say(
            "Inspection of {where}", where=", ".join(part for part in (opening.address, opening.town) if part)
        ),
        language="en-US" if tongue.language == "en" else tongue.language,
        invented=tongue.say(INVENTED) if job.invented else "",
        draft=draft_of(standing, tongue, sealed=seal is not None),
        opening=opening,
        open_ends=open_ends_of(standing),
        editions=editions_of(record, (seal.edition, seal.why or "") if seal else edition, names, clock),
        law_texts=law_texts_of(scene),
        law_summary=law_summary_of(scene, findings),
        answered=answered_of(record, names, clock, showing, {finding.entry: finding for finding in findings}),
        summary=summary_of(stakes, tongue),
        stakes=stakes,
        glance=glance_of(job, record, names, showing),
        places=places_of(stakes, names),
        systems=systems_of(stakes, record, names),
        law=(*law_of(job, packs), *filter(None, [due_of(scene, names)])),
        form=form_of(scene, names, findings),
        items=items_of(scene, names),
        observed=observed_of(scene, names),
        duties=duties_of(job, record, names, standing),
        not_asked=not_asked_of(job, packs, standing),
        beyond_visit=beyond_visit_of(job, packs, standing),
        not_inspected=not_inspected_of(record, names),
        left_out=left_out_of(scene),
        not_required=not_required_of(job, packs),
        doubts=doubts_of(record, names),
        operations=operations,
        as_found=as_found_of(record, names, operations),
        readings=readings_of(record, names, clock, standing),
        pictures=showing.pictures,
        filed=showing.filed,
        outlook=outlook,
        scope=scope_of(job, record, tongue),
        cautions=cautions_of(record, names),
        terms=terms_of(job, packs),
        evidence=(),
        deliveries=deliveries_of(record, names, clock),
        seal=seal_of(packs, seal, verification, tongue),
        drawings=drawings_of(record, names, standing, outlook),
        problems=tuple(problems),
    )
    others = _other_names(record)
    letter = _cleaned(letter, others)
    cited = [*_cited(letter), *(fact.id for fact in record.facts if fact.act not in _UNSAID)]
    evidence, missing = evidence_of(cited, record=record, names=names, clock=clock, standing=standing, showing=showing)
    return replace(letter, evidence=change_texts(evidence, printable), problems=(*letter.problems, *missing))
