"""Whether a radon test, of any device, was made under the conditions that it needs."""

from __future__ import annotations

from typing import Annotated

from witnessmark.gauges.answer import Also, Answer
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.radon.conditions import CLOSED_HOURS, FAN_HOURS, FOUR_DAYS, SHORTEST_TEST
from witnessmark.gauges.radon.sources import (
    EPA_HOMES,
    ILLINOIS,
    LARGE_BUILDINGS,
    MAH_CLOSED,
    MAH_MITIGATED,
    MAH_WEATHER,
    NOT_ONE_READING,
)  # fmt: skip
from witnessmark.units import Quantity

__all__ = ["radon_test_conditions"]

_LONGEST_SHORT = 90 * 24
_A_WEEK = 7 * 24
_COLD, _WARM = 65, 80


@gauge(
    name="radon-test-conditions",
    family="radon",
    title="Whether a radon test was made under the conditions it needs",
    gives="a word answer: what makes the test invalid, and what casts doubt on it",
    sources=(MAH_CLOSED, EPA_HOMES, MAH_MITIGATED, MAH_WEATHER, ILLINOIS, LARGE_BUILDINGS),
    error="as far as the conditions were seen and told",
    never="that windows stayed closed while nobody looked",
    cautions=(
        (
            "Closed house: windows and outside doors shut on all levels but for going in and out, no fireplace, no fan that "
            "brings in or drives out much air, air conditioning on recirculation; heating as usual."
        ),
        *NOT_ONE_READING,
    ),
    example={"length": "3d", "closed_before": "12h", "closed_during": "yes"},
)
def radon_test_conditions(
    length: Annotated[
        Quantity,
        Asked(
            "how long the device was open",
            "h",
            lowest="0",
            highest="9000",
            least="0",
            most="100000",
            how="from the times noted at placing and taking up",
            example="3d",
        ),
    ],
    closed_before: Annotated[
        Quantity,
        Asked(
            "how long the house had been closed before",
            "h",
            lowest="0",
            highest="8760",
            least="0",
            most="100000",
            how="ask the occupant",
            example="12h",
        ),
    ],
    closed_during: Annotated[bool, Asked("closed-house conditions held through the test, as far as could be seen")],
    *,
    fan_running: Annotated[
        Quantity | None,
        Asked(
            "how long the fan of a mitigation system had run before, where there is one",
            "h",
            lowest="0",
            highest="8760",
            least="0",
            most="1000000",
            how="ask, and look at the gauge on the pipe",
            example="24h",
        ),
    ] = None,
    temperature: Annotated[
        Quantity | None,
        Asked(
            "temperature in the house",
            "[degF]",
            lowest="40",
            highest="100",
            least="-40",
            most="150",
            how="on the thermostat",
            example="70F",
        ),
    ] = None,
    moved: Annotated[bool, Asked("the device was moved, covered or tampered with")] = False,
    outside_air: Annotated[bool, Asked("a fireplace, whole-house fan or outdoor-air economiser ran")] = False,
    severe_weather: Annotated[bool, Asked("a storm or very high wind fell into the test")] = False,
) -> Answer:
    """Conditions of a radon test with any device.

    Rule:
        48 hours at least; closed through the test if it is short (up to 90 days); closed 12 hours before if it is
        shorter than 4 days (else put off, or made 4 days or longer); mitigation fan on for 24 hours before; no severe
        weather in less than 4 days; 65 to 80 F indoors (text for large buildings); device not moved

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("radon-test-conditions", {"length": "2d", "closed_before": "3h", "closed_during": "yes"})["valid"]
    False
    """  # fmt: skip
    hours = length.value
    short = hours < FOUR_DAYS
    faults = [
        what
        for fault, what in (
            (hours < SHORTEST_TEST, f"it lasted {float(hours):.4g} hours, less than {SHORTEST_TEST}"),
            (not closed_during and hours <= _LONGEST_SHORT, "the house was not kept closed through the test"),
            (
                short and closed_before.value < CLOSED_HOURS,
                "the house was closed less than 12 hours before a test of less than 4 days",
            ),
            (
                fan_running is not None and fan_running.value < FAN_HOURS and short,
                "the mitigation fan had run less than 24 hours",
            ),
            (moved, "the device was moved, covered or tampered with"),
        )
        if fault
    ]
    doubts = [
        what
        for doubt, what in (
            (severe_weather and short, "severe weather fell into a test of less than 4 days"),
            (outside_air and hours <= _A_WEEK, "much outdoor air was brought in or drawn through"),
            (
                temperature is not None and not _COLD <= temperature.value <= _WARM,
                f"the house was not at {_COLD} to {_WARM} °F",
            ),
        )
        if doubt
    ]
    said = f"Not a valid test: {'; '.join(faults)}." if faults else "Nothing told here makes the test invalid."
    return Answer(
        words=said + (f" In doubt: {'; '.join(doubts)}." if doubts else ""),
        also=(
            Also("valid", "nothing told here makes the test invalid", not faults),
            Also("faults", "what makes it invalid", "; ".join(faults) or "none found"),
            Also("doubts", "what casts doubt on it", "; ".join(doubts) or "none"),
            Also("short_term", "it counts as a short test, up to 90 days", hours <= _LONGEST_SHORT),
        ),
    )
