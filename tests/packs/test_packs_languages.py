"""Both languages cover everything a report prints, in sentences that a first-time buyer can read."""

from __future__ import annotations

import re
from functools import cache

import pytest
import textstat

from condition_texts import english, sentences, texts
from witnessmark import packs
from witnessmark.packs.model import Packs
from witnessmark.packs.terms import TABLES, TRANSLATED

#: The longest sentence, in words; the hardest text: Flesch-Kincaid grade (Kincaid and others 1975) of each English text,
#: Fernández Huerta's reading ease (1959; 60 to 70 is ordinary reading) of each row's Spanish texts.
LONGEST, GRADE, EASE = 24, 8.0, 55.0
_PROMISES = re.compile(
    r"\b(?:is|are|be) safe\b|guarantee|up to code|compliant|complies|es segur[oa]\b|garantiza", re.IGNORECASE
)


@cache
def read() -> Packs:
    return packs.read()


@pytest.mark.parametrize("table", TRANSLATED)
def test_every_row_a_report_prints_has_its_spanish(table: str) -> None:
    rows = getattr(read(), TABLES[table][1])
    told = {t.of for t in read().translations.values() if t.table == table and t.language == "es"}
    assert [row for row in rows if row not in told] == []


def test_every_use_has_its_sentence_in_both_languages() -> None:
    uses: dict[str, set[str]] = {}
    for frame in read().frames.values():
        uses.setdefault(frame.use, set()).add(frame.language)
    assert len(uses) >= 40
    assert [use for use, languages in uses.items() if languages != {"en", "es"}] == []


def told() -> list[tuple[str, str, tuple[str, ...]]]:
    """Language, condition and texts of every condition in both languages."""
    spanish = [row for row in read().translations.values() if row.table == "condition"]
    return [
        *(("en", row.id, english(row)) for row in read().conditions.values()),
        *(("es", row.of, texts(row)) for row in spanish),
    ]


def test_no_sentence_is_longer_than_can_be_read_at_once() -> None:
    long = [
        f"{language} {name}: {sentence}"
        for language, name, parts in told()
        for part in parts
        for sentence in sentences(part)
        if len(sentence.split()) > LONGEST
    ]
    assert long == []


def test_no_condition_is_hard_to_read() -> None:
    hard = []
    try:
        for language, name, parts in told():
            textstat.set_lang(language)
            if language == "es":
                ease = textstat.fernandez_huerta(" ".join(parts))
                hard += [f"{language} {name}: {ease:.1f}"] if ease < EASE else []
            else:
                grades = [(textstat.flesch_kincaid_grade(part), part) for part in parts]
                hard += [f"{language} {name}: {grade:.1f} {part}" for grade, part in grades if grade > GRADE]
    finally:
        textstat.set_lang("en")
    assert hard == []


def test_nothing_promises() -> None:
    bad = [f"{name}: {part}" for _, name, parts in told() for part in parts if _PROMISES.search(part)]
    bad += [frame.id for frame in read().frames.values() if _PROMISES.search(frame.text)]
    assert bad == []


def test_every_condition_says_why_so_soon_and_what_shows_it() -> None:
    rows = read().conditions.values()
    assert len(rows) >= 450
    assert [row.id for row in rows if not (row.because and row.evidence)] == []
    few = [row.id for row in rows if len(row.spoken) < 3]
    assert few == []
