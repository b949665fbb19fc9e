"""Whether a measured maximum demand leaves room for another load."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Step, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.electrical.calculating.cautions import INFORMATIONAL, WORK_ON_IT
from witnessmark.gauges.electrical.calculating.loads import LINE_TO_LINE, SERVICE
from witnessmark.gauges.electrical.calculating.messages import ONE_OF_TWO
from witnessmark.gauges.electrical.calculating.outcome import against_service, whole_amperes
from witnessmark.gauges.electrical.editions import nec
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["dwelling_load_measured"]

_SHORT = (
    "A record of thirty days counts only when heating or cooling, whichever is larger, was in full use; add what the "
    "season left out."
)
MEASURED = nec("2005 to 2023", "220.87", "seen in a copy")


@gauge(
    name="dwelling-load-measured",
    family="electrical",
    title="Load of a dwelling from its measured maximum demand (220.87)",
    unit="A",
    gives="125 % of the measured maximum demand with the load to be added",
    sources=(MEASURED,),
    error="as good as the record: the highest demand of a mild season misses the one that matters",
    never="that a service is large enough from one reading on one day",
    cautions=(INFORMATIONAL, WORK_ON_IT),
    example={"demand": "9.4kW", "new_load": "7.2kW", "service": "100A"},
)
def dwelling_load_measured(
    new_load: Annotated[
        Quantity,
        Asked(
            "load to be added",
            "V.A",
            lowest="0",
            highest="50000",
            least="0",
            most="1000000",
            how="from its plate; 0 W to look at the house as it is",
            example="7.2kW",
        ),
    ],
    demand: Annotated[
        Quantity | None,
        Asked(
            "highest demand of the record, as power",
            "V.A",
            lowest="100",
            highest="100000",
            least="0",
            most="1000000",
            how="from the utility's demand data, the highest average over 15 minutes",
            example="9.4kW",
        ),
    ] = None,
    demand_current: Annotated[
        Quantity | None,
        Asked(
            "highest demand of the record, as current of the more heavily loaded line at 240 V",
            "A",
            lowest="1",
            highest="400",
            least="0",
            most="4000",
            how="from a recording meter on the lines, set by one trained for live work",
            example="39A",
        ),
    ] = None,
    record: Annotated[
        Literal["one year", "thirty days"],
        Asked("how long the record is; thirty days need the season of the larger of heating and cooling load"),
    ] = "one year",
    service: Annotated[Quantity | None, SERVICE] = None,
) -> Answer:
    """Load of an existing dwelling from its measured demand.

    Rule:
        1.25 * maximum demand + load to be added <= rating of service or feeder; demand of one year, or of thirty days
        recorded continuously with heating or cooling, whichever is larger, taken into account

    >>> from witnessmark.units import parse_quantity as q
    >>> dwelling_load_measured(q("7200W"), demand=q("9600W")).value
    Decimal('80')
    """
    if (demand is None) == (demand_current is None):
        raise Refusal(ONE_OF_TWO.at("demand, demand_current", "both given" if demand else "neither given"))
    had = demand.value if demand is not None else demand_current.value * LINE_TO_LINE  # type: ignore[union-attr]  # one of the two is given
    grown = had * Decimal("1.25")
    total = grown + new_load.value
    amperes = total / LINE_TO_LINE
    return Answer(
        value=rounded(float(amperes)),
        words=f"125 % of the measured demand with what is to be added is {whole_amperes(amperes)} A "
        f"({float(total):,.0f} VA).",
        verdict=against_service(amperes, service, MEASURED),
        cautions=(_SHORT,) if record == "thirty days" else (),
        also=(
            Also("total", "load in all", rounded(float(total)), "V.A"),
            Also("existing", "125 % of the measured demand", rounded(float(grown)), "V.A"),
        ),
        steps=(
            Step("measured maximum demand", rounded(float(had)), "V.A"),
            Step("125 % of it", rounded(float(grown)), "V.A"),
            Step("load to be added", rounded(float(new_load.value)), "V.A"),
            Step("together over 240 V", rounded(float(amperes)), "A"),
        ),
    )
