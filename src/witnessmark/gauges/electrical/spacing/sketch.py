"""A wall or counter as a line of pieces: which lengths of it are unbroken, and how far its points lie from a receptacle."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from decimal import ROUND_CEILING, Decimal
from itertools import pairwise

from witnessmark.gauges.answer import rounded
from witnessmark.gauges.electrical.messages import SKETCH_CANNOT_BE
from witnessmark.problems import Refusal

__all__ = ["Farthest", "Piece", "Space", "farthest", "feet", "in_feet", "laid", "least_number", "located", "spaces"]


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece of the line, from *start* to *end* in inches; *breaks* where it parts what lies beside it."""

    kind: str
    start: Decimal
    end: Decimal
    breaks: bool


@dataclass(frozen=True, slots=True)
class Space:
    """An unbroken length with the receptacles that stand in it, in inches along the line.

    Where the line closes on itself a space may run over its end: ``end`` is then more than ``whole``, the length of
    the line. ``ring`` tells that it goes all the way round.
    """

    start: Decimal
    end: Decimal
    receptacles: tuple[Decimal, ...]
    whole: Decimal
    ring: bool = False

    @property
    def length(self) -> Decimal:
        """Length in inches."""
        return self.end - self.start


@dataclass(frozen=True, slots=True)
class Farthest:
    """The point of a space that lies farthest from a receptacle in it: distance, and place along the line, in inches."""

    distance: Decimal
    place: Decimal


def feet(inches: Decimal) -> str:
    """A length as feet and inches, to a tenth of an inch.

    >>> feet(Decimal("86.5")), feet(Decimal(72)), feet(Decimal(9))
    ('7 ft 2.5 in', '6 ft', '9 in')
    """
    tenths = inches.quantize(Decimal("0.1"))
    whole, rest = divmod(tenths, 12)
    parts = [f"{whole:f} ft" if whole else "", f"{rest.normalize():f} in" if rest else ""]
    return " ".join(part for part in parts if part) or "0 in"


def in_feet(inches: Decimal) -> Decimal:
    """A length in inches as a number of feet.

    >>> in_feet(Decimal(48))
    Decimal('4')
    """
    return rounded(float(inches / 12))


def laid(pieces: Iterable[tuple[str, Decimal, bool]], *, running: bool) -> tuple[Piece, ...]:
    """Pieces laid end to end from (kind, length in inches, breaks); with *running* the figure is the tape at its end.

    Refuses a running tape that goes back (WM053).

    >>> [piece.end for piece in laid([("wall", Decimal(60), False), ("door", Decimal(36), True)], running=False)]
    [Decimal('60'), Decimal('96')]
    """
    made: list[Piece] = []
    at = Decimal(0)
    for number, (kind, figure, breaks) in enumerate(pieces, 1):
        end = figure if running else at + figure
        if end < at:
            detail = f"the tape reads {feet(end)} at the end of piece {number} ({kind}), after {feet(at)}"
            raise Refusal(SKETCH_CANNOT_BE.at(f"piece {number}", detail))
        made.append(Piece(kind, at, end, breaks))
        at = end
    return tuple(made)


def located(at: Sequence[Decimal], pieces: Sequence[Piece]) -> tuple[Decimal, ...]:
    """The places of receptacles, in inches along the line, checked: refuses one that lies beyond its end (WM053).

    >>> located([Decimal(12)], laid([("wall", Decimal(60), False)], running=False))
    (Decimal('12'),)
    """
    whole = pieces[-1].end
    for number, place in enumerate(at, 1):
        if place > whole:
            detail = f"{feet(place)} from the start, but the sketch ends at {feet(whole)}"
            raise Refusal(SKETCH_CANNOT_BE.at(f"receptacle {number}", detail))
    return tuple(at)


def spaces(pieces: Sequence[Piece], at: Sequence[Decimal], *, closed: bool = False) -> tuple[Space, ...]:
    """The unbroken lengths of a line with the receptacles at places *at*; corners do not break it.

    With *closed* the end of the line joins its start. A receptacle at the edge of a breaking piece belongs to the
    space beside it; one inside a breaking piece belongs to none.

    >>> line = laid([("wall", Decimal(60), False), ("door", Decimal(36), True), ("wall", Decimal(24), False)], running=False)
    >>> [(one.start, one.end) for one in spaces(line, [], closed=True)]
    [(Decimal('96'), Decimal('180'))]
    """
    whole = pieces[-1].end
    runs: list[list[Decimal]] = []
    for piece in pieces:
        if piece.breaks or piece.start == piece.end:
            continue
        if runs and runs[-1][1] == piece.start:
            runs[-1][1] = piece.end
        else:
            runs.append([piece.start, piece.end])
    ring = closed and len(runs) == 1 and runs[0] == [Decimal(0), whole]
    if closed and len(runs) > 1 and runs[0][0] == 0 and runs[-1][1] == whole:
        runs[-1][1] = whole + runs.pop(0)[1]
    return tuple(
        Space(
            start,
            end,
            tuple(
                sorted(
                    {one for place in at for one in (place, place + whole) if start <= one <= end} - _twice(ring, end)
                )
            ),
            whole,
            ring,
        )
        for start, end in runs
    )


def _twice(ring: bool, end: Decimal) -> set[Decimal]:
    """On a ring the end is the start: a receptacle there is counted once, at the start."""
    return {end} if ring else set()


def farthest(space: Space) -> Farthest | None:
    """The point farthest from a receptacle of its space; None where the space has no receptacle.

    >>> farthest(Space(Decimal(0), Decimal(168), (Decimal(36), Decimal(132)), Decimal(168)))
    Farthest(distance=Decimal('48'), place=Decimal('84'))
    """
    stand = space.receptacles
    if not stand:
        return None
    found = [Farthest((after - before) / 2, (before + after) / 2) for before, after in pairwise(stand)]
    if space.ring:
        gap = stand[0] + space.whole - stand[-1]
        found.append(Farthest(gap / 2, (stand[-1] + gap / 2) % space.whole))
    else:
        found += [Farthest(stand[0] - space.start, space.start), Farthest(space.end - stand[-1], space.end)]
    worst = max(found, key=lambda one: one.distance)
    return Farthest(worst.distance, worst.place if worst.place <= space.whole else worst.place - space.whole)


def least_number(length: Decimal, reach: Decimal, from_length: Decimal) -> int:
    """The fewest receptacles, best placed, for an unbroken *length*: one serves twice its *reach*; all in one unit.

    >>> least_number(Decimal("1.9"), Decimal(6), Decimal(2)), least_number(Decimal("12.1"), Decimal(6), Decimal(2))
    (0, 2)
    """
    if length < from_length:
        return 0
    return int((length / (2 * reach)).to_integral_value(ROUND_CEILING))
