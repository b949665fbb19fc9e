"""The language a report is written in: our own sentences, dates, numbers, and the texts of the packs.

Code says its sentences in English; ``Tongue.say`` gives them in the language of the report from ``words/LANGUAGE.toml``,
where each English sentence stands beside its translation. Words that a person wrote or said stay as they are.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from functools import cache
from pathlib import Path

from witnessmark.packs.model import Packs, Translation

__all__ = ["ENGLISH", "LANGUAGES", "Tongue", "words_of"]

#: The languages a report can be written in, and how each calls itself.
LANGUAGES = {"en": "English", "es": "Español"}
_SMALL = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
_MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
    "December",
)  # fmt: skip
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

    def join(self, parts: Iterable[str]) -> str:
        """Words in a row, the last after "and"."""
        rest = [part for part in parts if part]
        return f"{', '.join(rest[:-1])} {self.say('and')} {rest[-1]}" if len(rest) > 1 else "".join(rest)

    def number(self, number: int) -> str:
        """Small whole numbers in letters, others in figures."""
        if number == 0 and self.language != "en":
            return "0"  # "no", as an answer, is another word
        return self.say(_SMALL[number]) if 0 <= number < len(_SMALL) else f"{number:,}"

    def long_date(self, day: date) -> str:
        """A date with its weekday.

        >>> ENGLISH.long_date(date(2026, 10, 14))
        'Wednesday, October 14, 2026'
        """
        weekday = self.say(_DAYS[day.weekday()])
        return self.say(
            "{weekday}, {month} {day}, {year}", weekday=weekday, month=self.month(day), day=day.day, year=day.year
        )

    def month(self, day: date) -> str:
        """The name of a month."""
        return self.say(_MONTHS[day.month - 1])


ENGLISH = Tongue("en", {})
