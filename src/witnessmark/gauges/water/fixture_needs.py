"""What flow and pressure a fixture is to be given, and what it may pass at most."""

from __future__ import annotations

import math
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Source, Step, Verdict, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.water.cautions import LOCAL
from witnessmark.gauges.water.editions import EDITIONS, against_built, checked
from witnessmark.gauges.water.messages import NEEDS_A_FACT
from witnessmark.gauges.water.sources import code
from witnessmark.problems import Refusal
from witnessmark.units import Quantity, say

__all__ = ["MOST_FLOW", "NEEDED", "fixture_flow_limit", "fixture_pressure", "flow_at_test_pressure"]

Fixture = Literal[
    "bathtub", "bidet", "dishwasher", "laundry tray", "lavatory", "shower", "hose bibb", "sink",
    "water closet, flushometer tank", "water closet, tank", "water closet, one-piece tank",
]  # fmt: skip
Fitting = Literal["lavatory", "shower", "sink", "water closet"]

#: IRC Table P2903.1: flow in gpm at a flow pressure in psi, tubs, bidets and showers with balancing or thermostatic valves.
NEEDED: dict[str, tuple[Decimal, Decimal]] = {
    "bathtub": (Decimal(4), Decimal(20)),
    "bidet": (Decimal(2), Decimal(20)),
    "dishwasher": (Decimal("2.75"), Decimal(8)),
    "laundry tray": (Decimal(4), Decimal(8)),
    "lavatory": (Decimal("0.8"), Decimal(8)),
    "shower": (Decimal("2.5"), Decimal(20)),
    "hose bibb": (Decimal(5), Decimal(8)),
    "sink": (Decimal("1.75"), Decimal(8)),
    "water closet, flushometer tank": (Decimal("1.6"), Decimal(20)),
    "water closet, tank": (Decimal(3), Decimal(20)),
    "water closet, one-piece tank": (Decimal(6), Decimal(20)),
}
#: IRC Table P2903.2: most flow in gpm at a test pressure in psi.
MOST_FLOW: dict[str, tuple[Decimal, Decimal]] = {
    "lavatory": (Decimal("2.2"), Decimal(60)),
    "shower": (Decimal("2.5"), Decimal(80)),
    "sink": (Decimal("2.2"), Decimal(60)),
}
_FLUSH = Decimal("1.6")
#: The table read is that of a later edition; older printings differ for the shower (3 gpm, recalled).
_FIRST_READ = 2018


def flow_at_test_pressure(flow: float, pressure: float, test: float) -> float:
    """Flow through a plain opening at the *test* pressure, from the flow at another (psi above 0): by the square root.

    >>> round(flow_at_test_pressure(2, 40, 80), 3)
    2.828
    """
    return flow * math.sqrt(test / pressure)


@gauge(
    name="fixture-pressure",
    family="water",
    title="Flow and pressure that a fixture is to be given",
    unit="[psi]",
    gives="flow pressure for which the supply to the fixture is designed",
    sources=(code("IRC", "2018 and later", "Table P2903.1", "seen in a copy"),),
    error="exact as printed; the pressure at a fixture in use is seldom read and is mostly computed",
    never="that a fixture in a house works poorly or well",
    cautions=(
        "The table sizes pipes; it is no test of a house. A maker's lower flow for a shower valve goes before it.",
        LOCAL,
    ),
    example={"fixture": "shower", "pressure": "24psi", "flow": "2.5gpm"},
)
def fixture_pressure(
    fixture: Annotated[Fixture, Asked("the fixture")],
    *,
    pressure: Annotated[
        Quantity | None,
        Asked(
            "pressure at the outlet with water running",
            "[psi]",
            lowest="0",
            highest="125",
            least="0",
            most="1000",
            how="by a gauge teed in, or computed from the residual pressure and the height",
            example="24psi",
        ),
    ] = None,
    flow: Annotated[
        Quantity | None,
        Asked(
            "flow at the outlet at that pressure",
            "[gal_us]/min",
            lowest="0",
            highest="20",
            least="0",
            example="2.5gpm",
            how="into a bucket against a watch",
        ),
    ] = None,
    edition: Annotated[int | None, Asked("edition of the IRC, a year", choices=EDITIONS)] = None,
) -> Answer:
    """What flow and flow pressure the supply to a fixture is designed for, and whether a reading reaches it.

    Rule:
        IRC Table P2903.1: bathtub 4 gpm at 20 psi, shower 2.5 at 20, lavatory 0.8 at 8, sink 1.75 at 8,
        hose bibb 5 at 8, dishwasher 2.75 at 8, tank water closet 3 at 20 and others

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("fixture-pressure", {"fixture": "lavatory"}).value
    Decimal('8')
    """  # fmt: skip
    year = checked("IRC", edition)
    gpm, psi = NEEDED[fixture]
    source = code("IRC", max(year, _FIRST_READ), "Table P2903.1", "seen in a copy")
    verdict: Verdict | None = None
    cautions: tuple[str, ...] = ()
    known = [one for one in (pressure, flow) if one is not None]
    if edition is not None and known:
        short = (pressure is not None and pressure.value < psi) or (flow is not None and flow.value < gpm)
        verdict = Verdict(
            "beyond" if short else "within", "below the design" if short else "reaches the design", source
        )
    if edition is not None and year < _FIRST_READ:
        cautions = (
            f"The table was read in the edition of {_FIRST_READ}; that of {year} may differ (a shower: 3 gpm, recalled).",
        )
        verdict = None if verdict is None else Verdict("undecided", "this edition's table was not read", source)
    return Answer(
        value=psi,
        words=f"The supply to a {fixture} is designed for {gpm} gal/min at {psi} psi with water running.",
        verdict=verdict,
        sources=(source,),
        cautions=cautions,
        also=(Also("flow", "design flow", gpm, "[gal_us]/min"),),
    )


@gauge(
    name="fixture-flow-limit",
    family="water",
    title="Flow of a fitting brought to the pressure of its limit",
    unit="[gal_us]/min",
    gives="flow brought to the test pressure of Table P2903.2; for a water closet nothing",
    sources=(
        code("IRC", "2018 and later", "Table P2903.2", "seen in a copy"),
        Source("flow through an opening", "", "square root of the pressure", "calculated"),
    ),
    error="flow regulators in aerators and shower heads hold the flow almost level, so the square root runs high for them",
    never="that a fitting breaks a water-saving law, which is about its manufacture and sale",
    cautions=("Flow above the limit wastes water and is no defect of the house by the codes held here.", LOCAL),
    example={"fitting": "shower", "flow": "2gpm", "pressure": "40psi"},
)
def fixture_flow_limit(
    fitting: Annotated[Fitting, Asked("the fitting")],
    *,
    flow: Annotated[
        Quantity | None,
        Asked(
            "flow read",
            "[gal_us]/min",
            lowest="0",
            highest="20",
            least="0",
            how="into a bucket against a watch",
            example="2gpm",
        ),
    ] = None,
    pressure: Annotated[
        Quantity | None,
        Asked(
            "pressure at the fitting while it ran",
            "[psi]",
            lowest="10",
            highest="125",
            least="0.1",
            most="1000",
            example="40psi",
        ),
    ] = None,
    volume: Annotated[
        Quantity | None,
        Asked(
            "water used by a flush",
            "[gal_us]",
            lowest="0",
            highest="8",
            least="0",
            how="as printed on the bowl",
            example="1.6gal",
        ),
    ] = None,
    built: Annotated[int | None, Asked("year the fitting was set", lowest="1800", highest="2100")] = None,
    edition: Annotated[int | None, Asked("edition of the IRC, a year", choices=EDITIONS)] = None,
) -> Answer:
    """What a fitting passes at the pressure at which its most is defined.

    Rule:
        IRC Table P2903.2: lavatory and sink faucets 2.2 gpm at 60 psi, shower head 2.5 gpm at 80 psi,
        water closet 1.6 gal a flush

    Formula:
        flow at test = flow * sqrt(test pressure / pressure)

    >>> from witnessmark.gauges import evaluate
    >>> round(evaluate("fixture-flow-limit", {"fitting": "shower", "flow": "2gpm", "pressure": "40psi"}).value, 2)
    Decimal('2.83')
    """  # fmt: skip
    year = checked("IRC", edition)
    source = code("IRC", max(year, _FIRST_READ), "Table P2903.2", "seen in a copy")
    era, told = against_built(built, year)
    if fitting == "water closet":
        if volume is None:
            raise Refusal(
                NEEDS_A_FACT.at("fixture-flow-limit: volume", "a water closet is held by the volume of a flush")
            )
        over = volume.value > _FLUSH
        return Answer(
            words=f"A flush of {say(volume)} {'is more than' if over else 'is not more than'} 1.6 gal.",
            sources=(source,),
            cautions=told,
            verdict=Verdict("beyond" if over else "within", "1.6 gal a flush", source),
            also=(Also("limit", "most a flush", _FLUSH, "[gal_us]"), *era),
        )
    if flow is None or pressure is None:
        raise Refusal(NEEDS_A_FACT.at("fixture-flow-limit: flow, pressure", "both, read together, are needed"))
    most, test = MOST_FLOW[fitting]
    value = rounded(flow_at_test_pressure(float(flow.value), float(pressure.value), float(test)))
    over = value > most
    return Answer(
        value=value,
        words=f"{say(flow)} at {say(pressure)} comes to {value:.1f} gal/min at {test} psi through a plain "
        f"opening; the table's most is {most}.",
        sources=(source,),
        cautions=told,
        verdict=Verdict("beyond" if over else "within", f"{most} gal/min at {test} psi", source),
        also=(Also("limit", "most flow at the test pressure", most, "[gal_us]/min"), *era),
        steps=(
            Step("flow read", flow.value, "[gal_us]/min"),
            Step("root of test pressure over pressure", rounded(math.sqrt(float(test) / float(pressure.value))), "1"),
        ),
    )
