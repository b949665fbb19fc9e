"""What listening yields: drafts, what was set aside, what is still on, what to make sure of, what may be misheard."""

from __future__ import annotations

from dataclasses import dataclass, field
from decimal import Decimal

from witnessmark.journal.acts import Count
from witnessmark.listening.places import Place
from witnessmark.problems import Problem

__all__ = ["REASONS", "Draft", "Heard", "Misheard", "Open", "SetAside", "number"]

#: Why words were set aside.
REASONS = ("hypothetical", "teaching", "small talk", "corrected", "question")


def number(value: Decimal) -> int | float:
    """A decimal as a plain JSON number.

    >>> number(Decimal("118")), number(Decimal("5.50"))
    (118, 5.5)
    """
    return int(value) if value == value.to_integral_value() else float(value)


@dataclass(frozen=True, slots=True)
class Draft:
    """An entry proposed from speech.

    Times are those of the caption lines in which the words stand: the only times a file states. ``act``,
    ``condition``, ``left`` and the rest are as ``listen --json`` prints them; below ``why`` stands what only the
    record needs.

    Attributes:
        start, end: seconds.
        act: ``saw``, ``absent``, ``ran``, ``stopped``, ``read``, ``identified``, ``skipped`` or ``doubted``.
        kind, label, part: the component; ``kind`` None when the packs do not know it.
        what: plain words.
        condition: ``sound``, ``adverse``, ``unclear`` or None.
        attribute: for ``identified``, and for a number read off a plate or in doubt.
        quantity: name of what was measured.
        value: the number or the words; a decimal for numbers.
        unit: UCUM.
        left: ``on``, ``off`` or None.
        sure: False when the words leave a doubt.
        count: how many of how many.
        text: the words it rests on, as recognised.
        why: the rules that fired, in order.
        place: where; its key is stable across the narration.
        component: key of the component (``hall-bath.bathtub``).
        condition_id, measure, reason, procedure: ids of the packs.
        leaves: how it was left, in the words of ``ran``.
        high, about: for a reading.
        first, last: the words it rests on, as indexes into the narration's words.
    """

    start: float
    end: float
    act: str
    label: str
    what: str
    text: str
    why: str
    place: Place
    component: str
    first: int
    last: int
    kind: str | None = None
    part: str | None = None
    condition: str | None = None
    attribute: str | None = None
    quantity: str | None = None
    value: Decimal | str | None = None
    unit: str | None = None
    left: str | None = None
    sure: bool = True
    count: Count | None = None
    condition_id: str | None = None
    measure: str | None = None
    reason: str | None = None
    procedure: str | None = None
    leaves: str | None = None
    setting: str | None = None
    high: Decimal | None = None
    about: bool = False

    def as_json(self) -> dict[str, object]:
        """The draft as ``listen --json`` prints it: a missing thing that matters is something adverse that was seen."""
        adverse_absence = self.act == "absent" and self.condition == "adverse"
        count = self.count
        return {
            "start": self.start,
            "end": self.end,
            "act": "saw" if adverse_absence else self.act,
            "kind": self.kind,
            "label": self.label,
            "part": self.part,
            "place": self.place.name if self.place.sort != "house" else None,
            "condition": self.condition,
            "what": self.what,
            "attribute": self.attribute,
            "quantity": self.quantity,
            "value": number(self.value) if isinstance(self.value, Decimal) else self.value,
            "unit": self.unit,
            "left": self.left,
            "sure": self.sure,
            "count": None if count is None else {"checked": count.checked, "of": count.of, "adverse": count.adverse},
            "text": self.text,
            "why": self.why,
        }


@dataclass(frozen=True, slots=True)
class SetAside:
    """Words that look like a statement and are none, with one of ``REASONS``."""

    start: float
    end: float
    text: str
    reason: str

    def as_json(self) -> dict[str, object]:
        """The row as ``listen --json`` prints it."""
        return {"start": self.start, "end": self.end, "text": self.text, "reason": self.reason}


@dataclass(frozen=True, slots=True)
class Misheard:
    """A guess at what was said.

    Attributes:
        start, end: seconds.
        heard: the words as recognised.
        meant: the word that may have been said.
        kind, part: what of the packs is called so.
        why: what speaks for it, in plain words.
        first, last: the words heard, as indexes into the narration's words.
    """

    start: float
    end: float
    heard: str
    meant: str
    kind: str
    part: str | None
    why: str
    first: int
    last: int

    def as_json(self, draft: int | None) -> dict[str, object]:
        """The row as ``listen --json`` prints it; *draft* is the draft in whose words it stands, counted from 0."""
        return {
            "start": self.start,
            "end": self.end,
            "heard": self.heard,
            "meant": self.meant,
            "kind": self.kind,
            "part": self.part,
            "why": self.why,
            "draft": draft,
        }


@dataclass(frozen=True, slots=True)
class Open:
    """Something still on, or still in doubt, when the narration ends; ``draft`` is the one that opened it."""

    draft: Draft

    def as_json(self) -> dict[str, object]:
        """The row as ``listen --json`` prints it."""
        d = self.draft
        return {"start": d.start, "label": d.label, "kind": d.kind, "what": d.what, "text": d.text}


@dataclass(frozen=True, slots=True)
class Heard:
    """Everything a narration yields, in the order of its times. What is ``misheard`` is a guess and changes no draft."""

    name: str
    drafts: tuple[Draft, ...]
    set_aside: tuple[SetAside, ...]
    still_on: tuple[Open, ...]
    make_sure: tuple[Open, ...]
    problems: tuple[Problem, ...] = field(default_factory=tuple)
    misheard: tuple[Misheard, ...] = field(default_factory=tuple)

    def as_json(self) -> dict[str, object]:
        """What ``listen --json`` prints."""
        return {
            "drafts": [draft.as_json() for draft in self.drafts],
            "set_aside": [row.as_json() for row in self.set_aside],
            "standing": {
                "still_on": [row.as_json() for row in self.still_on],
                "make_sure": [row.as_json() for row in self.make_sure],
            },
            "misheard": [row.as_json(self._beside(row)) for row in self.misheard],
        }

    def _beside(self, row: Misheard) -> int | None:
        """The first draft in whose words a guess stands."""
        return next((i for i, d in enumerate(self.drafts) if d.first <= row.first and row.last <= d.last), None)
