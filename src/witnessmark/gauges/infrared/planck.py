"""How much a black body radiates within a band of wavelengths, and which temperature gives an amount."""

from __future__ import annotations

import math

__all__ = ["BANDS", "band_radiance", "band_temperature"]

#: Bands of wavelengths that building cameras state, in micrometres.
BANDS = {"7.5-14 um": (7.5, 14.0), "8-14 um": (8.0, 14.0)}

#: Second radiation constant h c / k in micrometre kelvin; h, c, k exact in the SI (CODATA 2018).
_C2 = 14387.768775039337
#: 2 k^4 / (h^3 c^2) in W/(m2 sr K4).
_FRONT = 2 * 1.380649e-23**4 / (6.62607015e-34**3 * 299792458.0**2)
#: Between these kelvins the integral neither underflows nor needs more than some hundred terms.
_COLDEST, _HOTTEST = 30.0, 6000.0
_HALVINGS = 70
_ENOUGH = 1e-17


def _tail(x: float) -> float:
    """The integral of t^3 / (e^t - 1) from *x* to infinity, as the sum over n of its terms e^(-n t) t^3."""
    total, n = 0.0, 0
    while True:
        n += 1
        term = math.exp(-n * x) * (x**3 / n + 3 * x**2 / n**2 + 6 * x / n**3 + 6 / n**4)
        total += term
        if term <= total * _ENOUGH:
            return total


def band_radiance(kelvins: float, low: float, high: float) -> float:
    """Radiance in W/(m2 sr) of a black body at *kelvins* (30 to 6000) between *low* and *high* micrometres.

    Planck's law integrated term by term: with x = h c / (k wavelength T) the part of the spectrum beyond x is
    the sum over n = 1, 2, ... of e^(-n x) (x^3/n + 3 x^2/n^2 + 6 x/n^3 + 6/n^4).

    >>> round(band_radiance(300, 7.5, 14), 3)
    59.312
    """
    return _FRONT * kelvins**4 * (_tail(_C2 / (high * kelvins)) - _tail(_C2 / (low * kelvins)))


def band_temperature(radiance: float, low: float, high: float) -> float | None:
    """The temperature in kelvin whose black body sends *radiance* W/(m2 sr) in the band; None outside 30 to 6000 K.

    >>> round(band_temperature(band_radiance(300, 8, 14), 8, 14), 6)
    300.0
    """
    if not band_radiance(_COLDEST, low, high) <= radiance <= band_radiance(_HOTTEST, low, high):
        return None
    cold, hot = _COLDEST, _HOTTEST
    for _ in range(_HALVINGS):
        middle = (cold + hot) / 2
        if middle in {cold, hot}:
            break
        if band_radiance(middle, low, high) < radiance:
            cold = middle
        else:
            hot = middle
    return (cold + hot) / 2
