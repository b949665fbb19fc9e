"""Whether an air conditioner cools its air about as much as this return air lets it."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.fuel.cautions import LICENSED
from witnessmark.gauges.fuel.messages import IMPOSSIBLE_AIR
from witnessmark.gauges.fuel.moist_air import humidity_ratio
from witnessmark.gauges.fuel.sources import AIRFLOW_METHOD
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["cooling_split", "expected_split"]

_INSTALLER, _RATER = Decimal(3), Decimal(4)
_WARM_ENOUGH = Decimal(65)
#: The least-squares plane of four recalled points of the target table (70/58 18.7, 75/63 18.6, 75/67 15.6, 80/67 18.4 °F).
_MIDDLE, _DRY, _WET = 18.33, 0.578, 0.675


def expected_split(dry: float, wet: float) -> float:
    """Expected split in °F from dry and wet bulb of the return air in °F: 18.33 + 0.578 (dry - 75) - 0.675 (wet - 63).

    The least-squares plane of four recalled points of the California target table; plausible to about 2 °F, no better.

    >>> round(expected_split(75, 63) - expected_split(75, 67), 1)
    2.7
    """
    return _MIDDLE + _DRY * (dry - 75) - _WET * (wet - 63)


@gauge(
    name="cooling-split",
    family="fuel",
    title="Cooling split against what this return air lets one expect",
    unit="[degF]{difference}",
    gives="split that this return air lets one expect; a band of 3 °F about it, 4 °F for a second look",
    sources=(AIRFLOW_METHOD,),
    error="the target is recalled, not read: about 2 °F, on top of the band",
    never="that charge, airflow or capacity is right or wrong: the split is a check of plausibility alone",
    cautions=(
        "The target comes from memory of a published table: use it as a plausibility check, never as a limit.",
        "Wet return air lowers the split by about 0.8 °F for each °F of wet bulb; a fixed 14 to 22 °F misjudges it.",
        "Do not run cooling below 65 °F outdoors, or when it was so in the night before.",
        LICENSED,
    ),
    example={"return_dry": "75F", "return_wet": "63F", "supply": "57F", "outdoors": "85F"},
)  # fmt: skip
def cooling_split(
    return_dry: Annotated[
        Quantity,
        Asked("return air, dry bulb", "[degF]", lowest="70", highest="84", least="-40", most="150",
              how="at the return after 15 minutes of steady running", example="75F"),
    ],
    return_wet: Annotated[
        Quantity,
        Asked("return air, wet bulb", "[degF]", lowest="54", highest="76", least="-40", most="150",
              how="with a wetted wick, or from a hygrometer that shows it", example="63F"),
    ],
    supply: Annotated[
        Quantity | None,
        Asked("supply air, dry bulb", "[degF]", lowest="40", highest="84", least="-40", most="150",
              how="in the supply trunk or at the register nearest the unit", example="57F"),
    ] = None,
    outdoors: Annotated[
        Quantity | None,
        Asked("outdoors", "[degF]", lowest="65", highest="115", least="-100", most="150", how="in the shade",
              example="85F"),
    ] = None,
) -> Answer:  # fmt: skip
    """Expected cooling split by the dry and wet bulb of the return air, as a band.

    Formula:
        expected = 18.33 + 0.578 (dry - 75) - 0.675 (wet - 63)    °F; least-squares plane of four recalled points
        band: 3 °F either way (for who sets it up), 4 °F (for who looks after it)

    Wet air lowers the split: the coil spends itself on moisture.

    >>> from witnessmark.units import parse_quantity as q
    >>> cooling_split(q("75F"), q("63F"), q("57F"))["within_3"]
    True
    """
    if return_wet.value > return_dry.value or humidity_ratio(float(return_dry.value), float(return_wet.value)) < 0:
        detail = f"dry bulb {return_dry.value} °F, wet bulb {return_wet.value} °F"
        raise Refusal(IMPOSSIBLE_AIR.at("return_wet", detail))
    target = rounded(expected_split(float(return_dry.value), float(return_wet.value)))
    words = (
        f"This return air lets one expect a split of about {target - _INSTALLER:.0f} to {target + _INSTALLER:.0f} °F."
    )
    also = [
        Also("low", "low end of the band", target - _INSTALLER, "[degF]{difference}"),
        Also("high", "high end of the band", target + _INSTALLER, "[degF]{difference}"),
    ]
    if outdoors is not None and outdoors.value < _WARM_ENOUGH:
        words += " It is too cold outdoors to judge cooling by it."
    if supply is not None:
        split = return_dry.value - supply.value
        off = split - target
        also += [
            Also("split", "split measured", split, "[degF]{difference}"),
            Also("difference", "measured less expected", off, "[degF]{difference}"),
            Also("within_3", "within 3 °F of it", abs(off) <= _INSTALLER),
            Also("within_4", "within 4 °F of it", abs(off) <= _RATER),
        ]
        side = (
            "about as expected"
            if abs(off) <= _INSTALLER
            else "lower than expected"
            if off < 0
            else "higher than expected"
        )
        hint = "" if abs(off) <= _INSTALLER else " (low airflow raises it; low charge or high airflow lowers it)"
        words += f" Measured: {split:.1f} °F, {side}{hint}."
    return Answer(
        value=target,
        unit="[degF]{difference}",
        words=words,
        uncertainty=Uncertainty("about 2 °F in the recalled target, on top of the band of 3 °F", Decimal(5)),
        also=tuple(also),
        steps=(Step("expected split", target, "[degF]{difference}"),),
    )
