"""What an entry says, as a sentence."""

from __future__ import annotations

import re
from collections.abc import Callable
from decimal import Decimal, InvalidOperation
from typing import Any

from witnessmark.journal import acts
from witnessmark.journal.fold import Fact
from witnessmark.report.clock import spell
from witnessmark.report.naming import Names, capital, sentence
from witnessmark.units import Quantity, say

__all__ = ["SURENESS", "attribute_words", "by_whom", "join", "measured", "quantity", "reason_words", "telling"]

#: What is printed beside a text by how sure we are of it; nothing when it was read in the law or standard itself.
SURENESS = {
    "seen": "",
    "seen-copy": "read in an unofficial copy, check the text",
    "memory": "recalled, check the text",
    "memory?": "recalled with doubt, check the text",
    "computed": "worked out",
    "common practice, no source": "common practice, no source",
}


_WORD = re.compile(r"\w+")
_MOST = 0.6


def join(parts: list[str] | tuple[str, ...], last: str = "and") -> str:
    """Words in a row.

    >>> join(["a stain", "a crack", "moss"])
    'a stain, a crack and moss'
    """
    rest = [part for part in parts if part]
    return f"{', '.join(rest[:-1])} {last} {rest[-1]}" if len(rest) > 1 else "".join(rest)


def quantity(value: str, unit: str | None) -> str:
    """A value with its unit as printed; what is no decimal number stands as it was recorded."""
    try:
        number = Decimal(value)
    except InvalidOperation:
        return f"{value} {unit or ''}".strip()
    if not number.is_finite():
        return f"{value} {unit or ''}".strip()
    return say(Quantity(number, unit or "1"))


def measured(body: acts.Read) -> str:
    """The value of a reading as printed, both ends when it was read as a range."""
    value = quantity(body.value, body.unit)
    if body.high is not None:
        value = f"{value} to {quantity(body.high, body.unit)}"
    return f"about {value}" if body.about else value


def reason_words(body: acts.Skipped, names: Names) -> str:
    """Why something was not inspected: the reason of the packs, and the inspector's own words where they add to it.

    Empty when no reason was recorded beyond what is said of the thing itself.
    """
    reason = names.packs.reasons.get(body.reason)
    known = names.tongue.row("reason", reason.id, "words", reason.words) if reason else body.reason.replace("-", " ")
    own = (body.words or "").strip().rstrip(".")
    if not own or _says_again(own, body.what):
        return known
    return f"{known} ({own})" if known and not _says_again(own, known) else own


def _says_again(words: str, said: str) -> bool:
    """Whether most of the words were said already."""
    have, new = set(_WORD.findall(said.lower())), set(_WORD.findall(words.lower()))
    return len(new & have) >= _MOST * len(new)


def by_whom(trade: str, names: Names) -> str:
    """Who should look at something, in words."""
    known = names.packs.trades.get(trade)
    return names.tongue.row("trade", known.id, "words", known.words) if known else trade


def _count(count: acts.Count | None) -> str:
    if count is None:
        return ""
    of = f" of {spell(count.of)}" if count.of is not None else ""
    short = "none fell short" if not count.adverse else f"{spell(count.adverse)} fell short"
    return f" {capital(spell(count.checked))}{of} looked at; {short}."


def _arrived(body: acts.Arrived, _: Names) -> str:
    parts = [
        f"weather: {body.weather}" if body.weather else "",
        f"ground: {body.ground}" if body.ground else "",
        f"outdoors {quantity(body.outdoor, body.outdoor_unit)}" if body.outdoor else "",
        f"present: {join(body.present)}" if body.present else "",
        f"utilities on: {join(body.utilities_on)}" if body.utilities_on else "",
        body.note or "",
    ]
    said = "; ".join(part for part in parts if part)
    return sentence(f"arrived; {said}" if said else "arrived")


def _left(body: acts.Left, _: Names) -> str:
    ends = f", with {spell(body.open_ends)} loose end{'s' * (body.open_ends != 1)} open" if body.open_ends else ""
    return sentence(f"left{ends}") + (f" {sentence(body.why)}" if body.why else "")


def _absent(body: acts.Absent, names: Names) -> str:
    what = f" {sentence(body.what)}" if body.what else ""
    return f"Looked for, not there: {names.absent(body)}.{what}"


def _saw(body: acts.Saw, _: Names) -> str:
    doubt = "" if body.sure else " Not sure."
    return sentence(body.what or "seen") + _count(body.count) + doubt


def _ran(body: acts.Ran, _: Names) -> str:
    parts = [
        f"found {body.found}" if body.found else "",
        f"set to {body.setting}" if body.setting else "",
        f"left {body.left}" if body.left else "",
        body.response or "",
    ]
    return sentence("; ".join([body.what or "operated", *(part for part in parts if part)]))


def _stopped(body: acts.Stopped, _: Names) -> str:
    state = f"; now {body.state}" if body.state else ""
    return sentence((body.what or "put back") + state)


def _read(body: acts.Read, names: Names) -> str:
    measure = names.packs.measures.get(body.measure)
    name = measure.name if measure else body.measure.replace("-", " ") or "reading"
    spot = f" at {body.spot}" if body.spot else ""
    tool = f", by {body.instrument}" if body.instrument else ""
    return sentence(f"{name} {measured(body)}{spot}{tool}")


def _took(body: acts.Took, _: Names) -> str:
    sort = {"photo": "photo", "thermal": "thermal picture", "voice": "voice recording"}.get(body.sort, body.sort)
    return sentence(f"{sort} {body.name}".strip() + (f": {body.shows}" if body.shows else ""))


def _identified(body: acts.Identified, names: Names) -> str:
    note = f" {sentence(body.note)}" if body.note else ""
    return sentence(_attribute(body, names)) + note


def _attribute(body: acts.Identified, names: Names) -> str:
    known = names.packs.attributes.get(body.attribute)
    name = (
        names.tongue.row("attribute", known.id, "name", known.name)
        if known
        else body.attribute.replace("-", " ") or "noted"
    )
    # A year of make may come with a unit of time; it is a date, not a length of time.
    value = (
        quantity(body.value, body.unit)
        if body.unit and body.attribute != "made"
        else body.value.replace("-", " ")
        if known
        else body.value
    )
    return f"{name}: {value}"


def _skipped(body: acts.Skipped, names: Names) -> str:
    why = reason_words(body, names)
    return sentence(f"not inspected{': ' + body.what if body.what else ''}{'; ' + why if why else ''}")


def _settled(body: acts.Settled, _: Names) -> str:
    whom = f"; agreed with {body.with_whom}" if body.with_whom else ""
    state = f"; now {body.state}" if body.state else ""
    return sentence(f"settled: {body.how or 'no words recorded'}{state}{whom}")


_TELL: dict[type, Callable[[Any, Names], str]] = {
    acts.Arrived: _arrived,
    acts.Left: _left,
    acts.Placed: lambda body, _: sentence(f"place: {body.name or 'without a name'}"),
    acts.Listed: lambda body, names: sentence(
        f"there is {body.label or names.kind(body.kind) or 'a component'}" + (f"; {body.note}" if body.note else "")
    ),
    acts.Absent: _absent,
    acts.Saw: _saw,
    acts.Ran: _ran,
    acts.Stopped: _stopped,
    acts.Read: _read,
    acts.Took: _took,
    acts.Identified: _identified,
    acts.Skipped: _skipped,
    acts.Doubted: lambda body, _: sentence(f"in doubt: {body.what or 'no words recorded'}"),
    acts.Settled: _settled,
    acts.Found: lambda body, _: sentence(f"finding: {body.title or 'without a title'}"),
    acts.Sealed: lambda body, _: f"Sealed as edition {body.edition}.",
}


def telling(fact: Fact, names: Names) -> str:
    """The entry in a sentence: what was seen, run, read or decided."""
    tell = _TELL.get(type(fact.body))
    return tell(fact.body, names) if tell else sentence(fact.act)


def attribute_words(body: acts.Identified, names: Names) -> str:
    """An attribute and its value, such as ``material copper``."""
    return _attribute(body, names)
