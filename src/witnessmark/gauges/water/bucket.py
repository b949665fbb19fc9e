"""What flow fills a vessel in a time."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.water.cautions import FLOOD
from witnessmark.gauges.water.sources import PRACTICE
from witnessmark.units import Quantity, convert

__all__ = ["flow_by_bucket"]


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
    example={"volume": "1gal", "time": "28s"},
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
) -> Answer:
    """Flow as volume over time.

    Formula:
        gal/min = 60 * gallons / seconds

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("flow-by-bucket", {"volume": "2gal", "time": "60s"}).value
    Decimal('2')
    """  # fmt: skip
    value = 60 * volume.value / time.value
    off = rounded(float(value) * (float(Decimal(1) / time.value) + 0.1))
    metric = rounded(float(convert(Quantity(value, "[gal_us]/min"), "L/min").value))
    return Answer(
        value=rounded(float(value)),
        words=f"About {value:.1f} gal/min ({metric:.1f} L/min) came out while it filled.",
        uncertainty=Uncertainty(f"about {off:.1f} gal/min either way, for a second and a tenth of the vessel", off),
        also=(Also("metric", "the same", metric, "L/min"),),
        steps=(Step("volume", volume.value, "[gal_us]"), Step("time", time.value, "s")),
    )
