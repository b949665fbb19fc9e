"""The facts of a new job, from a file of facts and from what was said on the command line."""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Mapping
from datetime import date, datetime
from pathlib import Path

from witnessmark.assembly import messages
from witnessmark.assembly.packs import read_packs
from witnessmark.journal.identity import is_uuid, new_id
from witnessmark.journal.job import Alteration, Job
from witnessmark.journal.job_codec import job_from_toml
from witnessmark.journal.moment import instant
from witnessmark.problems import Refusal
from witnessmark.stores.refusing import reading

__all__ = ["job_from_facts", "when"]

_ALTERED = re.compile(r"\s*(?P<year>\d{4})\s+(?P<what>\S.*)")
_EARLIEST_YEAR = 1600


def when(text: str) -> datetime:
    """A moment given by a person, RFC 3339 with offset.

    Raises:
        Refusal: a number of the journal, with the form it takes.
    """
    return instant(text)


def job_from_facts(facts: Path | None, said: Mapping[str, object]) -> Job:
    """A job with a new id, unless the file of facts has one.

    Raises:
        Refusal: WM912 for a fact that cannot be used, or the numbers of reading the file.
    """
    job = Job(id=new_id())
    if facts is not None:
        with reading(facts):
            text = facts.read_bytes()
        if not re.search(rb"^id\s*=", text, re.MULTILINE):
            text = f'id = "{job.id}"\n'.encode() + text
        job = job_from_toml(text, str(facts))
    values = dict(said)
    if "altered" in values:
        values["altered"] = tuple(_alteration(text) for text in _words(values["altered"]))
    if "fuels" in values:
        values["fuels"] = _words(values["fuels"])
    job = dataclasses.replace(job, **values)  # type: ignore[arg-type]  # the options carry the names of the fields
    _check(job)
    return job if job.date else dataclasses.replace(job, date=datetime.now().astimezone().date().isoformat())


def _words(value: object) -> tuple[str, ...]:
    return tuple(str(part) for part in value) if isinstance(value, (tuple, list)) else (str(value),)


def _alteration(text: str) -> Alteration:
    match = _ALTERED.fullmatch(text)
    if match is None:
        raise Refusal(
            messages.WRONG_JOB_FACT.at("altered", f'{text!r}: write the year first, as "2007 basement finished"')
        )
    return Alteration(match["what"].strip(), int(match["year"]))


def _check(job: Job) -> None:
    if not is_uuid(job.id):
        raise Refusal(messages.WRONG_JOB_FACT.at("id", f"{job.id!r} is not a UUID; leave it out and one is made"))
    if job.date:
        try:
            date.fromisoformat(job.date)
        except ValueError:
            raise Refusal(messages.WRONG_JOB_FACT.at("date", f"{job.date!r}: write it as 2026-10-14")) from None
    if job.year_built is not None and not _EARLIEST_YEAR <= job.year_built <= datetime.now().astimezone().year:
        raise Refusal(
            messages.WRONG_JOB_FACT.at("year_built", f"{job.year_built}: write a year from {_EARLIEST_YEAR} to now")
        )
    books = read_packs().rulebooks
    if job.rulebook and job.rulebook not in books:
        known = ", ".join(sorted(books))
        raise Refusal(messages.NO_SUCH_PACK_ID.at("rulebook", f"{job.rulebook!r}; there are: {known}"))
