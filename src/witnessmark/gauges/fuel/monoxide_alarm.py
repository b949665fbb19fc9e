"""How long a household carbon monoxide alarm may stay silent at a level."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Table
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.fuel.cautions import LEAVE, MONOXIDE, SILENT
from witnessmark.gauges.fuel.sources import ALARM_STANDARD
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity, say

__all__ = ["ALARM_POINTS", "alarm_minutes", "carbon_monoxide_alarm"]

#: Level in ppm, and the earliest and latest minute at which the alarm sounds.
ALARM_POINTS = ((Decimal(70), 60, 240), (Decimal(150), 10, 50), (Decimal(400), 4, 15))


def alarm_minutes(ppm: Decimal) -> tuple[int, int] | None:
    """Earliest and latest minute by UL 2034 at the highest published level that *ppm* reaches; None below 70 ppm.

    >>> alarm_minutes(Decimal(399)), alarm_minutes(Decimal(69))
    ((10, 50), None)
    """
    return next(((first, last) for level, first, last in reversed(ALARM_POINTS) if ppm >= level), None)


@gauge(
    name="carbon-monoxide-alarm",
    family="fuel",
    title="How long a carbon monoxide alarm may stay silent",
    unit="min",
    gives="latest minute at which an alarm by the standard must have sounded",
    sources=(ALARM_STANDARD,),
    error="none in the standard; an alarm past its date, or without power, sounds never",
    never="what the level is, or that there is none: below 70 ppm an alarm owes nothing",
    cautions=(
        SILENT,
        MONOXIDE,
        "Alarms wear out: the date on the back says when; the test button tests the horn only.",
    ),
    example={"level": "150ppm"},
)
def carbon_monoxide_alarm(
    level: Annotated[
        Quantity,
        Asked(
            "carbon monoxide at the alarm", "[ppm]", lowest="0", highest="1000", least="0", most="1000000",
            how="with an instrument, beside the alarm", example="70ppm",
        ),
    ],
) -> Answer:  # fmt: skip
    """Times by which a household carbon monoxide alarm must sound, at the published levels and between them.

    Rule:
        70 ppm: 60 to 240 min; 150 ppm: 10 to 50 min; 400 ppm: 4 to 15 min; 30 ppm: silent for 30 days
        between two levels the time of the lower one is all that the standard promises

    >>> from witnessmark.units import parse_quantity as q
    >>> carbon_monoxide_alarm(q("150ppm")).value
    Decimal('50')
    """  # fmt: skip
    times = alarm_minutes(level.value)
    table = Table(
        (("level", "[ppm]"), ("not before", "min"), ("not after", "min")),
        tuple((ppm, Decimal(first), Decimal(last)) for ppm, first, last in ALARM_POINTS),
    )
    if times is None:
        return Answer(
            words=f"At {say(level)} an alarm need never sound; at 30 ppm it must stay silent for 30 days.",
            also=(Also("must_sound", "whether it must sound at all", value=False),),
            table=table,
        )
    first, last = times
    return Answer(
        value=Decimal(last),
        unit="min",
        words=f"{LEAVE} At {say(level)} an alarm may stay silent for up to {last} minutes, and sounds no sooner than {first}.",
        cautions=(LEAVE,),
        also=(
            Also("must_sound", "whether it must sound at all", value=True),
            Also("earliest", "earliest minute", Decimal(first), "min"),
        ),
        table=table,
    )
