"""Every measurement that counts, as a number with its unit, on which kind and in which place."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal, InvalidOperation

from witnessmark.journal.acts import Read
from witnessmark.journal.fold import Fact, Record
from witnessmark.units import Quantity
from witnessmark.views.house import House, house

__all__ = ["Reading", "number", "readings"]

_LONGEST = 40


@dataclass(frozen=True, slots=True)
class Reading:
    """One ``read``.

    Attributes:
        fact: the ``read``.
        body: its body.
        kind: kind it was read at; empty when unknown.
        place: id of the place; None when unknown.
        low: the reading, or the lower end of a range; None when the text is no finite decimal.
        high: the upper end of a range; None when it is no range.
    """

    fact: Fact
    body: Read
    kind: str
    place: str | None
    low: Quantity | None
    high: Quantity | None


def number(text: str | None) -> Decimal | None:
    """The finite decimal a text states, else None.

    >>> number("0.50"), number("NaN"), number("about five")
    (Decimal('0.50'), None, None)
    """
    if not text or len(text) > _LONGEST or "_" in text:
        return None
    try:
        value = Decimal(text.strip())
    except InvalidOperation:
        return None
    return value if value.is_finite() and abs(value.adjusted()) < _LONGEST else None


def readings(record: Record, home: House | None = None) -> tuple[Reading, ...]:
    """Every ``read`` of *record*, in order. A range spoken the wrong way round is turned."""
    home = home or house(record)
    found: list[Reading] = []
    for fact in record.facts:
        body = fact.body
        if not isinstance(body, Read):
            continue
        low, high = number(body.value), number(body.high)
        if low is not None and high is not None and high < low:
            low, high = high, low
        one = None if low is None else Quantity(low, body.unit)
        other = None if high is None else Quantity(high, body.unit)
        found.append(Reading(fact, body, home.kind_of(fact), home.place_of(fact), one, other))
    return tuple(found)
