"""How much water wood takes up from air: the Wood Handbook's equation, with both sets of coefficients it is printed in."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = [
    "COLDEST",
    "FAHRENHEIT",
    "HOTTEST",
    "METRIC",
    "Sorption",
    "emc_fahrenheit_form",
    "emc_percent",
    "humidity_for_emc",
]


@dataclass(frozen=True, slots=True)
class Sorption:
    """Coefficients of W, K, K1 and K2, each as c0 + c1 T + c2 T^2, with T in the unit of the set."""

    w: tuple[float, float, float]
    k: tuple[float, float, float]
    k1: tuple[float, float, float]
    k2: tuple[float, float, float]


#: T in °C; Wood Handbook, FPL-GTR-282, equation 4-5.
METRIC = Sorption(
    (349, 1.29, 0.0135), (0.805, 0.000736, -0.00000273), (6.27, -0.00938, -0.000303), (1.91, 0.0407, -0.000293)
)
#: T in °F; the same handbook, recalled (it agrees with the printed table to 0.061 % moisture content).
FAHRENHEIT = Sorption(
    (330, 0.452, 0.00415), (0.791, 0.000463, -0.000000844), (6.34, 0.000775, -0.0000935), (1.09, 0.0284, -0.0000904)
)


#: Between these, °C, the equation has no pole and rises with humidity; it is published for -1.2 to 132.3.
COLDEST, HOTTEST = -50.0, 132.3


def _quadratic(c: tuple[float, float, float], t: float) -> float:
    return c[0] + t * (c[1] + t * c[2])


def _percent(t: float, humidity: float, form: Sorption) -> float:
    """The equation itself, at *t* in the unit of the form."""
    kh = _quadratic(form.k, t) * humidity
    k1 = _quadratic(form.k1, t)
    k1kh = k1 * kh
    double = k1kh * _quadratic(form.k2, t) * kh
    return 1800 / _quadratic(form.w, t) * (kh / (1 - kh) + (k1kh + 2 * double) / (1 + k1kh + double))


def emc_percent(celsius: float, humidity: float) -> float:
    """Equilibrium moisture content in % of wood in air at *celsius* °C and relative *humidity* 0 to 1 (a fraction).

    Hailwood-Horrobin fit of the Wood Handbook, FPL-GTR-282, equation 4-5, metric coefficients; valid -1 to 132 °C.
    From -50 °C (`COLDEST`) to 132.3 °C (`HOTTEST`) it stays a rising number; beyond, its terms divide by nought.

    >>> round(emc_percent(20, 0.5), 2)
    9.27
    """
    return _percent(celsius, humidity, METRIC)


def emc_fahrenheit_form(fahrenheit: float, humidity: float) -> float:
    """The same from the coefficients printed for °F, through the same equation: a second published form to compare with.

    Within 0.1 % moisture content of `emc_percent` from 30 to 130 °F and 5 to 95 % humidity.

    >>> round(emc_fahrenheit_form(70, 0.5), 2)
    9.25
    """
    return _percent(fahrenheit, humidity, FAHRENHEIT)


def humidity_for_emc(celsius: float, percent: float) -> float | None:
    """Relative humidity (fraction) at which wood comes to *percent* moisture content at *celsius* °C (-50 to 132.3).

    None where even saturated air gives less. Found by halving an interval 60 times: the equation rises with humidity.

    >>> round(humidity_for_emc(20, 9.27), 2)
    0.5
    """
    if percent > emc_percent(celsius, 1) or percent < 0:
        return None
    low, high = 0.0, 1.0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if emc_percent(celsius, middle) < percent else (low, middle)
    return (low + high) / 2
