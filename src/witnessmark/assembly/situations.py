"""Situations run: what came out beside what must, each difference a problem that names the file."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from functools import partial
from pathlib import Path
from typing import Any

from witnessmark.assembly import messages
from witnessmark.assembly.packs import overlay_folders, read_packs
from witnessmark.assembly.situation import Situation, read_situation
from witnessmark.journal.fold import Record, fold
from witnessmark.judging import DutyCoverage, Standing, draft_findings, standing, under_each
from witnessmark.judging.code_claims import code_claims
from witnessmark.judging.deadline import Anchors, deadlines
from witnessmark.judging.departures import departures
from witnessmark.judging.law_summary import summary
from witnessmark.judging.observed import observed
from witnessmark.judging.scene import Scene, gather
from witnessmark.judging.statements import statements
from witnessmark.packs import rulebook_for, scenario_texts
from witnessmark.packs.model import Packs
from witnessmark.problems import Problem, Refusal

__all__ = ["Tried", "run_situations", "try_situation"]


@dataclass(frozen=True, slots=True)
class Tried:
    """What a situation was judged to be, gathered once."""

    situation: Situation
    packs: Packs
    record: Record
    standing: Standing
    scene: Scene
    duties: Mapping[str, tuple[DutyCoverage, ...]]


def _things(sort: str, tried: Tried, _: object) -> list[str]:
    return sorted({end.component or end.place or "" for end in tried.standing.loose_ends if end.sort == sort})


def _duties(tried: Tried, status: str) -> set[str]:
    return {row.duty.id for rows in tried.duties.values() for row in rows if row.status == status}


def _findings(tried: Tried) -> list[str]:
    return sorted({row.condition or "" for row in draft_findings(tried.record, tried.packs, tried.standing)})


def _readings(tried: Tried) -> dict[str, str]:
    order = ("beyond", "within", "cannot compare", "no criterion")
    found: dict[str, str] = {}
    for row in sorted(tried.standing.readings, key=lambda r: order.index(r.verdict), reverse=True):
        fact = tried.scene.facts.get(row.entry)
        found[(fact.component or fact.place or row.entry) if fact else row.entry] = row.verdict
    return found


def _deadline(tried: Tried, asked: Mapping[str, str]) -> dict[str, str]:
    book = tried.packs.rulebooks[tried.situation.rulebooks[0]]
    days = {
        name: date.fromisoformat(asked[name]) if asked.get(name) else None for name in ("completed", "paid", "agreed")
    }
    anchors = Anchors(days["completed"], days["paid"], days["agreed"], waived=bool(asked.get("waived")))
    due = deadlines(book, anchors).due
    return {**asked, "due": due.isoformat() if due else ""}


def _summary(tried: Tried) -> list[str]:
    made = summary(tried.scene)
    facts = [tried.scene.facts[entry] for entry in (made.entries if made else ())]
    return sorted({fact.component or fact.id for fact in facts})


#: Loose ends that are told by the thing they are on.
_BY_THING = ("still on", "look again", "put back", "make sure", "write up")
#: What came out, by what can be expected.
_CAME: dict[str, Callable[[Tried, Any], object]] = {
    **{sort.replace(" ", "_"): partial(_things, sort) for sort in _BY_THING},
    "name_it": lambda tried, _: sum(end.sort == "name it" for end in tried.standing.loose_ends),
    "findings": lambda tried, _: _findings(tried),
    "statements": lambda tried, _: sorted(s.duty.id for s in statements(tried.scene)),
    "observed": lambda tried, _: sorted(o.system for o in observed(tried.scene)),
    "departures": lambda tried, _: {
        getattr(tried.scene.facts[d.entry].body, "reason", ""): d.listed for d in departures(tried.scene)},
    "summary": lambda tried, _: _summary(tried),
    "code_claims": lambda tried, _: sum(bool(claim.missing) for claim in code_claims(tried.scene)),
    "readings": lambda tried, asked: {k: v for k, v in _readings(tried).items() if k in asked},
    "deadline": _deadline,
}  # fmt: skip


def try_situation(situation: Situation, packs: Packs) -> list[Problem]:
    """The differences between what a situation expects and what comes of it; empty when there are none."""
    record = fold(situation.entries)
    tried = Tried(
        situation,
        packs,
        record,
        standing(record, packs, situation.job, situation.at),
        gather(record, packs, situation.job, situation.at),
        under_each(record, packs, situation.job, situation.at, situation.rulebooks),
    )
    day = situation.job.date
    found = [
        f"rulebook {n} is not in force on {day}" for n in situation.rulebooks if rulebook_for(packs, n, day) is None
    ]
    for key, wanted in situation.expect.items():
        if key == "at":
            continue
        if key in {"met", "excused", "open", "not_asked"}:
            found += _duty_differences(tried, key.replace("_", " "), wanted)
            continue
        came = _CAME[key](tried, wanted)
        plain = sorted(wanted) if isinstance(wanted, list) else wanted
        if came != plain:
            found.append(f"{key.replace('_', ' ')}: expected {plain}, came {came}")
    return [messages.NOT_AS_EXPECTED.at(situation.path, f"{situation.title}: {words}") for words in found]


def _duty_differences(tried: Tried, status: str, wanted: Iterable[str]) -> list[str]:
    got = {row.duty.id: row for rows in tried.duties.values() for row in rows}
    found = []
    for duty in wanted:
        row = got.get(duty)
        if row is None:
            found.append(f"{duty}: expected {status}, but no such duty is counted")
        elif row.status != status:
            why = "; ".join(s.why for s in row.subjects if s.why)
            found.append(f"{duty}: expected {status}, came {row.status}" + (f" ({why})" if why else ""))
    return found


def run_situations(overlays: Sequence[Path] = ()) -> tuple[int, list[Problem]]:
    """How many situations were tried, and every difference; a file that cannot be read is a problem of its own."""
    packs, problems, count = read_packs(overlays), [], 0
    for path, text in scenario_texts((*overlay_folders(), *overlays)).items():
        count += 1
        try:
            problems += try_situation(read_situation(path, text, packs), packs)
        except Refusal as refusal:
            problems += refusal.problems
    return count, problems
