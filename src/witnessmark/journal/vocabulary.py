"""The words and numbers that the record has a meaning for, where a field is not free text.

Reading a journal never refuses an entry for a word it does not know: a newer release may know it. Writing does, and
``check_words`` says it of entries that are already there.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Final

from witnessmark.journal import messages
from witnessmark.journal.acts import Amended, Body
from witnessmark.journal.entry import Entry, Unread
from witnessmark.journal.identity import is_id
from witnessmark.problems import Problem

__all__ = ["ENDS", "LEFT", "STAKES", "STATES", "TOOK", "URGENCIES", "check_words", "misused_words"]

#: How something seen stands.
STATES: Final = ("sound", "adverse", "unclear")
#: How something operated was left.
LEFT: Final = ("as found", "on", "open", "filled", "unlatched", "tripped", "changed")
#: What a ``took`` holds.
TOOK: Final = ("photo", "thermal", "voice", "video", "document")
#: What a finding puts at stake.
STAKES: Final = ("people", "building", "function", "upkeep")
#: How soon.
URGENCIES: Final = ("now", "before use", "soon", "plan", "watch")
#: The sorts of loose end that a ``settled`` may be limited to.
ENDS: Final = ("still on", "look again", "put back", "make sure", "write up", "picture it", "name it", "say why")

# Of each act: the fields whose words are fixed. Empty text and None always pass: nothing was said.
_WORDS: Final = {
    "saw": (("state", STATES),),
    "ran": (("left", LEFT),),
    "took": (("sort", TOOK),),
    "found": (("stake", STAKES), ("urgency", URGENCIES)),
    "settled": (("ends", ENDS),),
}
_NUMBERS: Final = {"read": ("value", "high"), "arrived": ("outdoor",)}
_IDS: Final = {
    "saw": ("again",),
    "stopped": ("of",),
    "took": ("speaks_of",),
    "doubted": ("of",),
    "settled": ("of",),
    "found": ("rests_on",),
    "accepted": ("of",),
    "dropped": ("of",),
    "amended": ("of",),
}
_MUST_NAME: Final = frozenset({"accepted", "dropped", "amended"})
_DECIMAL: Final = re.compile(r"[+-]?[0-9]+(?:\.[0-9]+)?")


def misused_words(act: str, body: Body | Unread) -> list[str]:
    """What a body says that the record has no meaning for, in words; empty when all is well."""
    if isinstance(body, Unread):
        return []
    found: list[str] = []
    for field, allowed in _WORDS.get(act, ()):
        found += [
            f"{act}.{field} allows {', '.join(allowed)}; it holds {value!r}"
            for value in _values(body, field)
            if value not in allowed
        ]
    for field in _NUMBERS.get(act, ()):
        found += [
            f"{act}.{field} allows a decimal number such as 118 or 0.5; it holds {value!r}"
            for value in _values(body, field)
            if not _DECIMAL.fullmatch(value)
        ]
    for field in _IDS.get(act, ()):
        values = _values(body, field)
        found += [f"{act}.{field} allows ids of entries; it holds {value!r}" for value in values if not is_id(value)]
        if act in _MUST_NAME and not values:
            found.append(f"{act}.{field} must name an entry; it is empty")
    if isinstance(body, Amended):
        if body.body is None:
            found.append("amended.body must say what now holds; it is empty")
        else:
            found += misused_words(body.act, body.body)
    return found


def check_words(entries: Iterable[Entry]) -> list[Problem]:
    """WM211 for every word or number in the entries that the record has no meaning for."""
    return [
        messages.WORD_NOT_KNOWN.at(f"entry {entry.id}", words, entries=(entry.id,))
        for entry in entries
        for words in misused_words(entry.act, entry.body)
    ]


def _values(body: Body, field: str) -> list[str]:
    """What a field says: its one text, or each of its texts, without those that say nothing."""
    value = getattr(body, field)
    return [one for one in (value if isinstance(value, tuple) else (value,)) if one]
