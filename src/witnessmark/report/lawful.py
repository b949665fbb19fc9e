"""What the law of the job wants in its report: its texts, its own words for each item, its summary, its day of delivery."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date

from witnessmark.journal.acts import Left
from witnessmark.judging.deadline import Anchors, deadlines
from witnessmark.judging.departures import departures
from witnessmark.judging.item_states import item_states
from witnessmark.judging.law_summary import summary
from witnessmark.judging.observed import observed
from witnessmark.judging.scene import Scene
from witnessmark.judging.statements import statements
from witnessmark.packs import SYSTEMS
from witnessmark.report.letter import Finding, ItemWord, LawSummary, LawText, LeftOut, Statement
from witnessmark.report.naming import Names, capital, sentence
from witnessmark.report.wording import SURENESS, join

__all__ = ["due_of", "items_of", "law_summary_of", "law_texts_of", "left_out_of", "observed_of"]


def due_of(scene: Scene, names: Names) -> str:
    """The day the report falls due by the law, and how it was counted; empty without a law that names one."""
    book = scene.rulebook
    if book is None or not book.deliveries:
        return ""
    left = [fact.at for fact in scene.record.facts if isinstance(fact.body, Left)]
    try:
        completed = date.fromisoformat(max(left)[:10]) if left else None
    except ValueError:
        completed = None
    due = deadlines(book, Anchors(completed, None, None))
    say = names.tongue.say
    if due.due is None:
        return say("By the law the report is due {words}.", words=due.words.rstrip("."))
    return say(
        "By the law the report is due on {day}: {words}.",
        day=names.tongue.long_date(due.due),
        words=due.words.rstrip("."),
    )


def law_texts_of(scene: Scene) -> tuple[LawText, ...]:
    """The texts that the law wants in the report of this visit, in its order."""
    return tuple(
        LawText(
            row.duty.section,
            row.text,
            row.verbatim,
            row.min_pt or 0,
            sentence(row.why) if row.why else "",
            SURENESS.get(row.duty.provenance.tag, row.duty.provenance.tag),
        )
        for row in statements(scene)
    )


def law_summary_of(scene: Scene, findings: Sequence[Finding]) -> LawSummary | None:
    """The summary that the law asks for, by the numbers of the findings that belong in it; None where it asks for none."""
    made = summary(scene)
    if made is None:
        return None
    numbers: Mapping[str, int] = {finding.entry: finding.number for finding in findings}
    inside = tuple(sorted(numbers[entry] for entry in made.entries if entry in numbers))
    return LawSummary(made.required, made.statement, sentence(made.words), inside)


def items_of(scene: Scene, names: Names) -> tuple[ItemWord, ...]:
    """Every item under the law's own word for its state, by system in the law's order.

    None unless the law has a word for what was inspected and found in order too: a list of the others would only say
    again what the findings say.
    """
    book = scene.rulebook
    if book is None or all(word.means != "inspected" for word in book.condition_words):
        return ()
    rows = []
    for row in item_states(scene):
        if row.word is None:
            continue
        kind = scene.packs.kinds.get(row.kind)
        system = kind.system if kind else ""
        known = scene.house.components.get(row.component)
        item = names.component(row.component, row.kind) or row.label
        place = names.place(known.place) if known and known.place else ""
        rows.append(
            ItemWord(
                system, names.system(system), capital(item), place, capital(row.word.words), row.word.code, row.entries
            )
        )
    order = _systems_by_law(scene)
    return tuple(sorted(rows, key=lambda row: order.get(row.system, len(order))))


def _systems_by_law(scene: Scene) -> Mapping[str, int]:
    """Systems in the order in which the law speaks of them, then those it does not name."""
    duties = scene.rulebook.duties if scene.rulebook else ()
    named = [duty.system for duty in duties if duty.system in SYSTEMS]
    return {system: n for n, system in enumerate(dict.fromkeys([*named, *SYSTEMS]))}


def observed_of(scene: Scene, names: Names) -> tuple[Statement, ...]:
    """What was observed, system by system, where the law wants that said."""
    if scene.rulebook is None or not scene.rulebook.observed_listed:
        return ()
    return tuple(
        Statement(
            names.tongue.say(
                "{system}: {kinds}.",
                system=names.system(row.system),
                kinds=join([names.kind(kind) for kind in row.kinds], names.tongue.say("and")),
            ),
            row.entries,
        )
        for row in observed(scene)
    )


def left_out_of(scene: Scene) -> tuple[LeftOut, ...]:
    """Everything left out, held against the law's list of reasons; none where the law says nothing of leaving out."""
    if scene.rulebook is None or scene.rulebook.departure is None:
        return ()
    return tuple(
        LeftOut(capital(row.what), row.reason, row.listed, row.words, (row.entry,)) for row in departures(scene)
    )
