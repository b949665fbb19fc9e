"""What flow fills a vessel in a time, how long it takes to fill another, and how fast one empties."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.water.cautions import FLOOD, FRAGILE
from witnessmark.gauges.water.sources import PRACTICE
from witnessmark.units import Quantity, convert, say

__all__ = ["drain_time", "flow_by_bucket"]

#: How far the watch and the vessel's mark may be off.
_SECOND, _SHARE = Decimal(1), Decimal("0.1")


def _flow(volume: Decimal, time: Decimal) -> tuple[Decimal, Decimal, Decimal]:
    value = 60 * volume / time
    off = value * (_SECOND / time + _SHARE)
    return (
        rounded(float(value)),
        rounded(float(off)),
        rounded(float(convert(Quantity(value, "[gal_us]/min"), "L/min").value)),
    )


def _uncertain(off: Decimal) -> Uncertainty:
    return Uncertainty(f"about {off:.1f} gal/min either way, for a second and a tenth of the vessel", off)


@gauge(
    name="flow-by-bucket",
    family="water",
    title="Flow of water from the time it takes to fill a vessel",
    unit="[gal_us]/min",
    gives="flow while the vessel filled",
    sources=(PRACTICE,),
    error="a second on the watch and a tenth of the vessel by the mark",
    never="the flow with other fixtures running, unless they ran",
    cautions=("Say which other fixtures ran meanwhile.", FLOOD),
    example={"volume": "1gal", "time": "28s", "to_fill": "40gal"},
)
def flow_by_bucket(
    volume: Annotated[
        Quantity,
        Asked(
            "volume caught",
            "[gal_us]",
            lowest="0.05",
            highest="60",
            least="0.001",
            most="1000",
            how="in a vessel with a mark; by weight, 8.33 lb is a gallon",
            example="1gal",
        ),
    ],
    time: Annotated[
        Quantity,
        Asked(
            "time it took",
            "s",
            lowest="2",
            highest="3600",
            least="0.1",
            most="86400",
            how="from the moment the vessel is put under the running stream",
            example="28s",
        ),
    ],
    to_fill: Annotated[
        Quantity | None,
        Asked(
            "volume of a tub or other vessel to be filled at this flow",
            "[gal_us]",
            lowest="1",
            highest="400",
            least="0",
            most="100000",
            how="an alcove tub holds about 40 gal to its overflow",
            example="40gal",
        ),
    ] = None,
) -> Answer:
    """Flow as volume over time, and the time that a larger vessel takes at that flow.

    Formula:
        gal/min = 60 * gallons / seconds
        time to fill = volume / flow

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("flow-by-bucket", {"volume": "2gal", "time": "60s"}).value
    Decimal('2')
    """
    value, off, metric = _flow(volume.value, time.value)
    words = f"About {value:.1f} gal/min ({metric:.1f} L/min) came out while it filled."
    also = [Also("metric", "the same", metric, "L/min")]
    if to_fill is not None:
        minutes = rounded(float(to_fill.value / value))
        also.append(Also("fill_time", "time to fill the vessel", minutes, "min"))
        words += f" At that flow {say(to_fill)} take about {minutes:.0f} minutes: come back to it before then."
    return Answer(
        value=value,
        words=words,
        uncertainty=_uncertain(off),
        also=tuple(also),
        steps=(Step("volume", volume.value, "[gal_us]"), Step("time", time.value, "s")),
    )


@gauge(
    name="drain-time",
    family="water",
    title="How fast a filled tub, sink or other vessel emptied",
    unit="[gal_us]/min",
    gives="mean flow out while the vessel emptied",
    sources=(PRACTICE,),
    error="a second on the watch and a tenth of the volume; the flow falls as the level falls",
    never="that a drain is clear or blocked: no law or code found gives a time",
    cautions=(
        "Look again below and beside the drain afterwards: a leak under a filled vessel shows late.",
        "A stopper, a hair catch or a screen slows a good drain.",
        FRAGILE, FLOOD,
    ),
    example={"volume": "30gal", "time": "4min"},
)  # fmt: skip
def drain_time(
    volume: Annotated[
        Quantity,
        Asked(
            "water that was in the vessel",
            "[gal_us]",
            lowest="0.5",
            highest="400",
            least="0.01",
            most="10000",
            how="by the fill time and the flow, or from the maker's figure for the height it stood at",
            example="30gal",
        ),
    ],
    time: Annotated[
        Quantity,
        Asked(
            "time from opening the stopper until the outlet was bare",
            "s",
            lowest="5",
            highest="7200",
            least="0.1",
            most="86400",
            how="with a watch; say whether something else drained meanwhile",
            example="4min",
        ),
    ],
    standing: Annotated[bool | None, Asked("whether water was left standing in the vessel")] = None,
    backed_up: Annotated[bool | None, Asked("whether water rose in another fixture meanwhile")] = None,
) -> Answer:
    """How fast a vessel emptied, as an observation.

    Formula:
        gal/min = 60 * gallons / seconds, the mean over the whole emptying

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("drain-time", {"volume": "30gal", "time": "4min"}).value
    Decimal('7.5')
    """
    value, off, metric = _flow(volume.value, time.value)
    words = [f"{say(volume)} emptied at about {value:.1f} gal/min ({metric:.1f} L/min); no code found gives a figure."]
    if standing:
        words.append("Water was left standing in it.")
    if backed_up:
        words.append("Water rose in another fixture: that is to report, whatever the time.")
    also = [Also("metric", "the same", metric, "L/min")]
    also += [
        Also(name, what, told)
        for name, what, told in (
            ("standing", "water was left standing", standing),
            ("backed_up", "water rose in another fixture", backed_up),
        )
        if told is not None
    ]
    return Answer(
        value=value,
        words=" ".join(words),
        uncertainty=_uncertain(off),
        also=tuple(also),
        steps=(Step("volume", volume.value, "[gal_us]"), Step("time", time.value, "s")),
    )
