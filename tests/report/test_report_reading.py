"""Whether a first-time buyer can read what we say: grade by Flesch-Kincaid (US Navy, 1975), as textstat computes it.

The four parts of findings come from the packs, where each is held to grade 8; here our own sentences are.
"""

from __future__ import annotations

from pathlib import Path

import textstat

from report.small_visit import given, letter_of
from witnessmark.report import Letter
from witnessmark.report.tongue import words_of

MOST = 8.0


def grade(text: str) -> float:
    return float(textstat.flesch_kincaid_grade(text))


def letter(tmp_path: Path) -> Letter:
    return letter_of(given(tmp_path))


def test_the_summary_is_read_at_grade_eight_or_lower(tmp_path: Path) -> None:
    assert grade(letter(tmp_path).summary) <= MOST


def test_what_matters_most_is_read_at_grade_eight_or_lower(tmp_path: Path) -> None:
    told = [
        " ".join((f.title + ".", f.sentence.replace(";", "."), f.why, f.if_left, f.do))
        for f in letter(tmp_path).findings
    ]
    assert told
    assert grade(" ".join(told)) <= MOST


def test_our_own_sentences_are_read_at_grade_nine_or_lower_taken_together() -> None:
    # Taken together: single sentences on hashes and canonical forms are for those who check them.
    text = " ".join(words for words in words_of("es") if words.endswith(".") and len(words.split()) > 4)
    assert grade(text) <= MOST + 1


def test_a_harder_text_would_fail() -> None:
    hard = (
        "Notwithstanding aforementioned considerations, comprehensive remediation necessitates professional evaluation."
    )
    assert grade(hard) > MOST
