"""How far a trap may hang below its fixture, and how high a laundry standpipe stands above its trap."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Verdict
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.water.cautions import LOCAL
from witnessmark.gauges.water.editions import EDITIONS, against_built, checked
from witnessmark.gauges.water.sources import code, of_edition
from witnessmark.units import Quantity, say

__all__ = ["OUTLET_LONGEST", "STANDPIPE", "laundry_standpipe", "trap_outlet"]

#: Longest from the fixture's outlet to the weir, in inches: straight down, and level.
OUTLET_LONGEST = {"down": Decimal(24), "level": Decimal(30)}
#: Least and most height of a laundry standpipe above the weir of its trap, in inches.
STANDPIPE = {"IRC": (Decimal(18), Decimal(42)), "UPC": (Decimal(18), Decimal(30))}
_OUTLET = {"IRC": "P3201.6; IPC 1002.1", "UPC": "1001.2 (1001.4 in earlier editions)"}


@gauge(
    name="trap-outlet",
    family="water",
    title="Distance of a trap below and beside its fixture",
    gives="the distances held against the most that the code allows",
    sources=tuple(code(law, "", place, "seen in a copy") for law, place in _OUTLET.items()),
    error="a tape reads it to a quarter of an inch",
    never="that a trap keeps its seal",
    cautions=(
        "A clothes washer's standpipe goes by other measures: see laundry-standpipe.",
        "Some places leave the level distance out or do not hold to it.",
        LOCAL,
    ),
    example={"down": "20in", "level": "6in"},
)
def trap_outlet(
    down: Annotated[
        Quantity,
        Asked(
            "straight down from the fixture's outlet to the trap's weir",
            "[in_i]",
            lowest="0",
            highest="120",
            least="0",
            most="1200",
            how="with a tape, from the bottom of the outlet",
            example="20in",
        ),
    ],
    level: Annotated[
        Quantity | None,
        Asked(
            "level from the middle of the outlet to the middle of the trap's inlet",
            "[in_i]",
            lowest="0",
            highest="240",
            least="0",
            most="2400",
            how="with a tape along the floor",
            example="6in",
        ),
    ] = None,
    law: Annotated[Literal["IRC", "UPC"], Asked("the plumbing code in force; IRC stands for the IPC too")] = "IRC",
    edition: Annotated[int | None, Asked("edition of the code, a year", choices=EDITIONS)] = None,
    built: Annotated[int | None, Asked("year the drain was laid or altered", lowest="1800", highest="2100")] = None,
) -> Answer:
    """Whether a trap hangs too far from its fixture.

    Rule:
        at most 24 in down from the fixture's outlet to the trap's weir (both codes), and at most 30 in level from the
        outlet to the trap (IRC P3201.6 and IPC 1002.1); water that drops farther can pull the seal out

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("trap-outlet", {"down": "30in"}).verdict.outcome
    'beyond'
    """
    year = checked(law, edition)
    source = of_edition(law, year, _OUTLET[law])
    far = [f"{say(down)} down, at most 24 in"] if down.value > OUTLET_LONGEST["down"] else []
    if level is not None and law == "IRC" and level.value > OUTLET_LONGEST["level"]:
        far.append(f"{say(level)} level, at most 30 in")
    era, told = against_built(built, year)
    if far:
        verdict = Verdict("beyond", "; ".join(far), source)
    elif level is None and law == "IRC":
        verdict = Verdict("undecided", "the level distance was not given", source)
    else:
        verdict = Verdict("within", "not farther than the code allows", source)
    return Answer(
        words=f"From the fixture's outlet to the trap: {'; '.join(far) or 'what was measured is not too far'}.",
        verdict=verdict,
        sources=(source,),
        cautions=told,
        also=(Also("too_far", "farther than allowed", bool(far)), *era),
    )


@gauge(
    name="laundry-standpipe",
    family="water",
    title="Height of a clothes washer's standpipe above its trap",
    unit="[in_i]",
    gives="the height as measured",
    sources=(code("IRC", "", "P2706.1.2 (P2706.2 in earlier editions)", "seen in a copy"), code("UPC", "", "804.1", "seen in a copy")),
    error="the trap's weir inside a wall is placed by eye",
    never="that the standpipe takes the washer's discharge: that is seen while one pumps out",
    cautions=("A washer pumps hard: a standpipe that takes a trickle may still overflow.", LOCAL),
    example={"height": "30in", "law": "IRC"},
)  # fmt: skip
def laundry_standpipe(
    height: Annotated[
        Quantity,
        Asked(
            "height of the standpipe's rim above the weir of its trap",
            "[in_i]",
            lowest="0",
            highest="120",
            least="0",
            most="1200",
            how="with a tape; where the trap is in the wall, from where its arm shows",
            example="30in",
        ),
    ],
    law: Annotated[Literal["IRC", "UPC"], Asked("the plumbing code in force; IRC stands for the IPC too")] = "IRC",
    edition: Annotated[int | None, Asked("edition of the code, a year", choices=EDITIONS)] = None,
    built: Annotated[int | None, Asked("year the drain was laid or altered", lowest="1800", highest="2100")] = None,
) -> Answer:
    """Whether a laundry standpipe stands as high above its trap as the code has it.

    Rule:
        at least 18 in; at most 42 in by the IRC, 30 in by the UPC

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("laundry-standpipe", {"height": "36in", "law": "UPC"}).verdict.outcome
    'beyond'
    """
    year = checked(law, edition)
    source = of_edition(law, year, "P2706.1.2" if law == "IRC" else "804.1")
    least, most = STANDPIPE[law]
    kept = least <= height.value <= most
    era, told = against_built(built, year)
    return Answer(
        value=height.value,
        words=f"The standpipe stands {say(height)} above its trap; the {law} has {least} to {most} in.",
        verdict=Verdict("within" if kept else "beyond", f"{least} to {most} in", source),
        sources=(source,),
        cautions=told,
        also=(Also("least", "least height", least, "[in_i]"), Also("most", "most height", most, "[in_i]"), *era),
    )
