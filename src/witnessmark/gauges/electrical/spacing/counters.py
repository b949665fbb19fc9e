"""Whether any point along the wall line of a kitchen counter lies too far from a receptacle, and how many it takes."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Table, Verdict, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.electrical.editions import ADOPTED, BUILT, EDITION, in_force, nec
from witnessmark.gauges.electrical.messages import SKETCH_CANNOT_BE
from witnessmark.gauges.electrical.spacing.sketch import (
    Farthest,
    Space,
    farthest,
    feet,
    laid,
    least_number,
    located,
    spaces,
)
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["CounterPiece", "CounterReceptacle", "least_counter_receptacles", "receptacle_spacing_counter"]

REACH, FROM = Decimal(24), Decimal(12)
ABOVE = Decimal(20)
#: Depth of counter behind a sink or range from which it does not part the counter: straight, and in a corner.
BEHIND, BEHIND_IN_CORNER = Decimal(12), Decimal(18)
TWO_FOOT_RULE = nec(1990, "210-52(c) (today 210.52(C)(1))", "seen in a copy")
ONE_EACH = nec(1971, "210-22(b)", "seen in a copy")
_FIRST_COUNTERS, _FIRST_TWO_FEET = 1971, 1990


@dataclass(frozen=True, slots=True)
class CounterPiece:
    """One piece along the wall line of the counter, in order from where the sketch starts."""

    kind: Annotated[
        Literal["counter", "sink", "range or cooktop", "refrigerator", "end of counter"],
        Asked("what this piece is", how="'end of counter' for a gap; a corner of the wall needs no piece"),
    ]
    length: Annotated[
        Quantity,
        Asked("its length along the wall, or the tape at its far end", "[in_i]", least="0", most="2400",
              how="along the backsplash; a sink or range by its own width", example="48in"),
    ]  # fmt: skip
    behind: Annotated[
        Quantity | None,
        Asked("depth of counter behind a sink or range", "[in_i]", least="0", most="240", example="4in"),
    ] = None
    corner: Annotated[bool, Asked("whether the sink or range stands across a corner")] = False


@dataclass(frozen=True, slots=True)
class CounterReceptacle:
    """One receptacle that serves the counter, by its place along the wall line."""

    at: Annotated[
        Quantity,
        Asked("its distance from the start of the sketch, along the wall", "[in_i]", least="0", most="2400",
              how="with the tape that measured the pieces", example="24in"),
    ]  # fmt: skip
    above: Annotated[
        Quantity | None,
        Asked("its height above the counter, less than nothing below it", "[in_i]", least="-60", most="240",
              example="8in"),
    ] = None  # fmt: skip


def least_counter_receptacles(inches: float | Decimal | str) -> int:
    """The fewest receptacles, best placed, for an unbroken wall counter of this length in inches.

    >>> [least_counter_receptacles(length) for length in (11, 12, 48, 49, 97)]
    [0, 1, 1, 2, 3]
    """
    return least_number(Decimal(str(inches)), REACH, FROM)


def _parts(piece: CounterPiece) -> bool:
    """Whether this piece parts the counter: all but counter do, unless enough counter runs behind a sink or range."""
    if piece.kind == "counter":
        return False
    if piece.kind in {"sink", "range or cooktop"} and piece.behind is not None:
        return piece.behind.value < (BEHIND_IN_CORNER if piece.corner else BEHIND)
    return True


@gauge(
    name="receptacle-spacing-counter",
    family="electrical",
    title="Reach of the receptacles along a kitchen counter",
    unit="[in_i]",
    gives="distance from the farthest point of the wall line to a receptacle of the same counter space",
    sources=(TWO_FOOT_RULE, nec(2002, "210.52(C)", "seen in a copy")),
    error="as good as the tape: half an inch or so; a point at the limit is decided by the tape, not by this",
    never="that a kitchen has receptacles enough, or that one found works or is protected",
    cautions=("Ground-fault protection of counter receptacles is a question of its own.",),
    example={"pieces": "counter,40in; sink,30in; counter,60in", "receptacles": "20in; 94in"},
)
def receptacle_spacing_counter(
    pieces: Annotated[
        tuple[CounterPiece, ...], Asked("the counter along the wall, piece by piece", example="counter,40in; sink,30in")
    ],
    receptacles: Annotated[
        tuple[CounterReceptacle, ...] | None, Asked("the receptacles along it", example="20in; 94in")
    ] = None,
    *,
    running: Annotated[
        bool, Asked("whether the lengths are readings of one running tape", how="no: each by itself")
    ] = False,
    edition: Annotated[int | None, EDITION] = None,
    built: Annotated[int | None, BUILT] = None,
    adopted: Annotated[int | None, ADOPTED] = None,
) -> Answer:
    """How far the farthest point along a wall counter lies from a receptacle of the same counter space.

    Rule:
        A counter space is 12 in or more along the wall, parted by sinks, ranges and refrigerators (not by a sink or
        range with 12 in of counter behind it, 18 in across a corner). No point along its wall line lies more than
        24 in from a receptacle, which stands at most 20 in above the counter. Since 1990; from 1971 each space of 12
        in needed one. Fewest for an unbroken length L: ceil(L / 48 in).

    Traps: measuring from receptacle to receptacle across the sink; 49 in needs two.

    >>> from witnessmark.units import parse_quantity as q
    >>> receptacle_spacing_counter((CounterPiece("counter", q("60in")),), (CounterReceptacle(q("20in")),)).value
    Decimal('40')
    """
    line = laid([(one.kind, one.length.value, _parts(one)) for one in pieces], running=running)
    if not line or line[-1].end <= 0:
        raise Refusal(SKETCH_CANNOT_BE.at("pieces", "the sketch has no length"))
    placed = receptacles or ()
    located([one.at.value for one in placed], line)
    notes, counted = [], []
    for number, one in enumerate(placed, 1):
        if one.above is not None and not 0 <= one.above.value <= ABOVE:
            where = "below the counter" if one.above.value < 0 else "more than 20 in above the counter"
            notes.append(f"Receptacle {number} does not count: it is {where}.")
        elif any(piece.breaks and piece.start < one.at.value < piece.end for piece in line):
            notes.append(f"Receptacle {number} does not count: it stands behind a sink, range or refrigerator.")
        else:
            counted.append(one.at.value)
    found = [one for one in spaces(line, counted) if one.length >= FROM]
    worst = [(one, farthest(one)) for one in found]
    empty = sum(far is None for _, far in worst)
    beyond = empty + sum(far.distance > REACH for _, far in worst if far)
    most = max((far for _, far in worst if far), key=lambda far: far.distance, default=None)
    value = None if empty or most is None else rounded(float(most.distance))
    force = in_force(edition, built, adopted)
    also = [
        Also("counter_spaces", "counter spaces of 12 in and more", Decimal(len(found))),
        Also("beyond", "counter spaces with a point beyond 24 in or no receptacle", Decimal(beyond)),
        Also("without", "counter spaces with no receptacle", Decimal(empty)),
        Also("counted", "receptacles that count", Decimal(len(counted))),
        Also("least_number", "fewest receptacles that would do, best placed",
             Decimal(sum(least_number(one.length, REACH, FROM) for one in found))),
    ]  # fmt: skip
    if value is not None and most is not None:
        also.append(
            Also("farthest_at", "where the farthest point is, from the start", rounded(float(most.place)), "[in_i]")
        )
    return Answer(
        value=value,
        unit="" if value is None else "[in_i]",
        words=_words(worst, most, beyond),
        also=tuple(also),
        verdict=_verdict(force.possible, beyond, empty),
        sources=(TWO_FOOT_RULE, *((ONE_EACH,) if any(one < _FIRST_TWO_FEET for one in force.possible) else ())),
        cautions=(*notes, *(force.cautions if force.possible else ())),
        table=_table(worst),
    )


def _words(worst: list[tuple[Space, Farthest | None]], most: Farthest | None, beyond: int) -> str:
    if not worst:
        return "No counter space of 12 in or more is in this sketch; the rule asks for no receptacle."
    empty = [f"from {feet(one.start)} to {feet(one.end)}" for one, far in worst if far is None]
    if empty or most is None:
        return f"No receptacle serves the counter space {'; '.join(empty)} (from the start of the sketch)."
    told = f"The farthest point, {feet(most.place)} from the start, is {feet(most.distance)} from a receptacle"
    return f"{told}: more than 24 in." if beyond else f"{told}; no point is more than 24 in from one."


def _verdict(possible: tuple[int, ...], beyond: int, empty: int) -> Verdict | None:
    if not possible:
        return None
    said = {True if one < _FIRST_COUNTERS else empty == 0 if one < _FIRST_TWO_FEET else beyond == 0 for one in possible}
    source = TWO_FOOT_RULE if possible[-1] >= _FIRST_TWO_FEET else ONE_EACH
    if said == {True}:
        asked = "Nothing was asked for then" if possible[-1] < _FIRST_COUNTERS else "What was asked for then is met"
        return Verdict("within", f"{asked}, as far as the sketch goes.", source)
    if said == {False}:
        return Verdict("beyond", "It falls short of what was asked for then.", source)
    return Verdict("undecided", "Whether it falls short hangs on which edition was in force.", source)


def _table(worst: list[tuple[Space, Farthest | None]]) -> Table:
    columns = (
        ("from", "[in_i]"),
        ("to", "[in_i]"),
        ("receptacles", ""),
        ("fewest", ""),
        ("farthest", "[in_i]"),
        ("at", "[in_i]"),
    )
    return Table(
        columns,
        tuple(
            (
                one.start,
                one.end,
                Decimal(len(one.receptacles)),
                Decimal(least_number(one.length, REACH, FROM)),
                "no receptacle" if far is None else far.distance,
                "" if far is None else far.place,
            )
            for one, far in worst
        ),
    )
