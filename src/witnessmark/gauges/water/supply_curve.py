"""What pressure is left while water runs, and how the supply goes on from there."""

from __future__ import annotations

import math
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Outside, Source, Step, Table, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.water.cautions import FLOOD, FRAGILE
from witnessmark.gauges.water.messages import NEEDS_A_FACT, PRESSURES_AT_ODDS
from witnessmark.gauges.water.sources import PRACTICE
from witnessmark.problems import Refusal
from witnessmark.units import Quantity, say

__all__ = ["flow_at_pressure", "pressure_at_flow", "residual_pressure"]

#: Power of the flow in the friction law of Hazen and Williams.
_POWER = 1.852
#: Far beyond the flow that was run, the curve is a guess.
_TRUST = 2.0


def pressure_at_flow(static: float, residual: float, flow: float, wanted: float) -> float:
    """Pressure left at the *wanted* flow, from static pressure and one residual read at *flow* (psi, gpm; flow above 0).

    >>> round(pressure_at_flow(60, 48, 6, 6), 6)
    48.0
    """
    return static - (static - residual) * math.pow(wanted / flow, _POWER)


def flow_at_pressure(static: float, residual: float, flow: float, left: float) -> float:
    """Flow that would bring the pressure down to *left*; *residual* and *left* below *static* (psi, gpm).

    >>> round(flow_at_pressure(60, 48, 6, 48), 6)
    6.0
    """
    return flow * math.pow((static - left) / (static - residual), 1 / _POWER)


def _told(static: float, left: float, fixtures: int | None) -> str:
    share = 100 * (static - left) / static if static else 0.0
    running = "" if fixtures is None else f" with {fixtures} fixture{'s' if fixtures != 1 else ''} running"
    return f"The pressure falls by {static - left:.1f} psi ({share:.0f} % of the static pressure) to {left:.1f} psi{running}."


@gauge(
    name="residual-pressure",
    family="water",
    title="Pressure left while water runs, and the curve of the supply",
    unit="[psi]",
    gives="fall of the pressure while water runs",
    sources=(
        Source("NFPA 291, flow testing", "2022", "flow at another residual, power 0.54 = 1/1.852", "memory"),
        PRACTICE,
    ),
    error="one residual reading gives one point; the curve through it is good to about a tenth within twice that flow",
    never="where the resistance sits, or that the pipes are sound or fouled inside",
    cautions=(
        "A regulator that is worn or set low, a filter, a softener, a half-shut valve and fouled pipe all look alike here.",
        FRAGILE,
        FLOOD,
    ),
    example={
        "static": "60psi",
        "residual": "48psi",
        "fixtures_running": "2",
        "flow": "6gal/min",
        "at_pressure": "20psi",
    },
)
def residual_pressure(
    static: Annotated[
        Quantity,
        Asked(
            "static pressure: all water off",
            "[psi]",
            lowest="1",
            highest="200",
            least="0",
            most="1000",
            how="gauge on a hose thread, all water off",
            example="60psi",
        ),
    ],
    *,
    residual: Annotated[
        Quantity,
        Asked(
            "pressure left with water running",
            "[psi]",
            lowest="0",
            highest="200",
            least="0",
            most="1000",
            how="the same gauge in the same place, with fixtures running elsewhere; wait until the needle stands",
            example="48psi",
        ),
    ],
    fixtures_running: Annotated[int | None, Asked("how many fixtures ran", lowest="1", highest="12", least="0")] = None,
    flow: Annotated[
        Quantity | None,
        Asked(
            "flow that ran",
            "[gal_us]/min",
            lowest="0.5",
            highest="50",
            least="0.01",
            how="into a bucket, against a watch",
            example="6gal/min",
        ),
    ] = None,
    at_flow: Annotated[
        Quantity | None,
        Asked("a flow to ask about", "[gal_us]/min", lowest="0", highest="50", least="0", example="10gal/min"),
    ] = None,
    at_pressure: Annotated[
        Quantity | None,
        Asked("a pressure to ask about", "[psi]", lowest="0", highest="200", least="0", example="20psi"),
    ] = None,
) -> Answer:
    """How far the pressure falls with water running, and what the supply gives at another flow or pressure.

    Formula:
        fall = static - residual
        p(Q) = static - fall * (Q/flow)^1.852
        Q(p) = flow * ((static - p)/fall)^0.54

    A normal static pressure with a large fall speaks for resistance on the way; a low static pressure with a small
    fall speaks for a weak supply or a regulator set low. No document sets a limit for the fall.

    >>> from witnessmark.gauges import evaluate
    >>> round(evaluate("residual-pressure", {"static": "60psi", "residual": "48psi", "flow": "6gpm",
    ...     "at_pressure": "20psi"})["flow_there"], 2)
    Decimal('11.49')
    """  # fmt: skip
    high, left = float(static.value), float(residual.value)
    if left > high:
        raise Refusal(PRESSURES_AT_ODDS.at("residual", f"residual {say(residual)} is above static {say(static)}"))
    fall = high - left
    also = [Also("fall_share", "fall in % of the static pressure", rounded(100 * fall / high if high else 0), "%")]
    words, steps, outside, table = [_told(high, left, fixtures_running)], [], [], None
    if flow is None and (at_flow or at_pressure):
        raise Refusal(NEEDS_A_FACT.at("residual-pressure: flow", "the flow that ran is needed to go on from it"))
    if flow is not None and fall > 0:
        ran = float(flow.value)
        steps = [
            Step("fall at the flow that ran", rounded(fall), "[psi]"),
            Step("flow that ran", flow.value, flow.unit),
        ]
        top = flow_at_pressure(high, left, ran, 0)
        table = Table(
            (("flow", "[gal_us]/min"), ("pressure left", "[psi]")),
            tuple(
                (rounded(top * n / 10), rounded(max(0.0, pressure_at_flow(high, left, ran, top * n / 10))))
                for n in range(11)
            ),
        )
        if at_flow is not None:
            there = pressure_at_flow(high, left, ran, float(at_flow.value))
            also.append(
                Also("pressure_there", "pressure left at the flow asked about", rounded(max(0.0, there)), "[psi]")
            )
            words.append(
                f"At {at_flow.value:.1f} gal/min about {there:.0f} psi would be left."
                if there > 0
                else f"The supply does not give {at_flow.value:.1f} gal/min: {top:.1f} gal/min takes all its pressure."
            )
            if float(at_flow.value) > _TRUST * ran:
                outside.append(
                    Outside("at_flow", at_flow, None, rounded(_TRUST * ran), "more than twice the flow that ran")
                )
        if at_pressure is not None and float(at_pressure.value) <= high:
            gives = flow_at_pressure(high, left, ran, float(at_pressure.value))
            also.append(Also("flow_there", "flow at the pressure asked about", rounded(gives), "[gal_us]/min"))
            words.append(f"About {gives:.1f} gal/min would leave {at_pressure.value:.0f} psi.")
            if gives > _TRUST * ran:
                outside.append(
                    Outside("at_pressure", at_pressure, None, None, "it takes more than twice the flow that ran")
                )
    elif flow is not None:
        words.append("With no fall there is no curve to draw: run more water, or look at the gauge again.")
    return Answer(
        value=rounded(fall), words=" ".join(words), also=tuple(also), steps=tuple(steps), table=table,
        outside_range=tuple(outside),
    )  # fmt: skip
