"""How many receptacles a kitchen island or peninsula needed, edition by edition."""

from __future__ import annotations

from decimal import ROUND_CEILING, Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Source, Verdict
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.electrical.editions import ADOPTED, BUILT, EDITION, LATEST, in_force, named, nec
from witnessmark.gauges.electrical.messages import FACTS_CONTRADICT
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["island_receptacles", "receptacle_island"]

LONG, SHORT = Decimal(24), Decimal(12)
BY_LENGTH = nec(1990, "210-52(c)", "seen in a copy")
ONE = nec(2002, "210.52(C)(2), (3)", "seen in a copy")
FROM_THE_WALL = nec(2017, "210.52(C)(3)", "seen in a copy")
BY_AREA = nec(2020, "210.52(C)(2)", "seen in a copy")
NONE_NEEDED = nec(2023, "210.52(C)(2)", "seen in a copy")
_FIRST, _ONE, _WALL, _AREA, _NONE = 1990, 1993, 2017, 2020, 2023


def island_receptacles(
    edition: int, long: Decimal, short: Decimal, *, from_wall: Decimal | None = None, square_feet: Decimal | None = None
) -> int:
    """The fewest receptacles that an edition asks for at one island or peninsula counter; lengths in inches.

    *from_wall* is a peninsula's long side measured from the connected wall (2017); *square_feet* its area (2020), by
    default *long* times *short*. Before 1990 none; 1990 one for 4 ft of a counter 12 in wide; 1993 to 2017 one from 24
    by 12 in; 2020 one for the first 9 ft2 begun and one for every 18 ft2 begun beyond; 2023 none.

    >>> [island_receptacles(year, Decimal(72), Decimal(60)) for year in (1987, 1990, 2002, 2020, 2023)]
    [0, 2, 1, 3, 0]
    """
    if edition < _FIRST or edition >= _NONE:
        return 0
    if edition < _ONE:
        return int((long / 48).to_integral_value(ROUND_CEILING)) if short >= SHORT else 0
    if edition < _AREA:
        side = from_wall if edition >= _WALL and from_wall is not None else long
        return int(side >= LONG and short >= SHORT)
    area = long * short / 144 if square_feet is None else square_feet
    if area <= 0:
        return 0
    return 1 + max(0, int(((area - 9) / 18).to_integral_value(ROUND_CEILING)))


def _source(edition: int) -> Source:
    if edition < _ONE:
        return BY_LENGTH
    if edition < _WALL:
        return ONE
    return FROM_THE_WALL if edition < _AREA else BY_AREA if edition < _NONE else NONE_NEEDED


@gauge(
    name="receptacle-island",
    family="electrical",
    title="Receptacles asked for at a kitchen island or peninsula",
    unit="1",
    gives="the fewest receptacles that the edition asks for at this island or peninsula",
    sources=(BY_LENGTH, ONE, FROM_THE_WALL, BY_AREA, NONE_NEEDED),
    error="none in the count; measured at a limit, the tape decides. The wording of 1993 to 1999 is recalled",
    never="that a receptacle found there works, is protected, or stands where the code would have it",
    cautions=("A receptacle below an overhang invites a hanging cord that a child can pull.",),
    example={"shape": "island", "long": "6ft", "short": "4ft", "edition": "2020"},
)
def receptacle_island(
    shape: Annotated[Literal["island", "peninsula"], Asked("whether it stands free or joins a wall or counter")],
    long: Annotated[
        Quantity,
        Asked(
            "long side; of a peninsula from the edge where it joins",
            "[in_i]",
            lowest="6",
            highest="360",
            least="0",
            most="1200",
            how="of the top; each part for itself where a sink or cooktop parts it",
            example="6ft",
        ),
    ],
    short: Annotated[
        Quantity,
        Asked(
            "short side", "[in_i]", lowest="6", highest="360", least="0", most="1200", how="of the top", example="4ft"
        ),
    ],
    *,
    from_wall: Annotated[
        Quantity | None,
        Asked(
            "of a peninsula: long side from the connected perpendicular wall (2017)",
            "[in_i]",
            least="0",
            most="1200",
            how="along the top",
            example="8ft",
        ),
    ] = None,
    area: Annotated[
        Quantity | None,
        Asked(
            "area of the top, where it is no rectangle",
            "[sft_i]",
            least="0",
            most="10000",
            how="from its sides",
            example="24 sq ft",
        ),
    ] = None,
    found: Annotated[int | None, Asked("receptacles found there", least="0", most="1000", example="1")] = None,
    edition: Annotated[int | None, EDITION] = None,
    built: Annotated[int | None, BUILT] = None,
    adopted: Annotated[int | None, ADOPTED] = None,
) -> Answer:
    """The fewest receptacles that the edition in force asked for at a kitchen island or peninsula.

    Rule:
        Before 1990 none. 1990: one for each 4 ft where it is 12 in wide. 1993 to 2014: one from 24 by 12 in, a
        peninsula measured from the edge where it joins. 2017: the same, measured from the connected wall. 2020: one
        for the first 9 ft2 or part, one more for every further 18 ft2 or part. 2023: none, but where none is put in,
        provision for one later.

    Traps: the 2020 count by area is not the 2023 one; the newest edition asks for fewer than the one before.

    >>> from witnessmark.units import parse_quantity as q
    >>> receptacle_island("island", q("6ft"), q("4ft"), edition=2020).value
    Decimal('2')
    """
    if short.value > long.value:
        long, short = short, long
    if shape == "island" and from_wall is not None:
        raise Refusal(FACTS_CONTRADICT.at("from_wall", "an island joins no wall"))
    force = in_force(edition, built, adopted)
    wall = None if from_wall is None else from_wall.value
    size = None if area is None else area.value

    def asked(one: int) -> int:
        return island_receptacles(one, long.value, short.value, from_wall=wall, square_feet=size)

    counts = {one: asked(one) for one in force.possible or (LATEST,)}
    low, high = min(counts.values()), max(counts.values())
    same = low == high
    notes = []
    if LATEST in counts or any(one >= _NONE for one in counts):
        notes.append("From the 2023 edition on, where none is put in, provision for one later is asked for.")
    if shape == "peninsula" and wall is None and _WALL in counts:
        notes.append("The 2017 edition measures a peninsula from the connected wall; that length was not given.")
    if any(_ONE <= one < 2002 for one in counts):  # noqa: PLR2004 - edition
        notes.append("The wording of 1993 to 1999 is recalled.")
    if not force.possible:
        words = f"Today's model code, {named(LATEST)}, asks for none at an island or peninsula."
    elif same:
        words = f"At least {low} by {force.words}." if low else f"None is asked for by {force.words}."
    else:
        words = f"{low} to {high} by {force.words}: it hangs on which one was in force."
    verdict = None
    if found is not None and force.possible:
        source = _source(force.possible[-1])
        if found >= high:
            verdict = Verdict(
                "within", f"{found} found; no edition that may have been in force asked for more.", source
            )
        elif found < low:
            verdict = Verdict("beyond", f"{found} found; at least {low} asked for.", source)
        else:
            verdict = Verdict("undecided", f"{found} found; {low} to {high} asked for, by edition.", source)
    return Answer(
        value=Decimal(low) if same else None,
        unit="1" if same else "",
        words=words,
        verdict=verdict,
        sources=tuple(dict.fromkeys(_source(one) for one in counts)),
        cautions=(*notes, *force.cautions),
        also=tuple(
            Also(f"asked_{one or 'before'}", f"asked for by {named(one)}", Decimal(n)) for one, n in counts.items()
        ),
    )
