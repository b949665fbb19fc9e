"""How much resistance a run of building wire has, in the two forms that the trade uses."""

from __future__ import annotations

from decimal import Decimal
from typing import Literal

from witnessmark.gauges.electrical.calculating.messages import NOT_IN_TABLE
from witnessmark.gauges.electrical.calculating.sizes import CIRCULAR_MILS, printed_size
from witnessmark.problems import Refusal

__all__ = ["OHM_PER_1000_FT", "Form", "K", "drop", "ohms_per_foot"]

Form = Literal["K", "Table 8"]
#: Resistance of one circular mil foot in ohm at about 75 °C (read in several copies of the usual formula).
K = {"copper": Decimal("12.9"), "aluminum": Decimal("21.2"), "copper-clad aluminum": Decimal("21.2")}
_OTHER_METAL = [
    "3.18",
    "2.00",
    "1.26",
    "0.808",
    "0.508",
    "0.403",
    "0.319",
    "0.253",
    "0.201",
    "0.159",
    "0.126",
    "0.100",
    "0.0847",
    "0.0707",
    "0.0605",
    "0.0529",
    "0.0424",
    "0.0353",
]
_COPPER = [
    "3.07",
    "1.93",
    "1.21",
    "0.764",
    "0.491",
    "0.308",
    "0.245",
    "0.194",
    "0.154",
    "0.122",
    "0.0967",
    "0.0766",
    "0.0608",
    "0.0515",
    "0.0429",
    "0.0367",
    "0.0321",
    "0.0258",
    "0.0214",
]
#: Direct-current resistance at 75 °C in ohm per 1000 ft, uncoated copper and aluminum, NEC chapter 9 Table 8.
OHM_PER_1000_FT = {
    "copper": dict(zip(CIRCULAR_MILS, map(Decimal, _COPPER), strict=True)),
    "aluminum": dict(zip(list(CIRCULAR_MILS)[1:], map(Decimal, _OTHER_METAL), strict=True)),
}


def ohms_per_foot(size: str, material: str, form: Form = "K") -> Decimal:
    """Resistance of one conductor in ohm per foot at about 75 °C: K / circular mils, or Table 8 / 1000.

    *size* as in the tables. Refuses what the table leaves out (WM057). Circular mils are whole mils: 12 AWG is 6530,
    not 6.53; reading the kcmil figure as ohms is a published mistake.

    >>> ohms_per_foot("12", "copper", "Table 8")
    Decimal('0.00193')
    """
    table = OHM_PER_1000_FT["copper" if material == "copper" else "aluminum"]
    if size not in table:
        raise Refusal(
            NOT_IN_TABLE.at(f"{printed_size(size)} {material}", "building wire of this size is not made in it")
        )
    return K[material] / CIRCULAR_MILS[size] if form == "K" else table[size] / 1000


def drop(amperes: Decimal, feet: Decimal, ohms: Decimal, phases: int = 1) -> Decimal:
    """Volts lost over a one-way length in *feet* at *ohms* per foot: 2 I R L, or 1.732 I R L for three phases.

    >>> round(drop(Decimal(20), Decimal(100), ohms_per_foot("12", "copper")), 2)
    Decimal('7.90')
    """
    return (Decimal(2) if phases == 1 else Decimal(3).sqrt()) * amperes * feet * ohms
