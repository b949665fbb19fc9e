"""How much gas a pipe carries: the equations of the fuel gas code, and Spitzglass's."""

from __future__ import annotations

import math
from dataclasses import dataclass

__all__ = [
    "ATMOSPHERE", "INSIDE_DIAMETERS", "NATURAL_GAS", "PROPANE", "Gas", "high_pressure_cfh",
    "low_pressure_cfh", "spitzglass_cfh", "viscosity_factor",
]  # fmt: skip

#: Pressure of the atmosphere in psi as the code takes it.
ATMOSPHERE = 14.7

#: Nominal size of Schedule 40 metallic pipe to its inside diameter in inches (fuel gas code, Table 402.4(2) and after).
INSIDE_DIAMETERS: dict[str, str] = {
    "1/4": "0.364", "3/8": "0.493", "1/2": "0.622", "3/4": "0.824", "1": "1.049", "1 1/4": "1.380", "1 1/2": "1.610",
    "2": "2.067", "2 1/2": "2.469", "3": "3.068", "4": "4.026",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Gas:
    """A fuel gas: specific gravity (air 1), factor Cr for viscosity, density and temperature, and Y."""

    name: str
    gravity: float
    cr: float
    y: float


NATURAL_GAS = Gas("natural gas", 0.60, 0.6094, 0.9992)
PROPANE = Gas("propane", 1.50, 1.2462, 0.9910)


def viscosity_factor(gravity: float, centipoise: float, fahrenheit: float = 60.0) -> float:
    """The factor Cr = 0.00354 S T (Z/S)^0.152, with T = t + 460 in degrees Rankine and Z in centipoise.

    International Fuel Gas Code A.4 (recalled; it gives the printed 0.6094 and 1.2462).

    >>> round(viscosity_factor(0.60, 0.012), 4), round(viscosity_factor(1.50, 0.008), 4)
    (0.6094, 1.2462)
    """
    return float(0.00354 * gravity * (fahrenheit + 460) * (centipoise / gravity) ** 0.152)


def low_pressure_cfh(diameter: float, length: float, drop: float, gas: Gas = NATURAL_GAS) -> float:
    """Cubic feet an hour below 1.5 psi; inside *diameter* in, *length* ft, *drop* in w.c., all above nought.

    International Fuel Gas Code A.4: D = Q^0.381 / (19.17 (dH/(Cr L))^0.206).

    >>> round(low_pressure_cfh(0.622, 10, 3.0), 1)
    455.8
    """
    return float((19.17 * diameter * (drop / (gas.cr * length)) ** 0.206) ** (1 / 0.381))


def high_pressure_cfh(diameter: float, length: float, supply: float, drop: float, gas: Gas = NATURAL_GAS) -> float:
    """Cubic feet an hour from 1.5 psi on; *supply* psi gauge, *drop* psi, below supply plus 14.7.

    International Fuel Gas Code A.4: D = Q^0.381 / (18.93 [(P1^2 - P2^2) Y/(Cr L)]^0.206), P in psia.

    >>> round(high_pressure_cfh(0.622, 10, 3.0, 2.0))
    2360
    """
    first = supply + ATMOSPHERE
    squares = first**2 - (first - drop) ** 2
    return float((18.93 * diameter * (squares * gas.y / (gas.cr * length)) ** 0.206) ** (1 / 0.381))


def spitzglass_cfh(diameter: float, length: float, drop: float, gas: Gas = NATURAL_GAS) -> float:
    """Cubic feet an hour by Spitzglass below 1 psi: 3550 [h d^5 / (S L (1 + 3.6/d + 0.03 d))]^0.5, h in w.c.

    Another formula than the code's: 31 % lower for 1/2 in pipe at 10 ft, 24 % at 100 ft.

    >>> round(spitzglass_cfh(0.622, 100, 0.5), 1)
    37.9
    """
    shape = 1 + 3.6 / diameter + 0.03 * diameter
    return 3550 * math.sqrt(drop * diameter**5 / (gas.gravity * length * shape))
