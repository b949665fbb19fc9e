"""How much a vent connector must rise, and how long it may run."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Step, Uncertainty, Verdict
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.fuel.cautions import LICENSED, LOCAL, MONOXIDE, RELIGHT
from witnessmark.gauges.fuel.sources import VENT_CONNECTOR
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["vent_connector"]

_SHARE = {"single-wall": Decimal("0.75"), "Type B": Decimal(1)}


@gauge(
    name="vent-connector",
    family="fuel",
    title="Rise and length of a vent connector",
    unit="[in_i]",
    gives="least rise of the connector from the appliance to the chimney or vent",
    sources=(VENT_CONNECTOR,),
    error="none in the rule; a tape reads a rise to about 1/8 in",
    never="that the vent draws: a blocked or cold chimney spills whatever the slope",
    cautions=(
        MONOXIDE, RELIGHT, LOCAL, LICENSED,
        "The length rule is for a natural-draft connector that was not sized by the venting tables.",
    ),
    example={"length": "6ft", "rise": "2in", "vent_height": "14ft"},
)  # fmt: skip
def vent_connector(
    length: Annotated[
        Quantity,
        Asked(
            "horizontal length of the connector", "[ft_i]", lowest="0", highest="50", least="0",
            how="along the connector, elbows included, from the draft hood to the chimney", example="6ft",
        ),
    ],
    rise: Annotated[
        Quantity | None,
        Asked(
            "rise over that length", "[in_i]", lowest="-24", highest="120",
            how="height of its top at the chimney less height of its top at the appliance; negative where it falls",
            example="2in",
        ),
    ] = None,
    vent_height: Annotated[
        Quantity | None,
        Asked(
            "height of the vertical vent or chimney", "[ft_i]", lowest="0", highest="60", least="0",
            how="from the connector's entry to the terminal; estimated from the storeys where it cannot be measured",
            example="14ft",
        ),
    ] = None,
    wall: Annotated[
        Literal["single-wall", "Type B"], Asked("kind of connector pipe", how="from the marking on the pipe")
    ] = "single-wall",
) -> Answer:  # fmt: skip
    """Least rise of a vent connector toward the chimney and, where the vent's height is known, its greatest length.

    Rule:
        rise at least 1/4 in for each foot of length, without dips or sags
        horizontal length at most 75 % of the vertical vent's height for single-wall pipe, 100 % for Type B

    >>> from witnessmark.units import parse_quantity as q
    >>> vent_connector(q("6ft")).value
    Decimal('1.5')
    """  # fmt: skip
    needed = length.value / 4
    words = f"A connector {length.value:.1f} ft long rises at least {needed:.2f} in toward the chimney."
    also: list[Also] = []
    beyond: list[str] = []
    steps = [Step("1/4 in for each foot", needed, "[in_i]")]
    if rise is not None:
        also.append(Also("rise_margin", "rise beyond the need (negative: short)", rise.value - needed, "[in_i]"))
        if rise.value < needed:
            falls = "falls" if rise.value < 0 else "rises only"
            beyond.append(f"it {falls} {abs(rise.value):.2f} in")
    if vent_height is not None:
        longest = vent_height.value * _SHARE[wall]
        share = "75 %" if wall == "single-wall" else "100 %"
        steps.append(Step(f"{share} of the vent's height", longest, "[ft_i]"))
        also += [
            Also("longest", "greatest horizontal length", longest, "[ft_i]"),
            Also("length_margin", "length to spare (negative: too long)", longest - length.value, "[ft_i]"),
        ]
        words += f" With a vent {vent_height.value:.1f} ft high, {wall} pipe may run {longest:.1f} ft across."
        if length.value > longest:
            beyond.append(f"it runs {length.value:.1f} ft")
    verdict = None
    if rise is not None or vent_height is not None:
        told = f"Beyond the rule: {' and '.join(beyond)}" if beyond else "Within the rule for what was measured"
        verdict = Verdict("beyond" if beyond else "within", told, VENT_CONNECTOR)
    return Answer(
        value=needed,
        unit="[in_i]",
        words=words,
        verdict=verdict,
        also=tuple(also),
        steps=tuple(steps),
        uncertainty=Uncertainty("a tape reads a rise to about 1/8 in", Decimal("0.125")),
    )
