"""Whether something was inspected in the way the law wants, or in another way that was stated and lawfully excused."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from witnessmark.journal.acts import Identified
from witnessmark.journal.fold import Fact
from witnessmark.judging.excuses import Excuse
from witnessmark.packs.model import Duty

__all__ = ["Method", "by_default_method"]


@dataclass(frozen=True, slots=True)
class Method:
    """How a target was inspected: ``met``, ``excused`` (another way, with a lawful reason) or ``open``, and why."""

    status: str
    entries: tuple[str, ...]
    words: str = ""


def _same(value: str, wanted: str) -> bool:
    ways = [way.strip().lower() for way in wanted.split(" or ")]
    return value.strip().lower() in ways


def by_default_method(duty: Duty, stated: Sequence[Fact], excuses: Sequence[Excuse]) -> Method:
    """How the ways *stated* for one target stand against the duty's ``default_method``.

    Another way is excused by one of the duty's ``method_reasons``, and only when the way used was stated: a roof that
    was not walked on is not excused by silence about how it was seen. What was not inspected at all is excused alone.
    """
    ways = [(f, f.body.value) for f in stated if isinstance(f.body, Identified) and f.body.value.strip()]
    as_wanted = tuple(f.id for f, value in ways if _same(value, duty.default_method))
    if as_wanted:
        return Method("met", as_wanted)
    lawful = [e for e in excuses if e.lawful]
    why = "; ".join(dict.fromkeys(e.words for e in lawful))
    used = "; ".join(dict.fromkeys(value for _, value in ways))
    entries = (*(f.id for f, _ in ways), *(e.fact.id for e in lawful))
    if lawful:
        return Method("excused", entries, f"inspected {used}: {why}" if used else why)
    if used:
        return Method("open", entries, f"inspected {used}, not {duty.default_method}, and no lawful reason is recorded")
    return Method("open", (), f"nothing says that it was {duty.default_method}, or how it was inspected instead")
