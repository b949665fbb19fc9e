"""Entries to try a store with, and how a check says what it expected."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import UTC, datetime, timedelta
from itertools import count
from typing import Final

from witnessmark.journal.acts import Body, Count, Placed, Saw, Took
from witnessmark.journal.entry import NO_PREVIOUS, Entry
from witnessmark.journal.pen import Pen
from witnessmark.problems import Message, Problem, Refusal

__all__ = ["JOB", "OTHER_JOB", "expect", "gives", "refused", "sample_entries", "sample_pen"]

JOB: Final = "5f0c1f4e-3f5a-4c67-9d3e-2b8f6a1c0d11"
OTHER_JOB: Final = "0b6d8f0a-94cf-4c6e-8f0d-5d1f7be1c2aa"


def expect(truth: bool, words: str) -> None:
    """Raise ``AssertionError`` with the words unless it is so."""
    if not truth:
        raise AssertionError(words)


def gives(got: int, wanted: int) -> None:
    """Raise ``AssertionError`` unless so many entries were new."""
    expect(got == wanted, f"expected {wanted} new entries, got {got}")


def refused(act: Callable[[], object], message: Message) -> tuple[Problem, ...]:
    """The problems of the refusal that this must end in; ``AssertionError`` when it does not."""
    try:
        act()
    except Refusal as refusal:
        numbers = sorted({problem.number for problem in refusal.problems})
        expect(numbers == [message.number], f"expected a refusal {message.number}, got {numbers}")
        return refusal.problems
    raise AssertionError(f"expected a refusal {message.number}, got none")


def sample_pen(device: str = "phone", n: int = 0, prev: str = NO_PREVIOUS, job: str = JOB) -> Pen:
    """A pen whose clock moves on by a second with each entry."""
    seconds = count()

    def now() -> datetime:
        return datetime(2026, 3, 14, 9, 0, tzinfo=UTC) + timedelta(seconds=n + next(seconds))

    return Pen(job, "inspector", device, n=n, prev=prev, now=now)


def sample_entries(pen: Pen, number: int) -> list[Entry]:
    """So many different entries, in the order in which the pen wrote them."""
    bodies: Sequence[Body] = (
        Placed(name="Kitchen", sort="room"),
        Saw(what="scorched receptacle", state="adverse", count=Count(checked=3, of=12, adverse=1)),
        Took(name="p1.jpg", mime="image/jpeg", shows="receptacle"),
    )
    return [pen.write(bodies[i % len(bodies)], place="kitchen") for i in range(number)]
