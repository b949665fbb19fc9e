"""How well two radon devices set side by side agree."""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Step, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.radon.sources import QA_DUPLICATES
from witnessmark.units import Quantity

__all__ = ["Precision", "precision", "radon_duplicates"]

Outcome = Literal["in control", "warning limit reached", "control limit reached"]


@dataclass(frozen=True, slots=True)
class Precision:
    """How a pair stands: its mean in pCi/L, relative percent difference (None at a mean of 0), limits, outcome."""

    mean: Fraction
    rpd: Fraction | None
    target: int | None
    warning: int | None
    control: int | None
    outcome: Outcome


def precision(a: Decimal, b: Decimal, detects: Decimal = Decimal(0)) -> Precision:
    """How two results in pCi/L of devices side by side agree; *detects* is the least that they can detect.

    ANSI/AARST MS-QA-2019 3.5: band by the mean of the two; limits are reached at, not above, their figure. Below
    2 pCi/L the difference counts: up to 1 pCi/L, or both below what can be detected.

    >>> precision(Decimal("4.2"), Decimal("5.0")).outcome, precision(Decimal("4.0"), Decimal("5.8")).outcome
    ('in control', 'control limit reached')
    """
    one, two = Fraction(a), Fraction(b)
    mean, apart = (one + two) / 2, abs(one - two)
    rpd = apart / mean * 100 if mean else None
    if mean < 2:  # noqa: PLR2004 - pCi/L, the band of the standard
        good = apart <= 1 or (a < detects and b < detects)
        return Precision(mean, rpd, None, None, None, "in control" if good else "control limit reached")
    target, warning, control = (14, 28, 36) if mean >= 4 else (25, 50, 67)  # noqa: PLR2004 - pCi/L, as above
    share = rpd or Fraction(0)
    outcome: Outcome = "in control"
    if share >= control:
        outcome = "control limit reached"
    elif share >= warning:
        outcome = "warning limit reached"
    return Precision(mean, rpd, target, warning, control, outcome)


_RESULT = Asked("result of one device", "pCi/L", lowest="0", highest="1000", least="0", most="1000000",
                how="unrounded, as the laboratory or monitor gave it", example="4.2pCi/L")  # fmt: skip


@gauge(
    name="radon-duplicates",
    family="radon",
    title="How well two radon devices side by side agree",
    unit="%",
    gives="relative percent difference: difference of the two over their mean; none where their mean is nought",
    sources=(QA_DUPLICATES,),
    error="none of its own; one pair says little, the record of many pairs says how good a method is",
    never="that either result is right: two devices may agree and both be off",
    cautions=(
        "For devices within 8 in of each other at the same time only; two rooms are no duplicates.",
        "The limits are the least strict that the standard allows; a laboratory's own may be narrower.",
    ),
    example={"first": "4.2pCi/L", "second": "5.0pCi/L"},
)
def radon_duplicates(
    first: Annotated[Quantity, _RESULT],
    second: Annotated[Quantity, replace(_RESULT, what="result of the other device", example="5.0pCi/L")],
    detects: Annotated[
        Quantity | None,
        Asked(
            "least that the devices can detect (minimum detectable concentration)",
            "pCi/L",
            lowest="0.05",
            highest="2",
            least="0",
            most="100",
            how="from the laboratory's report",
            example="0.4pCi/L",
        ),
    ] = None,
) -> Answer:
    """Relative percent difference of two devices side by side, against the warning and control limits of its band.

    Formula:
        RPD = |a - b| / ((a + b) / 2) x 100; band by the mean, unrounded
        mean 4 or more: warning 28 %, control 36 %; 2 to 4: 50 %, 67 %; below 2: difference up to 1 pCi/L, or both
        below what can be detected

    Traps: the band taken from the higher result; RPD below 2 pCi/L; rounding before comparing.

    >>> from witnessmark.gauges import evaluate
    >>> answer = evaluate("radon-duplicates", {"first": "4.0pCi/L", "second": "5.32pCi/L"})
    >>> round(answer.value, 1), answer["standing"]
    (Decimal('28.3'), 'warning limit reached')
    """  # fmt: skip
    found = precision(first.value, second.value, Decimal(0) if detects is None else detects.value)
    apart = abs(first.value - second.value)
    value = None if found.rpd is None else rounded(float(found.rpd))
    also = [
        Also("standing", "in control, warning limit reached or control limit reached", found.outcome),
        Also("mean", "mean of the two, which decides the band", rounded(float(found.mean)), "pCi/L"),
        Also("difference", "difference of the two", apart, "pCi/L"),
    ]
    if found.control is None:
        words = (
            f"Mean {float(found.mean):.2f} pCi/L, below 2: the difference of {apart} pCi/L counts, not the percentage; "
            f"{found.outcome}."
        )
    else:
        words = (
            f"The two differ by {float(found.rpd or 0):.1f} % of their mean of {float(found.mean):.2f} pCi/L: {found.outcome} "
            f"(warning {found.warning} %, control {found.control} %)."
        )
        also += [
            Also("target", "what pairs average to where a method is in control", Decimal(found.target or 0), "%"),
            Also("warning", "warning limit", Decimal(found.warning or 0), "%"),
            Also("control", "control limit", Decimal(found.control), "%"),
        ]
    if found.outcome == "warning limit reached":
        words += " Look at the next pairs; two in a row call for a search for the cause."
    if found.outcome == "control limit reached":
        words += " Find the cause before either result is used."
    return Answer(
        value=value, words=words, also=tuple(also),
        steps=(Step("mean of the two", rounded(float(found.mean)), "pCi/L"), Step("difference", apart, "pCi/L")),
    )  # fmt: skip
