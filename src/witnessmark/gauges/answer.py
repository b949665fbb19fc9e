"""What a gauge answers: a number with everything that must be known before it is used."""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Context, Decimal
from typing import Literal

from witnessmark.units import Quantity, convert

__all__ = [
    "Also",
    "Answer",
    "Basis",
    "Limit",
    "Outside",
    "Source",
    "Step",
    "Table",
    "Uncertainty",
    "Verdict",
    "rounded",
]

#: How sure the project is of a source: read in a copy of the document, worked out from a formula, recalled, or a fact
#: of the trade that no document states.
Basis = Literal["seen", "seen in a copy", "calculated", "memory", "common practice, no source"]

#: Digits kept of a computed float: below these, machines differ in the last place.
_TWELVE = Context(prec=12)


@dataclass(frozen=True, slots=True)
class Source:
    """Where a formula, table or limit is published: document, edition, section or table, and how sure we are."""

    document: str
    edition: str
    place: str
    basis: Basis

    def __str__(self) -> str:
        cited = ", ".join(part for part in (self.document, self.edition, self.place) if part)
        recalled = {"memory": " (recalled: check the text)", "seen in a copy": " (read in a copy: check the text)"}
        return cited + recalled.get(self.basis, "")


@dataclass(frozen=True, slots=True)
class Uncertainty:
    """How far the value may be off: *plus_minus* in the value's unit where a number is known, and in words."""

    words: str
    plus_minus: Decimal | None = None


@dataclass(frozen=True, slots=True)
class Outside:
    """One input, or the value itself, that lies beyond the range its source covers; limits in *given*'s unit."""

    what: str
    given: Quantity
    lowest: Decimal | None
    highest: Decimal | None
    why: str = ""


@dataclass(frozen=True, slots=True)
class Limit:
    """A criterion that the caller holds a value against: at least *lowest*, at most *highest*, and who says so.

    Where *strict*, the limit itself is already beyond (a 4-in sphere must not pass: less than 4 in).
    """

    source: Source
    lowest: Quantity | None = None
    highest: Quantity | None = None
    words: str = ""
    strict: bool = False


@dataclass(frozen=True, slots=True)
class Verdict:
    """What came of holding the value against a criterion. Never a statement that something is safe or complies.

    ``outcome`` is ``close`` when the value lies nearer to the limit than its own uncertainty.
    """

    outcome: Literal["within", "beyond", "close", "undecided"]
    words: str
    source: Source


@dataclass(frozen=True, slots=True)
class Also:
    """A further result: *name* for programs, *what* for people; a number with its unit, a word, or yes and no."""

    name: str
    what: str
    value: Decimal | str | bool
    unit: str = ""


@dataclass(frozen=True, slots=True)
class Step:
    """One line of a worked example: what is done, and what comes of it."""

    what: str
    value: Decimal
    unit: str


@dataclass(frozen=True, slots=True)
class Table:
    """Rows behind the answer (residuals, contours, hours): column names with units, and cells in order."""

    columns: tuple[tuple[str, str], ...]
    rows: tuple[tuple[Decimal | str, ...], ...]


@dataclass(frozen=True, slots=True)
class Answer:
    """The answer of a gauge, frozen.

    Attributes:
        gauge: name of the gauge; filled in by the frame.
        value: the number in *unit* (UCUM), or None where the answer is words or the formula gives no number.
        unit: UCUM code of *value*.
        words: the answer as a plain sentence; never "safe", never "complies".
        uncertainty: how far the value may be off.
        outside_range: every input beyond the range the source covers; empty when all lie inside.
        verdict: only where a criterion was given (a law and edition among the inputs, or a `Limit`).
        sources: where the formula and limits are published.
        cautions: what to keep in mind, and what the answer must never be used to claim.
        also: further results by name. steps: the computation line by line. table: rows behind the answer.
    """

    value: Decimal | None = None
    unit: str = ""
    words: str = ""
    uncertainty: Uncertainty | None = None
    outside_range: tuple[Outside, ...] = ()
    verdict: Verdict | None = None
    sources: tuple[Source, ...] = ()
    cautions: tuple[str, ...] = ()
    also: tuple[Also, ...] = ()
    steps: tuple[Step, ...] = ()
    table: Table | None = None
    gauge: str = ""

    @property
    def quantity(self) -> Quantity | None:
        """The value with its unit, to go on computing with; None where there is no number."""
        return None if self.value is None else Quantity(self.value, self.unit)

    def __getitem__(self, name: str) -> Decimal | str | bool:
        """A further result by its name."""
        for one in self.also:
            if one.name == name:
                return one.value
        raise KeyError(name)

    def against(self, limit: Limit) -> Answer:
        """This answer held against a criterion: the same, with its verdict. Refuses another dimension (WM104)."""
        if self.value is None:
            return replace(self, verdict=Verdict("undecided", "There is no number to hold against it.", limit.source))
        low = None if limit.lowest is None else convert(limit.lowest, self.unit).value
        high = None if limit.highest is None else convert(limit.highest, self.unit).value
        within = (low is None or self.value >= low) and (high is None or self.value <= high)
        within = within and not (limit.strict and self.value in {low, high})
        off = None if self.uncertainty is None else self.uncertainty.plus_minus
        near = off is not None and any(bound is not None and abs(self.value - bound) < off for bound in (low, high))
        outcome: Literal["within", "beyond", "close", "undecided"]
        outcome = "undecided" if self.outside_range else "close" if near else "within" if within else "beyond"
        short = low is not None and (self.value < low or (limit.strict and self.value == low))
        told = {
            "within": "within it",
            "beyond": "short of it" if short else "beyond it",
            "close": "nearer to it than the reading is sure",
            "undecided": "not decided: an input lies outside the range of the source",
        }[outcome]
        return replace(self, verdict=Verdict(outcome, f"{limit.words}: {told}" if limit.words else told, limit.source))


def rounded(value: float) -> Decimal:
    """A computed float as a decimal of twelve figures, so that every machine answers alike. Refuses NaN (ValueError).

    >>> rounded(0.1 + 0.2)
    Decimal('0.3')
    """
    if value != value or value in {float("inf"), float("-inf")}:  # noqa: PLR0124 - NaN is the number unequal to itself
        raise ValueError(value)
    plain = _TWELVE.create_decimal_from_float(value)
    return (
        plain.quantize(Decimal(1)) if plain == plain.to_integral_value() and abs(plain) < 10**11 else plain.normalize()
    )
