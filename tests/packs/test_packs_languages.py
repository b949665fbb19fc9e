"""Both languages cover everything a report prints, in sentences that a first-time buyer can read."""

from __future__ import annotations

import re
from functools import cache

import pytest
import textstat

from witnessmark import packs
from witnessmark.packs.model import Packs
from witnessmark.packs.terms import TABLES, TRANSLATED

#: The longest sentence allowed, in words, and the hardest text: Flesch-Kincaid grade (Kincaid and others 1975) for
#: English, Fernández Huerta's reading ease (1959; 60 to 70 is ordinary reading) for Spanish.
LONGEST, GRADE, EASE = 32, 9.0, 55.0
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


def texts() -> list[tuple[str, str, tuple[str, ...]]]:
    english = [
        ("en", row.id, (row.observation, row.implication, row.if_left, row.do)) for row in read().conditions.values()
    ]
    spanish = [
        ("es", row.of, (row.observation, row.implication, row.if_left, row.do))
        for row in read().translations.values()
        if row.table == "condition"
    ]
    return [(language, name, tuple(parts)) for language, name, parts in (*english, *spanish)]


def test_no_sentence_is_longer_than_can_be_read_at_once() -> None:
    long = [
        f"{language} {name}: {sentence}"
        for language, name, parts in texts()
        for part in parts
        for sentence in re.split(r"(?<=[.!?;:])\s+", part)
        if len(sentence.split()) > LONGEST
    ]
    assert long == []


def test_no_condition_is_harder_to_read_than_a_newspaper() -> None:
    hard = []
    for language, name, parts in texts():
        textstat.set_lang("es" if language == "es" else "en_US")
        text = " ".join(parts)
        measure = textstat.fernandez_huerta(text) if language == "es" else textstat.flesch_kincaid_grade(text)
        if (language == "es" and measure < EASE) or (language == "en" and measure > GRADE):
            hard.append(f"{language} {name}: {measure:.1f}")
    assert hard == []


def test_nothing_promises() -> None:
    bad = [f"{name}: {part}" for _, name, parts in texts() for part in parts if _PROMISES.search(part)]
    bad += [frame.id for frame in read().frames.values() if _PROMISES.search(frame.text)]
    assert bad == []


def test_every_condition_says_why_so_soon_and_what_shows_it() -> None:
    rows = read().conditions.values()
    assert len(rows) >= 450
    assert [row.id for row in rows if not (row.because and row.evidence)] == []
    few = [row.id for row in rows if len(row.spoken) < 3]
    assert few == []
