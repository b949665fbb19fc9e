"""Whether the conditions of a thermal survey were those that published sources ask."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Table, Uncertainty
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.infrared.scan_rules import RULES, Condition, Scan, band
from witnessmark.gauges.infrared.sources import (
    ASHRAE_101,
    ASTM_C1060,
    EN_13187,
    EN_13187_PRACTICE,
    GUIDE_BANDS,
)
from witnessmark.units import Quantity

__all__ = ["infrared_scan_conditions"]

_HOURS = {"lowest": "0", "highest": "1000", "least": "0"}
_CHANGE = {"lowest": "0", "highest": "60", "least": "0", "most": "200"}


def _temperature(what: str, how: str, example: str) -> Asked:
    return Asked(what, "[degF]", lowest="-40", highest="130", least="-100", most="200", how=how, example=example)


def _outcome(conditions: tuple[Condition, ...]) -> tuple[str, str]:
    """What one source makes of it, and why: "met", "not met", "not decided" or "not covered"."""
    if not conditions:
        return "not covered", "solid masonry lies outside its scope"
    failed = [one.asks for one in conditions if one.met is False]
    unknown = [one.asks for one in conditions if one.met is None]
    if failed:
        return "not met", "; ".join(failed)
    if unknown:
        return "not decided", "; ".join(unknown)
    return "met", "; ".join(one.asks for one in conditions)


@gauge(
    name="infrared-scan-conditions",
    family="infrared",
    title="Whether a thermal survey was done under conditions that sources ask",
    unit="[degF]{difference}",
    gives="difference between inside and outside",
    sources=(ASHRAE_101, ASTM_C1060, EN_13187_PRACTICE, EN_13187, GUIDE_BANDS),
    error="two thermometers may differ by 1 °C; near a limit the outcome is open",
    never="that nothing is wrong where nothing showed, or that every source asks the same",
    cautions=(
        "Each source stands for itself: one met does not make up for another not met.",
        "ASHRAE 101 and ASTM C1060 speak of surfaces inside and outside, the others of air: give what was measured.",
    ),
    example={
        "inside_temperature": "70F",
        "outside_temperature": "45F",
        "hours_held": "24h",
        "hours_since_sun": "12h",
        "wind": "5mph",
        "dry_hours": "48h",
        "wall": "light frame",
    },
)
def infrared_scan_conditions(
    inside_temperature: Annotated[
        Quantity, _temperature("temperature inside", "in the middle of the room, at chest height", "70F")
    ],
    outside_temperature: Annotated[
        Quantity, _temperature("temperature outside", "in the shade, away from the wall", "45F")
    ],
    hours_held: Annotated[
        Quantity | None,
        Asked(
            "hours for which that difference has held",
            "h",
            **_HOURS,
            how="from the thermostat's settings and the weather record",
            example="24h",
        ),
    ] = None,
    *,
    hours_since_sun: Annotated[
        Quantity | None,
        Asked(
            "hours since the sun left the surface",
            "h",
            **_HOURS,
            how="by the face of the house and the hour; a face that had none that day: hours since the day before",
            example="12h",
        ),
    ] = None,
    wind: Annotated[
        Quantity | None,
        Asked(
            "speed of the wind",
            "m/s",
            lowest="0",
            highest="40",
            least="0",
            most="120",
            how="with a vane at the wall, or from the nearest station",
            example="5mph",
        ),
    ] = None,
    dry_hours: Annotated[
        Quantity | None,
        Asked(
            "hours for which the surfaces have been dry",
            "h",
            **_HOURS,
            how="hours since rain, dew or snow on the face",
            example="48h",
        ),
    ] = None,
    wall: Annotated[
        Literal["light frame", "masonry veneer", "masonry"], Asked("how the wall is built")
    ] = "light frame",
    heated: Annotated[
        bool, Asked("whether the building was heated by its own system throughout", example="yes")
    ] = True,
    u_value: Annotated[
        Quantity | None,
        Asked(
            "expected U-value of the wall",
            "W/(m2.K)",
            lowest="0.1",
            highest="5",
            least="0.01",
            most="20",
            how="from the construction; needed by ISO 6781 only",
            example="0.35 W/(m2.K)",
        ),
    ] = None,
    outside_change_day: Annotated[
        Quantity | None,
        Asked(
            "how far outside moved from its present temperature over the 24 hours before",
            "[degF]{difference}",
            **_CHANGE,
            how="from the weather record",
            example="12F",
        ),
    ] = None,
    outside_change_during: Annotated[
        Quantity | None,
        Asked(
            "how far outside moved during the survey",
            "[degF]{difference}",
            **_CHANGE,
            how="thermometer at start and end",
            example="3F",
        ),
    ] = None,
    inside_change_during: Annotated[
        Quantity | None,
        Asked(
            "how far inside moved during the survey",
            "[degF]{difference}",
            **_CHANGE,
            how="thermometer at start and end",
            example="1F",
        ),
    ] = None,
) -> Answer:
    """Conditions of a thermal survey held against five sources, one by one.

    Rule:
        ASHRAE 101-1981: 10 K for 3 h.  ASTM C1060: 10 K for 4 h, no sun 3 h (8 h masonry veneer), wind to 15 mph.
        practice sheet to BS EN 13187: 10 K for 24 h (72 h unheated), dry 12 h (24 h masonry), no sun 2 h, wind to 5 m/s.
        ISO 6781 / EN 13187: 3/U K over 24 h and never below 5 K, outside within 10 K over a day and 5 K during,
        inside within 2 K, no sun 12 h.  Guide: below 5 K inadequate, to 10 marginal, to 15 good, above ideal.

    Limits are compared exactly in °F, in which 10 K is 18 °F. What was not noted leaves a source undecided.

    >>> from witnessmark.units import parse_quantity as q
    >>> answer = infrared_scan_conditions(q("70F"), q("52F"), q("3h"))
    >>> answer["ashrae_101"], answer["astm_c1060"], answer["guide_bands"]
    ('met', 'not met', 'good')
    """

    def number(given: Quantity | None) -> Decimal | None:
        return None if given is None else given.value

    apart = abs(inside_temperature.value - outside_temperature.value)
    scan = Scan(
        apart,
        hours_held=number(hours_held),
        hours_since_sun=number(hours_since_sun),
        wind=number(wind),
        dry_hours=number(dry_hours),
        wall=wall,
        heated=heated,
        u_value=number(u_value),
        outside_change_day=number(outside_change_day),
        outside_change_during=number(outside_change_during),
        inside_change_during=number(inside_change_during),
    )
    rows, also, told = [], [], []
    for name, (called, rule) in RULES.items():
        outcome, why = _outcome(rule(scan))
        rows.append((called, outcome, why))
        also.append(Also(name, called, outcome))
        reason = {"met": "", "not decided": f" (not noted: {why})"}.get(outcome, f" ({why})")
        told.append(f"{called}: {outcome}{reason}")
    in_band = band(apart)
    rows.append(("guide, United Kingdom", in_band, "band of the difference"))
    also.append(Also("guide_bands", "guide, United Kingdom", in_band))
    return Answer(
        value=apart,
        words=f"Inside and outside differ by {apart:.1f} °F ({float(apart) / 1.8:.1f} K). "
        + ". ".join(told)
        + f". Guide, United Kingdom: {in_band}.",
        uncertainty=Uncertainty("two thermometers may differ by 1 °C", Decimal("1.8")),
        also=tuple(also),
        table=Table((("source", ""), ("outcome", ""), ("why", "")), tuple(rows)),
    )
