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
    return f"{_cell(subject.words)}{'; asked where there is one' if subject.optional else ''}{rest}"


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
        lines.append(f"- the report must say, in substance: {_cell(duty.mandatory_text)}")
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
    systems = dict.fromkeys(duty.system for duty in book.duties)
    for system in systems:
        lines += [f"## {SYSTEMS.get(system, system.capitalize())}", ""]
        for duty in book.duties:
            if duty.system == system:
                lines += _duty(duty)
    return "\n".join(lines)
