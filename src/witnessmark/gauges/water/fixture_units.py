"""What flow the fixtures of a house are reckoned to ask for at once, by fixture units and a named curve."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Outside, Step, Table, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.water.cautions import LOCAL
from witnessmark.gauges.water.demand_curves import CURVES, between, demand_gpm
from witnessmark.gauges.water.messages import AT_ODDS, NEEDS_A_FACT
from witnessmark.gauges.water.sources import FIXTURE_UNITS, IPC_DEMAND, NSPC_DEMAND
from witnessmark.problems import Refusal
from witnessmark.units import Quantity, say

__all__ = ["CURVES", "UNITS", "FixtureCount", "Weight", "demand_gpm", "water_demand"]

Fixture = Literal[
    "bathroom group with tank", "bathroom group with flushometer", "bathtub", "bidet", "combination fixture",
    "kitchen sink", "dishwasher", "drinking fountain", "lavatory", "public lavatory", "laundry tray", "service sink",
    "shower", "clothes washer", "water closet with tank", "water closet with flushometer tank",
    "water closet with flushometer",
]  # fmt: skip
Curve = Literal["IPC E103.3(3), tanks", "NSPC B.5.4, tanks", "NSPC B.5.4, flush valves", "IPC E103.3(3), flush valves"]


@dataclass(frozen=True, slots=True)
class Weight:
    """Water supply fixture units of one fixture: *cold* and *hot* pipe by themselves, and the *total* for the two."""

    cold: Decimal
    hot: Decimal
    total: Decimal


def _weight(text: str) -> Weight:
    return Weight(*map(Decimal, text.split()))


#: IPC Table E103.3(2), private use but where named public. The total is less than cold and hot together, on purpose.
UNITS: dict[str, Weight] = {
    "bathroom group with tank": _weight("2.7 1.5 3.6"),
    "bathroom group with flushometer": _weight("6.0 3.0 8.0"),
    "bathtub": _weight("1.0 1.0 1.4"),
    "bidet": _weight("1.5 1.5 2.0"),
    "combination fixture": _weight("2.25 2.25 3.0"),
    "kitchen sink": _weight("1.0 1.0 1.4"),
    "dishwasher": _weight("0 1.4 1.4"),
    "drinking fountain": _weight("0.25 0 0.25"),
    "lavatory": _weight("0.5 0.5 0.7"),
    "public lavatory": _weight("1.5 1.5 2.0"),
    "laundry tray": _weight("1.0 1.0 1.4"),
    "service sink": _weight("2.25 2.25 3.0"),
    "shower": _weight("1.0 1.0 1.4"),
    "clothes washer": _weight("1.0 1.0 1.4"),
    "water closet with tank": _weight("2.2 0 2.2"),
    "water closet with flushometer tank": _weight("2.0 0 2.0"),
    "water closet with flushometer": _weight("6.0 0 6.0"),
}


@dataclass(frozen=True, slots=True)
class FixtureCount:
    """How many there are of one fixture."""

    fixture: Annotated[Fixture, Asked("which fixture", example="bathtub")]
    count: Annotated[int, Asked("how many", lowest="0", highest="200", least="0", most="2000", example="2")] = 1


def _totals(rows: tuple[FixtureCount, ...]) -> Weight:
    weights = [(UNITS[row.fixture], row.count) for row in rows]
    return Weight(
        sum((one.cold * count for one, count in weights), Decimal(0)),
        sum((one.hot * count for one, count in weights), Decimal(0)),
        sum((one.total * count for one, count in weights), Decimal(0)),
    )


def _told(value: Decimal | None, bracket: tuple[Decimal, Decimal] | None) -> str:
    if value is not None:
        return f"about {value:.1f} gal/min"
    if bracket is not None:
        return f"between {bracket[0]} and {bracket[1]} gal/min (the rows between were not read here)"
    return "not in the printed curve"


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
            how="from the table of the code whose curve is used, not counted by fixture",
            example="12",
        ),
    ] = None,
    curve: Annotated[Curve, Asked("the printed curve to use")] = "IPC E103.3(3), tanks",
    steady_flow: Annotated[
        Quantity | None,
        Asked(
            "flow that runs on meanwhile: sprinklers, hose bibbs; it is added to the curve's",
            "[gal_us]/min",
            lowest="0",
            highest="100",
            least="0",
            most="10000",
            how="5 gal/min for a hose bibb",
            example="5gpm",
        ),
    ] = None,
) -> Answer:
    """Peak flow from fixture units by a printed curve, straight between its rows and never beyond its ends.

    Rule:
        units of the fixtures (IPC Table E103.3(2), private use) are added up; the curve named turns them into gal/min:
        IPC Table E103.3(3) or NSPC Table B.5.4, for tanks or for flush valves. The curves are never mixed, and units
        counted by the IPC's weights are not put on the NSPC's curve. Flow that runs on is added afterwards (E102.2).

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("water-demand", {"units": "8", "curve": "NSPC B.5.4, tanks"}).value
    Decimal('7')
    """
    rows = fixtures or ()
    if not rows and units is None:
        raise Refusal(NEEDS_A_FACT.at("water-demand: fixtures or units", "the fixtures, or their units added up"))
    if rows and curve.startswith("NSPC"):
        detail = "fixtures are counted by the IPC's weights; for this curve give units= from the NSPC's own table"
        raise Refusal(AT_ODDS.at(f"curve={curve}", detail))
    weights = _totals(rows)
    total = weights.total + (units or Decimal(0))
    steady = Decimal(0) if steady_flow is None else steady_flow.value
    flow, bracket = demand_gpm(total, curve), between(total, curve)
    value = None if flow is None else flow + steady
    others = tuple(
        Also(f"by_{at}", f"by {name}", round(other, 2), "[gal_us]/min")
        for at, name in enumerate(CURVES, 1)
        if name != curve and (other := demand_gpm(total, name)) is not None
    )
    outside: tuple[Outside, ...] = ()
    if flow is None:
        why = (
            "The printed curve ends there."
            if bracket is None
            else "Rows of the table between 14 and 120 were not read."
        )
        outside = (Outside("fixture units", Quantity(total, "1"), CURVES[curve][0][0], CURVES[curve][-1][0], why),)
    words = f"{total.normalize():f} fixture units: {_told(flow, bracket)} by {curve}."
    if steady_flow is not None and value is not None:
        words += f" With {say(steady_flow)} that runs on, {value:.1f} gal/min."
    also = [Also("units", "fixture units", total, "1")]
    if rows:
        also += [
            Also("cold_units", "fixture units on the cold pipe", weights.cold, "1"),
            Also("hot_units", "fixture units on the hot pipe", weights.hot, "1"),
        ]
    if bracket is not None:
        also += [
            Also("at_least", "flow at the last row read below", bracket[0], "[gal_us]/min"),
            Also("at_most", "flow at the first row read above", bracket[1], "[gal_us]/min"),
        ]
    return Answer(
        value=None if value is None else rounded(float(value)),
        words=words,
        outside_range=outside,
        also=(*also, *others),
        steps=tuple(Step(f"{row.count} x {row.fixture}", UNITS[row.fixture].total * row.count, "1") for row in rows),
        table=Table((("fixture units", "1"), ("demand", "[gal_us]/min")), CURVES[curve]),
    )
