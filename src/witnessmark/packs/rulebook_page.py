"""What a rulebook asks, as a page for people: every duty with its section, its words and how sure we are of it."""

from __future__ import annotations

from witnessmark.packs.model import Duty, Rulebook, Subject
from witnessmark.packs.terms import SYSTEMS

__all__ = ["rulebook_page"]

_MODALITY = {"shall": "shall", "may": "may", "not_required": "need not", "shall_not": "shall not"}
_TAGS = {
    "seen": "read in the law's text or a mirror of it",
    "seen-copy": "read in an unofficial copy; to be checked",
    "memory": "recalled, believed right; to be checked",
    "memory?": "recalled and doubtful; check before relying on it",
    "computed": "arithmetic from a rule",
    "common practice, no source": "common practice, no source",
}


def _cell(text: str) -> str:
    return text.replace("|", "\\|")


def _subject(subject: Subject) -> str:
    names = [*subject.kinds, *subject.attributes, *subject.measures, *subject.sorts]
    rest = f" ({', '.join(names)})" if names else ""
    within = f" (within {subject.within} ft)" if subject.within else ""
    near = f"; those near {subject.near}{within}" if subject.near else ""
    but = f"; but not {subject.but}" if subject.but else ""
    when = f"; where {subject.when}" if subject.when else ""
    optional = "; asked where there is one" if subject.optional else ""
    return f"{_cell(subject.words)}{near}{_cell(but)}{_cell(when)}{optional}{rest}"


def _whole(book: Rulebook) -> list[str]:
    """What holds for the law as a whole: its own words, delivery, summary, departures, claims of code."""
    lines = []
    if book.condition_words:
        lines += [
            "## The law's own words for the state of an item",
            "",
            "| word | short | means | section | how sure |",
        ]
        lines += ["|---|---|---|---|---|"]
        lines += [
            f"| {_cell(w.words)} | {w.code} | {w.means} | {_cell(w.section)} | {_TAGS[w.tag]} |"
            for w in book.condition_words
        ]
        lines.append("")
    told = [(f"delivery, {d.section}", f"{d.words} ({_TAGS[d.tag]})") for d in book.deliveries]
    if book.summary:
        told.append((f"summary, {book.summary.section}", f"{book.summary.words} ({_TAGS[book.summary.tag]})"))
        if book.summary.statement:
            told.append(("statement of the summary", book.summary.statement))
    if book.departure:
        told.append((f"departures, {book.departure.section}", book.departure.words))
        told.append(("reasons on the list", ", ".join(book.departure.reasons) or "any"))
        told += [
            (name, words)
            for name, words in (("notice", book.departure.notice), ("before the visit", book.departure.before_visit))
            if words
        ]
    if book.observed_listed:
        told.append(("the report", "names what was observed, not only what was not"))
    if book.code_claims:
        told.append(("a finding that cites a code", book.code_claims))
    if not book.new_construction:
        told.append(("a house never lived in", "is outside this law"))
    if told:
        lines += ["## The report as a whole", "", *(f"- {name}: {_cell(words)}" for name, words in told), ""]
    return lines


def _form(book: Rulebook) -> list[str]:
    """The form that the law prescribes, item by item, with what belongs into each."""
    if book.form is None:
        return []
    form = book.form
    lines = [
        "## The form that the law prescribes",
        "",
        f"{form.words} ({form.section}; {_TAGS[form.tag]}). {form.note}".strip(),
        "",
    ]
    lines += ["| group | item | heading | takes | how sure |", "|---|---|---|---|---|"]
    for row in book.form_items:
        rest = [f"what is left of {', '.join(row.systems)}"] if row.systems else []
        takes = ", ".join((*row.kinds, *rest)) + ("; left out where there is none" if row.optional else "")
        lines.append(f"| {_cell(row.group)} | {row.number} | {_cell(row.words)} | {takes} | {_TAGS[row.tag]} |")
    return [*lines, ""]


def _duty(duty: Duty) -> list[str]:
    lines = [f"### {duty.id} · {_cell(duty.section)}", ""]
    who = "In this law" if duty.verb == "define" else f"The inspector {_MODALITY[duty.modality]}"
    lines += [f"{who}: {duty.words}", ""]
    facts = [("verb", duty.verb), ("source", duty.provenance.source), ("how sure", _TAGS[duty.provenance.tag])]
    if duty.extent != "none":
        facts.append(("extent", duty.extent.replace("_", " ")))
    if duty.when:
        facts.append(("asked when", duty.when))
    if duty.default_method:
        facts.append(("method expected", duty.default_method))
    if duty.method_reasons:
        facts.append(("another way excused by", ", ".join(duty.method_reasons)))
    if duty.by_agreement:
        facts.append(("asked", "only where the client agreed to it"))
    facts += [("number", f"{n.quantity} {n.op} {n.value} {n.unit}".removesuffix(" 1")) for n in duty.numeric]
    if duty.refer_to:
        facts.append(("refer to", duty.refer_to))
    if duty.reasons:
        facts.append(("excused by", ", ".join(duty.reasons)))
    lines += [f"- {name}: {_cell(value)}" for name, value in facts]
    if duty.tracked:
        lines.append("- counted from the record of the visit:")
        lines += [f"  - {_subject(s)}" for s in duty.subjects]
    else:
        lines.append("- not counted from the record of the visit")
    if duty.mandatory_text:
        how = "word for word" if duty.verbatim else "in substance"
        size = f", in type of at least {duty.min_pt} points" if duty.min_pt else ""
        when = f", where {duty.text_when}" if duty.text_when else ""
        where = "agreement" if duty.verb == "contract" else "report"
        lines.append(f"- the {where} must say, {how}{size}{when}: {_cell(duty.mandatory_text)}")
    return [*lines, ""]


def rulebook_page(book: Rulebook) -> str:
    """The Markdown page of *book*: facts, definitions, duties by system. The same book gives the same page."""
    lines = [f"# {book.name}", "", f"`{book.id}`: {book.citation}, from {book.effective_from}."]
    lines += ["", book.note] if book.note else []
    lines += ["", "This page paraphrases; it is no legal advice and no text of the law. It is made from the rulebook"]
    lines += ["itself: change the pack, not the page.", ""]
    if book.definitions:
        lines += ["## Words", "", "| word | meaning | section | how sure |", "|---|---|---|---|"]
        lines += [
            f"| {_cell(d.term)} | {_cell(d.words)} | {_cell(d.section)} | {_TAGS[d.tag]} |" for d in book.definitions
        ]
        lines.append("")
    lines += _whole(book)
    lines += _form(book)
    systems = dict.fromkeys(duty.system for duty in book.duties)
    for system in systems:
        lines += [f"## {SYSTEMS.get(system, system.capitalize())}", ""]
        for duty in book.duties:
            if duty.system == system:
                lines += _duty(duty)
    return "\n".join(lines)
