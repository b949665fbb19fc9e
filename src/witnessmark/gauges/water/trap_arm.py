"""How long the pipe from a trap to its vent may be, and how far it may fall."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Source, Step, Table, Verdict
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.water.cautions import LOCAL
from witnessmark.gauges.water.editions import EDITIONS, against_built, checked
from witnessmark.gauges.water.sources import code, of_edition
from witnessmark.units import Quantity, say

__all__ = ["LONGEST", "trap_arm"]

Code = Literal["UPC", "IRC"]
Size = Literal["1-1/4", "1-1/2", "2", "3", "4"]
_INCHES = {"1-1/4": Decimal("1.25"), "1-1/2": Decimal("1.5"), "2": Decimal(2), "3": Decimal(3), "4": Decimal(4)}
#: Longest developed length in inches from the trap's weir to the vent.
LONGEST = {
    "UPC": {"1-1/4": Decimal(30), "1-1/2": Decimal(42), "2": Decimal(60), "3": Decimal(72), "4": Decimal(120)},
    "IRC": {"1-1/4": Decimal(60), "1-1/2": Decimal(72), "2": Decimal(96), "3": Decimal(144), "4": Decimal(192)},
}
#: A water closet's arm by the UPC, from its flange to the vent, in inches; the IRC sets it none.
_CLOSET = Decimal(72)
_QUARTER, _EIGHTH = Decimal("0.25"), Decimal("0.125")
#: Editions of the IRC before this one are recalled with a shorter table, which is not held here.
_TABLE_FROM = 2006


def _inches(value: Decimal) -> str:
    return say(Quantity(value.normalize(), "[in_i]"))


@dataclass(frozen=True, slots=True)
class _Held:
    """One measure held against one bound, in inches."""

    what: str
    measured: Decimal
    bound: Literal["at most", "at least"]
    limit: Decimal

    @property
    def kept(self) -> bool:
        return self.measured <= self.limit if self.bound == "at most" else self.measured >= self.limit

    def __str__(self) -> str:
        return f"{self.what} {_inches(self.measured)}, {self.bound} {_inches(self.limit)}"


def _slope(law: str, inches: Decimal) -> Decimal:
    return _EIGHTH if law == "IRC" and inches >= _INCHES["3"] else _QUARTER


def _most(law: str, size: str, *, closet: bool) -> Decimal | None:
    if not closet:
        return LONGEST[law][size]
    return _CLOSET if law == "UPC" else None


def _held(
    law: str, size: str, most: Decimal | None, length: Quantity | None, fall: Quantity | None, *, closet: bool
) -> list[_Held]:
    inches = _INCHES[size]
    rows: list[_Held] = []
    if length is not None:
        if most is not None:
            rows.append(_Held("length", length.value, "at most", most))
        if not closet:
            rows.append(_Held("length", length.value, "at least", 2 * inches))
    if fall is not None:
        if not closet:
            rows.append(_Held("fall", fall.value, "at most", inches))
        if length is not None:
            rows.append(_Held("fall", fall.value, "at least", _slope(law, inches) * length.value / 12))
    return rows


def _verdict(rows: list[_Held], source: Source, *, known: bool, whole: bool) -> Verdict | None:
    if not rows:
        return Verdict("within", "no length is set for a water closet", source) if whole else None
    short = [str(row) for row in rows if not row.kept]
    if not known:
        words = "the table of this edition is not held here and was shorter"
        return Verdict("undecided", "; ".join([*short, words]), source)
    if short:
        return Verdict("beyond", "; ".join(short), source)
    if not whole:
        return Verdict("undecided", "what was given is within; length and fall are both needed", source)
    return Verdict("within", "within what it asks of length and fall", source)


def _words(law: str, size: str, most: Decimal | None, rows: list[_Held]) -> str:
    if most is None:
        start = f"The {law} sets no length for the arm of a water closet."
    else:
        start = f"A {size} in trap arm is at most {most / 12:f} ft long by the {law}."
    short = "; ".join(str(row) for row in rows if not row.kept)
    if not rows:
        return start
    return f"{start} {short[0].upper()}{short[1:]}." if short else f"{start} What was measured is within that."


@gauge(
    name="trap-arm",
    family="water",
    title="Length and fall of the pipe between a trap and its vent",
    unit="[ft_i]",
    gives="longest developed length from the trap's weir to the vent; none for a water closet by the IRC",
    sources=(
        code("UPC", "2000 to 2024", "Table 1002.2", "seen in a copy"),
        code("IRC", "2006 to 2024", "Table P3105.1, P3105.2, P3105.3; IPC 909.1", "seen in a copy"),
    ),
    error="the vent's opening inside a wall is placed by eye",
    never="that a trap keeps its seal: that is heard and seen when fixtures drain",
    cautions=(
        "A trap without a vent in sight is not always without one; say what was seen.",
        "Lengths of the UPC are in circulation under the name of the IRC: the two differ by half.",
        LOCAL,
    ),
    example={"size": "1-1/2", "length": "3ft", "fall": "1in", "law": "UPC"},
)
def trap_arm(
    size: Annotated[Size, Asked("nominal size of the trap arm, in inches")],
    law: Annotated[Code, Asked("the plumbing code in force at the place; IRC stands for the IPC too")] = "IRC",
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
    *,
    water_closet: Annotated[bool, Asked("whether the arm is that of a water closet")] = False,
    edition: Annotated[int | None, Asked("edition of the code, a year", choices=EDITIONS)] = None,
    built: Annotated[int | None, Asked("year the drain was laid or altered", lowest="1800", highest="2100")] = None,
) -> Answer:
    """The longest trap arm of a size, and the one measured held against it.

    Rule:
        UPC Table 1002.2: 1 1/4 in 2 ft 6 in, 1 1/2 in 3 ft 6 in, 2 in 5 ft, 3 in 6 ft, 4 in 10 ft, fall 1/4 in to a foot;
        a water closet 6 ft. IRC Table P3105.1 (from 2006): 5, 6, 8, 12, 16 ft, fall 1/4 in to a foot, 1/8 for 3 and 4 in;
        a water closet without limit. Both: fall at most one diameter of the pipe, length at least two.

    For 1 1/4 to 2 in the IRC's length is just where 1/4 in to a foot makes one diameter; 12 ft is the limit for 3 in even
    though it then falls only 1 1/2 in.

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("trap-arm", {"size": "2", "law": "UPC"}).value
    Decimal('5')
    """
    year = checked(law, edition)
    place = "Table 1002.2" if law == "UPC" else "Table P3105.1, P3105.2, P3105.3; IPC 909.1"
    source = of_edition(law, year, place, *((2021,) if law == "IRC" else ()))
    inches, most = _INCHES[size], _most(law, size, closet=water_closet)
    rows = _held(law, size, most, length, fall, closet=water_closet)
    known = law == "UPC" or year >= _TABLE_FROM
    whole = length is not None and (fall is not None or water_closet)
    era, told = against_built(built, year)
    also = [Also("most_fall", "fall at most, one diameter", inches, "[in_i]"),
            Also("least_length", "length at least, two diameters", 2 * inches, "[in_i]")]  # fmt: skip
    if most is not None:
        at_full = _slope(law, inches) * most / 12
        also.append(Also("fall_at_full_length", "fall of the longest arm at its least slope", at_full, "[in_i]"))
    return Answer(
        value=None if most is None else most / 12,
        words=_words(law, size, most, rows),
        verdict=_verdict(rows, source, known=known, whole=whole),
        sources=(source,),
        cautions=(
            *told,
            *(() if known else (f"The table shown is that of {_TABLE_FROM} and later.",)),
            *(("The fall of a water closet's arm is not judged here.",) if water_closet and fall is not None else ()),
        ),
        also=(*also, *era),
        steps=tuple(Step(str(row), row.measured, "[in_i]") for row in rows),
        table=Table(
            (("size", ""), ("UPC", "[ft_i]"), ("IRC", "[ft_i]")),
            tuple((name, LONGEST["UPC"][name] / 12, LONGEST["IRC"][name] / 12) for name in _INCHES),
        ),
    )
