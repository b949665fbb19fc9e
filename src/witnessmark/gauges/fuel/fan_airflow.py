"""Whether an exhaust fan moves what its room needs."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Limit, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.fuel.cautions import FINDING, LOCAL
from witnessmark.gauges.fuel.sources import IRC_EXHAUST
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["EXHAUST", "fan_airflow"]

#: Room and running to cfm.
EXHAUST = {
    ("bathroom", "switched"): 50, ("bathroom", "continuous"): 20,
    ("kitchen", "switched"): 100, ("kitchen", "continuous"): 25,
}  # fmt: skip
_SHARE = Decimal("0.1")


@gauge(
    name="fan-airflow",
    family="fuel",
    title="Whether an exhaust fan moves what its room needs",
    unit="[cft_i]/min",
    gives="airflow that the room needs",
    sources=(IRC_EXHAUST,),
    error="a flow box is within about 10 %; a tissue held to a grille measures nothing",
    never="where the air goes: that it ends outdoors is seen at the terminal",
    cautions=(LOCAL, FINDING, "A fan's label is its flow on a test bench; long or crushed duct takes half of it."),
    example={"room": "bathroom", "measured": "38 cfm", "label": "80 cfm"},
)
def fan_airflow(
    room: Annotated[Literal["bathroom", "kitchen"], Asked("room")],
    running: Annotated[Literal["switched", "continuous"], Asked("how the fan runs")] = "switched",
    measured: Annotated[
        Quantity | None,
        Asked(
            "airflow measured at the grille", "[cft_i]/min", lowest="0", highest="600", least="0",
            how="with a flow box or flow hood, door as in use", example="38 cfm",
        ),
    ] = None,
    label: Annotated[
        Quantity | None,
        Asked("airflow on the label", "[cft_i]/min", lowest="20", highest="1200", least="1", how="inside the grille",
              example="80 cfm"),
    ] = None,
    needed: Annotated[
        Quantity | None,
        Asked("need by another rule, in place of the code's", "[cft_i]/min", lowest="0", highest="600", least="0",
              how="from a local rule or the permit", example="100 cfm"),
    ] = None,
) -> Answer:  # fmt: skip
    """Airflow needed by a bathroom or kitchen, held against what was measured.

    Rule:
        bathroom 50 cfm switched or 20 continuous; kitchen 100 cfm switched or 25 continuous

    >>> from witnessmark.units import parse_quantity as q
    >>> fan_airflow("bathroom", measured=q("38 cfm")).verdict.outcome
    'beyond'
    """
    need = needed.value if needed is not None else Decimal(EXHAUST[room, running])
    words = f"A {room} needs {need:.0f} cfm {'all the time' if running == 'continuous' else 'while the fan is on'}."
    also: list[Also] = []
    verdict = None
    if measured is not None:
        sure = Uncertainty("a flow box is within about 10 %", measured.value * _SHARE)
        held = Answer(value=measured.value, unit="[cft_i]/min", uncertainty=sure).against(
            Limit(IRC_EXHAUST, lowest=Quantity(need, "[cft_i]/min"), words="Measured airflow against the need")
        )
        verdict = held.verdict
        also.append(Also("margin", "measured beyond the need (negative: short)", measured.value - need, "[cft_i]/min"))
        words += f" Measured: {measured.value:.0f} cfm."
        if label is not None:
            share = rounded(float(measured.value / label.value * 100))
            also.append(Also("of_label", "of the label", share, "%"))
            words += f" That is {share:.0f} % of its label."
    elif label is not None:
        words += f" The label says {label.value:.0f} cfm, which is no measurement."
    return Answer(
        value=need,
        unit="[cft_i]/min",
        words=words,
        verdict=verdict,
        also=tuple(also),
        uncertainty=Uncertainty("none in the rule; a flow box is within about 10 %"),
    )
