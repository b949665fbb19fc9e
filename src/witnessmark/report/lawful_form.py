"""The letter's account in the order of the form that a law prescribes, with the law's own marks."""

from __future__ import annotations

from collections.abc import Sequence

from witnessmark.journal.acts import Identified, Skipped
from witnessmark.judging.law_form import FormState, form_states
from witnessmark.judging.scene import Scene
from witnessmark.report.letter import Finding, FormLine, PrescribedForm, Statement
from witnessmark.report.naming import Names, capital, sentence
from witnessmark.report.wording import SURENESS, attribute_words, reason_words

__all__ = ["form_of"]


def form_of(scene: Scene, names: Names, findings: Sequence[Finding]) -> PrescribedForm | None:
    """The form, item by item; None where the law prescribes none."""
    book = scene.rulebook
    states = form_states(scene)
    if book is None or book.form is None or not states:
        return None
    of_entry = {fact.id: fact.component for fact in scene.record.facts}
    lines = []
    for row in states:
        components = {state.component for state in row.states if state.component}
        entries = {entry for state in row.states for entry in state.entries}
        numbers = [
            finding.number
            for finding in findings
            if of_entry.get(finding.entry) in components or not entries.isdisjoint((finding.entry, *finding.rests_on))
        ]
        lines.append(
            FormLine(
                row.item.group,
                row.item.number,
                row.item.words,
                tuple(capital(word.words) for word in row.marks),
                tuple(word.code for word in row.marks),
                _says(scene, names, row),
                tuple(sorted(numbers)),
                tuple(dict.fromkeys(entry for state in row.states for entry in state.entries)),
            )
        )
    return PrescribedForm(
        book.form.words,
        book.form.section,
        book.form.note,
        SURENESS.get(book.form.tag, book.form.tag),
        tuple((word.code, capital(word.words)) for word in book.condition_words),
        tuple(lines),
    )


def _says(scene: Scene, names: Names, row: FormState) -> tuple[Statement, ...]:
    """What is told under an item: what it is, what was left out and why, what is not there."""
    say = names.tongue.say
    told = []
    components = {state.component for state in row.states if state.component}
    for fact in scene.record.facts:
        if isinstance(fact.body, Identified) and fact.component in components:
            words = f"{names.component(fact.component)}, {attribute_words(fact.body, names)}"
            told.append(Statement(sentence(words), (fact.id,)))
    left_out = {entry for state in row.states if state.means == "not inspected" for entry in state.entries}
    for fact in scene.record.facts:
        if fact.id in left_out and isinstance(fact.body, Skipped):
            what = fact.body.what or names.subject(fact) or names.place_of(fact) or say("something")
            why = reason_words(fact.body, names) or say("no reason was recorded")
            told.append(Statement(sentence(capital(what) + say(", because {why}", why=why.rstrip("."))), (fact.id,)))
    told += [
        Statement(say("Not there: {what}.", what=names.kind(state.kind)), state.entries)
        for state in row.states
        if not state.component and state.entries and state.entries[0] not in left_out
    ]
    if not row.marks:
        told.append(Statement(say("The record says nothing of it.")))
    return tuple(told)
