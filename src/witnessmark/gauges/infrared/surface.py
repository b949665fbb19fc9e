"""What a surface sends to a camera, and what temperature it has: gray body over all wavelengths, or in a band."""

from __future__ import annotations

from typing import Literal

from witnessmark.gauges.infrared.planck import BANDS, band_radiance, band_temperature

__all__ = ["FORMS", "Form", "apparent_kelvin", "emissivity_from", "object_kelvin"]

Form = Literal["7.5-14 um", "8-14 um", "graybody"]
FORMS: tuple[Form, ...] = ("7.5-14 um", "8-14 um", "graybody")


def _signal(kelvins: float, form: Form) -> float:
    return kelvins**4 if form == "graybody" else band_radiance(kelvins, *BANDS[form])


def _kelvins(signal: float, form: Form) -> float | None:
    if form == "graybody":
        return signal**0.25 if signal > 0 else None
    return band_temperature(signal, *BANDS[form])


def object_kelvin(apparent: float, emissivity: float, reflected: float, form: Form = "graybody") -> float | None:
    """Surface temperature in K from the *apparent* one (camera at emissivity 1), *emissivity* 0 to 1, *reflected* K.

    Gray body: T^4 = (Tapp^4 - (1 - e) Tref^4) / e; in a band the radiance of the band stands for T^4. None where the
    reflected part alone is more than was read.

    >>> round(object_kelvin(303.15, 0.95, 293.15) - 273.15, 3)
    30.5
    """
    if emissivity == 1:
        return apparent
    own = _signal(apparent, form) - (1 - emissivity) * _signal(reflected, form)
    return _kelvins(own / emissivity, form)


def apparent_kelvin(surface: float, emissivity: float, reflected: float, form: Form = "graybody") -> float | None:
    """What a camera at emissivity 1 reads, in K, of a surface at *surface* K: the way back from `object_kelvin`.

    >>> round(apparent_kelvin(285.15, 0.93, 294.15) - 273.15, 3)
    12.658
    """
    if emissivity == 1:
        return surface
    return _kelvins(emissivity * _signal(surface, form) + (1 - emissivity) * _signal(reflected, form), form)


def emissivity_from(apparent: float, surface: float, reflected: float, form: Form = "graybody") -> float | None:
    """The emissivity that makes a surface at *surface* K read *apparent* K; None where surface and reflected agree.

    >>> round(emissivity_from(apparent_kelvin(313.15, 0.6, 293.15), 313.15, 293.15), 6)
    0.6
    """
    whole = _signal(surface, form) - _signal(reflected, form)
    return None if whole == 0 else (_signal(apparent, form) - _signal(reflected, form)) / whole
