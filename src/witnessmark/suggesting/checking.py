"""Does a suggestion rest on words that were really said, in the terms of the packs? If not, it is no draft.

Nothing that the model writes reaches a draft by itself: what it says of a component is kept only where each word of it was
said, and a value only where it was said. What the model adds is which words make an entry, and of what sort.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal, InvalidOperation
from typing import Any

from witnessmark.listening import Draft, Heard, Line, Narration
from witnessmark.listening.lexicon import Lexicon, lexicon
from witnessmark.listening.numerals import numeral
from witnessmark.listening.places import HOUSE, Place, place_of
from witnessmark.listening.words import Token, Word, phrase, quoted, tokens, words
from witnessmark.packs.model import Packs
from witnessmark.suggesting.asking import ACTS, CONDITIONS

__all__ = ["Checker", "Unfit"]

#: Seconds by which the times of a quote may miss its lines.
_SLACK = 1.5
#: Words that a quote holds at least and at most.
_FEWEST, _MOST = 2, 60


class Unfit(Exception):  # noqa: N818 - says what the suggestion is
    """Raised with the reason for which a suggestion is dropped."""


@dataclass(frozen=True, slots=True)
class _Said:
    """Where a quote stands: tokens ``low`` to ``high`` (exclusive)."""

    low: int
    high: int


class Checker:
    """Holds the narration's words, what was set aside, and what is drafted already."""

    def __init__(self, narration: Narration, heard: Heard, packs: Packs, name: str) -> None:
        self.packs = packs
        self.lexicon: Lexicon = lexicon(packs)
        self.lines = narration.lines
        self.words: list[Word] = words(narration.lines)
        self.tokens: list[Token] = tokens(self.words)
        self.why = f"endpoint {name}: the quoted words were said"
        self.taken = [(draft.first, draft.last) for draft in heard.drafts]
        self.aside = [span for row in heard.set_aside for span in self._aside(row.start, row.end, row.text)]

    def _aside(self, start: float, end: float, text: str) -> list[tuple[int, int]]:
        """Word indexes that were set aside; when the very words are not found again, all words of those lines."""
        places = self._find(phrase(text), start, end)
        if places:
            return [(self.tokens[at.low].first, self.tokens[at.high - 1].last) for at in places]
        inside = [t for t in self.tokens if start - _SLACK <= t.at <= end]
        return [(inside[0].first, inside[-1].last)] if inside else []

    def _find(self, wanted: Sequence[str], start: float, end: float) -> list[_Said]:
        """Every place where these words stand in a row, in lines that touch the time from *start* to *end*."""
        size = len(wanted)
        if not size:
            return []
        found = []
        for low in range(len(self.tokens) - size + 1):
            if self.tokens[low].norm != wanted[0]:
                continue
            high = low + size
            if [t.norm for t in self.tokens[low:high]] != list(wanted):
                continue
            first, last = self._lines(low, high)
            if first - _SLACK <= end and last + _SLACK >= start:
                found.append(_Said(low, high))
        return found

    def _lines(self, low: int, high: int) -> tuple[float, float]:
        return self.words[self.tokens[low].first].start, self.words[self.tokens[high - 1].last].end

    def draft(self, row: object) -> Draft:
        """The draft that a suggestion makes.

        Raises:
            Unfit: with the reason, when it makes none.
        """
        if not isinstance(row, dict):
            raise Unfit("not in the form asked for")
        said = self._quote(row)
        spoken = [t.norm for t in self.tokens[said.low : said.high]]
        first, last = self.tokens[said.low].first, self.tokens[said.high - 1].last
        if any(a <= last and b >= first for a, b in self.aside):
            raise Unfit("within what was set aside")
        if any(a <= last and b >= first for a, b in self.taken):
            raise Unfit("drafted already")
        act = row.get("act")
        if act not in ACTS:
            raise Unfit("no such act")
        kind = self._id(row, "kind", self.packs.kinds)
        condition = self._id(row, "condition", dict.fromkeys(CONDITIONS))
        label = self.packs.kinds[kind].name if kind else self._spoken(row, "label", spoken)
        if kind is None and not label:
            raise Unfit("it names no component")
        place = self._place(row, spoken)
        text = quoted(self.words, first, last)
        start, end = self._lines(said.low, said.high)
        key = kind or "-".join(phrase(label))
        fields = self._fields(str(act), row, spoken, condition)
        self.taken.append((first, last))
        return Draft(
            start, end, str(act), label, self._spoken(row, "what", spoken) or text, text, self.why, place,
            f"{place.key}.{key}", first, last, kind=kind, sure=row.get("sure") is True, **fields,
        )  # fmt: skip

    def _quote(self, row: dict[str, object]) -> _Said:
        quote, start, end = row.get("quote"), _number(row.get("start")), _number(row.get("end"))
        if not isinstance(quote, str) or start is None or end is None:
            raise Unfit("not in the form asked for")
        wanted = [t.norm for t in tokens(words([Line(0, 0, quote)]))]
        if not _FEWEST <= len(wanted) <= _MOST:
            raise Unfit("a quote too short or too long")
        found = self._find(wanted, min(start, end), max(start, end))
        if not found:
            anywhere = self._find(wanted, 0, float("inf"))
            raise Unfit("words said at another time" if anywhere else "words that were not said")
        return found[0]

    def _id(self, row: dict[str, object], field: str, known: object) -> str | None:
        value = row.get(field)
        if value is None:
            return None
        if not isinstance(value, str) or value not in known:  # type: ignore[operator]  # any mapping by id
            raise Unfit(f"no such {field}")
        return value

    def _spoken(self, row: dict[str, object], field: str, spoken: Sequence[str]) -> str:
        """The text of a field when every word of it was said within the quote, else nothing."""
        value = row.get(field)
        if not isinstance(value, str) or not (said := phrase(value)) or not set(said) <= set(spoken):
            return ""
        return " ".join(value.split())

    def _place(self, row: dict[str, object], spoken: Sequence[str]) -> Place:
        """The place when its words stand in the quote; what the model infers is left out."""
        name = self._spoken(row, "place", spoken)
        return place_of(name, self.lexicon) if name else HOUSE

    def _fields(self, act: str, row: dict[str, object], spoken: Sequence[str], condition: str | None) -> dict[str, Any]:
        """What the act needs beside its component.

        Raises:
            Unfit: when it is missing, not of the packs, or was not said.
        """
        if act == "saw":
            if condition is None:
                raise Unfit("no condition")
            return {"condition": condition}
        if act == "absent":
            return {"condition": condition if condition == "adverse" else None}
        if act in {"ran", "stopped"}:
            left = self._id(row, "left", {"on": 0, "off": 0})
            if act == "stopped":
                return {"left": "off", "leaves": "off"}
            return {"left": left, "leaves": "on" if left == "on" else "as found"}
        if act == "skipped":
            return {"reason": self._id(row, "reason", self.packs.reasons)}
        if act == "identified":
            return self._attribute(row, spoken)
        if act == "read":
            return self._reading(row, spoken)
        return {}

    def _attribute(self, row: dict[str, object], spoken: Sequence[str]) -> dict[str, Any]:
        attribute = self._id(row, "attribute", self.packs.attributes)
        value = row.get("value")
        if attribute is None or not isinstance(value, (str, int, float)) or isinstance(value, bool):
            raise Unfit("no attribute or no value")
        text = str(value).strip()
        known = self.packs.attributes[attribute].values
        one = next((v for v in known if text == v.id), None)
        forms = [phrase(form) for form in (text, *(one.spoken if one else ()))]
        if not any(form and set(form) <= set(spoken) for form in forms):
            raise Unfit("a value that was not said")
        return {"attribute": attribute, "value": text}

    def _reading(self, row: dict[str, object], spoken: Sequence[str]) -> dict[str, Any]:
        id_ = self._id(row, "measure", self.packs.measures)
        if id_ is None:
            raise Unfit("a reading without its measure")
        measure = self.packs.measures[id_]
        unit = row.get("unit")
        if unit not in {measure.unit, *measure.units}:
            raise Unfit("a unit that is not one of the measure")
        try:
            value = Decimal(str(row.get("value")))
        except InvalidOperation as error:
            raise Unfit("a value that is no number") from error
        numbers = {n.value for at in range(len(spoken)) if (n := numeral(spoken, at)) is not None}
        if value not in numbers:
            raise Unfit("a value that was not said")
        return {"measure": id_, "quantity": measure.name, "value": value, "unit": unit}


def _number(value: object) -> float | None:
    if isinstance(value, bool) or not isinstance(value, (int, float)) or value != value:  # noqa: PLR0124 - NaN
        return None
    return float(value)
