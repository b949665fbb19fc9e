"""What the gauges of life ask in the same words."""

from __future__ import annotations

from decimal import Decimal

from witnessmark.gauges.answer import Source
from witnessmark.gauges.asked import Asked
from witnessmark.units import Quantity

__all__ = [
    "AGE", "AHEAD", "EIGHTY", "HIGH_SHARE", "LIFE_HIGH", "LIFE_LOW", "LOW_SHARE", "NEMS", "TWENTY", "WEIBULL",
]  # fmt: skip

NEMS = Source(
    "National Energy Modeling System, residential demand module (U.S. Energy Information Administration)",
    "",
    "survival of equipment, subroutine SVRTE",
    "seen in a copy",
)
WEIBULL = Source("Weibull, A statistical distribution function of wide applicability", "1951", "", "memory")

AGE = Asked(
    "age of the part",
    "a",
    lowest="0",
    highest="100",
    least="0",
    most="500",
    how="from its plate, see part-age",
    example="12yr",
)
AHEAD = Asked(
    "how far ahead",
    "a",
    lowest="0.5",
    highest="50",
    least="0",
    most="200",
    how="as the client asks",
    example="5yr",
)
LIFE_LOW = Asked(
    "age by which the lower share has failed",
    "a",
    lowest="1",
    highest="100",
    least="0.5",
    most="500",
    how="the lower end of a published range, see life-range",
    example="10yr",
)
LIFE_HIGH = Asked(
    "age by which the higher share has failed",
    "a",
    lowest="2",
    highest="200",
    least="0.5",
    most="1000",
    how="the upper end of the same source's range",
    example="20yr",
)
LOW_SHARE = Asked(
    "share that has failed at the lower age",
    "%",
    lowest="1",
    highest="49",
    least="0",
    most="100",
    how="few sources say it; 20 % and 80 % are an assumption that is often made",
    example="20%",
)
HIGH_SHARE = Asked(
    "share that has failed at the higher age",
    "%",
    lowest="51",
    highest="99",
    least="0",
    most="100",
    how="few sources say it; 20 % and 80 % are an assumption that is often made",
    example="80%",
)
TWENTY, EIGHTY = Quantity(Decimal(20), "%"), Quantity(Decimal(80), "%")
