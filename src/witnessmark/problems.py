"""What went wrong, told so that a person can act on it.

Every message the program can print has a stable number, and says what happened, to which thing, why it
matters and what to do next. Packages declare theirs in their own ``messages.py``; ``docs/problems.md`` is
generated from those declarations. Numbers are never reused.

Ranges: 0xx gauges, 1xx units, 2xx journal, 3xx stores, 4xx packs, 5xx judging, 6xx listening, 7xx imaging, 8xx report,
9xx commands and assembly.
"""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["Message", "Problem", "Refusal"]


@dataclass(frozen=True, slots=True)
class Message:
    """A kind of problem, declared once and printed many times.

    Attributes:
        number: stable name such as ``WM201``.
        what: what happened, as a sentence without the thing it happened to.
        why: why it matters to the person who reads it.
        next: what to do about it.
    """

    number: str
    what: str
    why: str
    next: str

    def at(self, where: str, detail: str = "", *, entries: tuple[str, ...] = ()) -> Problem:
        """This message said of one thing: *where* names it (file and line, entry, key), *detail* adds the facts."""
        return Problem(self, where, detail, entries)


def _sentence(text: str) -> str:
    """The text as it stands on a line of its own."""
    begun = text[:1].upper() + text[1:]
    return begun if begun.endswith((".", "?", "!", ":")) else begun + "."


@dataclass(frozen=True, slots=True)
class Problem:
    """One occurrence of a message.

    Attributes:
        message: the declared kind of problem.
        where: the thing it happened to, precise enough to go and look.
        detail: the facts of this case; may be empty.
        entries: ids of the journal entries concerned.
    """

    message: Message
    where: str
    detail: str = ""
    entries: tuple[str, ...] = ()

    @property
    def number(self) -> str:
        """The stable number of the message."""
        return self.message.number

    def __str__(self) -> str:
        detail = f" ({self.detail})" if self.detail else ""
        return (
            f"{self.number} {self.where}: {self.message.what.removesuffix('.')}{detail}\n"
            f"  Why it matters: {_sentence(self.message.why)}\n"
            f"  What to do: {_sentence(self.message.next)}"
        )

    def as_json(self) -> dict[str, object]:
        """Plain data for ``--json`` output."""
        return {
            "number": self.number,
            "where": self.where,
            "what": self.message.what.removesuffix("."),
            "detail": self.detail,
            "why": _sentence(self.message.why),
            "next": _sentence(self.message.next),
            "entries": list(self.entries),
        }


class Refusal(Exception):  # noqa: N818 - a refusal to go on, named as it is
    """Raised when a door cannot go on; carries the problems to print. Stored data is as it was."""

    def __init__(self, *problems: Problem) -> None:
        super().__init__("\n".join(str(p) for p in problems))
        self.problems = problems
