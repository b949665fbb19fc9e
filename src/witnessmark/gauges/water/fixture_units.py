"""What flow the fixtures of a house are reckoned to ask for at once, by fixture units and a named curve."""

from __future__ import annotations

import itertools
from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Outside, Step, Table, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.water.cautions import LOCAL
from witnessmark.gauges.water.sources import FIXTURE_UNITS, IPC_DEMAND, NSPC_DEMAND
from witnessmark.units import Quantity

__all__ = ["CURVES", "UNITS", "FixtureCount", "demand_gpm", "water_demand"]

Fixture = Literal[
    "bathroom group with tank", "bathroom group with flushometer", "bathtub", "kitchen sink", "dishwasher", "lavatory",
    "public lavatory", "laundry tray", "shower", "clothes washer", "water closet with tank",
]  # fmt: skip
Curve = Literal["IPC E103.3(3), tanks", "NSPC B.5.4, tanks", "NSPC B.5.4, flush valves"]
#: Water supply fixture units of private use, hot and cold together.
UNITS: dict[str, Decimal] = {
    "bathroom group with tank": Decimal("3.6"), "bathroom group with flushometer": Decimal("8.0"), "bathtub": Decimal("1.4"),
    "kitchen sink": Decimal("1.4"), "dishwasher": Decimal("1.4"), "lavatory": Decimal("0.7"), "public lavatory": Decimal("2.0"),
    "laundry tray": Decimal("1.4"), "shower": Decimal("1.4"), "clothes washer": Decimal("1.4"),
    "water closet with tank": Decimal("2.2"),
}  # fmt: skip


def _points(text: str) -> tuple[tuple[Decimal, Decimal], ...]:
    return tuple((Decimal(units), Decimal(gpm)) for units, gpm in (pair.split(":") for pair in text.split()))


#: Fixture units to gal/min, as printed. The first and the second differ by about 1.8 below 100 units: never mixed.
CURVES = {
    "IPC E103.3(3), tanks": _points(
        "1:3.0 2:5.0 3:6.5 4:8.0 5:9.4 6:10.7 8:12.8 10:14.6 15:17.5 20:19.6 25:21.5 30:23.3 50:29.1 100:43.5"
    ),
    "NSPC B.5.4, tanks": _points(
        "3:3 4:4 5:4.5 6:5 8:7 10:8 12:9 14:10.5 120:49 140:53 160:57 200:65 300:85 500:125 1000:210"
    ),
    "NSPC B.5.4, flush valves": _points("5:22 10:27 14:30 120:74 200:91 500:140"),
}


@dataclass(frozen=True, slots=True)
class FixtureCount:
    """How many there are of one fixture."""

    fixture: Annotated[Fixture, Asked("which fixture", example="bathtub")]
    count: Annotated[int, Asked("how many", lowest="0", highest="200", least="0", most="2000", example="2")] = 1


def demand_gpm(units: Decimal, curve: str) -> Decimal | None:
    """Flow in gal/min for *units* by one printed *curve*, straight between its points; None beyond its ends.

    >>> demand_gpm(Decimal(10), "IPC E103.3(3), tanks"), demand_gpm(Decimal(10), "NSPC B.5.4, tanks")
    (Decimal('14.6'), Decimal('8'))
    """
    points = CURVES[curve]
    for (low, first), (high, last) in itertools.pairwise(points):
        if low <= units <= high:
            return first + (last - first) * (units - low) / (high - low)
    return None


@gauge(
    name="water-demand",
    family="water",
    title="Peak flow that the fixtures of a house are reckoned to ask for",
    unit="[gal_us]/min",
    gives="peak demand by the curve named",
    sources=(FIXTURE_UNITS, IPC_DEMAND, NSPC_DEMAND),
    error="a design figure: half a house's fixtures seldom run at once, and the two curves differ by up to a factor of 1.8",
    never="how much water comes out when fixtures are opened: that is measured",
    cautions=(
        "The curves of the two codes are not the same curve; the answer names the one used and shows the other beside it.",
        LOCAL,
    ),
    example={
        "fixtures": "bathroom group with tank; kitchen sink; dishwasher; clothes washer",
        "curve": "IPC E103.3(3), tanks",
    },
)
def water_demand(
    fixtures: Annotated[tuple[FixtureCount, ...] | None, Asked("the fixtures with their counts, one a row")] = None,
    units: Annotated[
        Decimal | None,
        Asked(
            "water supply fixture units, where they were added up already",
            "1",
            lowest="1",
            highest="1000",
            least="0",
            most="10000",
            how="from the table of the code, not counted by fixture",
            example="12",
        ),
    ] = None,
    curve: Annotated[Curve, Asked("the printed curve to use")] = "IPC E103.3(3), tanks",
) -> Answer:
    """Peak flow from fixture units by a printed curve, straight between its points and never beyond its ends.

    Rule:
        units of the fixtures (IPC Table E103.3(2), private use) are added up; the curve named turns them into gal/min:
        IPC Table E103.3(3) for tanks, or NSPC Table B.5.4 for tanks or for flush valves. The curves are never mixed.

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("water-demand", {"units": "8", "curve": "NSPC B.5.4, tanks"}).value
    Decimal('7')
    """  # fmt: skip
    rows = fixtures or ()
    total = sum((UNITS[row.fixture] * row.count for row in rows), Decimal(0)) + (units or Decimal(0))
    value = demand_gpm(total, curve)
    ends = CURVES[curve][0][0], CURVES[curve][-1][0]
    others = tuple(
        Also(f"by_{at}", f"by {name}", round(flow, 2), "[gal_us]/min")
        for at, name in enumerate(CURVES, 1)
        if name != curve and (flow := demand_gpm(total, name)) is not None
    )
    outside: tuple[Outside, ...] = ()
    if value is None:
        outside = (Outside("fixture units", Quantity(total, "1"), *ends, "The printed curve ends there."),)
    told = f"about {value:.1f} gal/min" if value is not None else "not in the printed curve"
    return Answer(
        value=None if value is None else rounded(float(value)),
        words=f"{total.normalize():f} fixture units: {told} by {curve}.",
        outside_range=outside,
        also=(Also("units", "fixture units", total, "1"), *others),
        steps=tuple(Step(f"{row.count} x {row.fixture}", UNITS[row.fixture] * row.count, "1") for row in rows),
        table=Table((("fixture units", "1"), ("demand", "[gal_us]/min")), tuple(CURVES[curve])),
    )
