"""How much voltage a run of wire loses at a given current."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Outside, Step, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.electrical.calculating.ampacity import SIZE
from witnessmark.gauges.electrical.calculating.ampacity_tables import Material
from witnessmark.gauges.electrical.calculating.cautions import INFORMATIONAL
from witnessmark.gauges.electrical.calculating.drop_inputs import (
    ADVICE,
    ADVICE_BRANCH,
    ADVICE_TOTAL,
    CURRENT,
    NOT_ENFORCEABLE,
    VOLTAGE,
)
from witnessmark.gauges.electrical.calculating.resistance import Form, drop, ohms_per_foot
from witnessmark.gauges.electrical.calculating.sizes import printed_size, read_size
from witnessmark.gauges.electrical.editions import nec
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["voltage_drop_by_size"]


@gauge(
    name="voltage-drop-by-size",
    family="electrical",
    title="Voltage drop of a run from its wire size",
    unit="%",
    gives="voltage lost on the way there and back, in % of the circuit's voltage",
    sources=(nec("1984 to 2023", "chapter 9 Table 8; K form by common practice", "seen in a copy"), ADVICE),
    error="the two forms differ by up to 4 %; wire at room temperature has about a fifth less resistance than at 75 °C, "
    "splices and devices add to it",
    never="that a circuit breaks a rule, or what a loaded measurement would have shown",
    cautions=(NOT_ENFORCEABLE, INFORMATIONAL),
    example={"current": "20A", "length": "100ft", "size": "12 AWG", "material": "copper", "voltage": "120V"},
)
def voltage_drop_by_size(
    current: Annotated[Quantity, CURRENT],
    length: Annotated[
        Quantity,
        Asked(
            "length of the run one way, from panel to load",
            "[ft_i]",
            lowest="1",
            highest="1000",
            least="0.01",
            most="100000",
            how="along the wire; the way back is counted by the formula and must not be added",
            example="100ft",
        ),
    ],
    size: Annotated[str, SIZE],
    material: Annotated[
        Material, Asked("metal of the conductor", how="by its colour at a terminal or by the print (AL)")
    ],
    voltage: Annotated[Quantity, VOLTAGE],
    *,
    form: Annotated[Form, Asked("which form of the formula gives the answer; the other one is shown beside it")] = "K",
    phases: Annotated[int, Asked("1 for single phase, 3 for three phases", example="1", choices=(1, 3))] = 1,
) -> Answer:
    """Voltage drop of a run from current, one-way length and size.

    Formula:
        K form:       Vd = 2 K I L / CM,  K = 12.9 copper, 21.2 aluminum (ohm circular mil per ft), L one way in ft
        Table 8 form: Vd = 2 I L R / 1000,  R in ohm per 1000 ft at 75 °C
        three phases: 1.732 in place of 2
    Known traps: L is one way (doubling it counts the return twice); CM is circular mils (12 AWG 6530), not kcmil.

    >>> from witnessmark.units import parse_quantity as q
    >>> round(voltage_drop_by_size(q("20A"), q("100ft"), "12", "copper", q("120V")).value, 2)
    Decimal('6.58')
    """
    name = read_size(size)
    volts = {
        each: drop(current.value, length.value, ohms_per_foot(name, material, each), phases)
        for each in ("K", "Table 8")
    }
    lost = volts[form]
    percent = lost / voltage.value * 100
    value = rounded(float(percent))
    other = "Table 8" if form == "K" else "K"
    beyond: tuple[Outside, ...] = ()
    if percent > 100:  # noqa: PLR2004 - more than the whole voltage
        beyond = (Outside("drop", Quantity(value, "%"), Decimal(0), Decimal(100), "such a current cannot flow there"),)
    advice = "below" if percent < ADVICE_BRANCH else "above" if percent > ADVICE_BRANCH else "at"
    return Answer(
        value=value,
        words=f"{printed_size(name)} {material} loses {float(lost):.2f} V, {float(percent):.2f} % of "
        f"{voltage.value:f} V: {advice} the advice of 3 % for a branch circuit.",
        outside_range=beyond,
        also=(
            Also("volts", "voltage lost", rounded(float(lost)), "V"),
            Also("at_load", "voltage left at the load", rounded(float(voltage.value - lost)), "V"),
            Also("other_form", f"voltage lost by the {other} form", rounded(float(volts[other])), "V"),
            Also("above_branch_advice", "above the advice of 3 %", percent > ADVICE_BRANCH),
            Also("above_total_advice", "above the advice of 5 % in all", percent > ADVICE_TOTAL),
        ),
        steps=(
            Step(f"resistance of one conductor ({form} form)", _ohms(name, material, form, length), "Ohm"),
            Step("voltage lost there and back", rounded(float(lost)), "V"),
            Step("in percent of the circuit's voltage", value, "%"),
        ),
    )


def _ohms(size: str, material: str, form: Form, length: Quantity) -> Decimal:
    return rounded(float(ohms_per_foot(size, material, form) * length.value))
