"""How long hot water takes to burn."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Outside, Table, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.water.cautions import SCALD
from witnessmark.gauges.water.scald_tables import Reading, shortest
from witnessmark.gauges.water.sources import BURNS_1947, CPSC_5098, OUTLET_DEVICES, SCALD_LEAFLET
from witnessmark.units import Quantity

__all__ = ["scald_time"]

#: Set-points that the same sources advise, °F.
_OUTLET, _INFANT = Decimal(120), Decimal(104)
_LONG, _SHORT = 5400.0, 100.0


def _spoken(seconds: float) -> str:
    if seconds >= _LONG:
        return f"{seconds / 3600:.1f} hours"
    if seconds >= _SHORT:
        return f"{seconds / 60:.1f} minutes"
    if seconds <= 1:
        return "1 second"
    return f"{seconds:.1f} seconds" if seconds < 10 else f"{seconds:.0f} seconds"  # noqa: PLR2004 - one decimal below ten


def _words(temperature: Decimal, injury: str, reading: Reading) -> str:
    if reading.seconds is None:
        return f"The tables give no time for {temperature:.0f} °F: water of this warmth is cooler than they begin."
    least = "at most " if reading.at_most else "about "
    return (
        f"Water at {temperature:.0f} °F can burn an adult's skin to the {injury} in {least}{_spoken(reading.seconds)}."
    )


@gauge(
    name="scald-time",
    family="water",
    title="Time in which hot water burns",
    unit="s",
    gives="shortest published time to a burn of adult skin",
    sources=(CPSC_5098, OUTLET_DEVICES, SCALD_LEAFLET, BURNS_1947),
    error="published tables differ by a factor of two, at 120 °F 5 against 10 minutes; the shorter answers here",
    never="how long a child, an elder or anyone else may stay in hot water",
    cautions=(
        "Children and elders burn sooner: their skin is thinner and they move away more slowly. No table gives their time.",
        "The sources advise at most 120 °F at tub and shower outlets and 104 °F for an infant's bath.",
        SCALD,
        "A heater set lower lets germs grow in stored water; setting and mixing valves are a matter for a licensed plumber.",
    ),
    example={"temperature": "131F"},
)
def scald_time(
    temperature: Annotated[
        Quantity,
        Asked(
            "temperature of the water where it leaves the outlet",
            "[degF]",
            lowest="113",
            highest="155",
            least="32",
            most="212",
            how="let it run until it grows no hotter, catch it in a cup, and read a probe thermometer in the stream",
            example="131F",
        ),
    ],
    injury: Annotated[
        Literal["third degree", "second degree"], Asked("how deep the burn; third degree is through the whole skin")
    ] = "third degree",
) -> Answer:
    """Shortest published time in which water of a temperature burns the skin of an adult.

    Rule:
        each table by itself, ln(time) straight between its rows; the shorter of them answers, all are shown.
        Above a table's last row its last time still bounds the answer.

    Henriques' integral is not used: fed with the water's temperature in place of the skin's inner layer it gives 0.2 s
    at 140 °F where skin was seen to take 5 s, and 4.5 h at 111 °F where 6 h were seen.

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("scald-time", {"temperature": "120F"}).value
    Decimal('300')
    """
    degrees = float(temperature.value)
    reading = shortest(degrees, injury)
    outside: tuple[Outside, ...] = ()
    if injury == "second degree" and reading.at_most:
        outside = (Outside("temperature", temperature, Decimal(113), Decimal(140), "this table ends at 140 °F"),)
    also = [Also("at_most", "the time is only a bound: hotter than the tables", reading.at_most)]
    also += [
        Also(table.key, table.name, rounded(seconds), "s") for table, seconds in reading.each if seconds is not None
    ]
    also += [
        Also("outlet_setting", "most at tub and shower outlets, as advised", _OUTLET, "[degF]"),
        Also("infant_bath", "most for an infant's bath, as advised", _INFANT, "[degF]"),
    ]
    return Answer(
        value=None if reading.seconds is None else rounded(reading.seconds),
        words=_words(temperature.value, injury, reading),
        outside_range=outside,
        sources=(*(table.source for table, _ in reading.each), BURNS_1947),
        also=tuple(also),
        table=Table(
            (("table", ""), ("time", "s")),
            tuple((table.name, "not in it" if s is None else rounded(s)) for table, s in reading.each),
        ),
    )
