"""Whether any point along the floor line of a wall lies too far from a receptacle, and how many it takes at least."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import ROUND_CEILING, ROUND_HALF_DOWN, Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Source, Table, Verdict
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.electrical.editions import ADOPTED, BUILT, EDITION, in_force, named, nec
from witnessmark.gauges.electrical.messages import SKETCH_CANNOT_BE
from witnessmark.gauges.electrical.spacing.sketch import (
    Farthest,
    Piece,
    Space,
    farthest,
    feet,
    in_feet,
    laid,
    least_number,
    located,
    spaces,
)
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["WallPiece", "WallReceptacle", "by_length_of_room", "least_wall_receptacles", "receptacle_spacing_wall"]

SIX_FEET, TWO_FEET = Decimal(72), Decimal(24)
#: A receptacle farther from the wall, or higher, does not count.
OFF_WALL, TOO_HIGH = Decimal(18), Decimal(66)
BREAKING = ("door", "sliding glass door", "open passage", "fireplace", "fixed cabinet without counter")
#: The edition that counted by 12 ft around the room, and the first with the rule of 6 ft.
TWELVE_FEET, SIX = 1956, 1959
SIX_FOOT_RULE = nec(1959, "210-22 (today 210.52(A))", "seen in a copy")
TWELVE_FOOT_COUNT = nec(1956, "2124", "seen in a copy")
TWENTY_FOOT_COUNT = nec(1947, "receptacle outlets in dwellings", "seen in a copy")


@dataclass(frozen=True, slots=True)
class WallPiece:
    """One piece of the wall along the floor line, in order from where the sketch starts."""

    kind: Annotated[
        Literal[
            "wall", "window", "fixed glass panel", "railing or bar", "door", "sliding glass door", "open passage",
            "fireplace", "fixed cabinet without counter",
        ],
        Asked("what this piece of the wall is", how="a window above the floor counts as wall; corners need no piece"),
    ]  # fmt: skip
    length: Annotated[
        Quantity,
        Asked("its length along the floor, or the tape at its far end", "[in_i]", least="0", most="12000",
              how="along the baseboard; a closet door is a door", example="8ft 4in"),
    ]  # fmt: skip


@dataclass(frozen=True, slots=True)
class WallReceptacle:
    """One receptacle by its place along the floor line."""

    at: Annotated[
        Quantity,
        Asked("its distance from the start of the sketch, along the wall", "[in_i]", least="0", most="12000",
              how="with the tape that measured the pieces", example="3ft"),
    ]  # fmt: skip
    off_wall: Annotated[
        Quantity | None,
        Asked("for a floor receptacle its distance from the wall", "[in_i]", least="0", most="1200", example="12in"),
    ] = None
    height: Annotated[
        Quantity | None, Asked("its height above the floor", "[in_i]", least="0", most="1200", example="16in")
    ] = None


def least_wall_receptacles(feet_of_wall: float | Decimal | str) -> int:
    """The fewest receptacles, best placed, for an unbroken wall of this length in ft: none below 2 ft, then one a 12 ft.

    >>> [least_wall_receptacles(length) for length in ("1.9", "2.0", "12.0", "12.1", "25")]
    [0, 1, 1, 2, 3]
    """
    return least_number(Decimal(str(feet_of_wall)) * 12, SIX_FEET, TWO_FEET)


def by_length_of_room(inches: Decimal, edition: int) -> tuple[int, int] | None:
    """The count by length around the room, 1947 to 1956, as the fewest by two readings of the text; None otherwise.

    One receptacle for 20 ft (1947 to 1953) or 12 ft (1956). Recalled: "or major fraction thereof"; the quotations at
    hand leave it out, so the second figure counts every part begun.

    >>> by_length_of_room(Decimal(44 * 12), 1956), by_length_of_room(Decimal(44 * 12), 1953)
    ((4, 4), (2, 3))
    """
    if not 0 < edition < SIX:
        return None
    step = Decimal(144 if edition == TWELVE_FEET else 240)
    parts = inches / step
    return int(parts.to_integral_value(ROUND_HALF_DOWN)), int(parts.to_integral_value(ROUND_CEILING))


@gauge(
    name="receptacle-spacing-wall",
    family="electrical",
    title="Reach of the receptacles along a wall",
    unit="[ft_i]",
    gives="distance from the farthest point of the floor line to a receptacle in the same wall space",
    sources=(SIX_FOOT_RULE, nec(2011, "210.52(A)", "seen in a copy")),
    error="as good as the tape: an inch or two; a point at the limit is decided by the tape, not by this",
    never="that a room has receptacles enough for its use, or that one found works",
    cautions=(
        "The rule is for rooms that are lived in, not for bathrooms, closets, stairs or garages, which have their own.",
        "Cords run under rugs or through doors for want of a receptacle are a fire hazard whatever the rule.",
    ),
    example={"pieces": "wall,14ft", "receptacles": "3ft; 11ft"},
)
def receptacle_spacing_wall(
    pieces: Annotated[
        tuple[WallPiece, ...], Asked("the wall from one end to the other, piece by piece", example="wall,14ft")
    ],
    receptacles: Annotated[
        tuple[WallReceptacle, ...] | None, Asked("the receptacles along it", example="3ft; 11ft")
    ] = None,
    *,
    running: Annotated[
        bool, Asked("whether the lengths are readings of one running tape", how="no: each by itself")
    ] = False,
    closed: Annotated[bool, Asked("whether the sketch goes all round the room, back to its start")] = False,
    edition: Annotated[int | None, EDITION] = None,
    built: Annotated[int | None, BUILT] = None,
    adopted: Annotated[int | None, ADOPTED] = None,
) -> Answer:
    """How far the farthest point of the floor line lies from a receptacle of the same wall space.

    Rule:
        A wall space is 2 ft or more, unbroken along the floor line by doors, fireplaces and the like; corners,
        windows, fixed glass panels and railings do not break it. No point of it lies more than 6 ft from a
        receptacle in it. Floor receptacles count within 18 in of the wall, others up to 5 1/2 ft high.
        Since 1959; 1956: one for 12 ft around the room; 1947 to 1953: one for 20 ft.
        Fewest for an unbroken length L: ceil(L / 12 ft).

    Traps: each wall by itself instead of around the corner; a receptacle across a doorway does not count.

    >>> from witnessmark.units import parse_quantity as q
    >>> line, pair = (WallPiece("wall", q("14ft")),), (WallReceptacle(q("3ft")), WallReceptacle(q("11ft")))
    >>> receptacle_spacing_wall(line, pair).value
    Decimal('4')
    """
    line = laid([(one.kind, one.length.value, one.kind in BREAKING) for one in pieces], running=running)
    if not line or line[-1].end <= 0:
        raise Refusal(SKETCH_CANNOT_BE.at("pieces", "the sketch has no length"))
    placed = receptacles or ()
    located([one.at.value for one in placed], line)
    counted, notes = _counted(placed, line)
    found = [one for one in spaces(line, counted, closed=closed) if one.length >= TWO_FEET]
    worst = [(one, farthest(one)) for one in found]
    empty = [one for one, far in worst if far is None]
    most = max((far for _, far in worst if far), key=lambda far: far.distance, default=None)
    beyond = len(empty) + sum(far.distance > SIX_FEET for _, far in worst if far)
    least = sum(least_number(one.length, SIX_FEET, TWO_FEET) for one in found)
    value = None if empty or most is None else in_feet(most.distance)
    force = in_force(edition, built, adopted)
    count = {one: by_length_of_room(line[-1].end, one) for one in force.possible}
    also = [
        Also("wall_spaces", "wall spaces of 2 ft and more", Decimal(len(found))),
        Also("beyond", "wall spaces with a point beyond 6 ft or no receptacle", Decimal(beyond)),
        Also("counted", "receptacles that count", Decimal(len(counted))),
        Also("least_number", "fewest receptacles that would do, best placed", Decimal(least)),
    ]
    if value is not None and most is not None:
        also.append(Also("farthest_at", "where the farthest point is, from the start", in_feet(most.place), "[ft_i]"))
    for one, asked in count.items():
        if asked:
            also.append(Also(f"asked_{one}", f"receptacles asked for by {named(one)}", Decimal(asked[0])))
    if any(piece.kind == "fixed cabinet without counter" for piece in line):
        notes.append(
            "Fixed cabinets without a counter break the wall by words of 2011; older editions did not name them."
        )
    return Answer(
        value=value,
        unit="[ft_i]" if value is not None else "",
        words=_words(found, empty, most, beyond),
        also=tuple(also),
        verdict=_verdict(force.possible, beyond, len(counted), count),
        sources=_sources(count),
        cautions=(*notes, *(force.cautions if force.possible else ())),
        table=_table(worst),
    )  # fmt: skip


def _sources(count: dict[int, tuple[int, int] | None]) -> tuple[Source, ...]:
    """The rule as it is, and the counts around the room before it where their editions may have been in force."""
    found = [SIX_FOOT_RULE, nec(2011, "210.52(A)", "seen in a copy")]
    if TWELVE_FEET in count:
        found.append(TWELVE_FOOT_COUNT)
    if any(asked and edition < TWELVE_FEET for edition, asked in count.items()):
        found.append(TWENTY_FOOT_COUNT)
    return tuple(found)


def _counted(placed: tuple[WallReceptacle, ...], line: tuple[Piece, ...]) -> tuple[list[Decimal], list[str]]:
    """Places of the receptacles that count, and why the others do not."""
    counted, notes = [], []
    for number, one in enumerate(placed, 1):
        at = one.at.value
        if one.off_wall is not None and one.off_wall.value > OFF_WALL:
            notes.append(f"Receptacle {number} does not count: it is more than 18 in from the wall.")
        elif one.height is not None and one.height.value > TOO_HIGH:
            notes.append(f"Receptacle {number} does not count: it is more than 5 1/2 ft above the floor.")
        elif next((piece for piece in line if piece.breaks and piece.start < at < piece.end), None):
            notes.append(
                f"Receptacle {number} stands at {feet(at)}, where the wall is broken; look at the sketch again."
            )
        else:
            counted.append(at)
    return counted, notes


def _words(found: list[Space], empty: list[Space], most: Farthest | None, beyond: int) -> str:
    if not found:
        return "No wall space of 2 ft or more is in this sketch; the rule asks for no receptacle."
    if empty:
        where = "; ".join(f"from {feet(one.start)} to {feet(one.end % one.whole or one.end)}" for one in empty)
        return f"No receptacle stands in the wall space {where} (from the start of the sketch)."
    if most is None:
        return ""
    told = f"The farthest point, {feet(most.place)} from the start, is {feet(most.distance)} from a receptacle"
    if beyond:
        return f"{told}: more than 6 ft."
    return f"{told}; no point is more than 6 ft from one."


def _verdict(
    possible: tuple[int, ...], beyond: int, counted: int, count: dict[int, tuple[int, int] | None]
) -> Verdict | None:
    """Held against the editions that may have been in force: the 6 ft rule, or the count around the room before it."""
    if not possible:
        return None
    said: set[bool | None] = set()
    for one in possible:
        asked = count[one]
        if asked is not None:
            said.add(True if counted >= asked[1] else False if counted < asked[0] else None)
        else:
            said.add(beyond == 0 if one else None)
    newest = possible[-1]
    source = SIX_FOOT_RULE if newest >= SIX else TWELVE_FOOT_COUNT if newest == TWELVE_FEET else TWENTY_FOOT_COUNT
    if said == {True}:
        return Verdict("within", "What was asked for then is met, as far as the sketch goes.", source)
    if said == {False}:
        return Verdict("beyond", "It falls short of what was asked for then.", source)
    return Verdict(
        "undecided", "Whether it falls short hangs on which edition was in force, and on its wording.", source
    )


def _table(worst: list[tuple[Space, Farthest | None]]) -> Table:
    columns = (
        ("from", "[ft_i]"),
        ("to", "[ft_i]"),
        ("receptacles", ""),
        ("fewest", ""),
        ("farthest", "[ft_i]"),
        ("at", "[ft_i]"),
    )
    rows = []
    for space, far in worst:
        least = least_number(space.length, SIX_FEET, TWO_FEET)
        ends = (in_feet(space.start), in_feet(space.end), Decimal(len(space.receptacles)), Decimal(least))
        rows.append(
            (
                *ends,
                "no receptacle" if far is None else in_feet(far.distance),
                "" if far is None else in_feet(far.place),
            )
        )
    return Table(columns, tuple(rows))
