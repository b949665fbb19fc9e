"""How long the pipe from a trap to its vent may be, and how far the trap may hang below its fixture."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Source, Step, Table, Verdict
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.water.cautions import LOCAL
from witnessmark.gauges.water.sources import code
from witnessmark.units import Quantity

__all__ = ["LONGEST", "OUTLET_LONGEST", "trap_arm", "trap_outlet"]

Code = Literal["UPC", "IRC"]
Size = Literal["1-1/4", "1-1/2", "2", "3", "4"]
_INCHES = {"1-1/4": Decimal("1.25"), "1-1/2": Decimal("1.5"), "2": Decimal(2), "3": Decimal(3), "4": Decimal(4)}
#: Longest developed length in inches from the trap's weir to the vent.
LONGEST = {
    "UPC": {"1-1/4": Decimal(30), "1-1/2": Decimal(42), "2": Decimal(60), "3": Decimal(72), "4": Decimal(120)},
    "IRC": {"1-1/4": Decimal(60), "1-1/2": Decimal(72), "2": Decimal(96), "3": Decimal(144), "4": Decimal(192)},
}
_FALL = {"UPC": dict.fromkeys(_INCHES, Decimal("0.25")),
         "IRC": {size: Decimal("0.25") if inches < _INCHES["3"] else Decimal("0.125") for size, inches in _INCHES.items()}}  # fmt: skip
_SOURCES = {
    "UPC": code("UPC", 2018, "Table 1002.2", "seen in a copy"),
    "IRC": code("IRC", 2018, "Table P3105.1; IPC 909.1", "memory"),
}
#: Longest from the fixture's outlet to the weir, in inches: straight down, and level.
OUTLET_LONGEST = {"down": Decimal(24), "level": Decimal(30)}
_OUTLET = Source("Uniform and International Plumbing Codes", "2018", "1001.2; 1002.1", "seen in a copy")


def _told(rows: list[tuple[str, Decimal, str, Decimal, bool]]) -> str:
    short = [f"{what} {measured.normalize():f} in, {bound} {limit.normalize():f} in" for what, measured, bound, limit, kept in rows if not kept]  # fmt: skip
    return "; ".join(short) or "within what it asks of what was given"


@gauge(
    name="trap-arm",
    family="water",
    title="Length and fall of the pipe between a trap and its vent",
    unit="[ft_i]",
    gives="longest developed length from the trap's weir to the vent",
    sources=tuple(_SOURCES.values()),
    error="the vent's opening inside a wall is placed by eye",
    never="that a trap keeps its seal: that is heard and seen when fixtures drain",
    cautions=("A trap without a vent in sight is not always without one; say what was seen.", LOCAL),
    example={"size": "1-1/2", "length": "4ft", "fall": "1in", "law": "UPC"},
)
def trap_arm(
    size: Annotated[Size, Asked("nominal size of the trap arm, in inches")],
    law: Annotated[Code, Asked("the plumbing code in force at the place")] = "IRC",
    length: Annotated[
        Quantity | None,
        Asked(
            "developed length from the trap's weir to the vent, along the pipe",
            "[in_i]",
            lowest="0",
            highest="400",
            least="0",
            most="4000",
            how="with a tape along the pipe, bends included",
            example="4ft",
        ),
    ] = None,
    fall: Annotated[
        Quantity | None,
        Asked(
            "fall from the weir to the vent's opening",
            "[in_i]",
            lowest="0",
            highest="24",
            least="-24",
            most="240",
            how="with a level; a fall of more than one diameter puts the vent below the weir",
            example="1in",
        ),
    ] = None,
) -> Answer:
    """The longest trap arm of a size, and the one measured held against it.

    Rule:
        UPC Table 1002.2: 1 1/4 in 2 ft 6 in, 1 1/2 in 3 ft 6 in, 2 in 5 ft, 3 in 6 ft, 4 in 10 ft, and at least two
        diameters. IRC Table P3105.1: 5, 6, 8, 12, 16 ft; fall at most one diameter of the pipe. A water closet's fixture
        drain has no such limit there. 12 ft is the limit for 3 in even though it then falls only 1 1/2 in.

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("trap-arm", {"size": "2", "law": "UPC"}).value
    Decimal('5')
    """  # fmt: skip
    most, inches = LONGEST[law][size], _INCHES[size]
    rows: list[tuple[str, Decimal, str, Decimal, bool]] = []
    if length is not None:
        rows.append(("length", length.value, "at most", most, length.value <= most))
        if law == "UPC":
            rows.append(("length", length.value, "at least", 2 * inches, length.value >= 2 * inches))
    if fall is not None:
        rows.append(("fall", fall.value, "at most", inches, fall.value <= inches))
        if length is not None:
            least = _FALL[law][size] * length.value / 12
            rows.append(("fall", fall.value, "at least", least, fall.value >= least))
    verdict = None
    if rows:
        kept = all(row[-1] for row in rows)
        verdict = Verdict("within" if kept else "beyond", _told(rows), _SOURCES[law])
    words = f"A {size} in trap arm is at most {most / 12:g} ft long by the {law}."
    return Answer(
        value=most / 12,
        words=words + (f" {_told(rows)[0].upper()}{_told(rows)[1:]}." if rows else ""),
        verdict=verdict,
        sources=(_SOURCES[law],),
        also=(
            Also("most_fall", "fall at most, one diameter", inches, "[in_i]"),
            Also("fall_at_full_length", "fall of the longest arm at its least slope", _FALL[law][size] * most / 12, "[in_i]"),
        ),
        steps=tuple(Step(f"{what}, {bound} {limit.normalize():f} in", measured, "[in_i]") for what, measured, bound, limit, _ in rows),
        table=Table(
            (("size", ""), ("UPC", "[ft_i]"), ("IRC", "[ft_i]")),
            tuple((name, LONGEST["UPC"][name] / 12, LONGEST["IRC"][name] / 12) for name in _INCHES),
        ),
    )  # fmt: skip


@gauge(
    name="trap-outlet",
    family="water",
    title="Distance of a trap below and beside its fixture",
    gives="the distances held against the most that the codes allow",
    sources=(_OUTLET,),
    error="a tape reads it to a quarter of an inch",
    never="that a trap keeps its seal",
    cautions=(LOCAL,),
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
            "level from the outlet to the weir",
            "[in_i]",
            lowest="0",
            highest="240",
            least="0",
            most="2400",
            how="with a tape along the floor",
            example="6in",
        ),
    ] = None,
) -> Answer:
    """Whether a trap hangs too far from its fixture.

    Rule:
        at most 24 in down and at most 30 in level from the fixture's outlet to the trap's weir; water that drops farther
        can pull the seal out

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("trap-outlet", {"down": "30in"}).verdict.outcome
    'beyond'
    """  # fmt: skip
    far = [f"{v:f} in down, at most 24 in" for v in (down.value,) if v > OUTLET_LONGEST["down"]]
    far += [f"{level.value:f} in level, at most 30 in"] if level and level.value > OUTLET_LONGEST["level"] else []
    words = "; ".join(far) or "not farther than the codes allow"
    return Answer(
        words=f"From the fixture's outlet to the trap: {words}.",
        verdict=Verdict("beyond" if far else "within", words, _OUTLET),
        also=(Also("too_far", "farther than allowed", bool(far)),),
    )
