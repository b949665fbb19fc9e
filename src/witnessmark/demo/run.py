"""The demo: from the raw inputs of an invented visit to a sealed report, by the calls every other command makes."""

from __future__ import annotations

import shutil
import time
from collections import Counter
from collections.abc import Callable
from datetime import datetime, timedelta
from importlib import resources
from pathlib import Path
from typing import Final

from witnessmark.assembly import (
    OpenJob,
    hear_into,
    issue_report,
    job_from_facts,
    look_into,
    new_job,
    note_entry,
    note_readings,
    open_job,
    read_packs,
    standing_in_words,
    verify_job,
    when,
    write_findings,
)
from witnessmark.demo import messages
from witnessmark.demo.decisions import Decision, moment, pick, read_decisions
from witnessmark.packs.model import Packs
from witnessmark.problems import Problem, Refusal

__all__ = ["BEGAN", "run_demo"]

#: When the recording of the narration began.
BEGAN: Final = "2026-10-14T09:04:00-07:00"
_LEFT: Final = "2026-10-14T11:32:00-07:00"
_DESK: Final = "2026-10-14T19:10:00-07:00"
_ISSUED: Final = "2026-10-14T20:00:00-07:00"

#: Acts that speak of one entry each.
_OF_ONE: Final = frozenset({"dropped", "amended", "stopped", "doubted"})

Tell = Callable[[str], None]


class _Clock:
    """The time of the invented day: it moves on a little with every entry written."""

    def __init__(self, start: str) -> None:
        self._now = when(start)

    def __call__(self) -> datetime:
        self._now += timedelta(milliseconds=20)
        return self._now

    def set(self, to: str) -> None:
        self._now = max(self._now, when(to))


def run_demo(folder: Path, *, replace: bool = False, tell: Tell = print) -> dict[str, object]:
    """Build the demo job and return where everything is.

    Raises:
        Refusal: WM920 when the folder holds something else; WM922 when a demo is there already; WM921 when the decisions no longer close every end.
    """
    started = time.perf_counter()
    visit = Path(str(resources.files("witnessmark.demo") / "visit"))
    _clear(folder, replace=replace)
    clock = _Clock(BEGAN)
    packs = read_packs()
    job = new_job(folder, job_from_facts(visit / "job.toml", {}), clock)
    tell(f"An invented house: {job.job.address}, {job.job.town}, built {job.job.year_built}.")
    decisions = read_decisions(visit / "decisions.toml")

    clock.set(_LEFT)
    _record(job, packs, visit, tell)
    idle = _decide(job, packs, [d for d in decisions if d.phase == "on site"])
    accepted, _ = note_entry(job, packs, "accepted", {"of": "all", "at": _LEFT})
    tell(f"The inspector looks through the drafts and accepts {len(getattr(accepted[0].body, 'of', ()))} of them.")
    stands = job.standing(packs, when(_LEFT))
    note_entry(job, packs, "left", {"open_ends": str(len(stands.loose_ends)), "why": "the time was up", "at": _LEFT})
    tell("\nWhere the visit stood on leaving the house:\n")
    for line in standing_in_words(stands, job.record(), packs):
        tell("  " + line)
    on_leaving = Counter(end.sort for end in stands.loose_ends)

    clock.set(_DESK)
    tell("\nIn the evening, at the desk:")
    idle += _decide(job, packs, [d for d in decisions if d.phase == "at the desk"])
    drafted = write_findings(job, packs, at=when(_DESK))
    note_entry(job, packs, "accepted", {"of": "all", "at": _DESK})
    tell(
        f"  {len(drafted)} findings are drafted from what was adverse, read and accepted; doubts and duties are settled."
    )
    clock.set(_ISSUED)
    stands = job.standing(packs, when(_ISSUED))
    if stands.blocking:
        raise Refusal(*(messages.STILL_OPEN.at(end.key, end.words, entries=end.entries) for end in stands.blocking))
    made = issue_report(job, packs, key=folder / "signing-key-of-the-demo.pem", at=when(_ISSUED))
    checked = verify_job(folder, packs, now=clock())
    if checked.problems:
        raise Refusal(*checked.problems)
    duties = Counter(row.status for row in stands.duties)
    tell("  Duties of the law: " + ", ".join(f"{count} {status}" for status, count in sorted(duties.items())) + ".")
    tell(f"  Issued, sealed and verified: {checked.in_words()[0]}")
    for problem in made.problems:
        tell(f"  {problem}")
    seconds = time.perf_counter() - started
    tell(f"\nThe report is in {made.html}")
    tell(f"and as a PDF in {made.pdf}")
    tell(f"The record is in {folder / 'journal.jsonl'}; ask it: witnessmark standing {folder}")
    tell(f"({seconds:.1f} s)")
    return {
        "folder": str(folder),
        **made.as_json(),
        "on_leaving": dict(on_leaving),
        "duties": dict(duties),
        "idle_decisions": [f"{d.act} at {d.at}" for d in idle],
        "seconds": round(seconds, 2),
    }


def _clear(folder: Path, *, replace: bool) -> None:
    if not folder.exists() or (folder.is_dir() and not any(folder.iterdir())):
        return
    invented = False
    if folder.is_dir() and (folder / "job.toml").exists():
        invented = open_job(folder).job.invented
    if not invented:
        raise Refusal(messages.NOT_A_DEMO.at(str(folder)))
    if not replace:
        raise Refusal(messages.DEMO_THERE.at(str(folder)))
    shutil.rmtree(folder)


def _record(job: OpenJob, packs: Packs, visit: Path, tell: Tell) -> None:
    """The raw inputs go in: arrival, meter readings, narration, pictures."""
    arrived = {
        "present": "Ines Okafor-Lund (client)",
        "weather": "overcast, light rain until eight",
        "ground": "wet",
        "outdoor": "52",
        "outdoor_unit": "[degF]",
        "utilities_on": "water, electricity, gas",
        "at": BEGAN,
    }
    note_entry(job, packs, "arrived", arrived)
    readings = note_readings(job, packs, visit / "readings.csv")
    tell(f"Readings: {sum(entry.act == 'read' for entry in readings)} from readings.csv")
    heard, entries, problems = hear_into(job, packs, visit / "narration.vtt", began=BEGAN)
    acts = Counter(entry.act for entry in entries)
    tell(
        f"Narration: {len(heard.drafts)} drafts ({', '.join(f'{count} {act}' for act, count in acts.most_common())}); "
        f"{len(heard.set_aside)} passages set aside as teaching, what-if, question or taken back"
    )
    pictures, more = look_into(
        job, sorted((visit / "photos").glob("*.jpg")) + sorted((visit / "thermal").glob("*.tif"))
    )
    tell(f"Pictures: {len(pictures)}, tied to what was said around them")
    _tell_problems((*heard.problems, *problems, *more), tell)


def _tell_problems(problems: tuple[Problem, ...], tell: Tell) -> None:
    for problem in problems:
        tell(str(problem))


def _decide(job: OpenJob, packs: Packs, decisions: list[Decision]) -> list[Decision]:
    """Write the notes; returns the decisions that found nothing to refer to, because the listening has changed."""
    began = when(BEGAN)
    idle: list[Decision] = []
    for decision in decisions:
        at = moment(began, decision.at).isoformat()
        record = job.record()
        picked = [fact.id for named in decision.of for fact in pick(record, named, began)]
        if decision.of and not picked:
            idle.append(decision)
        elif decision.act in _OF_ONE:
            for one in picked or [""]:
                note_entry(job, packs, decision.act, {**decision.said, "at": at, **({"of": one} if one else {})})
        else:
            refer = {decision.refer: ",".join(picked)} if picked else {}
            note_entry(job, packs, decision.act, {**decision.said, "at": at, **refer})
    return idle
