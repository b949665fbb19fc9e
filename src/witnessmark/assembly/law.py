"""What the law of a job wants in its report, told: statements, what was observed, departures, form, summary, claims of code."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, datetime
from typing import Any

from witnessmark.journal.acts import Left
from witnessmark.journal.fold import Record
from witnessmark.journal.job import Job
from witnessmark.judging.code_claims import code_claims
from witnessmark.judging.deadline import Anchors, deadlines
from witnessmark.judging.departures import departures
from witnessmark.judging.item_states import item_states
from witnessmark.judging.law_form import form_states
from witnessmark.judging.law_summary import summary
from witnessmark.judging.observed import observed
from witnessmark.judging.scene import Scene, gather
from witnessmark.judging.statements import statements
from witnessmark.packs.model import Packs

__all__ = ["law_as_json", "law_in_words"]


def _completed(scene: Scene) -> date | None:
    """The day the inspection was completed: that of the last leaving, else none."""
    left = [fact.at for fact in scene.record.facts if isinstance(fact.body, Left)]
    return date.fromisoformat(max(left)[:10]) if left else None


def _place(scene: Scene, component: str) -> str:
    """The name of the place a component is in; empty where it is not known."""
    known = scene.house.components.get(component)
    place = scene.house.places.get(known.place or "") if known else None
    return place.name if place else ""


def law_as_json(
    record: Record, packs: Packs, job: Job, now: datetime, *, paid: date | None = None, agreed: date | None = None
) -> dict[str, Any]:
    """What the rulebook in force wants in the report of this record, as plain data; empty without a rulebook."""
    scene = gather(record, packs, job, now)
    book = scene.rulebook
    if book is None:
        return {}
    due = deadlines(book, Anchors(_completed(scene), paid, agreed))
    made = summary(scene)
    return {
        "rulebook": book.id,
        "due": {"day": due.due.isoformat() if due.due else None, "words": due.words,
                "provenance": due.rule.tag if due.rule else None},
        "statements": [
            {"duty": s.duty.id, "section": s.duty.section, "text": s.text, "verbatim": s.verbatim, "min_pt": s.min_pt,
             "provenance": s.duty.provenance.tag}
            for s in statements(scene)
        ],
        "observed": [
            {"system": o.words, "kinds": [scene.kind_name(kind) for kind in o.kinds], "entries": list(o.entries)}
            for o in observed(scene)
        ] if book.observed_listed else [],
        "departures": [
            {"what": d.what, "reason": d.reason, "on_the_list": d.listed, "client_told": d.noticed, "owed": d.words,
             "entry": d.entry}
            for d in departures(scene)
        ] if book.departure else [],
        "items": [
            {"component": i.component, "label": i.label, "place": _place(scene, i.component), "word": i.word.words, "code": i.word.code,
             "entries": list(i.entries)}
            for i in item_states(scene) if i.word
        ],
        "form": {
            "name": book.form.words, "section": book.form.section, "provenance": book.form.tag, "note": book.form.note,
            "items": [
                {"group": row.item.group, "number": row.item.number, "item": row.item.words,
                 "marks": [mark.code or mark.words for mark in row.marks],
                 "entries": [entry for state in row.states for entry in state.entries]}
                for row in form_states(scene)
            ],
        } if book.form else None,
        "summary": made and {"required": made.required, "entries": list(made.entries), "statement": made.statement,
                             "words": made.words},
        "code_claims": [
            {"cites": c.cited, "missing": list(c.missing), "entry": c.entry} for c in code_claims(scene) if c.missing
        ],
    }  # fmt: skip


def law_in_words(told: dict[str, Any]) -> Iterator[str]:
    """The same for a person, each part only where there is something to say."""
    if not told:
        yield "The job names no rulebook that was in force, so nothing is known of what its law wants in the report."
        return
    yield f"What {told['rulebook']} wants in the report:"
    yield f"  Due: {told['due']['day'] or 'not known yet'}: {told['due']['words']}"
    for row in told["statements"]:
        how = "word for word" if row["verbatim"] else "in substance"
        yield f"  Statement ({row['section']}, {how}; {row['provenance']}): {row['text']}"
    for row in told["observed"]:
        yield f"  Observed, {row['system'].lower()}: {', '.join(row['kinds'])}"
    for row in told["departures"]:
        listed = "" if row["on_the_list"] else "; this reason is not on the law's list"
        owed = f"; tell the client: {row['owed']}" if row["owed"] else ""
        yield f"  Left out: {row['what']}: {row['reason']}{listed}{owed}"
    words = [
        f"{row['label']}{f' ({place})' if (place := row['place']) else ''}: {row['code'] or row['word']}"
        for row in told["items"]
    ]
    if words:
        yield f"  In the law's own words: {'; '.join(words)}"
    if told["form"]:
        marks = [
            f"{row['group'].partition('.')[0]}.{row['number']} {' '.join(row['marks']) or 'not told yet'}"
            for row in told["form"]["items"]
        ]
        yield f"  In the order of the {told['form']['name']} ({told['form']['provenance']}): {'; '.join(marks)}"
    if told["summary"]:
        must = "required" if told["summary"]["required"] else "not required"
        yield f"  Summary ({must}): {len(told['summary']['entries'])} findings belong in it, and no others"
    for row in told["code_claims"]:
        yield f"  A finding cites {row['cites']} without {' and '.join(row['missing'])}"
