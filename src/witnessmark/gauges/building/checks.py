"""Measured values held against dated limits, exactly in decimals, and yes-or-no rules dated by edition: one frame for both."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal

from witnessmark.gauges.answer import Also, Answer, Basis, Source, Table, Verdict
from witnessmark.gauges.building.editions import IRC, Held, irc, named
from witnessmark.units import Quantity, say

__all__ = ["Check", "Rule", "by_rule", "held_against", "plain", "said", "when_rows"]

#: What a tape is read to; nearer to a limit than this a second measurement is due.
_TAPE = Decimal(1) / 16
_INCH = "[in_i]"
_DIGITS = 4


def plain(value: Decimal) -> Decimal:
    """A computed value to four decimals, without trailing noughts: for showing, never for comparing.

    >>> plain(Decimal("576.000")), plain(Decimal(100) / 3)
    (Decimal('576'), Decimal('33.3333'))
    """
    short = round(value, _DIGITS)
    return short.quantize(Decimal(1)) if short == short.to_integral_value() else short.normalize()


def said(value: Decimal, unit: str) -> str:
    """A measured value as it is printed, to four decimals where more were computed.

    >>> said(Decimal("7.75"), "[in_i]"), said(Decimal(100) / 3, "%")
    ('7 3/4 in', '33.3333 %')
    """
    return say(Quantity(plain(value), unit))


def _begun(text: str) -> str:
    return text[:1].upper() + text[1:]


@dataclass(frozen=True, slots=True)
class Check:
    """One measured value and its limit: at least *lowest*, at most *highest*, or less than *below*; all in *unit*.

    ``since`` is the first edition in which the limit stands as given, ``place`` the section, ``basis`` how sure it is
    (None: as the others of the answer).
    """

    name: str
    what: str
    given: Decimal
    unit: str
    place: str
    lowest: Decimal | None = None
    highest: Decimal | None = None
    below: Decimal | None = None
    since: int = IRC[0]
    basis: Basis | None = None

    @property
    def off(self) -> Decimal:
        """By how much the limit is missed; nought where it is kept, or where only equality with *below* misses it."""
        if self.lowest is not None and self.given < self.lowest:
            return self.lowest - self.given
        for top in (self.highest, self.below):
            if top is not None and self.given > top:
                return self.given - top
        return Decimal(0)

    @property
    def within(self) -> bool:
        """Whether the limit is kept, compared exactly."""
        return self.off == 0 and (self.below is None or self.given < self.below)

    @property
    def limit(self) -> str:
        """The limit in words."""
        parts = [
            f"{word} {said(bound, self.unit)}"
            for word, bound in (("at least", self.lowest), ("at most", self.highest), ("less than", self.below))
            if bound is not None
        ]
        return " and ".join(parts)

    @property
    def near(self) -> bool:
        """Whether a tape cannot tell on which side of the limit the value lies."""
        bounds = (self.lowest, self.highest, self.below)
        return self.unit == _INCH and any(one is not None and abs(self.given - one) < _TAPE for one in bounds)

    def __str__(self) -> str:
        head = f"{self.what} {said(self.given, self.unit)}"
        if self.within:
            return f"{head}, limit {self.limit}"
        off = f"off by {said(self.off, self.unit)}" if self.off else "at it, not below it"
        return f"{head}, {off}: limit {self.limit}"


def _source(edition: int, place: str, basis: Basis) -> Source:
    return irc(place, basis, edition) if edition >= IRC[0] else Source(named(edition), "", place, basis)


def _when(asked: tuple[int, ...], editions: tuple[int, ...]) -> str:
    """The editions that have a rule, in words: from the first to the last, or to today."""
    if not asked:
        return f"by no edition through {named(editions[-1])}"
    first, last = asked[0], asked[-1]
    if last != editions[-1]:
        return f"by {named(first)}" + (f" through {named(last)}" if last != first else "") + " only"
    earlier = " (whether an earlier code asked it is not held here)" if first == editions[0] else ""
    return f"by {named(first)} and later{earlier}"


def when_rows(
    held: Held, first: int | None, editions: tuple[int, ...] = IRC, last: int | None = None
) -> tuple[Also, ...]:
    """Since which edition a rule stands (and until which), as rows for programs: edition held against, first, and in words.

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("grading", {"fall": "6in", "run": "10ft", "edition": "2018"})["first_edition"]
    'IRC 2000 or earlier'
    """
    asked = () if first is None else tuple(one for one in editions if one >= first and (last is None or one <= last))
    earlier = " or earlier" if first == editions[0] else ""
    return (
        Also("edition", "held against", held.name),
        Also("first_edition", "first edition that has the rule", "none" if first is None else named(first) + earlier),
        Also("required_when", "required when", _when(asked, editions)),
    )


def held_against(
    held: Held,
    checks: Callable[[int], tuple[Check, ...]],
    *,
    basis: Basis = "memory",
    value: Decimal | None = None,
    unit: str = "",
    lead: str = "",
    editions: tuple[int, ...] = IRC,
    also: tuple[Also, ...] = (),
    cautions: tuple[str, ...] = (),
) -> Answer:
    """The answer for measured values: every limit of the edition, what is off and by how much, and today's limits beside.

    *checks* gives the checks of an edition; the rows ``<name>_within``, ``within`` and ``within_today`` say what came
    of them. Where the house is older than every edition known, the verdict is left undecided and today's limits are
    told for comparison.

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("grading", {"fall": "5in", "run": "10ft", "edition": "2018"}).verdict.outcome
    'beyond'
    """
    today = checks(editions[-1])
    ours = today if held.edition is None else checks(held.edition)
    missed = [one for one in ours if not one.within]
    source_edition = editions[-1] if held.edition is None else held.edition
    sources = tuple(
        _source(source_edition, ", ".join(dict.fromkeys(c.place for c in ours if (c.basis or basis) == one)), one)
        for one in dict.fromkeys(c.basis or basis for c in ours)
    ) or (_source(source_edition, "", basis),)
    first_missed = (missed or list(ours))[:1]
    source = next((one for one in sources for c in first_missed if one.basis == (c.basis or basis)), sources[0])
    good = not missed
    if held.edition is None:
        head = f"{_begun(held.how)}: not judged by a code. Against {named(editions[-1])} for comparison"
        verdict = Verdict("undecided", "older than the editions known here", source)
    else:
        head = f"Against {held.name}"
        verdict = Verdict("within" if good else "beyond", "; ".join(map(str, missed or ours)), source)
    if not ours:
        verdict = Verdict("undecided", f"{held.name} sets no limit here", source)
        told = "it sets no limit here"
    else:
        told = "; ".join(map(str, missed)) if missed else "within the limits (" + "; ".join(map(str, ours)) + ")"
    words = f"{lead}{head}: {told}."
    if held.edition not in {None, editions[-1]}:
        later = [one for one in today if not one.within]
        if later and good:
            words += f" {named(editions[-1])} would ask more: " + "; ".join(map(str, later)) + "."
        elif not later and not good:
            words += f" The limits of {named(editions[-1])} are kept."
    close = [one.what for one in ours if one.near]
    if close:
        cautions = (*cautions, f"Nearer to the limit than a tape's 1/16 in: measure again ({', '.join(close)}).")
    first = next((one for one in editions if checks(one)), None)
    since = max((one.since for one in ours), default=first)
    return Answer(
        value=value,
        unit=unit,
        words=words,
        verdict=verdict,
        sources=sources,
        cautions=(*held.cautions, *cautions),
        also=(
            *also,
            *(Also(f"{one.name}_within", f"{one.what}: {one.limit}", one.within) for one in ours),
            Also("within", f"the limits held here, of {held.name}, kept", good),
            Also(
                "within_today",
                f"the limits held here, of {named(editions[-1])}, kept",
                all(one.within for one in today),
            ),
            *when_rows(held, since, editions),
        ),
        table=Table(
            (("what", ""), ("measured", ""), ("limit", ""), ("kept", ""), ("section", "")),
            tuple(
                (one.what, said(one.given, one.unit), one.limit, "yes" if one.within else "no", one.place)
                for one in ours
            ),
        ),
    )


@dataclass(frozen=True, slots=True)
class Rule:
    """A yes-or-no rule over editions: what is asked for (as the end of a sentence), its section, whether an edition has it."""

    what: str
    place: str
    asks: Callable[[int], bool]
    basis: Basis = "memory"
    why: str = ""


def by_rule(
    held: Held,
    rule: Rule,
    *,
    editions: tuple[int, ...] = IRC,
    also: tuple[Also, ...] = (),
    cautions: tuple[str, ...] = (),
    before: str = "",
) -> Answer:
    """The answer to "was this required": by the edition held against, first by which, and whether today's asks it.

    ``required`` is for the edition held against (False where the house is older than all of them), ``required_today``
    for the newest.

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("chimney-cricket", {"width": "30in", "edition": "2018"})["required"]
    False
    """
    asked = tuple(one for one in editions if rule.asks(one))
    first = asked[0] if asked else None
    today = editions[-1] in asked
    now = held.edition in asked
    why = f": {rule.why}" if rule.why else ""
    when = _when(asked, editions)
    if held.edition is None:
        begin = f"{_begun(held.how)}: {rule.what} is not known to have been required when built; required {when}"
    elif now:
        begin = f"{_begun(rule.what)} is required by {held.name}, {rule.place}{why}; required {when}"
    elif asked:
        begin = f"{_begun(rule.what)} is not required by {held.name}{why}; required {when}"
    else:
        begin = f"{_begun(rule.what)} is not required by {held.name}, nor by any edition held here{why}"
    end = "; recommended today." if today and not now else "."
    source = _source(editions[-1] if held.edition is None else held.edition, rule.place, rule.basis)
    return Answer(
        words=f"{begin}{end}{' ' + before if before else ''}",
        sources=(source,),
        cautions=(*held.cautions, *cautions),
        also=(
            *also,
            Also("required", f"{rule.what} required by {held.name}", now),
            Also("required_today", f"{rule.what} required by {named(editions[-1])}", today),
            *when_rows(held, first, editions, asked[-1] if asked else None),
        ),
    )
