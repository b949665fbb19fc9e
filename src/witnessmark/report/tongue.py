"""The language a report is written in: our own sentences, dates, numbers, and the texts of the packs.

Code says its sentences in English; ``Tongue.say`` gives them in the language of the report from ``words/LANGUAGE.toml``,
where each English sentence stands beside its translation. Words that a person wrote or said stay as they are.
"""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from datetime import date
from functools import cache
from pathlib import Path

from witnessmark.packs.model import Packs, Translation

__all__ = ["ENGLISH", "LANGUAGES", "Tongue", "words_of"]

#: The languages a report can be written in, and how each calls itself.
LANGUAGES = {"en": "English", "es": "Español"}
_WORDS = Path(__file__).with_name("words")


@cache
def words_of(language: str) -> dict[str, str]:
    """Our sentences in a language, by the English one; empty for English itself."""
    file = _WORDS / f"{language}.toml"
    if not file.exists():
        return {}
    return {row["en"]: row["says"] for row in tomllib.loads(file.read_text(encoding="utf-8"))["say"]}


@dataclass(frozen=True, slots=True)
class Tongue:
    """One language: ``language`` is its code (ISO 639-1); ``rows`` the packs' translations by table and id."""

    language: str
    rows: dict[tuple[str, str], Translation]

    @classmethod
    def of(cls, language: str, packs: Packs) -> Tongue:
        """The tongue of a language code; English for one that there is not."""
        rows = {(row.table, row.of): row for row in packs.translations.values() if row.language == language != "en"}
        return cls(language if language in LANGUAGES else "en", rows)

    def say(self, english: str, **gaps: object) -> str:
        """One of our sentences in this language, its gaps (``{name}``) filled."""
        return words_of(self.language).get(english, english).format(**gaps)

    def row(self, table: str, of: str, field: str, english: str) -> str:
        """A text of the packs in this language; the English one where there is no other."""
        known = self.rows.get((table, of))
        return (getattr(known, field) if known else "") or english

    def date(self, day: date) -> str:
        """A date with its weekday, as it is written in this language."""
        from witnessmark.report.clock import long_date

        return long_date(day)


ENGLISH = Tongue("en", {})
