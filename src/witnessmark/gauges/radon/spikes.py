"""How far a radon device exposed to a known level is off."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.radon.sources import QA_SPIKES
from witnessmark.units import Quantity

__all__ = ["radon_spike", "relative_percent_error"]

_WARNING, _CONTROL = 20, 30


def relative_percent_error(measured: Decimal, known: Decimal) -> Fraction:
    """(measured - known) / known x 100, exact, its sign kept; *known* above nought.

    >>> relative_percent_error(Decimal("4.8"), Decimal(4))
    Fraction(20, 1)
    """
    return (Fraction(measured) - Fraction(known)) / Fraction(known) * 100


@gauge(
    name="radon-spike",
    family="radon",
    title="How far a radon device exposed to a known level is off",
    unit="%",
    gives="relative percent error: measured less known, over known; its sign kept",
    sources=(QA_SPIKES,),
    error="that of the chamber's own level, a few % by its certificate",
    never="that results in houses are right: humidity, air movement and handling are not tested by it",
    cautions=("The analyst must not be told which devices are spikes.",),
    example={"measured": "22.5pCi/L", "known": "20pCi/L"},
)
def radon_spike(
    measured: Annotated[
        Quantity,
        Asked(
            "what the device gave",
            "pCi/L",
            lowest="0",
            highest="1000",
            least="0",
            most="1000000",
            how="from the laboratory's report",
            example="22.5pCi/L",
        ),
    ],
    known: Annotated[
        Quantity,
        Asked(
            "average level in the chamber while it was exposed",
            "pCi/L",
            lowest="0.5",
            highest="1000",
            least="0.001",
            most="1000000",
            how="from the chamber's certificate",
            example="20pCi/L",
        ),
    ],
) -> Answer:
    """Relative percent error of a device exposed to a known level, against warning and control limits.

    Formula:
        RPE = (measured - known) / known x 100; outside 0 +/- 20 % beyond warning, outside 0 +/- 30 % beyond control

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("radon-spike", {"measured": "13.9pCi/L", "known": "20pCi/L"})["standing"]
    'beyond the control limit'
    """  # fmt: skip
    off = relative_percent_error(measured.value, known.value)
    standing = "in control"
    if abs(off) > _CONTROL:
        standing = "beyond the control limit"
    elif abs(off) > _WARNING:
        standing = "beyond the warning limit"
    value = rounded(float(off))
    side = "exactly at" if off == 0 else f"{abs(value):.1f} % {'above' if off > 0 else 'below'}"
    return Answer(
        value=value,
        words=f"The device read {side} the known level: {standing} (warning 20 %, control 30 % either way).",
        also=(Also("standing", "in control, or beyond which limit", standing),),
        steps=(Step("measured less known", measured.value - known.value, "pCi/L"),),
    )
