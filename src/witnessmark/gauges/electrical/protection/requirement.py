"""Whether the code asked for something, in every edition that may have been in force, and what it asks today."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal

from witnessmark.gauges.answer import Also, Answer, Basis, Source, Verdict
from witnessmark.gauges.electrical.editions import ANY_YEAR, EDITIONS, LATEST, InForce, named, nec

__all__ = ["Asks", "Found", "Lacks", "Lifted", "Rule", "judged", "picked"]


class Lacks(str):
    """The rule hangs on this fact, which was not given."""

    __slots__ = ()


class Lifted(str):
    """The rule holds at this place, but this exception lifts it."""

    __slots__ = ()


#: What one rule says of one outlet: it asks, it does not, a fact is lacking, or an exception lifts it.
Asks = bool | Lacks | Lifted


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule with the editions that hold it.

    Attributes:
        first, last: first and last edition that hold the rule.
        section: where it stands in the first of them.
        words: what it covers, as a phrase.
        basis: how sure we are of edition and scope.
        binds_from: year, 1 January, stated inside the first edition, from which it binds; 0 for at once.
        disputed: what other lists say; told with every answer that rests on the rule.
    """

    first: int
    section: str
    words: str
    basis: Basis = "memory"
    last: int = ANY_YEAR
    binds_from: int = 0
    disputed: str = ""

    @property
    def source(self) -> Source:
        """The rule as a source."""
        return nec(self.first, self.section, self.basis)

    def holds(self, edition: int) -> bool:
        """Whether the edition holds this rule."""
        return self.first <= edition <= self.last

    def dated(self, edition: int, year: int | None) -> Asks:
        """Whether the rule binds work of *year* under *edition*, by the date stated inside the edition."""
        if not self.binds_from or edition != self.first:
            return True
        binds = f"the {self.first} edition makes the rule bind only from 1 January {self.binds_from}"
        if year is None:
            return Lacks(f"the year of the work: {binds}")
        return True if year >= self.binds_from else Lifted(binds)


@dataclass(frozen=True, slots=True)
class Found:
    """What the rules of one edition say of one outlet: required or not (None: a fact is lacking), by which rule."""

    required: bool | None
    rule: Rule | None = None
    why: str = ""


def picked(said: list[tuple[Rule, Asks]]) -> Found:
    """One finding from what each rule says: a rule that asks goes before one that lacks a fact, then exceptions.

    >>> picked([]).required
    False
    """
    for kind in (bool, Lacks, Lifted):
        for rule, asks in said:
            if isinstance(asks, kind) and asks is not False:
                required = True if asks is True else None if isinstance(asks, Lacks) else False
                return Found(required, rule, "" if asks is True else str(asks))
    return Found(required=False)


def _told(found: Found) -> bool | str:
    return "depends" if found.required is None else found.required


def judged(
    what: str, ask: Callable[[int, int | None], Found], force: InForce, *, present: bool | None = None
) -> Answer:
    """The answer of a requirement gauge.

    *what* names the protection ("ground-fault protection"); *ask* gives the finding for an edition and the year of
    the work (None: not known); *force* the editions that may have been in force; *present* whether it was found.

    >>> from witnessmark.gauges.electrical.editions import in_force
    >>> bath = Rule(1975, "210-8", "receptacles in bathrooms")
    >>> ask = lambda edition, year: Found(required=True, rule=bath) if bath.holds(edition) else Found(required=False)
    >>> judged("a GFCI", ask, in_force(1971, None, None))["first_edition"]
    Decimal('1975')
    """
    ever = {edition: ask(edition, ANY_YEAR) for edition in EDITIONS}
    first = next((edition for edition in EDITIONS if ever[edition].required), None)
    perhaps = next((edition for edition in EDITIONS if ever[edition].required is not False), None)
    today = ever[LATEST]
    lapses = [edition for edition in EDITIONS if first and edition > first and not ever[edition].required]
    since = next((edition for edition in EDITIONS if lapses and edition > lapses[-1]), first)
    then = [(edition, ask(edition, force.year)) for edition in force.possible]
    outcomes = {found.required for _, found in then}
    required: bool | str = outcomes.pop() if len(outcomes) == 1 and None not in outcomes else "depends"  # type: ignore[assignment]  # None is told apart just before
    reasons = {found.why for _, found in then}
    words = _then_words(what, then, force, (first, since), required)
    words += _today_words(what, today, required if then else "", reasons) if first else []
    used = [found for _, found in then if found.rule]
    rules = [*(found.rule for found in used), ever[first].rule if first else None, today.rule]
    kept = list(dict.fromkeys(rule for rule in rules if rule))
    also = [
        Also("first_edition", "first edition that asks for it here", Decimal(first) if first else "none"),
        Also("required_today", f"whether the {LATEST} edition asks for it here", _told(today)),
        Also("editions", "editions that may have been in force", ", ".join(str(e or "before 1947") for e, _ in then)),
    ]
    if then:
        also.insert(0, Also("required", "whether it was required then", required))
    if since != first:
        also.append(Also("asked_since", "edition from which it is asked for without a break", Decimal(since or 0)))
    if perhaps and perhaps != first:
        also.append(Also("perhaps_from", "earliest edition that may ask for it, by facts not given", Decimal(perhaps)))
    cautions = [*force.cautions, *(f"Sources differ: {rule.disputed}." for rule in kept if rule.disputed)]
    if LATEST in force.possible:
        cautions.append("What the 2026 edition changed is known here only in part: look it up.")
    return Answer(
        words=" ".join(words),
        sources=tuple(rule.source for rule in kept),
        cautions=tuple(cautions),
        also=tuple(also),
        verdict=_verdict(what, required, present, kept) if then and present is not None else None,
    )


def _then_words(
    what: str,
    then: list[tuple[int, Found]],
    force: InForce,
    firsts: tuple[int | None, int | None],
    required: bool | str,
) -> list[str]:
    first, since = firsts
    begun = what[:1].upper() + what[1:]
    if first is None:
        perhaps = next((found.why for _, found in then if found.required is None), "")
        if perhaps:
            return [f"Whether {what} was asked for hangs on {perhaps}."]
        lifted = next((found.why for _, found in then if found.why), "")
        because = f": {lifted}" if lifted else ""
        return [f"No edition through {LATEST} is known here to ask for {what} at this place and use{because}."]
    if not then:
        return [f"{begun} at this place was first required by {named(first)}."]
    if required is True:
        rule = next(found.rule for _, found in reversed(then) if found.rule is not None)
        earlier = f", first by {named(first)}" if first not in force.possible else ""
        return [f"{begun} was required by {force.words}{earlier} ({rule.words})."]
    if required is False:
        lifted = next((found.why for _, found in reversed(then) if found.why), "")
        lifts = f": {lifted}" if lifted else ""
        if first > then[-1][0]:
            return [f"Not yet required by {force.words}{lifts}. It was first required by {named(first)}."]
        again = f" It is asked for again from {named(since)} on." if since and since > then[-1][0] else ""
        return [f"Not required here by {force.words}{lifts}.{again}"]
    facts = list(dict.fromkeys(found.why for _, found in then if found.required is None and found.why))
    if facts:
        return [f"Whether {what} was required then hangs on {'; and on '.join(facts)}."]
    asked = [edition for edition, found in then if found.required]
    if asked == [edition for edition, _ in then if edition >= asked[0]]:
        return [f"Required then if {named(asked[0])} or a later one was in force; not yet by the editions before it."]
    listed = ", ".join(str(edition) for edition in asked)
    return [f"Required then by the editions {listed}, not by the others that may have been in force."]


def _today_words(what: str, today: Found, required: bool | str, reasons: set[str]) -> list[str]:
    if today.required is not True and today.why in reasons:
        return [f"The same holds for the {LATEST} edition."]
    if today.required is None:
        return [f"Whether the {LATEST} edition asks for it hangs on {today.why}."]
    if not today.required:
        return [f"The {LATEST} edition does not ask for {what} here: {today.why}."] if today.why else []
    if required is True:
        return []
    return [f"Today's model code, {named(LATEST)}, asks for it; recommended today."]


def _verdict(what: str, required: bool | str, present: bool, rules: list[Rule]) -> Verdict | None:
    if not rules:
        return None
    source = rules[0].source
    if required == "depends":
        return Verdict("undecided", f"Whether {what} was required then is not decided.", source)
    if required and not present:
        return Verdict("beyond", f"{what[:1].upper() + what[1:]} was required then and was not found.", source)
    return Verdict("within", "Nothing that was required then was found missing.", source)
