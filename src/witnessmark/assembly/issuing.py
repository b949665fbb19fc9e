"""The report of a job: written as a draft at any time, issued once nothing that blocks is open."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from witnessmark.assembly import messages
from witnessmark.assembly.jobs import OpenJob
from witnessmark.assembly.keys import FileSigner
from witnessmark.assembly.pictures import displayable
from witnessmark.journal.acts import PackUsed, Sealed, Settled
from witnessmark.journal.entry import Entry
from witnessmark.journal.fold import fold
from witnessmark.journal.job_codec import facts_hash
from witnessmark.journal.moment import instant
from witnessmark.journal.seal import seal
from witnessmark.packs.model import Packs
from witnessmark.problems import Problem, Refusal
from witnessmark.report import (
    Letter,
    begin_pdf,
    compose,
    prepare,
    report_hash,
    write_html,
    write_pdf,
    write_reminders,
    write_single,
    write_tables,
)
from witnessmark.report.tongue import LANGUAGES
from witnessmark.stores.job_file import read_facts
from witnessmark.views import is_delivery

__all__ = ["LANGUAGES", "Made", "Tell", "issue_report", "present_letter", "write_report"]

#: The whole page in one file, to be sent.
SINGLE = "report.html"

Tell = Callable[[int, int], None]


@dataclass(frozen=True, slots=True)
class Made:
    """What was written: where, whether it is a draft, how many ends keep it from being issued, and problems met."""

    html: Path
    pdf: Path
    data: Path
    draft: bool
    open_ends: int
    edition: int
    problems: tuple[Problem, ...]

    def as_json(self) -> dict[str, object]:
        """Plain data for ``--json``."""
        return {
            "html": str(self.html),
            "pdf": str(self.pdf),
            "data": str(self.data),
            "draft": self.draft,
            "blocking": self.open_ends,
            "edition": self.edition,
            "problems": [problem.as_json() for problem in self.problems],
        }


def _silent(_done: int, _whole: int) -> None:
    return


def write_report(
    job: OpenJob,
    packs: Packs,
    *,
    out: Path | None = None,
    at: datetime | None = None,
    language: str = "en",
    tell: Tell = _silent,
) -> Made:
    """Write the report as the record stands: as issued when the last seal still covers everything, else as a draft.

    *language* is that of our own sentences and of the packs' texts; words of people stay as they are. What is sealed is
    the report in English: another language is a translation of it, and says so.

    Raises:
        Refusal: WM909 when nothing is recorded, or numbers of the report when it cannot be written.
    """
    letter, problems = present_letter(job, packs, at=at, language=language)
    return _write(job, letter, out or _home(job, language), tell, problems)


def present_letter(
    job: OpenJob, packs: Packs, *, at: datetime | None = None, language: str = "en"
) -> tuple[Letter, tuple[Problem, ...]]:
    """The letter as the record stands, and what could not be read of the record.

    Raises:
        Refusal: WM909 when nothing is recorded.
    """
    entries, problems = job.entries()
    if not entries:
        raise Refusal(messages.NOTHING_TO_SEAL.at(str(job.folder)))
    by_id = {entry.id: entry for entry in entries}
    of_the_house = [entry for entry in entries if not is_delivery(entry, by_id)]
    newest = max(of_the_house, key=lambda entry: (instant(entry.logged), entry.id))
    if isinstance(newest.body, Sealed):
        letter = _letter(job, packs, instant(newest.at), seal_in_force=newest.body, language=language)
    else:
        letter = _letter(job, packs, at or job.now(), seal_in_force=None, language=language)
    return letter, tuple(problems)


def _home(job: OpenJob, language: str) -> Path:
    """Where a report goes unless said: the one that is sealed, in English, and translations beside it."""
    return job.folder / ("report" if language == "en" else f"report-{language}")


def issue_report(
    job: OpenJob,
    packs: Packs,
    *,
    key: Path,
    out: Path | None = None,
    at: datetime | None = None,
    why: str | None = None,
    tell: Tell = _silent,
) -> Made:
    """Seal the record and write the report as issued. A further edition needs ``why``.

    Raises:
        Refusal: WM908 while loose ends block it, WM909 when nothing is recorded, WM910 when the key cannot be used.
    """
    moment = at or job.now()
    entries, problems = job.entries()
    if not entries:
        raise Refusal(messages.NOTHING_TO_SEAL.at(str(job.folder)))
    stands = job.standing(packs, moment)
    if stands.blocking:
        raise Refusal(*(messages.BLOCKED.at(end.key, end.words, entries=end.entries) for end in stands.blocking))
    editions = sum(fact.act == "sealed" for fact in fold(entries).facts)
    if editions and not why:
        raise Refusal(messages.WHY_AGAIN.at(str(job.folder), f"edition {editions} was issued before"))
    signer = FileSigner(key)
    letter = _letter(job, packs, moment, seal_in_force=None, edition=(editions + 1, why or ""))
    sealed = seal(
        entries,
        facts=facts_hash(read_facts(job.folder)),
        packs=[PackUsed(file.id, file.version, file.hash) for file in packs.files],
        report=report_hash(letter),
        signer=signer,
        edition=editions + 1,
        why=why,
    )
    job.keep([job.pen().write(sealed, at=moment)])
    return _write(job, _letter(job, packs, moment, seal_in_force=sealed), out, tell, tuple(problems))


def _letter(
    job: OpenJob,
    packs: Packs,
    at: datetime,
    *,
    seal_in_force: Sealed | None,
    edition: tuple[int, str] | None = None,
    language: str = "en",
) -> Letter:
    entries, problems = job.entries()
    if seal_in_force is not None:
        # The letter is the one that was sealed: the entry that holds the seal came after it.
        by_id = {entry.id: entry for entry in entries}
        entries = [
            entry
            for entry in entries
            if entry.body != seal_in_force and not (is_delivery(entry, by_id) and _names(entry, seal_in_force, by_id))
        ]
    record = fold(entries)
    stands = job.standing(packs, at)
    return compose(
        job.job,
        record,
        packs,
        stands,
        media=job.media.path,
        issued=at,
        pictures=displayable(job, record),
        seal=seal_in_force,
        edition=edition,
        language=language,
        verification=problems,
    )


def _names(entry: Entry, seal_in_force: Sealed, by_id: dict[str, Entry]) -> bool:
    """Whether a delivery is one of the edition in force: it came after its seal, so that edition cannot tell of it."""
    return isinstance(entry.body, Settled) and any(by_id[of].body == seal_in_force for of in entry.body.of)


def _write(job: OpenJob, letter: Letter, out: Path | None, tell: Tell, problems: tuple[Problem, ...]) -> Made:
    folder = out or job.folder / "report"
    begun = begin_pdf(letter)  # pages are laid out while pictures are decoded
    prepared = prepare(letter, folder / "pictures", progress=tell)
    met = write_html(letter, folder, prepared=prepared)
    met += write_single(letter, folder / SINGLE, prepared=prepared)
    write_tables(letter, folder)
    write_reminders(letter, folder)
    met += write_pdf(letter, folder / "report.pdf", prepared=prepared, begun=begun)
    unique = tuple(dict.fromkeys((*problems, *letter.problems, *met)))
    blocking = len(letter.open_ends)
    return Made(
        html=folder / "index.html",
        pdf=folder / "report.pdf",
        data=folder / "report.json",
        draft=letter.seal.edition == 0,
        open_ends=blocking if letter.draft else 0,
        edition=letter.seal.edition,
        problems=unique,
    )
