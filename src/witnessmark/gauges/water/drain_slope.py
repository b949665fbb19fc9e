"""Whether a drain falls enough, by its size and the code."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Limit, Step
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.water.cautions import LOCAL
from witnessmark.gauges.water.sources import code
from witnessmark.units import Quantity

__all__ = ["drain_slope", "least_fall"]

Code = Literal["IPC", "UPC"]
_SLOPES = {
    "IPC": code("IPC", 2018, "Table 704.1", "seen in a copy"),
    "UPC": code("UPC", 2018, "708.1", "seen in a copy"),
}


def least_fall(diameter: Decimal, law: str, *, approved: bool = False) -> Decimal:
    """Least fall in inches to a foot of a drain of *diameter* inches.

    IPC Table 704.1: 1/4 up to 2 1/2 in, 1/8 from 3 to 6 in, 1/16 from 8 in. UPC 708.1: 1/4, or 1/8 from 3 in where the
    authority *approved* it.

    >>> least_fall(Decimal(2), "IPC"), least_fall(Decimal(4), "IPC"), least_fall(Decimal(4), "UPC")
    (Decimal('0.25'), Decimal('0.125'), Decimal('0.25'))
    """
    if law == "UPC":
        return Decimal("0.125") if approved and diameter >= Decimal(3) else Decimal("0.25")
    if diameter < Decimal(3):
        return Decimal("0.25")
    return Decimal("0.125") if diameter < Decimal(8) else Decimal("0.0625")


@gauge(
    name="drain-slope",
    family="water",
    title="Fall of a drain against the least that the code asks",
    unit="[in_i]/[ft_i]",
    gives="least fall in inches to a foot",
    sources=tuple(_SLOPES.values()),
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
    approved: Annotated[bool, Asked("UPC: the authority approved 1/8 in to a foot for 3 in and larger")] = False,
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
    *,
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
) -> Answer:
    """The least fall of a horizontal drain, and the fall measured held against it.

    Rule:
        IPC Table 704.1: 1/4 in/ft up to 2 1/2 in, 1/8 from 3 to 6 in, 1/16 from 8 in.
        UPC 708.1: 1/4 in/ft; 1/8 from 3 in where the authority approves. 1/4 in/ft is 2.083 %, 1/8 is 1.042 %.

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("drain-slope", {"diameter": "3in"}).value
    Decimal('0.125')
    """  # fmt: skip
    least = least_fall(diameter.value, law, approved=approved)
    words = f"A {diameter.value.normalize():f} in drain falls at least {least:f} in to a foot by the {law}."
    also = [Also("least_percent", "the same in percent", least / 12 * 100, "%")]
    answer = Answer(least, words=words, sources=(_SLOPES[law],))
    if run is not None:
        also.append(Also("least_fall", "least fall over this length", least * run.value, "[in_i]"))
    if fall is None or run is None:
        return Answer(least, words=words, sources=(_SLOPES[law],), also=tuple(also))
    slope = fall.value / run.value
    kept = fall.value >= least * run.value
    also.append(Also("slope", "fall measured", slope, "[in_i]/[ft_i]"))
    rise = " It rises: it stands full." if slope < 0 else ""
    words += f" Measured: {slope:.3f}, {'as much as asked' if kept else 'less than asked'}.{rise}"
    verdict = (
        Answer(slope, "[in_i]/[ft_i]").against(Limit(_SLOPES[law], lowest=Quantity(least, "[in_i]/[ft_i]"))).verdict
    )
    return Answer(
        value=answer.value,
        words=words,
        sources=answer.sources,
        verdict=verdict,
        also=tuple(also),
        steps=(Step("fall over run", slope, "[in_i]/[ft_i]"), Step("least", least, "[in_i]/[ft_i]")),
    )
