"""Whether a drain falls enough, by its size and the code."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Source, Step, Verdict
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.water.cautions import LOCAL
from witnessmark.gauges.water.editions import EDITIONS, against_built, checked
from witnessmark.gauges.water.messages import AT_ODDS
from witnessmark.gauges.water.sources import code, of_edition
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["drain_slope", "least_fall"]

Code = Literal["IPC", "IRC", "UPC"]
_PLACES = {"IPC": "Table 704.1", "IRC": "P3005.3", "UPC": "708.1"}
#: Editions whose text was read; the copies of IPC 704.1 and UPC 708.1 name none.
_READ: dict[str, tuple[int, ...]] = {"IPC": (), "IRC": (2006,), "UPC": ()}
_QUARTER, _EIGHTH, _SIXTEENTH = Decimal("0.25"), Decimal("0.125"), Decimal("0.0625")
#: The percentages that the codes print in brackets beside them, rounded down.
_PERCENT = {_QUARTER: Decimal(2), _EIGHTH: Decimal(1), _SIXTEENTH: Decimal("0.5")}
#: Sizes from which a lesser fall is allowed, in inches; between the printed sizes the steeper row holds.
_THREE, _FOUR, _EIGHT = Decimal(3), Decimal(4), Decimal(8)


def _source(law: str, edition: int) -> Source:
    return of_edition(law, edition, _PLACES[law], *_READ[law])


def least_fall(diameter: Decimal, law: str, *, approved: bool = False) -> Decimal:
    """Least fall in inches to a foot of a drain of *diameter* inches by "IPC", "IRC" or "UPC".

    IPC Table 704.1: 1/4 up to 2 1/2 in, 1/8 from 3 to 6 in, 1/16 from 8 in. IRC P3005.3: 1/4 up to 2 1/2 in, 1/8 from
    3 in. UPC 708.1: 1/4, or 1/8 from 4 in where the authority *approved* it.

    >>> least_fall(Decimal(2), "IPC"), least_fall(Decimal(4), "IPC"), least_fall(Decimal(4), "UPC")
    (Decimal('0.25'), Decimal('0.125'), Decimal('0.25'))
    """
    if law == "UPC":
        return _EIGHTH if approved and diameter >= _FOUR else _QUARTER
    if diameter < _THREE:
        return _QUARTER
    return _SIXTEENTH if law == "IPC" and diameter >= _EIGHT else _EIGHTH


def _verdict(slope: Decimal, least: Decimal, source: Source, *, unsure: bool) -> Verdict:
    if slope < 0:
        return Verdict("beyond", f"it rises; at least {least:f} in to a foot down is asked", source)
    if slope >= least:
        return Verdict("within", f"at least {least:f} in to a foot: as much as asked", source)
    if slope * 100 >= _PERCENT[least] * 12:
        words = f"the code prints {_PERCENT[least]} percent beside {least:f} in to a foot, which is a little more"
        return Verdict("close", words, source)
    if unsure and slope >= _EIGHTH:
        return Verdict("undecided", "quotations differ on whether 1/8 may be approved from 3 in or from 4 in", source)
    return Verdict("beyond", f"at least {least:f} in to a foot: less than asked", source)


@gauge(
    name="drain-slope",
    family="water",
    title="Fall of a drain against the least that the code asks",
    unit="[in_i]/[ft_i]",
    gives="least fall in inches to a foot",
    sources=tuple(code(law, "", place, "seen in a copy") for law, place in _PLACES.items()),
    error="a torpedo level shows a sixteenth of an inch in a foot; pipe between hangers sags by as much",
    never="that a drain carries well: that is seen by running water, and inside it only by a camera",
    cautions=("A sag holds water even where the whole run falls enough: look along the pipe.", LOCAL),
    example={"diameter": "2in", "fall": "1in", "run": "6ft", "law": "IPC"},
)
def drain_slope(
    diameter: Annotated[
        Quantity,
        Asked(
            "nominal size of the drain",
            "[in_i]",
            lowest="1.25",
            highest="12",
            least="0.5",
            most="48",
            how="printed on the pipe; the outside is about half an inch more",
            example="2in",
        ),
    ],
    law: Annotated[Code, Asked("the plumbing code in force at the place")] = "IPC",
    approved: Annotated[bool, Asked("UPC: the authority approved 1/8 in to a foot for 4 in and larger")] = False,
    *,
    fall: Annotated[
        Quantity | None,
        Asked(
            "how much lower the far end is",
            "[in_i]",
            lowest="0",
            highest="120",
            least="-120",
            most="1200",
            how="with a level and a tape over the length given; less than nought where it rises",
            example="1in",
        ),
    ] = None,
    run: Annotated[
        Quantity | None,
        Asked(
            "length over which the fall was measured",
            "[ft_i]",
            lowest="0.5",
            highest="200",
            least="0.1",
            most="2000",
            example="6ft",
        ),
    ] = None,
    edition: Annotated[int | None, Asked("edition of the code, a year", choices=EDITIONS)] = None,
    built: Annotated[int | None, Asked("year the drain was laid or altered", lowest="1800", highest="2100")] = None,
    slope: Annotated[
        Quantity | None,
        Asked(
            "fall as read on a level, in place of fall and run",
            "[in_i]/[ft_i]",
            lowest="0",
            highest="12",
            least="-12",
            most="1000",
            how="a digital level in percent does, typed as 2%",
            example="2%",
        ),
    ] = None,
) -> Answer:
    """The least fall of a horizontal drain, and the fall measured held against it.

    Rule:
        IPC Table 704.1: 1/4 in/ft up to 2 1/2 in, 1/8 from 3 to 6 in, 1/16 from 8 in. IRC P3005.3: the same without the
        last row. UPC 708.1: 1/4 in/ft; 1/8 from 4 in where the authority approves (one quotation: from 3 in).
        1/4 in/ft is 2.083 %, 1/8 is 1.042 %, 1/16 is 0.521 %.

    2 % read on a level is 0.24 in/ft, not yet 1/4; since the codes themselves print "2 percent" the answer is "close".

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("drain-slope", {"diameter": "3in"}).value
    Decimal('0.125')
    """
    if slope is not None and fall is not None:
        raise Refusal(AT_ODDS.at("slope, fall", "give the slope as read, or fall and run, not both"))
    year = checked(law, edition)
    source = _source(law, year)
    least = least_fall(diameter.value, law, approved=approved)
    words = f"A {diameter.value.normalize():f} in drain falls at least {least:f} in to a foot by the {law}."
    also = [Also("least_percent", "the same in percent", round(least / 12 * 100, 6), "%")]
    if run is not None:
        also.append(Also("least_fall", "least fall over this length", least * run.value, "[in_i]"))
    steps: tuple[Step, ...] = ()
    verdict = None
    measured = (
        slope.value if slope is not None else fall.value / run.value if fall is not None and run is not None else None
    )
    if measured is not None:
        unsure = law == "UPC" and approved and _THREE <= diameter.value < _FOUR
        verdict = _verdict(measured, least, source, unsure=unsure)
        also.append(Also("slope", "fall measured", round(measured, 9), "[in_i]/[ft_i]"))
        rise = " It rises, so it stands full." if measured < 0 else ""
        words += f" Measured: {measured:.3f} in to a foot ({100 * measured / 12:.2f} %).{rise}"
        words += {"within": " That is as much as asked.", "beyond": " That is less than asked.",
                  "undecided": " Whether that may be approved for this size is not sure here.",
                  "close": " The code prints that percentage, rounded from a little more."}.get(verdict.outcome, "")  # fmt: skip
        steps = (Step("fall measured", round(measured, 9), "[in_i]/[ft_i]"), Step("least", least, "[in_i]/[ft_i]"))
    era, told = against_built(built, year)
    return Answer(
        value=least, words=words, sources=(source,), cautions=told, verdict=verdict, also=(*also, *era), steps=steps
    )
