"""How long a run of wire may be for a given voltage drop."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.electrical.calculating.ampacity import SIZE
from witnessmark.gauges.electrical.calculating.ampacity_tables import Material
from witnessmark.gauges.electrical.calculating.cautions import INFORMATIONAL
from witnessmark.gauges.electrical.calculating.drop_inputs import ADVICE, CURRENT, NOT_ENFORCEABLE, VOLTAGE
from witnessmark.gauges.electrical.calculating.resistance import Form, drop, ohms_per_foot
from witnessmark.gauges.electrical.calculating.sizes import printed_size, read_size
from witnessmark.gauges.electrical.editions import nec
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["longest_run"]


@gauge(
    name="longest-run",
    family="electrical",
    title="Longest run for a voltage drop",
    unit="[ft_i]",
    gives="one-way length at which the drop reaches the percentage given",
    sources=(nec("1984 to 2023", "chapter 9 Table 8; K form by common practice", "seen in a copy"), ADVICE),
    error="as for the voltage drop: the two forms differ by up to 4 %",
    never="that a longer run breaks a rule",
    cautions=(NOT_ENFORCEABLE, INFORMATIONAL),
    example={"current": "16A", "size": "12 AWG", "material": "copper", "voltage": "120V", "percent": "3%"},
)
def longest_run(
    current: Annotated[Quantity, CURRENT],
    size: Annotated[str, SIZE],
    material: Annotated[
        Material, Asked("metal of the conductor", how="by its colour at a terminal or by the print (AL)")
    ],
    voltage: Annotated[Quantity, VOLTAGE],
    *,
    percent: Annotated[
        Quantity,
        Asked("voltage drop not to be passed", "%", lowest="0.1", highest="20", least="0", most="100", example="3%"),
    ] = Quantity(Decimal(3), "%"),  # noqa: B008 - a frozen value, never changed
    form: Annotated[Form, Asked("which form of the formula gives the answer")] = "K",
    phases: Annotated[int, Asked("1 for single phase, 3 for three phases", example="1", choices=(1, 3))] = 1,
) -> Answer:
    """One-way length at which a run reaches a voltage drop.

    Formula:
        L = p V / (2 I r),  r = K / CM or the Table 8 value / 1000 in ohm per ft; three phases: 1.732 in place of 2

    >>> from witnessmark.units import parse_quantity as q
    >>> round(longest_run(q("16A"), "12", "copper", q("120V")).value, 1)
    Decimal('56.9')
    """
    name = read_size(size)
    ohms = ohms_per_foot(name, material, form)
    volts = voltage.value * percent.value / 100
    feet = volts / drop(current.value, Decimal(1), ohms, phases)
    value = rounded(float(feet))
    return Answer(
        value=value,
        words=f"{printed_size(name)} {material} at {current.value:f} A reaches {percent.value:f} % after "
        f"{float(feet):.1f} ft one way.",
        also=(Also("volts", "voltage lost at that length", rounded(float(volts)), "V"),),
        steps=(
            Step("voltage that may be lost", rounded(float(volts)), "V"),
            Step("lost in each foot of run", rounded(float(volts / feet)) if feet else Decimal(0), "V"),
            Step("longest run, one way", value, "[ft_i]"),
        ),
    )
